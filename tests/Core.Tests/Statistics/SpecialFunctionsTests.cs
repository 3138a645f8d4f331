using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

/// <summary>Expected values: computed in 100 decimal digits from the defining series and continued fractions, unless
/// another source is named.</summary>
public sealed class SpecialFunctionsTests
{
    [Theory]
    [InlineData(1e-10, 1.1283791670955126e-10, 0.99999999988716204)]
    [InlineData(0.25, 0.27632639016823696, 0.7236736098317631)]
    [InlineData(0.49, 0.51166826118852304, 0.4883317388114769)]
    [InlineData(0.5, 0.52049987781304652, 0.47950012218695348)]
    [InlineData(0.75, 0.71115563365351508, 0.28884436634648486)]
    [InlineData(1, 0.84270079294971489, 0.15729920705028513)]
    [InlineData(2, 0.99532226501895271, 0.0046777349810472662)]
    [InlineData(3, 0.99997790950300136, 2.2090496998585441e-05)]
    [InlineData(5, 0.99999999999846256, 1.5374597944280349e-12)]
    [InlineData(10, 1, 2.0884875837625449e-45)]
    [InlineData(26, 1, 5.6631924088561432e-296)]
    public void Error_function_and_its_complement(double x, double erf, double erfc)
    {
        Ulps.AssertRelative(1e-15, erf, SpecialFunctions.Erf(x));
        Ulps.AssertRelative(1e-15, erfc, SpecialFunctions.Erfc(x));
        Ulps.AssertRelative(1e-15, -erf, SpecialFunctions.Erf(-x));
        Ulps.AssertRelative(1e-15, 1 + erf, SpecialFunctions.Erfc(-x));
    }

    [Fact]
    public void Error_function_at_the_ends()
    {
        Assert.Equal(1, SpecialFunctions.Erf(double.PositiveInfinity));
        Assert.Equal(-1, SpecialFunctions.Erf(double.NegativeInfinity));
        Assert.Equal(0, SpecialFunctions.Erfc(double.PositiveInfinity));
        Assert.Equal(2, SpecialFunctions.Erfc(double.NegativeInfinity));
        Assert.True(double.IsNaN(SpecialFunctions.Erf(double.NaN)));
        Assert.True(double.IsNaN(SpecialFunctions.Erfc(double.NaN)));
    }

    [Theory]
    [InlineData(1e-8, 18.420680738180209)]
    [InlineData(0.1, 2.252712651734206)]
    [InlineData(0.5, 0.57236494292470008)]
    [InlineData(0.99, 0.0058548067647097813)]
    [InlineData(1, 0)]
    [InlineData(1.5, -0.12078223763524522)]
    [InlineData(1.99, -0.0041955290887916684)]
    [InlineData(2.5, 0.28468287047291918)]
    [InlineData(3.7, 1.4280723266653881)]
    [InlineData(9.9, 12.57717990421988)]
    [InlineData(10, 12.801827480081469)]
    [InlineData(25.5, 56.389167643719944)]
    [InlineData(1000.5, 5908.6741758486778)]
    [InlineData(1e10, 220258509288.81058)]
    public void Logarithm_of_the_gamma_function(double x, double expected) =>
        Assert.Equal(expected, SpecialFunctions.LogGamma(x), 1e-14 * Math.Max(1, Math.Abs(expected)));

    [Theory]
    [InlineData(0.5, 0.5, 0.3, 0.36901011956554536)]
    [InlineData(0.5, 0.5, 0.5, 0.5)]
    [InlineData(2, 3, 0.4, 0.52480000000000004)]
    [InlineData(2, 3, 0.9, 0.99629999999999996)]
    [InlineData(10, 0.1, 0.99, 0.17551032909330117)]
    [InlineData(0.01, 5, 0.001, 0.95279588000707727)]
    [InlineData(100, 200, 0.3, 0.10884306564490975)]
    [InlineData(100, 200, 0.36, 0.83658979762588037)]
    [InlineData(5000, 3000, 0.62, 0.17773206624208332)]
    [InlineData(5000, 3000, 0.64, 0.99732250793526089)]
    [InlineData(1e4, 1e4, 0.5, 0.5)]
    public void Incomplete_beta_function(double a, double b, double x, double expected) =>
        Ulps.AssertRelative(1e-12, expected, SpecialFunctions.RegularizedIncompleteBeta(a, b, x));

    [Fact]
    public void Incomplete_beta_function_agrees_with_MathNet_over_the_plane()
    {
        var random = new Random(21);
        for (var i = 0; i < 5000; i++)
        {
            var a = Math.Exp((random.NextDouble() * 10) - 3);
            var b = Math.Exp((random.NextDouble() * 10) - 3);
            var x = random.NextDouble();
            var expected = MathNet.Numerics.SpecialFunctions.BetaRegularized(a, b, x);
            Assert.Equal(expected, SpecialFunctions.RegularizedIncompleteBeta(a, b, x), 1e-10);
        }
    }

    [Theory]
    [InlineData(0, 1, 0.5)]
    [InlineData(1, double.NaN, 0.5)]
    [InlineData(1, 1, 1.5)]
    [InlineData(1, 1, double.NaN)]
    public void Incomplete_beta_function_refuses_what_it_is_not_defined_for(double a, double b, double x) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.RegularizedIncompleteBeta(a, b, x));
}
