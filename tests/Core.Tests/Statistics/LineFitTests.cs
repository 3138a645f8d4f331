using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class LineFitTests
{
    // K. Pearson, Philosophical Magazine 2 (1901), with the weights of D. York, Canadian Journal of Physics 44 (1966).
    private static readonly double[] PearsonX = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
    private static readonly double[] PearsonY = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
    private static readonly double[] WeightX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
    private static readonly double[] WeightY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];

    [Fact]
    public void Ordinary_reaches_the_certified_values_of_Norris()
    {
        var set = NistDataSet.Read("Norris");
        var fit = LineFit.Ordinary(set.X, set.Y);
        Ulps.AssertRelative(1e-11, set.Coefficients[0].Value, fit.Intercept);
        Ulps.AssertRelative(1e-12, set.Coefficients[0].StandardDeviation, fit.InterceptUncertainty);
        Ulps.AssertRelative(1e-13, set.Coefficients[1].Value, fit.Slope);
        Ulps.AssertRelative(1e-12, set.Coefficients[1].StandardDeviation, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-12, set["residual-sd"], fit.ResidualStandardDeviation);
        Ulps.AssertRelative(1e-12, set["residual-ss"], fit.ResidualSumOfSquares);
        Ulps.AssertRelative(1e-14, set["r-squared"], fit.RSquared);
        Ulps.AssertRelative(1e-12, set["f"], Math.Pow(fit.Slope / fit.SlopeUncertainty, 2));
        // Not certified; computed in exact fractions.
        Ulps.AssertRelative(1e-9, -0.7738280821, fit.Correlation);
        Assert.Equal(34, fit.DegreesOfFreedom);
    }

    /// <summary>JCGM 100:2008, H.3: the calibration of a thermometer; its printed values, and more digits recomputed in
    /// exact fractions.</summary>
    [Fact]
    public void Ordinary_repeats_the_calibration_line_of_the_GUM()
    {
        double[] t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
        double[] b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
        var fit = LineFit.Ordinary([.. t.Select(v => v - 20)], b);

        Assert.Equal(-0.1712, fit.Intercept, 5e-5);
        Assert.Equal(0.0029, fit.InterceptUncertainty, 5e-5);
        Assert.Equal(0.00218, fit.Slope, 5e-6);
        Assert.Equal(0.00067, fit.SlopeUncertainty, 5e-6);
        Assert.Equal(-0.930, fit.Correlation, 5e-4);
        Assert.Equal(0.0035, fit.ResidualStandardDeviation, 5e-5);

        Ulps.AssertRelative(1e-11, -0.171203790131, fit.Intercept);
        Ulps.AssertRelative(1e-11, 0.00287759783516, fit.InterceptUncertainty);
        Ulps.AssertRelative(1e-11, 0.00218269773989, fit.Slope);
        Ulps.AssertRelative(1e-11, 0.000667938773228, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-8, -0.930429603, fit.Correlation);
        Ulps.AssertRelative(1e-8, 0.00349756396, fit.ResidualStandardDeviation);
        Ulps.AssertRelative(1e-8, 0.000110096583, fit.ResidualSumOfSquares);

        var at30 = fit.Predict(10);
        Assert.Equal(-0.1494, at30.Value, 5e-5);
        Assert.Equal(0.0041, at30.StandardUncertainty, 5e-5);
        Ulps.AssertRelative(5e-9, -0.149376813, at30.Value);
        Ulps.AssertRelative(2e-7, 0.004138596, at30.StandardUncertainty);
        Assert.Equal(9, at30.DegreesOfFreedom);
    }

    /// <summary>M. G. Natrella, Experimental Statistics (NBS Handbook 91, 1963), 5-4.1: Young's modulus against
    /// temperature.</summary>
    [Fact]
    public void Ordinary_repeats_the_line_of_handbook_91()
    {
        double[] x = [30, .. Enumerable.Range(1, 15).Select(i => 100.0 * i)];
        double[] y = [4642, 4612, 4565, 4513, 4476, 4433, 4389, 4347, 4303, 4251, 4201, 4140, 4100, 4073, 4024, 3999];
        var fit = LineFit.Ordinary(x, y);
        Ulps.AssertRelative(1e-9, -0.4498548241, fit.Slope);
        Ulps.AssertRelative(1e-9, 4654.984596, fit.Intercept);
        Ulps.AssertRelative(1e-7, 2.5649045e-5, fit.SlopeUncertainty * fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-7, 19.879452, fit.InterceptUncertainty * fit.InterceptUncertainty);
        Ulps.AssertRelative(1e-7, 9.2776176, fit.ResidualStandardDeviation);
        Assert.Equal(10.530, Math.Pow(fit.Predict(1200).StandardUncertainty, 2), 5e-4);
        var observation = fit.PredictObservation(750, fit.ResidualStandardDeviation);
        Assert.Equal(91.454, Math.Pow(observation.StandardUncertainty, 2), 5e-4);
    }

    /// <summary>The values of York et al. (2004); the two uncertainties recomputed from that paper's formula. Others
    /// give others: Kalantar (1992) 0.29193 and 0.057617.</summary>
    [Fact]
    public void Errors_in_both_repeats_Pearsons_data_with_Yorks_weights()
    {
        var fit = LineFit.ErrorsInBoth(PearsonX, Uncertainty(WeightX), PearsonY, Uncertainty(WeightY));
        Assert.True(fit.Converged);
        Ulps.AssertRelative(1e-9, 5.479910224, fit.Intercept);
        Ulps.AssertRelative(1e-9, -0.4805334074, fit.Slope);
        Ulps.AssertRelative(2e-6, 0.294971, fit.InterceptUncertainty);
        Ulps.AssertRelative(2e-6, 0.0579850, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-7, 11.866353, fit.ResidualSumOfSquares);
        Ulps.AssertRelative(1e-6, 1.483294, Math.Pow(fit.ResidualStandardDeviation, 2));
    }

    /// <summary>The same data with x as the response and only its weights: GTC, the library of the Measurement
    /// Standards Laboratory of New Zealand, test_fitting.</summary>
    [Fact]
    public void Known_weights_in_y_only()
    {
        var fit = LineFit.Weighted(PearsonY, PearsonX, WeightX);
        Ulps.AssertRelative(1e-7, 9.430161, fit.Intercept);
        Ulps.AssertRelative(1e-6, -1.586221, fit.Slope);
        Ulps.AssertRelative(1e-8, 0.0113846238, fit.InterceptUncertainty * fit.InterceptUncertainty);
        Ulps.AssertRelative(1e-8, 0.000440040861, fit.SlopeUncertainty * fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-8, -0.00221123536, fit.Covariance);
        Assert.Equal(double.PositiveInfinity, fit.DegreesOfFreedom);

        var relative = LineFit.WeightedRelative(PearsonY, PearsonX, WeightX);
        Assert.Equal(fit.Slope, relative.Slope);
        Ulps.AssertRelative(1e-13, fit.SlopeUncertainty * fit.ResidualStandardDeviation, relative.SlopeUncertainty);
        Assert.Equal(8, relative.DegreesOfFreedom);
    }

    [Fact]
    public void Errors_in_both_with_exact_x_is_the_weighted_fit()
    {
        var exact = new double[10];
        var fit = LineFit.ErrorsInBoth(PearsonX, exact, PearsonY, Uncertainty(WeightY));
        var weighted = LineFit.Weighted(PearsonX, PearsonY, WeightY);
        Ulps.AssertRelative(1e-13, weighted.Slope, fit.Slope);
        Ulps.AssertRelative(1e-13, weighted.Intercept, fit.Intercept);
        Ulps.AssertRelative(1e-13, weighted.SlopeUncertainty, fit.SlopeUncertainty);
        Ulps.AssertRelative(1e-13, weighted.InterceptUncertainty, fit.InterceptUncertainty);
        Ulps.AssertRelative(1e-13, weighted.ResidualSumOfSquares, fit.ResidualSumOfSquares);
    }

    /// <summary>With equal uncertainties everywhere this is Deming's line, which has a closed form: P. Glaister,
    /// Mathematical Gazette 85 (2001), from memory.</summary>
    [Fact]
    public void Errors_in_both_with_equal_uncertainties_is_the_closed_form_of_Deming()
    {
        var ones = Enumerable.Repeat(1.0, 10).ToArray();
        var fit = LineFit.ErrorsInBoth(PearsonX, ones, PearsonY, ones);
        double mx = PearsonX.Average(), my = PearsonY.Average();
        var sxx = PearsonX.Sum(x => (x - mx) * (x - mx));
        var syy = PearsonY.Sum(y => (y - my) * (y - my));
        var sxy = PearsonX.Zip(PearsonY, (x, y) => (x - mx) * (y - my)).Sum();
        var slope = (syy - sxx + Math.Sqrt(((syy - sxx) * (syy - sxx)) + (4 * sxy * sxy))) / (2 * sxy);
        Ulps.AssertRelative(1e-12, slope, fit.Slope);
    }

    [Fact]
    public void A_fit_that_does_not_settle_says_so()
    {
        // y exact and level: the weights become infinite as the slope goes to 0.
        var fit = LineFit.ErrorsInBoth([1, 2, 3], [0.1, 0.1, 0.1], [4, 4, 4], [0, 0, 0]);
        Assert.False(fit.Converged);
    }

    [Fact]
    public void A_level_line_with_errors_in_both_settles()
    {
        var fit = LineFit.ErrorsInBoth([1, 2, 3], [0.1, 0.1, 0.1], [4, 4.1, 4], [0.2, 0.2, 0.2]);
        Assert.True(fit.Converged);
        Assert.Equal(0, fit.Slope, 1e-12);
    }

    [Fact]
    public void Ordinary_agrees_with_MathNet_and_turns_with_the_points() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[-20, 80]).Array[3, 15].Sample(
            points =>
            {
                double[] x = [.. points.Select(p => p.Item1)];
                double[] y = [.. points.Select(p => p.Item2)];
                if (x.Max() - x.Min() < 1e-3)
                    return;
                var fit = LineFit.Ordinary(x, y);
                var (a, b) = MathNet.Numerics.Fit.Line(x, y);
                Assert.Equal(a, fit.Intercept, 1e-6 * (1 + Math.Abs(a)));
                Assert.Equal(b, fit.Slope, 1e-6 * (1 + Math.Abs(b)));

                var shifted = LineFit.Ordinary([.. x.Select(v => v + 1000)], y);
                Assert.Equal(fit.Slope, shifted.Slope, 1e-6 * (1 + Math.Abs(b)));
                var here = fit.Predict(3).StandardUncertainty;
                Assert.Equal(here, shifted.Predict(1003).StandardUncertainty, 1e-6 * (1 + here));
                // The pivot form equals the textbook's variances and covariance, as far as their large terms leave digits.
                double[] terms = [Math.Pow(fit.InterceptUncertainty, 2), 6 * fit.Covariance, 9 * Math.Pow(fit.SlopeUncertainty, 2)];
                Assert.Equal(terms.Sum(), here * here, 1e-12 * (1 + terms.Sum(Math.Abs)));
            },
            iter: 1000,
            threads: 1);

    [Fact]
    public void Two_points_give_a_line_without_an_uncertainty()
    {
        var fit = LineFit.Ordinary([1, 3], [5, 9]);
        Assert.Equal(2, fit.Slope);
        Assert.Equal(3, fit.Intercept);
        Assert.True(double.IsNaN(fit.SlopeUncertainty));
        Assert.True(double.IsNaN(fit.Predict(2).StandardUncertainty));
    }

    [Fact]
    public void Points_that_cannot_give_a_line_throw()
    {
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([1], [1]));
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([2, 2, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([1, 2], [1, double.PositiveInfinity]));
        Assert.Throws<ArgumentException>(() => LineFit.Ordinary([1, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => LineFit.Weighted([2, 2], [1, 2], [1, 1]));
        Assert.Throws<ArgumentException>(() => LineFit.Weighted([1, 2], [1, 2], [1, double.NaN]));
        Assert.Throws<ArgumentException>(() => LineFit.ErrorsInBoth([2, 2], [1, 1], [1, 2], [1, 1]));
        Assert.Throws<ArgumentException>(() => LineFit.ErrorsInBoth([1, 2], [1, 0], [1, 2], [1, 0]));
    }

    private static double[] Uncertainty(double[] weights) => [.. weights.Select(w => 1 / Math.Sqrt(w))];
}
