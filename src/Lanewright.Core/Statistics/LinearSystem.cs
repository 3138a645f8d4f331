namespace Lanewright.Core.Statistics;

/// <summary>A system of linear equations, solved by elimination with row pivots (G. H. Golub and C. F. Van Loan, Matrix
/// Computations, 3.4).</summary>
public static class LinearSystem
{
    /// <summary>The x with <c>matrix x = right</c> for every column of <paramref name="right"/>.</summary>
    /// <param name="matrix">Square; left as it is.</param>
    /// <param name="right">As many rows as the matrix; left as it is.</param>
    /// <returns>Null when the matrix is singular to working accuracy.</returns>
    /// <exception cref="ArgumentException">The sizes do not fit.</exception>
    public static double[,]? Solve(double[,] matrix, double[,] right)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentNullException.ThrowIfNull(right);
        var (n, columns) = (matrix.GetLength(0), right.GetLength(1));
        if (matrix.GetLength(1) != n || right.GetLength(0) != n)
            throw new ArgumentException("The matrix must be square and have as many rows as the right-hand side.", nameof(right));
        var (a, x) = ((double[,])matrix.Clone(), (double[,])right.Clone());
        var scale = new double[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++) scale[i] = Math.Max(scale[i], Math.Abs(a[i, j]));
        }

        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
            {
                if (Math.Abs(a[i, k]) * scale[pivot] > Math.Abs(a[pivot, k]) * scale[i]) pivot = i;
            }

            if (!(Math.Abs(a[pivot, k]) > 1e-14 * scale[pivot])) return null;
            if (pivot != k)
            {
                (scale[k], scale[pivot]) = (scale[pivot], scale[k]);
                for (var j = 0; j < n; j++) (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
                for (var j = 0; j < columns; j++) (x[k, j], x[pivot, j]) = (x[pivot, j], x[k, j]);
            }

            for (var i = k + 1; i < n; i++)
            {
                var factor = a[i, k] / a[k, k];
                if (factor == 0) continue;
                for (var j = k + 1; j < n; j++) a[i, j] -= factor * a[k, j];
                for (var j = 0; j < columns; j++) x[i, j] -= factor * x[k, j];
            }
        }

        for (var c = 0; c < columns; c++)
        {
            for (var i = n - 1; i >= 0; i--)
            {
                var sum = x[i, c];
                for (var j = i + 1; j < n; j++) sum -= a[i, j] * x[j, c];
                x[i, c] = sum / a[i, i];
            }
        }

        return x;
    }

    /// <summary>The x with <c>matrix x = right</c>; null when the matrix is singular to working accuracy.</summary>
    public static double[]? Solve(double[,] matrix, ReadOnlySpan<double> right)
    {
        var column = new double[right.Length, 1];
        for (var i = 0; i < right.Length; i++) column[i, 0] = right[i];
        if (Solve(matrix, column) is not { } solved) return null;
        var x = new double[right.Length];
        for (var i = 0; i < x.Length; i++) x[i] = solved[i, 0];
        return x;
    }
}
