using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class OriginFitTests
{
    private static readonly Gen<(double X, double Y)[]> Points =
        Gen.Select(Gen.Double[0.5, 50], Gen.Double[-20, 80]).Array[2, 15];

    [Theory]
    [InlineData("NoInt1")]
    [InlineData("NoInt2")]
    public void Equal_variance_reaches_the_certified_values_of_NIST(string name)
    {
        var set = NistDataSet.Read(name);
        var fit = OriginFit.EqualVariance(set.X, set.Y);
        Ulps.AssertRelative(1e-13, set.Coefficients[0].Value, fit.Slope);
        Ulps.AssertRelative(1e-13, set.Coefficients[0].StandardDeviation, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-13, set["residual-sd"], fit.ResidualStandardDeviation);
        Ulps.AssertRelative(1e-13, set["residual-ss"], fit.ResidualSumOfSquares);
        Ulps.AssertRelative(1e-13, set["r-squared"], fit.RSquared);
        var f = Math.Pow(fit.Slope / fit.SlopeUncertainty, 2);
        Ulps.AssertRelative(1e-13, set["f"], f);
        Assert.Equal(set.X.Length - 1, fit.DegreesOfFreedom);
        Assert.Equal(FitAssumption.EqualVariance, fit.Assumption);
    }

    /// <summary>The centred formula gives 0.5909 for NoInt2; NIST certifies 0.9933.</summary>
    [Fact]
    public void R_squared_without_an_intercept_is_about_zero_not_about_the_mean()
    {
        var set = NistDataSet.Read("NoInt2");
        var fit = OriginFit.EqualVariance(set.X, set.Y);
        var mean = set.Y.Average();
        var centred = 1 - (fit.ResidualSumOfSquares / set.Y.Sum(y => (y - mean) * (y - mean)));
        Assert.Equal(0.5909, centred, 5e-5);
        Assert.Equal(0.993348115299335, fit.RSquared, 1e-14);
    }

    /// <summary>Norris forced through the origin: computed in exact fractions, not certified.</summary>
    [Fact]
    public void Norris_through_the_origin()
    {
        var set = NistDataSet.Read("Norris");
        var fit = OriginFit.EqualVariance(set.X, set.Y);
        Ulps.AssertRelative(1e-12, 1.001742080470, fit.Slope);
        Ulps.AssertRelative(2e-9, 0.000273277624, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-9, 0.888196562, fit.ResidualStandardDeviation);
    }

    /// <summary>By hand, invented points x 1, 2, 4 and y 3, 5, 13: sums of x y 65 and x^2 21; totals 21 and 7; ratios
    /// 3, 2.5 and 3.25.</summary>
    [Fact]
    public void Three_assumptions_give_three_constants_from_the_same_points()
    {
        double[] x = [1, 2, 4];
        double[] y = [3, 5, 13];
        Assert.Equal(65.0 / 21, OriginFit.EqualVariance(x, y).Slope, 1e-14);
        Assert.Equal(3, OriginFit.RatioOfTotals(x, y).Slope, 1e-14);
        Assert.Equal(8.75 / 3, OriginFit.MeanOfRatios(x, y).Slope, 1e-14);

        // Residuals of y = 3 x: 0, -1, 1; weighted squares 0, 1/2, 1/4 over 2 degrees of freedom; sum of x is 7.
        var totals = OriginFit.RatioOfTotals(x, y);
        Assert.Equal(Math.Sqrt(0.375), totals.ResidualStandardDeviation, 1e-14);
        Assert.Equal(Math.Sqrt(0.375 / 7), totals.SlopeUncertainty, 1e-14);
        Assert.Equal(FitAssumption.VarianceProportionalToX, totals.Assumption);
    }

    [Fact]
    public void Mean_of_ratios_is_the_plain_mean_with_its_standard_uncertainty() => Points.Sample(
        points =>
        {
            var (x, y) = Split(points);
            var ratios = y.Zip(x, (y, x) => y / x).ToArray();
            var fit = OriginFit.MeanOfRatios(x, y);
            var deviation = Descriptive.StandardDeviation(ratios);
            Assert.Equal(ratios.Average(), fit.Slope, 1e-9);
            Assert.Equal(deviation, fit.ResidualStandardDeviation, 1e-9);
            Assert.Equal(deviation / Math.Sqrt(x.Length), fit.SlopeUncertainty, 1e-9);
        },
        iter: 1000,
        threads: 1);

    [Fact]
    public void Equal_variance_agrees_with_MathNet() => Points.Sample(
        points =>
        {
            var (x, y) = Split(points);
            Assert.Equal(
                MathNet.Numerics.LinearRegression.SimpleRegression.FitThroughOrigin(x, y),
                OriginFit.EqualVariance(x, y).Slope,
                1e-10);
        },
        iter: 1000,
        threads: 1);

    [Fact]
    public void Weights_of_one_assumption_repeat_that_fit()
    {
        double[] x = [1, 2, 4, 9];
        double[] y = [3, 5, 13, 26];
        var plain = OriginFit.RatioOfTotals(x, y);
        double[] weights = [.. x.Select(v => 10 / v)];
        var relative = OriginFit.WeightedRelative(x, y, weights);
        Assert.Equal(plain.Slope, relative.Slope, 1e-14);
        Assert.Equal(plain.SlopeUncertainty, relative.SlopeUncertainty, 1e-14);
        Assert.Equal(3, relative.DegreesOfFreedom);

        var known = OriginFit.Weighted(x, y, weights);
        Assert.Equal(plain.Slope, known.Slope, 1e-14);
        // Sum of w x^2 is 10 times the sum of x.
        Assert.Equal(1 / Math.Sqrt(160), known.SlopeUncertainty, 1e-14);
        Assert.Equal(double.PositiveInfinity, known.DegreesOfFreedom);
    }

    /// <summary>The criterion itself, by a search that knows nothing of the iteration.</summary>
    [Fact]
    public void Errors_in_both_makes_the_sum_of_squares_least() => Gen.Select(Gen.Int[2, 12], Gen.ULong).Sample(
        (count, seed) =>
        {
            var random = new RandomSource(seed);
            double[] ux = new double[count], uy = new double[count], x = new double[count], y = new double[count];
            for (var i = 0; i < count; i++)
            {
                ux[i] = 0.1 + random.NextDouble();
                uy[i] = 0.1 + random.NextDouble();
                var truth = 5 + (20 * random.NextDouble());
                x[i] = truth + (ux[i] * random.NextNormal());
                y[i] = (1.7 * truth) + (uy[i] * random.NextNormal());
            }

            var fit = OriginFit.ErrorsInBoth(x, ux, y, uy);
            Assert.True(fit.Converged);
            var least = Criterion(fit.Slope);
            Assert.Equal(least, fit.ResidualSumOfSquares, 1e-9 * (1 + least));
            foreach (var step in (double[])[-0.3, -0.01, -0.001, 0.001, 0.01, 0.3])
                Assert.True(Criterion(fit.Slope + (step * fit.SlopeUncertainty)) > least);

            double Criterion(double b)
            {
                double sum = 0;
                for (var i = 0; i < count; i++)
                    sum += Math.Pow(y[i] - (b * x[i]), 2) / ((uy[i] * uy[i]) + (b * b * ux[i] * ux[i]));
                return sum;
            }
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void Errors_in_both_with_exact_x_is_the_weighted_fit_and_with_exact_y_its_mirror()
    {
        double[] x = [1, 2, 4, 9];
        double[] y = [3, 5, 13, 26];
        double[] u = [0.1, 0.2, 0.3, 0.4];
        double[] none = [0, 0, 0, 0];
        var weighted = OriginFit.Weighted(x, y, [.. u.Select(v => 1 / (v * v))]);
        var exactX = OriginFit.ErrorsInBoth(x, none, y, u);
        Ulps.AssertRelative(1e-13, weighted.Slope, exactX.Slope);
        Ulps.AssertRelative(1e-13, weighted.SlopeUncertainty, exactX.SlopeUncertainty);

        var mirror = OriginFit.ErrorsInBoth(y, u, x, none);
        Assert.True(mirror.Converged);
        Ulps.AssertRelative(1e-11, 1 / weighted.Slope, mirror.Slope);
        var relative = weighted.SlopeUncertainty / weighted.Slope;
        Ulps.AssertRelative(1e-11, relative * mirror.Slope, mirror.SlopeUncertainty);
    }

    [Fact]
    public void Errors_in_both_says_when_it_does_not_settle()
    {
        // y exact and no slope at all: no weight can be formed.
        var fit = OriginFit.ErrorsInBoth([1, 2], [0.1, 0.1], [0, 0], [0, 0]);
        Assert.False(fit.Converged);
    }

    [Fact]
    public void Predictions_scale_with_x()
    {
        var fit = OriginFit.EqualVariance([1, 2, 4], [3, 5, 13]);
        var prediction = fit.Predict(-10);
        Assert.Equal(-10 * fit.Slope, prediction.Value);
        Assert.Equal(10 * fit.SlopeUncertainty, prediction.StandardUncertainty);
        Assert.Equal(2, prediction.DegreesOfFreedom);
    }

    [Fact]
    public void One_point_gives_a_slope_without_an_uncertainty()
    {
        var fit = OriginFit.EqualVariance([2], [5]);
        Assert.Equal(2.5, fit.Slope);
        Assert.True(double.IsNaN(fit.SlopeUncertainty));
        Assert.True(double.IsNaN(fit.ResidualStandardDeviation));
        Assert.Equal(0.1, OriginFit.Weighted([2], [5], [25]).SlopeUncertainty, 1e-15);
    }

    [Fact]
    public void Points_that_cannot_give_the_estimate_throw()
    {
        Assert.Throws<ArgumentException>(() => OriginFit.EqualVariance([], []));
        Assert.Throws<ArgumentException>(() => OriginFit.EqualVariance([0, 0], [1, 2]));
        Assert.Throws<ArgumentException>(() => OriginFit.EqualVariance([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => OriginFit.EqualVariance([1, double.NaN], [1, 2]));
        Assert.Throws<ArgumentException>(() => OriginFit.RatioOfTotals([1, 0], [1, 2]));
        Assert.Throws<ArgumentException>(() => OriginFit.RatioOfTotals([1, -1], [1, 2]));
        Assert.Throws<ArgumentException>(() => OriginFit.MeanOfRatios([1, 0], [1, 2]));
        Assert.Throws<ArgumentException>(() => OriginFit.Weighted([1, 2], [1, 2], [1, 0]));
        Assert.Throws<ArgumentException>(() => OriginFit.Weighted([1, 2], [1, 2], [1]));
        Assert.Throws<ArgumentException>(() => OriginFit.ErrorsInBoth([1, 2], [0, 1], [1, 2], [0, 1]));
        Assert.Throws<ArgumentException>(() => OriginFit.ErrorsInBoth([1, 2], [-1, 1], [1, 2], [1, 1]));
        Assert.Throws<ArgumentException>(() => OriginFit.ErrorsInBoth([0, 0], [1, 1], [1, 2], [1, 1]));
    }

    private static (double[] X, double[] Y) Split((double X, double Y)[] points) =>
        ([.. points.Select(p => p.X)], [.. points.Select(p => p.Y)]);
}
