namespace Lanewright.Core.Register;

/// <summary>Why a spreader is due.</summary>
public enum DueReason
{
    /// <summary>Its last check found it outside the tolerance.</summary>
    FailedCheck,

    /// <summary>It has no adopted calibration.</summary>
    NeverCalibrated,

    /// <summary>Its checks show that it has drifted out of the tolerance.</summary>
    Drifted,

    /// <summary>Something was changed since the last one.</summary>
    Changed,

    /// <summary>The last one is from an earlier season.</summary>
    NewSeason,
}

/// <summary>What is known of one spreader's calibration.</summary>
/// <param name="Spreader">The spreader.</param>
/// <param name="Calibrated">Day of the last adopted calibration; null for none.</param>
/// <param name="FailedShare">Share delivered in a failed check after it; null when none failed.</param>
/// <param name="Changes">Changes, with their days.</param>
/// <param name="PricePerTonne">Price of its material for 1,000 kg; null when not known.</param>
public sealed record CalibrationState(
    RegisterSpreader Spreader, DateOnly? Calibrated, double? FailedShare,
    IReadOnlyList<(SpreaderChange Change, DateOnly Day)> Changes, double? PricePerTonne)
{
    /// <summary>Delivered by said, less 1, when all checks together show it outside the tolerance; null otherwise.</summary>
    public double? DriftedShare { get; init; }
}

/// <summary>A spreader that is due.</summary>
/// <param name="Spreader">The spreader.</param>
/// <param name="Reason">Why.</param>
/// <param name="Change">Which change, when that is the reason.</param>
/// <param name="Since">Since when; null when it never was calibrated.</param>
/// <param name="Share">Size of error to reckon with, as a share of what it puts down.</param>
/// <param name="Mass">What that is in a season, kg; null when its season's mass is not known.</param>
/// <param name="Cost">What that costs, in the yard's currency; null when mass or price is not known.</param>
public sealed record DueItem(
    RegisterSpreader Spreader, DueReason Reason, SpreaderChange? Change, DateOnly? Since, double Share, double? Mass,
    double? Cost);

/// <summary>
/// Which spreaders are due, and why, the dearest to wait for first. The sizes of error to reckon with are ours (common
/// practice, no source): 15 % without any calibration, 8 % after a change, 4 % in a new season; a failed check brings its
/// own, and so does drift. They order the list; they are no measurement.
/// </summary>
public static class DueList
{
    private const double NeverShare = 0.15;
    private const double ChangedShare = 0.08;
    private const double SeasonShare = 0.04;

    /// <summary>The list for a day.</summary>
    public static IReadOnlyList<DueItem> Of(IEnumerable<CalibrationState> states, YardRules rules, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(states);
        ArgumentNullException.ThrowIfNull(rules);
        var due = new List<DueItem>();
        foreach (var state in states)
        {
            if (!state.Spreader.Retired && Due(state, rules, today) is { } item) due.Add(item);
        }

        // Where nobody said what a season or a ton is, the size of the error alone orders, after those with a cost.
        return
        [
            .. due.OrderByDescending(d => d.Cost ?? -1).ThenByDescending(d => d.Mass ?? -1)
                .ThenByDescending(d => d.Share).ThenBy(d => d.Spreader.Spreader.Id, StringComparer.Ordinal),
        ];
    }

    private static DueItem? Due(CalibrationState state, YardRules rules, DateOnly today)
    {
        if (state.FailedShare is { } failed)
            return Item(DueReason.FailedCheck, null, state.Calibrated, Math.Abs(failed - 1));
        if (state.Calibrated is not { } last)
            return Item(DueReason.NeverCalibrated, null, null, NeverShare);
        if (state.DriftedShare is { } drifted)
            return Item(DueReason.Drifted, null, last, Math.Abs(drifted));
        foreach (var (change, day) in state.Changes)
        {
            if (day > last && day <= today && rules.RecalibrateAfter.Contains(change))
                return Item(DueReason.Changed, change, day, ChangedShare);
        }

        var season = rules.SeasonStart(today);
        return last < season ? Item(DueReason.NewSeason, null, season, SeasonShare) : null;

        DueItem Item(DueReason reason, SpreaderChange? change, DateOnly? since, double share)
        {
            var mass = state.Spreader.SeasonMass is { } m ? m.Si * share : (double?)null;
            return new(
                state.Spreader, reason, change, since, share, mass, mass / 1000 * state.PricePerTonne);
        }
    }
}
