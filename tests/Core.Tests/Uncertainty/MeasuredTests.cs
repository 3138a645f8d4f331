using System.Globalization;
using CsCheck;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

public sealed class MeasuredTests
{
    private static readonly ErrorSource A = ErrorSource.Normal("a", "a");

    [Fact]
    public void First_order_agrees_with_small_steps_of_the_function()
    {
        var x = Measured.Of(7, 1, A);
        (Measured Result, Func<double, double> F)[] cases =
        [
            (x * x, v => v * v),
            (3 / x, v => 3 / v),
            (Measured.Sqrt(x), Math.Sqrt),
            ((x + 1) / (x - 2), v => (v + 1) / (v - 2)),
            (x.Map(Math.Exp(7), Math.Exp(7)), Math.Exp),
        ];
        foreach (var (result, f) in cases)
        {
            Assert.Equal(f(7), result.Value, 1e-12 * f(7));
            var slope = (f(7 + 1e-5) - f(7 - 1e-5)) / 2e-5;
            Assert.Equal(slope, MeasuredGen.Amount(result, A), 1e-8 * Math.Abs(slope));
        }
    }

    [Fact]
    public void Impossible_values_throw()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Exact(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Exact(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Of(1, -1, A));
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Of(1, double.NaN, A));
        Assert.Throws<ArgumentNullException>(() => Measured.Of(1, 1, (ErrorSource)null!));
        Assert.Throws<ArgumentException>(() => Measured.Linear([Measured.Exact(1)], [1, 2]));
        Assert.Throws<DivideByZeroException>(() => Measured.Exact(1) / Measured.Exact(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Sqrt(Measured.Exact(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Measured.Sqrt(Measured.Of(0, 1, A)));
        Assert.Equal(0, Measured.Sqrt(Measured.Exact(0)).Value);
    }

    [Fact]
    public void Relative_uncertainty_of_zero_is_infinite_unless_it_is_exact()
    {
        Assert.Equal(double.PositiveInfinity, Measured.Of(0, 1, A).RelativeUncertainty);
        Assert.Equal(0, Measured.Exact(0).RelativeUncertainty);
        Assert.Equal(0.25, Measured.Of(-4, 1, A).RelativeUncertainty);
    }

    [Fact]
    public void Text_does_not_depend_on_the_culture_of_the_thread()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("1234.5 (u 0.25)", Measured.Of(1234.5, 0.25, A).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Sources_are_their_identity()
    {
        var same = ErrorSource.Rectangular("a", "other");
        var other = ErrorSource.Normal("b", "a");
        Assert.True(A == same && A.Equals((object)same) && A.GetHashCode() == same.GetHashCode());
        Assert.True(A != other && !A.Equals(null) && A.CompareTo(null) > 0);
        Assert.True(A < other ^ A > other);
        Assert.True(A <= same && A >= same);
        Assert.Equal("a", A.ToString());
        Assert.Throws<ArgumentException>(() => ErrorSource.Normal("", "a"));
        Assert.Throws<ArgumentException>(() => ErrorSource.Normal("a", ""));
        Assert.Throws<ArgumentOutOfRangeException>(() => ErrorSource.Normal("a", "a", 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ErrorSource.Normal("a", "a", double.NaN));
    }

    [Fact]
    public void A_source_read_back_is_the_one_written()
    {
        var source = ErrorSource.Of("id", "family", ErrorShape.Arcsine, 7, "readings");
        Assert.Equal(
            ("id", "family", ErrorShape.Arcsine, 7.0, "readings"),
            (source.Id, source.Family, source.Shape, source.DegreesOfFreedom, source.Ensemble));
    }

    [Fact]
    public void Correlated_values_have_the_covariances_given() =>
        MeasuredGen.Number(-2, 2).Array[16].Sample(
            cells =>
            {
                // Any B B' is a covariance matrix; two equal rows now and then make it singular.
                const int N = 4;
                if (cells[0] > 1) Array.Copy(cells, 0, cells, 4, 4);
                var covariance = new double[N, N];
                for (var i = 0; i < N; i++)
                {
                    for (var j = 0; j < N; j++)
                    {
                        for (var k = 0; k < N; k++)
                            covariance[i, j] += cells[(4 * i) + k] * cells[(4 * j) + k];
                    }
                }

                var x = Measured.Correlated("x", "x", [1, 2, 3, 4], covariance, 5);
                for (var i = 0; i < N; i++)
                {
                    Assert.Equal(i + 1, x[i].Value);
                    for (var j = 0; j < N; j++)
                        Assert.Equal(covariance[i, j], Measured.Covariance(x[i], x[j]), 1e-11);
                }

                var mix = Measured.Linear(x, [1, -2, 3, 0.5]);
                if (mix.Variance > 0)
                    Assert.Equal(5, WelchSatterthwaite.EffectiveDegreesOfFreedom(mix), 1e-9);
            },
            iter: 2000, threads: 1);

    [Fact]
    public void Matrices_that_are_no_covariances_throw()
    {
        static void Try(double[,] c) =>
            Assert.Throws<ArgumentException>(() => Measured.Correlated("x", "x", [1, 2], c));
        Try(new double[,] { { 1 } });
        Try(new double[,] { { 1, 0.5 }, { 0.4, 1 } });
        Try(new double[,] { { 1, 2 }, { 2, 1 } });
        Try(new double[,] { { -1, 0 }, { 0, 1 } });
        Try(new double[,] { { 0, 1 }, { 1, 1 } });
        Try(new double[,] { { double.NaN, 0 }, { 0, 1 } });
    }
}
