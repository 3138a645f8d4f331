namespace Lanewright.Core.Statistics;

/// <summary>
/// Statistics that describe one set of values. An empty set is a programming mistake and throws; a NaN among the values
/// makes the result NaN.
/// </summary>
public static class Descriptive
{
    /// <summary>The sum, compensated: right to the last bits whatever the order and sizes of the values.</summary>
    /// <remarks>A. Neumaier, Zeitschrift für Angewandte Mathematik und Mechanik 54 (1974).</remarks>
    public static double Sum(ReadOnlySpan<double> values)
    {
        double sum = 0, lost = 0;
        foreach (var value in values)
        {
            sum = DoubleDouble.TwoSum(sum, value, out var error);
            lost += error;
        }

        return double.IsFinite(sum) ? sum + lost : sum;
    }

    /// <summary>The arithmetic mean.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Mean(ReadOnlySpan<double> values)
    {
        Require.NotEmpty(values);
        return Sum(values) / values.Length;
    }

    /// <summary>
    /// The experimental standard deviation (JCGM 100:2008, 4.2.2), divisor n - 1, in two passes with the correction
    /// for the rounding of the mean (T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983)).
    /// </summary>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    public static double StandardDeviation(ReadOnlySpan<double> values)
    {
        if (values.Length < 2)
            throw new ArgumentException("A standard deviation needs at least two values.", nameof(values));
        var mean = Mean(values);
        double squares = 0, squaresLost = 0, deviations = 0;
        foreach (var value in values)
        {
            var deviation = value - mean;
            deviations += deviation;
            squares = DoubleDouble.TwoSum(squares, deviation * deviation, out var error);
            squaresLost += error;
        }

        var variance = (squares + squaresLost - (deviations * deviations / values.Length)) / (values.Length - 1);
        return Math.Sqrt(variance > 0 || double.IsNaN(variance) ? variance : 0);
    }

    /// <summary>The median: the middle value, or the mean of the two middle values.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Median(ReadOnlySpan<double> values)
    {
        Require.NotEmpty(values);
        Span<double> sorted = values.Length <= 256 ? stackalloc double[values.Length] : new double[values.Length];
        values.CopyTo(sorted);
        sorted.Sort();
        return Quantile(sorted, 0.5);
    }

    /// <summary>
    /// The quantile of values sorted upwards: linear between the order statistics, the k-th of n (counted from 0) being
    /// the quantile of k/(n - 1). This is definition 7 of R. J. Hyndman and Y. Fan, The American Statistician 50
    /// (1996).
    /// </summary>
    /// <param name="sorted">Values in ascending order; the order is not checked.</param>
    /// <param name="p">The fraction of the values below, 0 to 1.</param>
    /// <exception cref="ArgumentException">There is no value, or <paramref name="p"/> is not between 0 and
    /// 1.</exception>
    public static double Quantile(ReadOnlySpan<double> sorted, double p)
    {
        Require.NotEmpty(sorted);
        Require.Probability(p);
        // A sort puts NaN first.
        if (double.IsNaN(sorted[0]))
            return double.NaN;
        var place = p * (sorted.Length - 1);
        var index = (int)Math.Floor(place);
        if (index == sorted.Length - 1)
            return sorted[index];
        var fraction = place - index;
        // The plain form when nothing lies between, so that infinite or equal neighbours stay what they are.
        return fraction == 0 || sorted[index] == sorted[index + 1]
            ? sorted[index]
            : ((1 - fraction) * sorted[index]) + (fraction * sorted[index + 1]);
    }

    /// <summary>The least value.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Min(ReadOnlySpan<double> values)
    {
        Require.NotEmpty(values);
        var least = values[0];
        foreach (var value in values)
            least = Math.Min(least, value);
        return least;
    }

    /// <summary>The greatest value.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Max(ReadOnlySpan<double> values)
    {
        Require.NotEmpty(values);
        var greatest = values[0];
        foreach (var value in values)
            greatest = Math.Max(greatest, value);
        return greatest;
    }
}
