using System.Collections.Immutable;

namespace Lanewright.Core.Statistics;

/// <summary>Polynomials y = b0 + b1 x + ... + bm x^m fitted by least squares.</summary>
public static class PolynomialFit
{
    /// <summary>The highest degree accepted.</summary>
    public const int HighestDegree = 20;

    /// <summary>
    /// Every y equally uncertain, by an amount the residuals give. Householder's QR decomposition (G. H. Golub,
    /// Numerische Mathematik 7 (1965)) in arithmetic of 31 digits, so that the powers of x as they stand do no harm:
    /// even NIST's Filip set of degree 10 keeps nine digits.
    /// </summary>
    /// <param name="x">Exact positions, at least degree + 1 different ones.</param>
    /// <param name="y">As many values.</param>
    /// <param name="degree">0 (the mean) to <see cref="HighestDegree"/>.</param>
    /// <exception cref="ArgumentException">Fewer different x than coefficients, a value that is not finite, or a degree
    /// out of range.</exception>
    public static PolynomialFitResult Ordinary(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(degree);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(degree, HighestDegree);
        var columns = degree + 1;
        FitMath.RequirePoints(x, y, columns);
        if (CountDifferent(x) < columns)
            throw new ArgumentException("There are fewer different x than coefficients.", nameof(x));

        var factors = Factorise(x, y, columns);
        var inverse = InverseOfTriangle(factors, columns);
        var coefficients = new DoubleDouble[columns];
        for (var i = 0; i < columns; i++)
        {
            for (var j = i; j < columns; j++)
                coefficients[i] += inverse[i, j] * factors[j, columns];
        }

        DoubleDouble residuals = 0, total = 0;
        DoubleDouble mean = 0;
        foreach (var value in y)
            mean += value;
        mean /= y.Length;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - Evaluate(coefficients, x[i]);
            residuals += residual * residual;
            total += (y[i] - mean) * (y[i] - mean);
        }

        return new PolynomialFitResult(
            [.. coefficients.Select(c => c.ToDouble())], inverse, x.Length, residuals.ToDouble(), total.ToDouble());
    }

    internal static DoubleDouble Evaluate(ReadOnlySpan<DoubleDouble> coefficients, double x)
    {
        DoubleDouble sum = 0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
            sum = (sum * x) + coefficients[i];
        return sum;
    }

    private static int CountDifferent(ReadOnlySpan<double> x)
    {
        var sorted = x.ToArray();
        Array.Sort(sorted);
        var count = 1;
        for (var i = 1; i < sorted.Length; i++)
            count += sorted[i] != sorted[i - 1] ? 1 : 0;
        return count;
    }

    /// <summary>The matrix of powers with y as its last column, turned by reflections: R above the diagonal, and in the
    /// last column the turned y.</summary>
    private static DoubleDouble[,] Factorise(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int columns)
    {
        var a = new DoubleDouble[x.Length, columns + 1];
        for (var i = 0; i < x.Length; i++)
        {
            DoubleDouble power = 1;
            for (var j = 0; j < columns; j++)
            {
                a[i, j] = power;
                power *= x[i];
            }

            a[i, columns] = y[i];
        }

        for (var k = 0; k < columns; k++)
            Reflect(a, k);
        return a;
    }

    /// <summary>Reflects column k onto its diagonal element, and the columns after it alike.</summary>
    private static void Reflect(DoubleDouble[,] a, int k)
    {
        var rows = a.GetLength(0);
        DoubleDouble squares = 0;
        for (var i = k; i < rows; i++)
            squares += a[i, k] * a[i, k];
        var norm = DoubleDouble.Sqrt(squares);
        // Away from the diagonal element, so that nothing cancels.
        var diagonal = a[k, k].High > 0 ? -norm : norm;
        var first = a[k, k] - diagonal;
        var half = -(diagonal * first);
        for (var j = k + 1; j < a.GetLength(1) && half.High > 0; j++)
        {
            var product = first * a[k, j];
            for (var i = k + 1; i < rows; i++)
                product += a[i, k] * a[i, j];
            product /= half;
            a[k, j] -= product * first;
            for (var i = k + 1; i < rows; i++)
                a[i, j] -= product * a[i, k];
        }

        a[k, k] = diagonal;
    }

    private static DoubleDouble[,] InverseOfTriangle(DoubleDouble[,] r, int size)
    {
        var inverse = new DoubleDouble[size, size];
        for (var j = 0; j < size; j++)
        {
            inverse[j, j] = 1 / r[j, j];
            for (var i = j - 1; i >= 0; i--)
            {
                DoubleDouble sum = 0;
                for (var k = i + 1; k <= j; k++)
                    sum += r[i, k] * inverse[k, j];
                inverse[i, j] = -(sum / r[i, i]);
            }
        }

        return inverse;
    }
}
