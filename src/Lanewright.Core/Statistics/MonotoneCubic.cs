namespace Lanewright.Core.Statistics;

/// <summary>
/// A smooth curve through points that never fall, which itself never falls: cubic pieces whose slopes at the points are
/// three-point slopes, limited so that no piece turns back (F. N. Fritsch and R. E. Carlson, SIAM Journal on Numerical Analysis
/// 17, 1980, from memory). Two points give a straight line.
/// </summary>
public static class MonotoneCubic
{
    /// <summary>The height of the curve at <paramref name="at"/>.</summary>
    /// <param name="x">Places of the points, rising; at least two.</param>
    /// <param name="y">Heights of the points.</param>
    /// <param name="at">Where, from the first to the last point; outside, the height of the nearer end.</param>
    /// <exception cref="ArgumentException">Fewer than two points, or the spans differ in length.</exception>
    public static double At(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        var k = Piece(x, y, at);
        if (at <= x[0]) return y[0];
        if (at >= x[^1]) return y[^1];
        var width = x[k + 1] - x[k];
        var t = (at - x[k]) / width;
        var rise = (y[k + 1] - y[k]) / width;
        var left = Limited(Slope(x, y, k), rise);
        var right = Limited(Slope(x, y, k + 1), rise);
        // Hermite's form about the straight line: its height plus what the two end slopes bend away from it.
        return y[k] + (t * (y[k + 1] - y[k]))
            + (t * (1 - t) * width * (((1 - t) * (left - rise)) - (t * (right - rise))));
    }

    /// <summary>The height of the straight line between the neighbours of <paramref name="at"/>.</summary>
    public static double Straight(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        var k = Piece(x, y, at);
        var t = Math.Clamp((at - x[k]) / (x[k + 1] - x[k]), 0, 1);
        return y[k] + (t * (y[k + 1] - y[k]));
    }

    /// <summary>The piece that holds <paramref name="at"/>: the number of the point at its left end.</summary>
    public static int Piece(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        if (x.Length < 2 || x.Length != y.Length) throw new ArgumentException("Two points or more, a height for each.", nameof(y));
        var k = 0;
        while (k < x.Length - 2 && at >= x[k + 1]) k++;
        return k;
    }

    // The slope at a point of the parabola through it and its neighbours; at an end, of the first three points.
    private static double Slope(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int i)
    {
        if (x.Length == 2) return (y[1] - y[0]) / (x[1] - x[0]);
        var m = Math.Clamp(i, 1, x.Length - 2);
        double h0 = x[m] - x[m - 1], h1 = x[m + 1] - x[m];
        double s0 = (y[m] - y[m - 1]) / h0, s1 = (y[m + 1] - y[m]) / h1;
        if (i < m) return (((2 * h0) + h1) * s0 / (h0 + h1)) - (h0 * s1 / (h0 + h1));
        if (i > m) return (((2 * h1) + h0) * s1 / (h0 + h1)) - (h1 * s0 / (h0 + h1));
        return s0 * s1 <= 0 ? 0 : ((h1 * s0) + (h0 * s1)) / (h0 + h1);
    }

    // A slope from 0 to three times the piece's own keeps the piece from turning back.
    private static double Limited(double slope, double rise) => rise == 0 ? 0 : Math.Clamp(slope / rise, 0, 3) * rise;
}
