using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class GrubbsTests
{
    /// <summary>NIST/SEMATECH e-Handbook 1.3.5.17.1: uranium isotopes by mass spectrometry; G printed as 2.4687, the
    /// one-sided 5 % value as 2.032.</summary>
    private static readonly double[] Uranium = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

    [Fact]
    public void Uranium_data_of_NIST()
    {
        var (g, index) = Grubbs.Statistic(Uranium);
        Assert.Equal(2.468765, g, 5e-7);
        Assert.Equal(7, index);
        Assert.Equal(2.031652, Grubbs.CriticalValue(8, 0.05, twoSided: false), 5e-7);
        Assert.Equal(2.126645, Grubbs.CriticalValue(8, 0.05, twoSided: true), 5e-7);

        var verdict = Grubbs.Test(Uranium, 0.05);
        Assert.True(verdict.IsOutlier);
        Assert.Equal(g, verdict.G);
        Assert.Equal(7, verdict.Index);
        Assert.False(Grubbs.Test(Uranium.AsSpan(0, 7), 0.05).IsOutlier);
    }

    /// <summary>Four-decimal table computed from the formula with another t quantile; it agrees with published tables
    /// (one-sided 5 % and 1 %, two-sided 5 % and 1 %).</summary>
    [Theory]
    [InlineData(3, 1.1531, 1.1546, 1.1543, 1.1547)]
    [InlineData(4, 1.4625, 1.4925, 1.4812, 1.4962)]
    [InlineData(5, 1.6714, 1.7489, 1.7150, 1.7637)]
    [InlineData(6, 1.8221, 1.9442, 1.8871, 1.9728)]
    [InlineData(7, 1.9381, 2.0973, 2.0200, 2.1391)]
    [InlineData(8, 2.0317, 2.2208, 2.1266, 2.2744)]
    [InlineData(9, 2.1096, 2.3231, 2.2150, 2.3868)]
    [InlineData(10, 2.1761, 2.4097, 2.2900, 2.4821)]
    [InlineData(12, 2.2850, 2.5494, 2.4116, 2.6357)]
    [InlineData(15, 2.4090, 2.7049, 2.5483, 2.8061)]
    [InlineData(20, 2.5566, 2.8838, 2.7082, 3.0008)]
    [InlineData(30, 2.7451, 3.1029, 2.9085, 3.2361)]
    public void Critical_values(int n, double one05, double one01, double two05, double two01)
    {
        Assert.Equal(one05, Grubbs.CriticalValue(n, 0.05, twoSided: false), 5.01e-5);
        Assert.Equal(one01, Grubbs.CriticalValue(n, 0.01, twoSided: false), 5.01e-5);
        Assert.Equal(two05, Grubbs.CriticalValue(n, 0.05, twoSided: true), 5.01e-5);
        Assert.Equal(two01, Grubbs.CriticalValue(n, 0.01, twoSided: true), 5.01e-5);
    }

    [Fact]
    public void G_cannot_exceed_its_largest_possible_value()
    {
        Assert.Equal(1.1547, Grubbs.LargestPossible(3), 5e-5);
        Assert.Equal(7 / Math.Sqrt(8), Grubbs.LargestPossible(8));
        // All values but one equal reach it.
        Assert.Equal(Grubbs.LargestPossible(5), Grubbs.Statistic([1, 1, 9, 1, 1]).G, 1e-12);
        for (var n = 3; n < 40; n++)
            Assert.True(Grubbs.CriticalValue(n, 1e-9, twoSided: true) <= Grubbs.LargestPossible(n));
    }

    /// <summary>Seeded simulation: at 5 % the test fires on 5 % of clean samples, within 3.3 deviations.</summary>
    [Fact]
    public void Clean_samples_are_accused_as_often_as_stated()
    {
        var random = new RandomSource(17);
        const int Trials = 40_000;
        var values = new double[6];
        var critical = Grubbs.CriticalValue(6, 0.05, twoSided: true);
        var accused = 0;
        for (var i = 0; i < Trials; i++)
        {
            random.FillNormal(values);
            accused += Grubbs.Statistic(values).G > critical ? 1 : 0;
        }

        Assert.Equal(0.05, (double)accused / Trials, 3.3 * Math.Sqrt(0.05 * 0.95 / Trials));
    }

    [Fact]
    public void Equal_values_have_no_outlier()
    {
        Assert.Equal((0, -1), Grubbs.Statistic([0.1, 0.1, 0.1]));
        Assert.False(Grubbs.Test([0.1, 0.1, 0.1], 0.05).IsOutlier);
    }

    [Fact]
    public void Too_few_values_or_a_level_out_of_range_throw()
    {
        Assert.Throws<ArgumentException>(() => Grubbs.Statistic([1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.CriticalValue(2, 0.05, twoSided: true));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.CriticalValue(5, 0, twoSided: true));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.LargestPossible(2));
    }
}
