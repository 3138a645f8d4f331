using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Print;

namespace Lanewright.Season;

/// <summary>The drift of the spreaders of a season: those with an alarm first, then by the size of the estimated error.</summary>
internal sealed record DriftAnswer(IReadOnlyList<(string Depot, string Spreader, SpreaderDrift Drift)> Spreaders, DriftRules Rules)
{
    internal static DriftAnswer Of(
        IReadOnlyList<StatedConstant> constants, IReadOnlyList<StatedCheck> checks, DriftRules rules, DateOnly today,
        IEnumerable<(string Spreader, DriftLook Look)>? others = null)
    {
        var bySpreader = checks.ToLookup(check => check.Spreader, StringComparer.Ordinal);
        var more = (others ?? []).ToLookup(one => one.Spreader, one => one.Look, StringComparer.Ordinal);
        var all = new List<(string, string, SpreaderDrift Drift)>();
        foreach (var spreader in constants.Where(constant => Day(constant.From) <= today).GroupBy(constant => constant.Spreader, StringComparer.Ordinal))
        {
            var last = spreader.OrderBy(constant => constant.From).Last();
            var looks = bySpreader[spreader.Key].Where(check => check.At >= last.From).Select(Look)
                .Concat(more[spreader.Key].Where(look => look.Day > Day(last.From)));
            all.Add((last.Depot, spreader.Key, SpreaderDrift.Of(Calibration(last), looks, rules, today)));
        }

        return new(
            [
                .. all.OrderByDescending(one => one.Drift.Alarm is not null).ThenByDescending(one => Math.Abs(one.Drift.Share))
                    .ThenBy(one => one.Item2, NaturalOrder.Instance),
            ],
            rules);
    }

    /// <summary>A stated constant as the look that others are held against.</summary>
    internal static DriftLook Calibration(StatedConstant constant) => new(Day(constant.From), DriftLookKind.Calibration, constant.Id, constant.Relative.Map(0, 1));

    /// <summary>A check as a look.</summary>
    internal static DriftLook Look(StatedCheck check) => new(Day(check.At), DriftLookKind.Check, check.Name, check.LogShare);

    internal IEnumerable<string> Text(TextCulture culture)
    {
        var table = new TextTable(
            ("spreader", false), ("depot", false), ("looks", true), ("off", true), ("95 % interval", false), ("alarm", false),
            ("leaves ± " + PercentText.Write(Rules.Tolerance, culture), false));
        foreach (var (depot, spreader, drift) in Spreaders)
        {
            table.Add(
                Excerpt.Of(spreader), Excerpt.Of(depot), drift.Points.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), Signed(drift.Share),
                $"{Signed(drift.Low)} to {Signed(drift.High)}", drift.Alarm is { } alarm ? OfficeText.Day(alarm.Look.Day) : "none",
                DriftWords.Leaving(drift));
        }

        foreach (var line in table.Lines("")) yield return line;
        if (Spreaders.FirstOrDefault(one => one.Drift.Promise is not null) is not { Drift.Promise: { } promise }) yield break;
        yield return "";
        yield return $"A chart gives a false alarm in at most {PercentText.Write(Rules.FalseAlarm, culture)} of seasons. "
            + $"A change of {PercentText.Write(Rules.Change, culture)} is found, for {Excerpt.Of(Spreaders.First(one => one.Drift.Promise is not null).Spreader)}, "
            + $"after {QuantityText.WriteNumber(promise.MeanToFind, culture, NumberForm.Decimals(1))} looks on average"
            + (promise.MostToFind is { } most ? $", within {most} with 95 % chance." : ".");

        string Signed(double share) => (share >= 0 ? "+" : "") + PercentText.Write(share, culture);
    }

    internal SeasonPaper Paper()
    {
        var paper = new SeasonPaper(
            "spreader", "depot", "calibration", "looks", "checks", "tickets", "sisters", "share_off", "low", "high", "wear_per_day", "alarm", "alarm_direction", "limit",
            "false_alarm", "mean_looks_to_find", "looks_to_find_95", "leaves_earliest", "leaves", "leaves_latest");
        foreach (var (depot, spreader, drift) in Spreaders)
        {
            paper.Add(
                spreader, depot, drift.Calibration.Name, drift.Points.Count, Of(DriftLookKind.Check), Of(DriftLookKind.Tickets), Of(DriftLookKind.Sisters), drift.Share, drift.Low, drift.High, drift.Now.Wear, drift.Alarm?.Look.Day,
                drift.Alarm is { } alarm ? (alarm.Sums.Signal is ChartSignal.High ? "more" : "less") : null, drift.Promise?.Limit,
                drift.Promise?.FalseAlarm, drift.Promise?.MeanToFind, drift.Promise?.MostToFind, drift.LeavesEarliest, drift.Leaves, drift.LeavesLatest);

            int Of(DriftLookKind kind) => drift.Points.Count(point => point.Look.Kind == kind);
        }

        return paper;
    }

    private static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.UtcDateTime);
}

/// <summary>Sentences about drift, for the terminal and the office.</summary>
internal static class DriftWords
{
    /// <summary>A share off, with its sign, as the office writes it.</summary>
    internal static string Signed(double share) => (share > 0 ? "+" : "") + OfficeText.Percent(share);

    /// <summary>What a look is, for a person.</summary>
    internal static string Name(DriftLook look) => look.Kind switch
    {
        DriftLookKind.Tickets => $"tickets, {look.Name}",
        DriftLookKind.Sisters => $"sisters, {look.Name}",
        _ => look.Name,
    };

    /// <summary>When a spreader leaves the tolerance.</summary>
    internal static string Leaving(SpreaderDrift drift) => (drift.LeavesEarliest, drift.Leaves, drift.LeavesLatest) switch
    {
        (null, _, _) => "not within two years",
        ({ } first, { } likely, { } last) when last == drift.Now.Day => "is outside",
        ({ } first, { } likely, _) => $"{OfficeText.Day(likely)} ({From(drift, first)} to {Until(drift.LeavesLatest)})",
        ({ } first, null, _) => $"{From(drift, first)} or later",
    };

    private static string From(SpreaderDrift drift, DateOnly day) => day <= drift.Now.Day ? "now" : OfficeText.Day(day);

    private static string Until(DateOnly? day) => day is null ? "beyond two years" : OfficeText.Day(day);
}
