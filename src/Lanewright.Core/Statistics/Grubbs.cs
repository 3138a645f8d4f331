namespace Lanewright.Core.Statistics;

/// <summary>
/// Grubbs' test for one outlier among values that are otherwise normal with one variance. Source: NIST/SEMATECH
/// e-Handbook of Statistical Methods, 1.3.5.17.1.
/// </summary>
public static class Grubbs
{
    /// <summary>The largest distance from the mean in standard deviations (divisor n - 1), and where it is.</summary>
    /// <returns>G, from 0 to <see cref="LargestPossible"/>; 0 and index -1 when all values are equal.</returns>
    /// <exception cref="ArgumentException">There are fewer than three values.</exception>
    public static (double G, int Index) Statistic(ReadOnlySpan<double> values)
    {
        if (values.Length < 3)
            throw new ArgumentException("Grubbs' test needs at least three values.", nameof(values));
        var mean = Descriptive.Mean(values);
        var index = 0;
        for (var i = 1; i < values.Length; i++)
        {
            if (Math.Abs(values[i] - mean) > Math.Abs(values[index] - mean))
                index = i;
        }

        var deviation = Descriptive.StandardDeviation(values);
        // Equal values can differ from their rounded mean in the last place; that is no scatter.
        if (values.IndexOfAnyExcept(values[0]) < 0)
            return (0, -1);
        return (Math.Abs(values[index] - mean) / deviation, index);
    }

    /// <summary>
    /// The value that G exceeds with probability <paramref name="alpha"/> when there is no outlier:
    /// (n - 1)/sqrt(n) sqrt(t^2/(n - 2 + t^2)) with t the upper alpha/(2 n) point (two-sided) or alpha/n point
    /// (one-sided) of Student's t with n - 2 degrees of freedom.
    /// </summary>
    /// <param name="count">n, at least 3.</param>
    /// <param name="alpha">Significance level, above 0 and below 1.</param>
    /// <param name="twoSided">True when an outlier on either side is looked for; false when only the largest, or only
    /// the smallest, value was in question before the values were seen.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double CriticalValue(int count, double alpha, bool twoSided)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        if (!(alpha > 0 && alpha < 1))
            throw new ArgumentOutOfRangeException(nameof(alpha), alpha, "Must be between 0 and 1.");
        var t = StudentT.Quantile(alpha / (twoSided ? 2 * count : count), count - 2);
        return LargestPossible(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }

    /// <summary>
    /// (n - 1)/sqrt(n), which G of n values can never exceed. With n = 3 it is 1.1547 while the 5 % critical value is
    /// 1.1543, so that the test has hardly any power there.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 3.</exception>
    public static double LargestPossible(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        return (count - 1) / Math.Sqrt(count);
    }

    /// <summary>The two-sided test of the value farthest from the mean.</summary>
    /// <param name="values">The values, at least three.</param>
    /// <param name="alpha">Significance level, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than three values, or alpha is out of range.</exception>
    public static GrubbsVerdict Test(ReadOnlySpan<double> values, double alpha)
    {
        var (g, index) = Statistic(values);
        return new GrubbsVerdict(g, index, CriticalValue(values.Length, alpha, twoSided: true), alpha);
    }
}

/// <summary>The outcome of Grubbs' two-sided test.</summary>
/// <param name="G">The largest distance from the mean in standard deviations.</param>
/// <param name="Index">Where that value is, counted from 0; -1 when all values are equal.</param>
/// <param name="CriticalValue">What G exceeds with probability alpha when there is no outlier.</param>
/// <param name="Alpha">Significance level.</param>
public sealed record GrubbsVerdict(double G, int Index, double CriticalValue, double Alpha)
{
    /// <summary>Whether the value is farther out than chance explains at this level.</summary>
    public bool IsOutlier => G > CriticalValue;
}
