using System.Collections.Immutable;

namespace Lanewright.Core.Statistics;

/// <summary>A polynomial fitted by least squares; immutable.</summary>
public sealed class PolynomialFitResult
{
    // The inverse of the triangle R of the QR decomposition: the covariances are s^2 times it times its transpose.
    private readonly DoubleDouble[,] inverse;

    internal PolynomialFitResult(
        ImmutableArray<double> coefficients, DoubleDouble[,] inverse, int count, double residuals, double total)
    {
        Coefficients = coefficients;
        this.inverse = inverse;
        Count = count;
        ResidualSumOfSquares = residuals;
        RSquared = FitMath.RSquared(residuals, total);
        Uncertainties = [.. Enumerable.Range(0, coefficients.Length).Select(
            i => ResidualStandardDeviation * DoubleDouble.Sqrt(Product(i, i)).ToDouble())];
    }

    /// <summary>What the fit assumed about the errors.</summary>
    public FitAssumption Assumption { get; } = FitAssumption.EqualVariance;

    /// <summary>Number of points.</summary>
    public int Count { get; }

    /// <summary>The degree of the polynomial.</summary>
    public int Degree => Coefficients.Length - 1;

    /// <summary>The coefficients, that of x^0 first.</summary>
    public ImmutableArray<double> Coefficients { get; }

    /// <summary>Their standard uncertainties; NaN when there are no degrees of freedom.</summary>
    public ImmutableArray<double> Uncertainties { get; }

    /// <summary>The points less the coefficients.</summary>
    public int DegreesOfFreedom => Count - Coefficients.Length;

    /// <summary>The least sum of squared residuals.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>The root of the residual sum of squares per degree of freedom, in the units of y; NaN when there are no
    /// degrees of freedom.</summary>
    public double ResidualStandardDeviation => FitMath.Deviation(ResidualSumOfSquares, DegreesOfFreedom);

    /// <summary>1 less the residual over the sum of squares of y about its mean; NaN when all y are equal.</summary>
    public double RSquared { get; }

    /// <summary>The correlation of the coefficients of x^<paramref name="i"/> and x^<paramref name="j"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coefficient.</exception>
    public double Correlation(int i, int j)
    {
        RequireIndex(i);
        RequireIndex(j);
        return (Product(i, j) / DoubleDouble.Sqrt(Product(i, i) * Product(j, j))).ToDouble();
    }

    /// <summary>The height of the polynomial at <paramref name="x"/>, x exact.</summary>
    public FitPrediction Predict(double x)
    {
        double value = 0;
        for (var i = Degree; i >= 0; i--)
            value = (value * x) + Coefficients[i];
        DoubleDouble variance = 0;
        for (var j = 0; j <= Degree; j++)
        {
            DoubleDouble sum = 0;
            for (var i = j; i >= 0; i--)
                sum = (sum * x) + inverse[i, j];
            variance += sum * sum;
        }

        return new FitPrediction(
            value, ResidualStandardDeviation * DoubleDouble.Sqrt(variance).ToDouble(), DegreesOfFreedom);
    }

    private DoubleDouble Product(int i, int j)
    {
        DoubleDouble sum = 0;
        for (var k = Math.Max(i, j); k <= Degree; k++)
            sum += inverse[i, k] * inverse[j, k];
        return sum;
    }

    private void RequireIndex(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(index, Degree);
    }
}
