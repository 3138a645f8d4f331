namespace Lanewright.Core.Uncertainty;

/// <content>Values that were estimated together.</content>
public readonly partial struct Measured
{
    /// <summary>
    /// Values estimated together and so correlated: the coefficients of a fit, means of readings taken in pairs. The
    /// covariance matrix C is taken apart into C = L L' (Cholesky with pivots); source k moves value i by L[i, k]. The
    /// sources form one ensemble, as their spreads come from the same residuals.
    /// </summary>
    /// <param name="id">Identity; the sources are <c>id:1</c>, <c>id:2</c>, ... and the ensemble is <c>id</c>.</param>
    /// <param name="family">What the budget calls them.</param>
    /// <param name="values">The estimates, SI.</param>
    /// <param name="covariance">Their covariances: symmetric, no eigenvalue below 0.</param>
    /// <param name="degreesOfFreedom">Behind the covariances; infinite when they are taken as known.</param>
    /// <exception cref="ArgumentException">The matrix has another size than the values, is not symmetric, or has a
    /// negative eigenvalue beyond rounding.</exception>
    public static Measured[] Correlated(
        string id, string family, ReadOnlySpan<double> values, double[,] covariance,
        double degreesOfFreedom = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(covariance);
        var n = values.Length;
        if (covariance.GetLength(0) != n || covariance.GetLength(1) != n)
            throw new ArgumentException("One row and one column for each value.", nameof(covariance));
        var factor = Factor(covariance, n);
        var sources = new ErrorSource[n];
        for (var k = 0; k < n; k++)
        {
            sources[k] = ErrorSource.Normal(
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{id}:{k + 1}"), family,
                degreesOfFreedom, id);
        }

        var results = new Measured[n];
        var row = new Contribution[n];
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < n; k++)
                row[k] = new(sources[k], factor[i, k]);
            results[i] = Of(values[i], row);
        }

        return results;
    }

    // Cholesky's factor of the correlations with the largest remaining variance taken first, so that values which others
    // fix almost or altogether cost no accuracy (N. J. Higham, Accuracy and Stability of Numerical Algorithms, 10.3).
    private static double[,] Factor(double[,] covariance, int n)
    {
        const double Nothing = 1e-14;
        const double Rounding = 1e-9;
        var left = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var size = Math.Sqrt(covariance[i, i]) * Math.Sqrt(covariance[j, j]);
                left[i, j] = size == 0 ? covariance[i, j] : covariance[i, j] / size;
            }
        }

        var factor = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            var largest = 0;
            for (var i = 1; i < n; i++)
            {
                if (left[i, i] > left[largest, largest]) largest = i;
            }

            if (!(left[largest, largest] > Nothing)) break;
            var root = Math.Sqrt(left[largest, largest]);
            for (var i = 0; i < n; i++)
                factor[i, k] = left[i, largest] / root;
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                    left[i, j] -= factor[i, k] * factor[j, k];
            }
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                if (!(Math.Abs(left[i, j]) <= Rounding))
                    throw new ArgumentException(
                        "Not a covariance matrix: not symmetric, or a variance would be negative.", nameof(covariance));
                factor[i, j] *= Math.Sqrt(covariance[i, i]);
            }
        }

        return factor;
    }
}
