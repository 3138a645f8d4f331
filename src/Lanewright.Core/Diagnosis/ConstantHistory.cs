using Lanewright.Core.Statistics;

namespace Lanewright.Core.Diagnosis;

/// <summary>
/// What earlier constants say of the one to expect now: a level that drifts from season to season, with or without a steady
/// loss, followed through the earlier tests (a Kalman filter; docs/method/diagnosis.md).
/// </summary>
internal sealed class ConstantHistory
{
    /// <summary>Standard uncertainty of a constant that is only known to be in the controller (common practice, no source).</summary>
    private const double KeyedInOnly = 0.02;

    private const double DaysInYear = 365.25;

    private readonly List<(double Year, double Value, double Uncertainty)> points = [];
    private readonly double now;

    private ConstantHistory(double now) => this.now = now;

    /// <summary>Years from the first to the last earlier test.</summary>
    internal double Span => points.Count < 2 ? 0 : points[^1].Year - points[0].Year;

    internal int Count => points.Count;

    /// <summary>The history of logarithms of mass for each count.</summary>
    /// <param name="earlier">Day and value as mass for each count, SI.</param>
    /// <param name="day">Day of the sheet; a year after the last test when nobody said.</param>
    internal static ConstantHistory Of(IEnumerable<(DateOnly Day, double Value, double Uncertainty)> earlier, DateOnly? day)
    {
        var ordered = earlier.OrderBy(e => e.Day).ToList();
        var now = day is { } d ? d.DayNumber / DaysInYear
            : ordered.Count == 0 ? 0 : (ordered[^1].Day.DayNumber / DaysInYear) + 1;
        var history = new ConstantHistory(now);
        foreach (var (at, value, uncertainty) in ordered)
            if (at.DayNumber / DaysInYear <= now) history.points.Add((at.DayNumber / DaysInYear, Elementary.Log(value), uncertainty));
        return history;
    }

    /// <summary>Mean and variance of the logarithm to expect now, and the logarithm of the chance of the earlier values.</summary>
    /// <param name="slope">Loss of the logarithm in a year.</param>
    /// <param name="keyed">Logarithm of the constant in the controller, for when nothing earlier is known.</param>
    internal (double Mean, double Variance, double LogEvidence) Expect(double slope, double? keyed)
    {
        if (points.Count == 0)
            return keyed is { } k ? (k, KeyedInOnly * KeyedInOnly, 0) : (0, 1, 0);
        var (year, mean, variance) = (points[0].Year, points[0].Value, points[0].Uncertainty * points[0].Uncertainty);
        var evidence = 0.0;
        foreach (var point in points.Skip(1))
        {
            Predict(point.Year);
            var total = variance + (point.Uncertainty * point.Uncertainty);
            var off = point.Value - mean;
            evidence -= 0.5 * (Elementary.Log(total) + (off * off / total));
            var gain = variance / total;
            mean += gain * off;
            variance *= 1 - gain;
        }

        Predict(now);
        return (mean, variance, evidence);

        void Predict(double to)
        {
            mean -= slope * (to - year);
            variance += EffectRanges.SeasonDrift * EffectRanges.SeasonDrift * (to - year);
            year = to;
        }
    }
}
