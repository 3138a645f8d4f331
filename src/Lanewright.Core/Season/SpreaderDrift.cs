using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>A look on the charts.</summary>
/// <param name="Look">The look.</param>
/// <param name="Off">Logarithm of its share off what the calibration found; what both have in common has cancelled.</param>
/// <param name="Own">Own standard deviation of that.</param>
/// <param name="Sums">The point of the CUSUM chart.</param>
/// <param name="Mean">The point of the EWMA chart.</param>
public sealed record DriftPoint(DriftLook Look, double Off, double Own, CusumPoint Sums, EwmaPoint Mean);

/// <summary>What a spreader's looks say of its drift. Shares are of delivered by said, less 1.</summary>
/// <param name="Calibration">The calibration that the looks are held against.</param>
/// <param name="Points">The looks after it, in order of their days.</param>
/// <param name="Promise">What the chart promises; null without looks.</param>
/// <param name="Alarm">The first look with an alarm; null when there is none.</param>
/// <param name="Now">Level and wear on the day asked for.</param>
/// <param name="Share">Estimate of delivered by said, less 1, on that day.</param>
/// <param name="Low">Lower end of its 95 % interval.</param>
/// <param name="High">Upper end of its 95 % interval.</param>
/// <param name="LeavesEarliest">Day from which on it lies outside the tolerance with 2.5 % chance; null for not within the
/// horizon, as in the two that follow.</param>
/// <param name="Leaves">With 50 % chance.</param>
/// <param name="LeavesLatest">With 97.5 % chance.</param>
public sealed record SpreaderDrift(
    DriftLook Calibration, IReadOnlyList<DriftPoint> Points, DriftPromise? Promise, DriftPoint? Alarm, WearState Now, double Share,
    double Low, double High, DateOnly? LeavesEarliest, DateOnly? Leaves, DateOnly? LeavesLatest)
{
    /// <summary>How far ahead a date is looked for, in days: two years.</summary>
    public const int Horizon = 730;

    /// <summary>Weight of the newest look in the EWMA chart, and its limits in deviations: with weight 0.2 these limits give an
    /// average run of 370 looks without change (by <see cref="RunLengths"/>).</summary>
    public const double Weight = 0.2;

    /// <summary>The limits that go with <see cref="Weight"/>.</summary>
    public const double Width = 2.86;

    /// <summary>The drift of a spreader.</summary>
    /// <param name="calibration">The drop test whose constant is in the controller.</param>
    /// <param name="looks">Looks in any order; those from before the calibration are left out.</param>
    /// <param name="rules">The yard's.</param>
    /// <param name="today">The day to judge for.</param>
    public static SpreaderDrift Of(DriftLook calibration, IEnumerable<DriftLook> looks, DriftRules rules, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        ArgumentNullException.ThrowIfNull(looks);
        ArgumentNullException.ThrowIfNull(rules);
        var ordered = looks.Where(look => look.IsAfter(calibration) && look.Day <= today)
            .OrderBy(look => look.Day).ThenBy(look => look.Name, StringComparer.Ordinal).ToList();
        var points = new List<DriftPoint>(ordered.Count);
        DriftPromise? promise = null;
        if (ordered.Count > 0)
        {
            var off = ordered.Select(look => look.LogShare - calibration.LogShare).ToList();
            var errors = LookErrors.Of(off, rules.DayToDay, calibration.LogShare);
            promise = DriftPromise.For(errors.Own, errors.Common(), rules);
            double[] values = [.. off.Select(x => x.Value)];
            var sums = DriftChart.Of(values, errors.Own, rules.Change, promise.Value.Limit);
            var means = ControlCharts.Ewma(values, errors.Own, 0, Weight, Width);
            for (var i = 0; i < ordered.Count; i++) points.Add(new(ordered[i], values[i], errors.Own[i], sums[i], means[i]));
        }

        var now = WearFilter.Of([calibration, .. ordered], rules, today);
        var reach = NormalDistribution.Quantile(0.975) * now.LevelUncertainty;
        return new(
            calibration, points, promise, points.FirstOrDefault(point => point.Sums.Signal != ChartSignal.None), now,
            Elementary.Expm1(now.Level), Elementary.Expm1(now.Level - reach), Elementary.Expm1(now.Level + reach),
            now.Leaves(rules.Tolerance, 0.025, Horizon), now.Leaves(rules.Tolerance, 0.5, Horizon),
            now.Leaves(rules.Tolerance, 0.975, Horizon));
    }
}
