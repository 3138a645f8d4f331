using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class PolynomialFitTests
{
    [Theory]
    [InlineData("Norris", 1, 1e-12)]
    [InlineData("Pontius", 2, 1e-11)]
    [InlineData("Wampler1", 5, 1e-13)]
    [InlineData("Wampler4", 5, 1e-12)]
    [InlineData("Filip", 10, 1e-9)]
    public void Reaches_the_certified_values_of_NIST(string name, int degree, double tolerance)
    {
        var set = NistDataSet.Read(name);
        var fit = PolynomialFit.Ordinary(set.X, set.Y, degree);
        for (var i = 0; i <= degree; i++)
        {
            Ulps.AssertRelative(tolerance, set.Coefficients[i].Value, fit.Coefficients[i]);
            AssertCertified(set.Coefficients[i].StandardDeviation, fit.Uncertainties[i], tolerance);
        }

        AssertCertified(set["residual-sd"], fit.ResidualStandardDeviation, tolerance);
        AssertCertified(set["residual-ss"], fit.ResidualSumOfSquares, tolerance);
        Ulps.AssertRelative(1e-14, set["r-squared"], fit.RSquared);
        Assert.Equal(set.X.Length - degree - 1, fit.DegreesOfFreedom);

        // Where NIST certifies 0 the arithmetic leaves what 31 digits leave.
        static void AssertCertified(double expected, double actual, double tolerance)
        {
            if (expected == 0)
                Assert.InRange(actual, 0, 1e-12);
            else
                Ulps.AssertRelative(tolerance, expected, actual);
        }
    }

    [Fact]
    public void Degree_one_is_the_line_with_its_correlation_and_predictions()
    {
        var set = NistDataSet.Read("Norris");
        var line = LineFit.Ordinary(set.X, set.Y);
        var fit = PolynomialFit.Ordinary(set.X, set.Y, 1);
        Ulps.AssertRelative(1e-12, line.Correlation, fit.Correlation(0, 1));
        Assert.Equal(1, fit.Correlation(1, 1), 1e-15);
        Ulps.AssertRelative(1e-12, line.Predict(2000).Value, fit.Predict(2000).Value);
        Ulps.AssertRelative(1e-12, line.Predict(2000).StandardUncertainty, fit.Predict(2000).StandardUncertainty);
    }

    [Fact]
    public void Degree_zero_is_the_mean_with_its_standard_uncertainty()
    {
        double[] y = [5.007, 4.994, 5.005, 4.990, 4.999];
        var fit = PolynomialFit.Ordinary([1, 2, 3, 4, 5], y, 0);
        Assert.Equal(Descriptive.Mean(y), fit.Coefficients[0], 1e-15);
        Ulps.AssertRelative(1e-12, Descriptive.StandardDeviation(y) / Math.Sqrt(5), fit.Uncertainties[0]);
    }

    [Fact]
    public void Agrees_with_MathNet()
    {
        var random = new RandomSource(5);
        for (var n = 0; n < 100; n++)
        {
            var x = new double[12];
            var y = new double[12];
            random.FillNormal(x);
            random.FillNormal(y);
            var expected = MathNet.Numerics.Fit.Polynomial(x, y, 3);
            var fit = PolynomialFit.Ordinary(x, y, 3);
            for (var i = 0; i <= 3; i++)
                Assert.Equal(expected[i], fit.Coefficients[i], 1e-8 * (1 + Math.Abs(expected[i])));
        }
    }

    [Fact]
    public void As_many_coefficients_as_points_pass_through_all_of_them()
    {
        var fit = PolynomialFit.Ordinary([0, 1, 2], [1, 3, 9], 2);
        Assert.Equal([1, 0, 2], fit.Coefficients.Select(c => Math.Round(c, 14)));
        Assert.True(double.IsNaN(fit.ResidualStandardDeviation));
        Assert.True(double.IsNaN(fit.Uncertainties[0]));
    }

    [Fact]
    public void Points_that_cannot_give_the_coefficients_throw()
    {
        Assert.Throws<ArgumentException>(() => PolynomialFit.Ordinary([1, 2], [1, 2], 2));
        Assert.Throws<ArgumentException>(() => PolynomialFit.Ordinary([1, 2, 2, 1], [1, 2, 3, 4], 2));
        Assert.Throws<ArgumentException>(() => PolynomialFit.Ordinary([1, 2, double.NaN], [1, 2, 3], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialFit.Ordinary([1, 2], [1, 2], -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialFit.Ordinary([1, 2], [1, 2], 21));
        var fit = PolynomialFit.Ordinary([1, 2, 3], [1, 2, 4], 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => fit.Correlation(0, 2));
    }
}
