namespace Lanewright.Core.Season;

/// <summary>Which limit a point of a chart passed.</summary>
public enum ChartSignal
{
    /// <summary>None.</summary>
    None,

    /// <summary>The upper one.</summary>
    High,

    /// <summary>The lower one.</summary>
    Low,
}

/// <summary>A point of a CUSUM chart.</summary>
/// <param name="High">The upper sum, 0 or more.</param>
/// <param name="Low">The lower sum, 0 or more.</param>
/// <param name="Signal">Which of them has passed the limit.</param>
public readonly record struct CusumPoint(double High, double Low, ChartSignal Signal);

/// <summary>A point of an EWMA chart.</summary>
/// <param name="Mean">The weighted mean.</param>
/// <param name="LowerLimit">Lower limit.</param>
/// <param name="UpperLimit">Upper limit.</param>
/// <param name="Signal">Which limit the mean is beyond.</param>
public readonly record struct EwmaPoint(double Mean, double LowerLimit, double UpperLimit, ChartSignal Signal);

/// <summary>
/// The two charts that find a small lasting change (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3 and 6.3.2.4;
/// docs/method/drift.md).
/// </summary>
public static class ControlCharts
{
    /// <summary>
    /// Cumulative sums: S = max(0, S + (x - target) - k) upwards and the mirror image downwards, each from 0.
    /// </summary>
    /// <param name="values">In order of time.</param>
    /// <param name="target">Where they should lie.</param>
    /// <param name="allowance">k, half the change to find; 0 or more, in the values' unit.</param>
    /// <param name="limit">h, more than 0, in the values' unit; a sum above it is a signal.</param>
    public static IReadOnlyList<CusumPoint> Cusum(ReadOnlySpan<double> values, double target, double allowance, double limit)
    {
        if (!(allowance >= 0)) throw new ArgumentOutOfRangeException(nameof(allowance), allowance, "Must be 0 or more.");
        if (!(limit > 0)) throw new ArgumentOutOfRangeException(nameof(limit), limit, "Must be more than 0.");
        var points = new CusumPoint[values.Length];
        double high = 0, low = 0;
        for (var i = 0; i < points.Length; i++)
        {
            high = Math.Max(0, high + (values[i] - target - allowance));
            low = Math.Max(0, low + (target - values[i] - allowance));
            points[i] = new(high, low, high > limit ? ChartSignal.High : low > limit ? ChartSignal.Low : ChartSignal.None);
        }

        return points;
    }

    /// <summary>
    /// Exponentially weighted means z = w x + (1 - w) z from the target on, with limits of <paramref name="width"/> standard
    /// deviations of z. The deviation follows from those of the values: v = w^2 s^2 + (1 - w)^2 v from 0 on.
    /// </summary>
    /// <param name="values">In order of time.</param>
    /// <param name="deviations">Standard deviation of each value while nothing has changed; more than 0.</param>
    /// <param name="target">Where they should lie.</param>
    /// <param name="weight">w, more than 0 and at most 1.</param>
    /// <param name="width">Limits at this many deviations; more than 0.</param>
    /// <param name="settled">Limits as they are after many values, for values of equal deviation, as the handbook draws them.</param>
    public static IReadOnlyList<EwmaPoint> Ewma(
        ReadOnlySpan<double> values, ReadOnlySpan<double> deviations, double target, double weight, double width, bool settled = false)
    {
        if (values.Length != deviations.Length) throw new ArgumentException("One deviation for each value.", nameof(deviations));
        if (!(weight > 0 && weight <= 1)) throw new ArgumentOutOfRangeException(nameof(weight), weight, "Must be more than 0 and at most 1.");
        if (!(width > 0)) throw new ArgumentOutOfRangeException(nameof(width), width, "Must be more than 0.");
        var points = new EwmaPoint[values.Length];
        double mean = target, variance = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var own = deviations[i] * deviations[i];
            mean = (weight * values[i]) + ((1 - weight) * mean);
            variance = settled ? own * weight / (2 - weight) : (weight * weight * own) + ((1 - weight) * (1 - weight) * variance);
            var reach = width * Math.Sqrt(variance);
            points[i] = new(
                mean, target - reach, target + reach,
                mean > target + reach ? ChartSignal.High : mean < target - reach ? ChartSignal.Low : ChartSignal.None);
        }

        return points;
    }
}
