using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class StudentTTests
{
    /// <summary>Computed in 100 decimal digits from the series of the incomplete beta function.</summary>
    [Theory]
    [InlineData(1, 0.5, 0.30112161084132211)]
    [InlineData(50, 0.5, 0.045352606402966379)]
    [InlineData(1e6, 0.5, 0.00032070097541419884)]
    [InlineData(0.3, 1.5, 0.40023609840179242)]
    [InlineData(3, 1.5, 0.066773877127456638)]
    [InlineData(1e4, 1.5, 3.770852401714754e-07)]
    [InlineData(2, 2.7, 0.074711719035251006)]
    [InlineData(1.2, 7.3, 0.13381533327582804)]
    [InlineData(1.5, 7.3, 0.087781546401543065)]
    [InlineData(12, 7.3, 2.2778926147852753e-06)]
    [InlineData(2.1199, 16, 0.025000253825700865)]
    [InlineData(60, 16.76, 2.6539751633384751e-21)]
    [InlineData(0.01, 30, 0.49604374628658887)]
    [InlineData(4, 30, 0.00019092281804187843)]
    [InlineData(1.3, 1000, 0.096950264207728648)]
    [InlineData(1.5, 1000, 0.066965019411043089)]
    [InlineData(9, 1000, 5.5645385859357497e-19)]
    [InlineData(3, 1e6, 0.0013499312707108985)]
    [InlineData(8, 1e6, 6.2275317166012596e-16)]
    [InlineData(2, 1e10, 0.02275013196167695)]
    public void Tail_areas_and_their_quantiles(double t, double nu, double tail)
    {
        Ulps.AssertRelative(1e-13, tail, StudentT.Cdf(-t, nu));
        Ulps.AssertRelative(1e-15, 1 - tail, StudentT.Cdf(t, nu));
        Ulps.AssertRelative(1e-12, -t, StudentT.Quantile(tail, nu));
    }

    /// <summary>Two-sided factors for 95 % and 99 %, four decimals; they agree with JCGM 100:2008 table G.2.</summary>
    [Theory]
    [InlineData(1, 12.7062, 63.6567)]
    [InlineData(2, 4.3027, 9.9248)]
    [InlineData(3, 3.1824, 5.8409)]
    [InlineData(4, 2.7764, 4.6041)]
    [InlineData(5, 2.5706, 4.0321)]
    [InlineData(6, 2.4469, 3.7074)]
    [InlineData(8, 2.3060, 3.3554)]
    [InlineData(9, 2.2622, 3.2498)]
    [InlineData(10, 2.2281, 3.1693)]
    [InlineData(16, 2.1199, 2.9208)]
    [InlineData(20, 2.0860, 2.8453)]
    [InlineData(30, 2.0423, 2.7500)]
    [InlineData(50, 2.0086, 2.6778)]
    [InlineData(double.PositiveInfinity, 1.9600, 2.5758)]
    public void Coverage_factors_of_the_t_table(double nu, double t95, double t99)
    {
        Assert.Equal(t95, StudentT.Quantile(0.975, nu), 0.00005001);
        Assert.Equal(t99, StudentT.Quantile(0.995, nu), 0.00005001);
    }

    /// <summary>Closed forms for whole nu: Abramowitz and Stegun 26.7.3 and 26.7.4.</summary>
    [Fact]
    public void Central_areas_equal_the_closed_forms_for_whole_degrees_of_freedom()
    {
        for (var nu = 1; nu <= 40; nu++)
        {
            for (var t = 0.05; t < 12; t *= 1.3)
                Assert.Equal(ClosedForm(t, nu), 2 * StudentT.Cdf(t, nu) - 1, 2e-15);
        }

        static double ClosedForm(double t, int nu)
        {
            var angle = Math.Atan(t / Math.Sqrt(nu));
            var (sine, cosine) = Math.SinCos(angle);
            double sum = 0, term = nu % 2 == 0 ? 1 : cosine;
            for (var j = nu % 2 == 0 ? 1 : 2; j < nu; j += 2)
            {
                sum += term;
                term *= cosine * cosine * j / (j + 1);
            }

            return nu % 2 == 0 ? sine * sum : 2 / Math.PI * (angle + (sine * sum));
        }
    }

    [Fact]
    public void Quantile_and_distribution_undo_each_other_for_any_degrees_of_freedom()
    {
        var random = new Random(31);
        for (var i = 0; i < 20_000; i++)
        {
            var nu = Math.Exp((random.NextDouble() * 26) - 3);
            var p = random.Next(3) switch
            {
                0 => random.NextDouble(),
                1 => 0.5 + ((random.NextDouble() - 0.5) * 1e-3),
                _ => Math.Exp(-60 * random.NextDouble()),
            };
            var t = StudentT.Quantile(p, nu);
            if (double.IsInfinity(t))
                continue;
            Ulps.AssertRelative(1e-11, p, StudentT.Cdf(t, nu));
        }
    }

    [Fact]
    public void Quantile_agrees_with_MathNet()
    {
        foreach (var nu in (double[])[1.3, 2, 3, 4.5, 9, 16.76, 55, 300])
        {
            foreach (var p in (double[])[0.6, 0.9, 0.95, 0.975, 0.995, 0.9999])
            {
                var expected = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, nu, p);
                Ulps.AssertRelative(1e-8, expected, StudentT.Quantile(p, nu));
            }
        }
    }

    [Fact]
    public void Density_is_the_slope_of_the_distribution()
    {
        foreach (var nu in (double[])[0.7, 1, 4, 33.3, 1e9, double.PositiveInfinity])
        {
            foreach (var t in (double[])[-3, -0.2, 0, 1.7, 2.4])
            {
                const double H = 1e-4;
                var slope = (StudentT.Cdf(t + H, nu) - StudentT.Cdf(t - H, nu)) / (2 * H);
                Assert.Equal(slope, StudentT.Pdf(t, nu), 1e-8);
            }
        }
    }

    [Fact]
    public void Many_degrees_of_freedom_approach_the_normal_distribution()
    {
        foreach (var nu in (double[])[1e12, 1e16, 1e19, 1e21, double.MaxValue])
        {
            // The relative difference is (z^4 + ...)/(4 nu).
            var tolerance = 1e-12 + (100 / nu);
            Ulps.AssertRelative(tolerance, NormalDistribution.Cdf(-4), StudentT.Cdf(-4, nu));
            Ulps.AssertRelative(tolerance, NormalDistribution.Quantile(0.975), StudentT.Quantile(0.975, nu));
        }
    }

    [Fact]
    public void The_centre_the_ends_and_arguments_out_of_range()
    {
        Assert.Equal(0, StudentT.Quantile(0.5, 4));
        Assert.Equal(0.5, StudentT.Cdf(0, 4));
        Assert.Equal(double.PositiveInfinity, StudentT.Quantile(1, 4));
        Assert.Equal(double.NegativeInfinity, StudentT.Quantile(0, 4));
        Assert.Equal(1, StudentT.Cdf(double.PositiveInfinity, 4));
        Assert.True(double.IsNaN(StudentT.Cdf(double.NaN, 4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(0.975, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(0.975, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(1.01, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Cdf(1, -1));
    }
}
