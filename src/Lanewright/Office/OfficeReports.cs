using Lanewright.Core.Register;
using Lanewright.Documents;
using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>Makes the office's reports from the records.</summary>
internal sealed class OfficeReports(OfficeData data)
{
    private static readonly ReportSheetCell None = "";

    /// <summary>The reports there are: word and title.</summary>
    internal static IReadOnlyList<(string Word, string Title)> All { get; } =
    [
        ("fleet", "Fleet status"), ("due", "Due list"), ("season", "Season's calibrations"), ("before-after", "Before and after by spreader"),
        ("scales", "Use of the scales"),
    ];

    /// <summary>A report; null when there is none of this word.</summary>
    internal async Task<ReportSheet?> MakeAsync(string word, CancellationToken stop)
    {
        var title = All.FirstOrDefault(report => report.Word == word).Title;
        var report = word switch
        {
            "fleet" => Fleet(title, await data.SpreadersAsync(stop)),
            "due" => Due(title, await data.SpreadersAsync(stop)),
            "season" => await SeasonAsync(title, stop),
            "before-after" => await BeforeAfterAsync(title, stop),
            "scales" => await ScalesAsync(title, stop),
            _ => null,
        };
        // A yard that keeps practice beside its own records must not take one for the other.
        return report is not null && await data.Store.AnyInventedAsync(stop)
            ? report with { About = report.About + " The records hold invented data, made up for practice or demonstration." }
            : report;
    }

    private static ReportSheet Fleet(string title, SpreaderState state) => new(
        "fleet", title, $"Every spreader in use on {OfficeText.Day(state.Day)}, with its latest adopted drop test.",
        [
            new("Number"), new("Depot"), new("Body"), new("Metering"), new("Material"), new("Constant"), new("Known to, %", true), new("Calibrated"), new("Due"),
        ],
        [
            .. state.InUse.Select(one => (IReadOnlyList<ReportSheetCell>)
            [
                one.Number, one.Record.Depot, one.Record.Body, one.Record.Spreader.Metering, one.Record.Material,
                one.Result is null ? None : OfficeText.Constant(one.Result), Percent(one.Result?.RelativeExpanded), one.Latest?.Date ?? "",
                one.Due is null ? "" : OfficeText.Because(one.Due),
            ]),
        ]);

    private static ReportSheet Due(string title, SpreaderState state) => new(
        "due", title, $"Spreaders to calibrate on {OfficeText.Day(state.Day)}, the dearest to wait for first. The errors to reckon with are rules of thumb.",
        [new("Number"), new("Depot"), new("Why"), new("Error to reckon with, %", true), new("In a season, t", true), new("Cost of waiting", true)],
        [
            .. state.Due.Select(one => (IReadOnlyList<ReportSheetCell>)
            [
                one.Number, one.Record.Depot, OfficeText.Because(one.Due!), Percent(one.Due!.Share),
                one.Due.Mass is { } mass ? new(OfficeText.Count((int)Math.Round(mass / 1000)), mass / 1000) : None,
                one.Due.Cost is { } cost ? new(OfficeText.Money(cost), cost) : None,
            ]),
        ]);

    private async Task<ReportSheet> SeasonAsync(string title, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        var start = (await data.RulesAsync(stop)).SeasonStart(state.Day);
        var tests = (await data.Store.TestsSinceAsync(start, stop)).ToLookup(test => test.Test.Spreader ?? "", StringComparer.Ordinal);
        var rows = state.InUse.GroupBy(one => one.Record.Depot, StringComparer.Ordinal).OrderBy(depot => depot.Key, NaturalOrder.Instance).Select(depot =>
        {
            var own = depot.SelectMany(one => tests[one.Id]).ToList();
            var checks = own.Where(test => test.Test.Kind == "verification").SelectMany(test => test.Results.Take(1)).ToList();
            var calibrated = depot.Count(one => OfficeText.ReadDay(one.Latest?.Date ?? "") >= start);
            return (IReadOnlyList<ReportSheetCell>)
            [
                depot.Key.Length > 0 ? depot.Key : "no depot", Count(depot.Count()), Count(calibrated), Percent((double)calibrated / depot.Count()),
                Count(depot.Count(one => one.Due is not null)), Count(own.Count),
                Count(checks.Count(check => check.Conformity == "pass")), Count(checks.Count(check => check.Conformity == "fail")),
                Count(checks.Count(check => check.Conformity == "cannot-tell")),
            ];
        });
        return new(
            "season", title, $"By depot, since the season's start on {OfficeText.Day(start)}. Calibrated: with a drop test adopted since then.",
            [
                new("Depot"), new("Spreaders", true), new("Calibrated", true), new("Calibrated, %", true), new("Due", true), new("Tests", true),
                new("Checks passed", true), new("Checks failed", true), new("Checks open", true),
            ],
            [.. rows]);
    }

    private async Task<ReportSheet> BeforeAfterAsync(string title, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        var start = (await data.RulesAsync(stop)).SeasonStart(state.Day);
        var tests = (await data.Store.TestsSinceAsync(start, stop)).ToLookup(test => test.Test.Spreader ?? "", StringComparer.Ordinal);
        List<IReadOnlyList<ReportSheetCell>> rows = [];
        foreach (var one in state.InUse)
        {
            var before = tests[one.Id].Where(test => test.Test is { Kind: "drop-test", Verdict: "adopt" }).OrderBy(Decided).LastOrDefault();
            if (before is null) continue;
            var found = before.Results.FirstOrDefault(result => result.Share is not null);
            var after = tests[one.Id].Where(test => test.Test.Kind == "verification" && Decided(test) > Decided(before)).OrderBy(Decided).LastOrDefault();
            var left = after is { Results: [var first, ..] } ? first : null;
            rows.Add(
            [
                one.Number, one.Record.Depot, before.Test.Date, Percent(found?.Share), Percent(found?.ShareExpanded), found?.Conformity ?? "", before.Test.Keyed ?? "",
                after?.Test.Date ?? "", Percent(left?.Share), Percent(left?.ShareExpanded), left?.Conformity ?? "",
            ]);
        }

        return new(
            "before-after", title,
            $"What each spreader delivered of what was asked before its calibration adopted since {OfficeText.Day(start)}, and in the latest check after it.",
            [
                new("Number"), new("Depot"), new("Calibrated"), new("Delivered before, %", true), new("± before, %", true), new("Verdict before"), new("Keyed in"),
                new("Checked"), new("Delivered after, %", true), new("± after, %", true), new("Verdict after"),
            ],
            rows);
    }

    private async Task<ReportSheet> ScalesAsync(string title, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        var start = (await data.RulesAsync(stop)).SeasonStart(state.Day);
        var uses = (await data.Store.ScaleUsesAsync(start, stop)).ToDictionary(use => use.Scale, StringComparer.Ordinal);
        var known = (await data.RowsAsync(RegisterKind.Scale, stop)).ToList();
        var rows = known.Where(row => !row.Item.Retired || uses.ContainsKey(row.Texts.GetValueOrDefault("id", ""))).Select(row => Row(
            row.Texts.GetValueOrDefault("id", ""), row.Texts.GetValueOrDefault("depot", ""), row.Texts.GetValueOrDefault("kind", ""), row.Texts.GetValueOrDefault("verified", "")));
        var others = uses.Keys.Except(known.Select(row => row.Texts.GetValueOrDefault("id", "")), StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(name => Row(name, "not in the register", "", ""));
        return new(
            "scales", title, $"Tests and checks decided or open since {OfficeText.Day(start)}, by the scale that weighed them.",
            [
                new("Scale"), new("Depot"), new("Kind"), new("Last verified"), new("Tests", true), new("First use"), new("Last use"),
                new("Days from verification to last use", true),
            ],
            [.. rows, .. others]);

        IReadOnlyList<ReportSheetCell> Row(string name, string depot, string kind, string verified)
        {
            var use = uses.GetValueOrDefault(name);
            var age = OfficeText.ReadDay(verified) is { } checkedOn && OfficeText.ReadDay(use?.Last ?? "") is { } used ? used.DayNumber - checkedOn.DayNumber : (int?)null;
            return
            [
                name, depot, kind, verified, Count(use?.Tests ?? 0), use?.First ?? "", use?.Last ?? "",
                age is { } apart ? Count(apart) : None,
            ];
        }
    }

    private static DateTimeOffset Decided(ListedTest test) => test.Test.DecidedAt ?? test.Test.BegunAt;

    private static ReportSheetCell Count(int count) => new(OfficeText.Count(count), count);

    // The number of percent, since the heading says so.
    private static ReportSheetCell Percent(double? share) =>
        share is { } value ? new(OfficeText.Percent(value)[..^2], value * 100) : None;
}
