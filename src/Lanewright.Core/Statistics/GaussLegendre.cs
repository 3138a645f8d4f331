namespace Lanewright.Core.Statistics;

/// <summary>
/// The points and weights of Gauss's rule for an integral over an interval (Abramowitz and Stegun 25.4.29 and 25.4.30); exact for
/// polynomials up to the degree 2n - 1. The points are found by Newton's method on the Legendre polynomial.
/// </summary>
public sealed class GaussLegendre
{
    private readonly double[] points;
    private readonly double[] weights;

    private GaussLegendre(double[] points, double[] weights) => (this.points, this.weights) = (points, weights);

    /// <summary>The points, upwards.</summary>
    public ReadOnlySpan<double> Points => points;

    /// <summary>The weight of each point; they add up to the length of the interval.</summary>
    public ReadOnlySpan<double> Weights => weights;

    /// <summary>The rule of <paramref name="count"/> points, 1 to 500, over the interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range, or the interval is empty or infinite.</exception>
    public static GaussLegendre Of(int count, double low, double high)
    {
        if (count is < 1 or > 500) throw new ArgumentOutOfRangeException(nameof(count), count, "Must be 1 to 500.");
        if (!(high > low) || double.IsInfinity(high - low))
            throw new ArgumentOutOfRangeException(nameof(high), high, "Must be above the lower end.");
        var (points, weights) = (new double[count], new double[count]);
        double middle = (low + high) / 2, half = (high - low) / 2;
        for (var i = 0; i < (count + 1) / 2; i++)
        {
            // Tricomi's start: within 1e-3 of the root for every count.
            var z = Elementary.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            var slope = 0.0;
            for (var step = 0; step < 60; step++)
            {
                var (value, before) = (1.0, 0.0);
                for (var k = 1; k <= count; k++)
                    (value, before) = (((((2 * k) - 1) * z * value) - ((k - 1) * before)) / k, value);
                slope = count * ((z * value) - before) / ((z * z) - 1);
                var move = value / slope;
                z -= move;
                if (Math.Abs(move) < 1e-15) break;
            }

            var weight = 2 / ((1 - (z * z)) * slope * slope);
            (points[i], points[count - 1 - i]) = (middle - (half * z), middle + (half * z));
            weights[i] = weights[count - 1 - i] = half * weight;
        }

        return new(points, weights);
    }
}
