using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class DescriptiveTests
{
    private static readonly Gen<double[]> Values = Gen.Double[-1e6, 1e6].Array[1, 40];

    /// <summary>NIST/SEMATECH e-Handbook 6.3.2.2: mean of the ten individuals.</summary>
    [Fact]
    public void Mean_of_the_NIST_individuals() => Assert.Equal(
        50.81, Descriptive.Mean([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]), 1e-13);

    /// <summary>JCGM 100:2008, H.2: mean 4.9990 V and standard uncertainty of the mean 0.0032094 V.</summary>
    [Fact]
    public void Mean_and_its_uncertainty_of_GUM_H2()
    {
        double[] volts = [5.007, 4.994, 5.005, 4.990, 4.999];
        Assert.Equal(4.9990, Descriptive.Mean(volts), 1e-13);
        Assert.Equal(0.0032094, Descriptive.StandardDeviation(volts) / Math.Sqrt(5), 5e-8);
    }

    [Fact]
    public void Certified_mean_and_standard_deviation_of_Michelsons_light()
    {
        var set = NistDataSet.Read("Michelso");
        Ulps.AssertRelative(1e-14, set["mean"], Descriptive.Mean(set.Y));
        Ulps.AssertRelative(1e-12, set["standard-deviation"], Descriptive.StandardDeviation(set.Y));
    }

    /// <summary>The data of NIST StRD NumAcc4 (10000000.2, then .1 and .3 by turns; certified standard deviation 0.1):
    /// where a one-pass formula loses everything.</summary>
    [Fact]
    public void Standard_deviation_survives_a_large_mean()
    {
        var values = new double[1001];
        values[0] = 10000000.2;
        for (var i = 1; i < values.Length; i++)
            values[i] = i % 2 == 1 ? 10000000.1 : 10000000.3;
        Assert.Equal(10000000.2, Descriptive.Mean(values), 1e-8);
        // The decimals themselves are rounded to 2e-9 when read.
        Assert.Equal(0.1, Descriptive.StandardDeviation(values), 2e-9);
    }

    [Fact]
    public void Sum_keeps_small_values_beside_large_ones() =>
        Assert.Equal(2, Descriptive.Sum([1, 1e100, 1, -1e100]));

    [Fact]
    public void Median_of_odd_and_even_counts()
    {
        Assert.Equal(3, Descriptive.Median([5, 1, 3]));
        Assert.Equal(2.5, Descriptive.Median([4, 1, 3, 2]));
        Assert.Equal(7, Descriptive.Median([7]));
    }

    /// <summary>By hand from definition 7 of Hyndman and Fan (1996): place p (n - 1) counted from 0.</summary>
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.25, 17.5)]
    [InlineData(0.5, 25)]
    [InlineData(0.9, 37)]
    [InlineData(1, 40)]
    public void Quantile_lies_between_order_statistics(double p, double expected) =>
        Assert.Equal(expected, Descriptive.Quantile([10, 20, 30, 40], p), 1e-12);

    [Fact]
    public void Agrees_with_MathNet() => Values.Sample(
        values =>
        {
            var expected = MathNet.Numerics.Statistics.Statistics.MeanStandardDeviation(values);
            Assert.Equal(expected.Item1, Descriptive.Mean(values), 1e-7);
            if (values.Length > 1)
                Assert.Equal(expected.Item2, Descriptive.StandardDeviation(values), 1e-6);
            Assert.Equal(MathNet.Numerics.Statistics.Statistics.Median(values), Descriptive.Median(values), 1e-9);
            Assert.Equal(values.Min(), Descriptive.Min(values));
            Assert.Equal(values.Max(), Descriptive.Max(values));
        },
        iter: 2000,
        threads: 1);

    [Fact]
    public void Not_a_number_is_passed_on()
    {
        double[] values = [1, double.NaN, 3];
        Assert.True(double.IsNaN(Descriptive.Mean(values)));
        Assert.True(double.IsNaN(Descriptive.StandardDeviation(values)));
        Assert.True(double.IsNaN(Descriptive.Median(values)));
        Assert.True(double.IsNaN(Descriptive.Min(values)));
        Assert.True(double.IsNaN(Descriptive.Max(values)));
    }

    [Fact]
    public void Too_few_values_throw()
    {
        Assert.Throws<ArgumentException>(() => Descriptive.Mean([]));
        Assert.Throws<ArgumentException>(() => Descriptive.StandardDeviation([1]));
        Assert.Throws<ArgumentException>(() => Descriptive.Median([]));
        Assert.Throws<ArgumentException>(() => Descriptive.Quantile([], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Descriptive.Quantile([1], 1.5));
        Assert.Throws<ArgumentException>(() => Descriptive.Min([]));
        Assert.Throws<ArgumentException>(() => Descriptive.Max([]));
    }
}
