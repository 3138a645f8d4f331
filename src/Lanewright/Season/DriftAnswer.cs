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
            var looks = bySpreader[spreader.Key].Where(check => check.At >= last.From).Select(Look).Concat(more[spreader.Key]);
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
            (culture.Say("spreader"), false), (culture.Say("depot"), false), (culture.Say("looks"), true), (culture.Say("off"), true), (culture.Say("95 % interval"), false),
            (culture.Say("alarm"), false), (culture.Say($"leaves ± {PercentText.Write(Rules.Tolerance, culture)}"), false));
        foreach (var (depot, spreader, drift) in Spreaders)
        {
            table.Add(
                Excerpt.Of(spreader), Excerpt.Of(depot), drift.Points.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), Signed(drift.Share),
                culture.Say($"{Signed(drift.Low)} to {Signed(drift.High)}"), drift.Alarm is { } alarm ? OfficeText.Day(alarm.Look.Day) : culture.Say("none"),
                DriftWords.Leaving(drift, culture));
        }

        foreach (var line in table.Lines("")) yield return line;
        if (Spreaders.FirstOrDefault(one => one.Drift.Promise is not null) is not { Drift.Promise: { } promise } known) yield break;
        yield return "";
        var (alarms, change, looks) = (PercentText.Write(Rules.FalseAlarm, culture), PercentText.Write(Rules.Change, culture), QuantityText.WriteNumber(promise.MeanToFind, culture, NumberForm.Decimals(1)));
        yield return culture.Say($"A chart gives a false alarm in at most {alarms} of seasons.") + " " + (promise.MostToFind is { } most
            ? culture.Say($"A change of {change} is found, for {Excerpt.Of(known.Spreader)}, after {looks} looks on average, within {most} with 95 % chance.")
            : culture.Say($"A change of {change} is found, for {Excerpt.Of(known.Spreader)}, after {looks} looks on average."));

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
    internal static string Name(DriftLook look, TextCulture? culture = null) => look.Kind switch
    {
        DriftLookKind.Tickets => Of(culture).Say($"tickets, {look.Name}"),
        DriftLookKind.Sisters => Of(culture).Say($"sisters, {look.Name}"),
        _ => look.Name,
    };

    /// <summary>When a spreader leaves the tolerance.</summary>
    internal static string Leaving(SpreaderDrift drift, TextCulture? culture = null)
    {
        var words = Of(culture);
        return (drift.LeavesEarliest, drift.Leaves, drift.LeavesLatest) switch
        {
            (null, _, _) => words.Say("not within two years"),
            ({ }, { }, { } last) when last == drift.Now.Day => words.Say("is outside"),
            ({ } first, { } likely, _) => words.Say($"{OfficeText.Day(likely)} ({From(first)} to {Until(drift.LeavesLatest)})"),
            ({ } first, null, _) => words.Say($"{From(first)} or later"),
        };

        string From(DateOnly day) => day <= drift.Now.Day ? words.Say("now") : OfficeText.Day(day);

        string Until(DateOnly? day) => day is null ? words.Say("beyond two years") : OfficeText.Day(day);
    }

    private static TextCulture Of(TextCulture? culture) => culture ?? OfficeText.Culture;
}
