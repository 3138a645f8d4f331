using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class ChiSquaredAndFisherTests
{
    /// <summary>P(a, x) and 1 - P(a, x) computed in 100 decimal digits.</summary>
    [Theory]
    [InlineData(0.5, 0.01, 0.1124629160182849, 0.88753708398171516)]
    [InlineData(0.5, 2, 0.95449973610364158, 0.045500263896358417)]
    [InlineData(0.01, 0.5, 0.99437324380603287, 0.0056267561939671844)]
    [InlineData(1, 1, 0.63212055882855767, 0.36787944117144233)]
    [InlineData(2.5, 8, 0.99315592607757952, 0.0068440739224204308)]
    [InlineData(10, 3, 0.0011024881301154798, 0.99889751186988451)]
    [InlineData(10, 10, 0.54207028552814784, 0.45792971447185221)]
    [InlineData(10, 40, 0.99999999607406775, 3.9259322262861883e-09)]
    [InlineData(1000, 900, 0.00054990226571178288, 0.99945009773428817)]
    [InlineData(1000, 1000, 0.50420524418021551, 0.49579475581978449)]
    [InlineData(1000, 1100, 0.99894067674607001, 0.0010593232539299773)]
    [InlineData(1e6, 1000500, 0.6915504757714972, 0.3084495242285028)]
    [InlineData(1e-3, 1e-5, 0.98912304469578272, 0.010876955304217331)]
    public void Incomplete_gamma_function_and_chi_squared_tails(double a, double x, double lower, double upper)
    {
        Ulps.AssertRelative(1e-12, lower, SpecialFunctions.RegularizedIncompleteGamma(a, x));
        Ulps.AssertRelative(1e-12, lower, ChiSquared.Cdf(2 * x, 2 * a));
        Ulps.AssertRelative(1e-12, upper, ChiSquared.Survival(2 * x, 2 * a));
        // A probability near 1 is itself rounded to a multiple of 2^-53.
        Ulps.AssertRelative(1e-10 + (2e-16 / upper), 2 * x, ChiSquared.Quantile(lower, 2 * a));
    }

    /// <summary>NIST/SEMATECH e-Handbook 1.3.6.7.4, printed table (from memory): upper and lower 5 % points.</summary>
    [Theory]
    [InlineData(1, 0.95, 3.841)]
    [InlineData(10, 0.95, 18.307)]
    [InlineData(10, 0.05, 3.940)]
    [InlineData(100, 0.95, 124.342)]
    public void Chi_squared_points_of_the_table(double nu, double p, double expected) =>
        Assert.Equal(expected, ChiSquared.Quantile(p, nu), 5e-4);

    [Fact]
    public void Chi_squared_quantile_and_distribution_undo_each_other()
    {
        var random = new RandomSource(9);
        for (var i = 0; i < 3000; i++)
        {
            var nu = Elementary.Exp((random.NextDouble() * 12) - 2);
            var p = i % 2 == 0 ? random.NextDouble() : Elementary.Exp(-40 * random.NextDouble());
            var x = ChiSquared.Quantile(p, nu);
            if (x > 1e-290)
                Ulps.AssertRelative(1e-10, p, ChiSquared.Cdf(x, nu));
        }
    }

    /// <summary>Upper tails computed in 100 decimal digits; the last is NIST's Norris F statistic.</summary>
    [Theory]
    [InlineData(3.5, 3, 10, 0.057510063402259205)]
    [InlineData(0.2, 3, 10, 0.89401811142072085)]
    [InlineData(2.26, 9, 45, 0.034913599626566823)]
    [InlineData(40, 2, 5, 0.00083922361604267461)]
    [InlineData(1.5, 100, 120, 0.016824892011214787)]
    [InlineData(5436385.54079785, 1, 34, 4.6540408524723433e-90)]
    public void Fisher_tails(double f, double nu1, double nu2, double upper)
    {
        Ulps.AssertRelative(1e-12, upper, FisherF.Survival(f, nu1, nu2));
        Ulps.AssertRelative(1e-13, 1 - upper, FisherF.Cdf(f, nu1, nu2));
    }

    /// <summary>NIST/SEMATECH e-Handbook, analysis of variance of GEAR.DAT: F 2.29691241336 with 9 and 90 degrees of
    /// freedom, p 0.0226608193.</summary>
    [Fact]
    public void Fisher_probability_of_the_NIST_gear_data() =>
        Ulps.AssertRelative(1e-8, 0.0226608193, FisherF.Survival(2.29691241336, 9, 90));

    [Fact]
    public void Infinite_degrees_of_freedom_are_chi_squared_over_theirs_and_one_is_t_squared()
    {
        Ulps.AssertRelative(1e-6, FisherF.Cdf(1.7, 5, 1e8), FisherF.Cdf(1.7, 5, double.PositiveInfinity));
        Ulps.AssertRelative(1e-6, FisherF.Cdf(1.7, 1e8, 5), FisherF.Cdf(1.7, double.PositiveInfinity, 5));
        Assert.Equal(0, FisherF.Cdf(0.9, double.PositiveInfinity, double.PositiveInfinity));
        Assert.Equal(1, FisherF.Cdf(1.1, double.PositiveInfinity, double.PositiveInfinity));
        Ulps.AssertRelative(1e-12, 2 * StudentT.Cdf(-2.3, 7.5), FisherF.Survival(2.3 * 2.3, 1, 7.5));
    }

    [Fact]
    public void The_ends_and_arguments_out_of_range()
    {
        Assert.Equal(0, ChiSquared.Cdf(-1, 3));
        Assert.Equal(1, ChiSquared.Survival(0, 3));
        Assert.Equal(1, ChiSquared.Cdf(double.PositiveInfinity, 3));
        Assert.Equal(0, ChiSquared.Quantile(0, 3));
        Assert.Equal(double.PositiveInfinity, ChiSquared.Quantile(1, 3));
        Assert.Equal(0, FisherF.Cdf(0, 2, 3));
        Assert.Equal(1, FisherF.Survival(-1, 2, 3));
        Assert.Equal(0, FisherF.Survival(double.PositiveInfinity, 2, 3));
        Assert.True(double.IsNaN(ChiSquared.Cdf(double.NaN, 3)));
        Assert.True(double.IsNaN(FisherF.Cdf(double.NaN, 3, 4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChiSquared.Cdf(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChiSquared.Quantile(0.5, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChiSquared.Quantile(1.1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => FisherF.Cdf(1, 0, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.RegularizedIncompleteGamma(1, -1));
    }
}
