using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Folding;

namespace Lanewright.Office;

/// <summary>A spreader's drift as the office shows it.</summary>
/// <param name="Spreader">The spreader.</param>
/// <param name="Drift">What its looks say.</param>
/// <param name="Tolerance">The yard's tolerance.</param>
/// <param name="Cost">What waiting a season costs, in the yard's currency; null when mass or price is not known.</param>
internal sealed record DriftOf(OfficeSpreader Spreader, SpreaderDrift Drift, double Tolerance, double? Cost);

/// <summary>Makes looks at a spreader out of its tests in the records.</summary>
internal static class OfficeDrift
{
    /// <summary>How many days back checks are looked for.</summary>
    internal const int DaysBack = 800;

    /// <summary>The chance outside the tolerance from which a spreader is due for its drift.</summary>
    private const double Sure = 0.975;

    /// <summary>Delivered by said, less 1, when the looks after a calibration show it outside the tolerance; null otherwise.</summary>
    internal static double? Outside(
        LatestTest? calibration, IEnumerable<CheckFound> checks, SeasonLooks season, string number, double tolerance, DateOnly today)
    {
        if (Looks(calibration, checks, season, number, today) is not { Count: > 1 } looks) return null;
        var rules = new DriftRules { Tolerance = tolerance };
        var now = WearFilter.Of(looks, rules, today);
        return now.ChanceOutside(tolerance, 0) >= Sure ? Elementary.Expm1(now.Level) : null;
    }

    /// <summary>The calibration and all looks after it, of the records and of the season's files; null without a calibration. A constant
    /// that the season states is what its looks are held against; a later drop test of the records ends them.</summary>
    internal static List<DriftLook>? Looks(LatestTest? latest, IEnumerable<CheckFound> checks, SeasonLooks season, string number, DateOnly today)
    {
        var stored = latest is null ? null : Stored(latest, checks, today);
        var own = season.Looks[number];
        if (season.Calibrations.GetValueOrDefault(number) is not { } stated || stated.Day > today)
        {
            if (stored is null) return null;
            return InOrder([.. stored, .. own.Where(look => look.IsAfter(stored[0]) && look.Day <= today)]);
        }

        if (stored is not null && stored[0].Day > stated.Day) return InOrder(stored);
        return InOrder([stated, .. own.Where(look => look.IsAfter(stated) && look.Day <= today), .. (stored ?? []).Skip(1).Where(look => look.IsAfter(stated))]);

        // The calibration stays first of its day.
        static List<DriftLook> InOrder(List<DriftLook> looks) => [.. looks.OrderBy(look => look.Day)];
    }

    /// <summary>The calibration, first, and the checks after it by what is stored of them; null without a day of the calibration.</summary>
    internal static List<DriftLook>? Stored(LatestTest calibration, IEnumerable<CheckFound> checks, DateOnly today)
    {
        if (OfficeText.ReadDay(calibration.Date) is not { } start || start > today || calibration.Results.Count == 0) return null;
        var z = NormalDistribution.Quantile(0.975);
        var u = calibration.Results.Max(result => result.RelativeExpanded) / z;
        var looks = new List<DriftLook>
        {
            new(start, DriftLookKind.Calibration, calibration.Id, Measured.Of(0, u, ErrorSource.Normal($"test:{calibration.Id}", "drop test"))),
        };
        foreach (var check in checks)
        {
            if (OfficeText.ReadDay(check.Date) is not { } day || day < start || day > today) continue;
            looks.Add(new(day, DriftLookKind.Check, check.Test, Measured.Of(
                Elementary.Log(check.Share), check.ShareExpanded / z / check.Share, ErrorSource.Normal($"test:{check.Test}", "check"))));
        }

        return looks;
    }

    /// <summary>The same looks computed again from their sheets, so that what tests share through their scale is carried.</summary>
    internal static async Task<List<DriftLook>> ComputedAsync(EntryStore store, IReadOnlyList<DriftLook> stored, CancellationToken stop)
    {
        var looks = new List<DriftLook>(stored.Count);
        foreach (var look in stored)
        {
            // Looks of the season's files are no tests of the records, and carry their sources already.
            if (await store.FoldAsync(look.Name, stop) is not { } fold)
            {
                looks.Add(look);
                continue;
            }

            var title = fold.Text("title") is { Length: > 0 } typed ? typed : OfficeText.Day(look.Day);
            var share = TestComputation.Sheet(fold) is { IsUsable: true, Value: { } sheet }
                && SheetAnalysis.Analyse(sheet).Results is [var first, ..] ? ShareOf(look, first) : null;
            looks.Add(look with { Name = title, LogShare = share ?? look.LogShare });
        }

        return looks;
    }

    // Sources of a test's runs are named within it only; the scale's have one name everywhere.
    private static Measured? ShareOf(DriftLook look, TestResult result)
    {
        var of = look.Kind is DriftLookKind.Calibration ? result.Value : result.Delivery?.Share ?? result.Value;
        if (!(of.Value > 0)) return null;
        // A constant in counts for a mass is too low where the mass was weighed too high.
        var isCounts = result.Dimension is Dimension.PulsesPerMass;
        var sign = look.Kind is DriftLookKind.Calibration && isCounts ? -1 : 1;
        var keyed = result.KeyIn is { } key ? sign * Elementary.Log(of.Value / key.Value) : 0;
        return Measured.Of(
            look.Kind is DriftLookKind.Calibration ? keyed : Elementary.Log(of.Value),
            [
                .. of.Contributions.ToArray().Select(c => new Contribution(
                    c.Source.Id.StartsWith("scale:", StringComparison.Ordinal)
                        ? c.Source
                        : ErrorSource.Of($"test:{look.Name}:{c.Source.Id}", c.Source.Family, c.Source.Shape, c.Source.DegreesOfFreedom, null),
                    sign * c.Amount / of.Value)),
            ]);
    }
}
