using Lanewright.Core.Season;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Season;

/// <summary>The worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods, and published run lengths.</summary>
public sealed class ControlChartTests
{
    /// <summary>Section 6.3.2.4.</summary>
    [Fact]
    public void The_handbooks_weighted_means()
    {
        double[] x =
        [
            52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1,
        ];
        double[] printed =
        [
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73,
            51.23, 51.94, 51.99,
        ];
        var points = ControlCharts.Ewma(x, [.. x.Select(_ => 2.0539)], 50, 0.3, 3, settled: true);
        for (var i = 0; i < x.Length; i++) Assert.Equal(printed[i], points[i].Mean, 0.00501);
        // The lower limit is printed as 47.4115, a unit in the last place off its own formula.
        Assert.Equal(52.5884, points[^1].UpperLimit, 0.0001);
        Assert.Equal(47.4115, points[^1].LowerLimit, 0.00011);
        Assert.All(points, point => Assert.Equal(ChartSignal.None, point.Signal));
    }

    /// <summary>Section 6.3.2.3; the signal is at observation 14.</summary>
    [Fact]
    public void The_handbooks_cumulative_sums()
    {
        double[] x =
        [
            324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325,
            327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
        ];
        double[] high = [0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445, 16.0025, 19.035];
        double[] low = [0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.715, 0.1725, 0.255, 0.3125, 0, 0, 0, 0, 0, 0, 0, 0, 0];
        var points = ControlCharts.Cusum(x, 325, 0.3175, 4.1959);
        for (var i = 0; i < x.Length; i++)
        {
            Assert.Equal(high[i], points[i].High, 6);
            Assert.Equal(low[i], points[i].Low, 6);
            Assert.Equal(i >= 13 ? ChartSignal.High : ChartSignal.None, points[i].Signal);
        }
    }

    /// <summary>J. M. Lucas and R. B. Crosier, Technometrics 24 (1982), table 1, as the manual of the R package spc quotes it.</summary>
    [Theory]
    [InlineData(0.00, 168, 0.5)]
    [InlineData(0.25, 74.2, 0.05)]
    [InlineData(0.50, 26.6, 0.05)]
    [InlineData(0.75, 13.3, 0.05)]
    [InlineData(1.00, 8.38, 0.006)]
    [InlineData(1.50, 4.75, 0.006)]
    [InlineData(2.00, 3.34, 0.006)]
    [InlineData(2.50, 2.62, 0.006)]
    [InlineData(3.00, 2.19, 0.006)]
    [InlineData(4.00, 1.71, 0.006)]
    [InlineData(5.00, 1.31, 0.006)]
    public void Published_run_lengths_of_cumulative_sums(double shift, double published, double within) =>
        Assert.Equal(published, RunLengths.OfCusum(0.5, 4, shift), within);

    /// <summary>L. C. Vance, Journal of Quality Technology 18 (1986), table 1, by the same manual: one sum, k = 0, h = 10;
    /// good to five digits.</summary>
    [Theory]
    [InlineData(-0.25, 2071.51)]
    [InlineData(-0.125, 400.28)]
    [InlineData(0, 124.66)]
    [InlineData(0.125, 59.30)]
    [InlineData(0.25, 36.71)]
    [InlineData(0.5, 20.37)]
    [InlineData(0.75, 14.06)]
    [InlineData(1, 10.75)]
    public void Published_run_lengths_of_one_sum(double shift, double published) =>
        Assert.Equal(published, RunLengths.OfUpperCusum(0, 10, shift), Math.Max(0.011, 4e-5 * published));

    /// <summary>J. M. Lucas and M. S. Saccucci, Technometrics 32 (1990), table 3, by the same manual.</summary>
    [Theory]
    [InlineData(0.00, 500, 500)]
    [InlineData(0.25, 255, 76.7)]
    [InlineData(0.50, 88.8, 29.3)]
    [InlineData(0.75, 35.9, 17.6)]
    [InlineData(1.00, 17.5, 12.6)]
    [InlineData(1.50, 6.53, 8.07)]
    [InlineData(2.00, 3.63, 5.99)]
    [InlineData(2.50, 2.50, 4.80)]
    [InlineData(3.00, 1.93, 4.03)]
    [InlineData(4.00, 1.34, 3.11)]
    public void Published_run_lengths_of_weighted_means(double shift, double half, double small)
    {
        // They print three digits; their Markov chain is good to about one in the last.
        Assert.Equal(half, RunLengths.OfEwma(0.5, 3.071, shift), half * 0.006);
        Assert.Equal(small, RunLengths.OfEwma(0.03, 2.437, shift), small * 0.006);
    }

    /// <summary>The value S. V. Crowder's method gives in a published manual: 11.154267016.</summary>
    [Fact]
    public void A_run_length_to_ten_digits() => Assert.Equal(11.154267016, RunLengths.OfEwma(0.25, 3, 1), 8);

    [Fact]
    public void Simulated_charts_run_as_long_as_computed()
    {
        var random = new RandomSource(73);
        double cusum = 0, ewma = 0;
        const int runs = 4000;
        var (values, ones) = (new double[400], new double[400]);
        Array.Fill(ones, 1);
        for (var run = 0; run < runs; run++)
        {
            random.FillNormal(values);
            for (var i = 0; i < values.Length; i++) values[i] += 0.75;
            cusum += 1 + First(ControlCharts.Cusum(values, 0, 0.5, 4).Select(p => p.Signal));
            ewma += 1 + First(ControlCharts.Ewma(values, ones, 0, 0.2, 2.86, settled: true).Select(p => p.Signal));
        }

        // Four standard errors; the deviation of a run length is below its mean.
        var (c, e) = (RunLengths.OfCusum(0.5, 4, 0.75), RunLengths.OfEwma(0.2, 2.86, 0.75));
        Assert.Equal(c, cusum / runs, 4 * c / Math.Sqrt(runs));
        Assert.Equal(e, ewma / runs, 4 * e / Math.Sqrt(runs));
    }

    private static int First(IEnumerable<ChartSignal> signals) => signals.TakeWhile(signal => signal == ChartSignal.None).Count();
}
