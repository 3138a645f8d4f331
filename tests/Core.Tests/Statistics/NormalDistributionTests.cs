using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class NormalDistributionTests
{
    /// <summary>Computed in 100 decimal digits.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.1, 0.46017216272297101)]
    [InlineData(0.5, 0.30853753872598688)]
    [InlineData(0.7, 0.24196365222307303)]
    [InlineData(0.71, 0.23885206808998674)]
    [InlineData(0.9, 0.18406012534675947)]
    [InlineData(1, 0.15865525393145705)]
    [InlineData(1.96, 0.024997895148220435)]
    [InlineData(3, 0.0013498980316300946)]
    [InlineData(5, 2.8665157187919391e-07)]
    [InlineData(8, 6.2209605742717839e-16)]
    [InlineData(12, 1.776482112077679e-33)]
    [InlineData(20, 2.7536241186062337e-89)]
    [InlineData(30, 4.9067139271481872e-198)]
    [InlineData(37.5, 4.6053530095819552e-308)]
    public void Tail_areas_and_their_quantiles(double z, double tail)
    {
        Ulps.AssertRelative(2e-15, tail, NormalDistribution.Survival(z));
        Ulps.AssertRelative(2e-15, tail, NormalDistribution.Cdf(-z));
        Ulps.AssertRelative(1e-15, 1 - tail, NormalDistribution.Cdf(z));
        Ulps.AssertRelative(1e-14, -z, NormalDistribution.Quantile(tail));
    }

    /// <summary>Published: 95 % and 99 % two-sided factors, JCGM 100:2008 table G.1 prints 1.960 and 2.576.</summary>
    [Theory]
    [InlineData(0.975, 1.960)]
    [InlineData(0.995, 2.576)]
    public void Coverage_factors_of_the_GUM(double p, double expected) =>
        Assert.Equal(expected, NormalDistribution.Quantile(p), 0.0005);

    [Fact]
    public void Quantile_and_distribution_undo_each_other()
    {
        for (var z = -38.0; z <= 8; z += 0.0173)
        {
            var back = NormalDistribution.Quantile(NormalDistribution.Cdf(z));
            // Above the centre the probability itself is rounded to a multiple of 2^-53.
            var rounding = z > 0 ? 1.2e-16 / NormalDistribution.Pdf(z) : 0;
            Assert.Equal(z, back, (1e-14 * Math.Abs(z)) + rounding + (z < -37.5 ? 1e-2 : 0));
        }
    }

    [Fact]
    public void Quantile_is_exact_near_the_centre()
    {
        // z = sqrt(2 pi) h (1 + (2 pi) h^2/6 + ...) for p = 1/2 + h, from the series of the distribution function.
        var h = Math.ScaleB(1, -30);
        Ulps.AssertRelative(1e-15, Math.Sqrt(2 * Math.PI) * h, NormalDistribution.Quantile(0.5 + h));
        Assert.Equal(0, NormalDistribution.Quantile(0.5));
    }

    [Fact]
    public void The_ends_are_infinite_and_outside_throws()
    {
        Assert.Equal(double.NegativeInfinity, NormalDistribution.Quantile(0));
        Assert.Equal(double.PositiveInfinity, NormalDistribution.Quantile(1));
        Assert.Equal(1, NormalDistribution.Cdf(double.PositiveInfinity));
        Assert.Equal(0, NormalDistribution.Cdf(double.NegativeInfinity));
        Assert.True(double.IsNaN(NormalDistribution.Cdf(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalDistribution.Quantile(-0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalDistribution.Quantile(double.NaN));
    }
}
