namespace Lanewright.Core.Uncertainty;

/// <content>Values that were estimated together.</content>
public readonly partial struct Measured
{
    /// <summary>
    /// Values estimated together and so correlated: the coefficients of a fit, means of readings taken in pairs. The
    /// covariance matrix C is taken apart into C = L L' (Cholesky); source k moves value i by L[i, k]. The sources form
    /// one ensemble, as their spreads come from the same residuals.
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
        var factor = LowerFactor(covariance, n);
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

    // A value that the ones before it fix already leaves nothing for its own source: a column of zeros.
    private static double[,] LowerFactor(double[,] covariance, int n)
    {
        const double Rounding = 1e-12;
        var factor = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            var left = Left(k, k);
            if (!(left >= -Rounding * covariance[k, k]))
                throw new ArgumentException("Not a covariance matrix: a variance would be negative.", nameof(covariance));
            var fixedAlready = left <= Rounding * covariance[k, k];
            factor[k, k] = fixedAlready ? 0 : Math.Sqrt(left);
            for (var i = k + 1; i < n; i++)
            {
                var size = Math.Sqrt(covariance[i, i] * covariance[k, k]);
                if (!(Math.Abs(covariance[i, k] - covariance[k, i]) <= Rounding * size))
                    throw new ArgumentException("Not a covariance matrix: not symmetric.", nameof(covariance));
                // What is left of the covariance may then be no more than rounding makes it, sqrt(1e-12) of the size.
                if (fixedAlready && !(Math.Abs(Left(i, k)) <= 2e-6 * size))
                    throw new ArgumentException("Not a covariance matrix: a correlation above 1.", nameof(covariance));
                factor[i, k] = fixedAlready ? 0 : Left(i, k) / factor[k, k];
            }
        }

        return factor;

        double Left(int i, int k)
        {
            var sum = covariance[i, k];
            for (var m = 0; m < k; m++)
                sum -= factor[i, m] * factor[k, m];
            return sum;
        }
    }
}
