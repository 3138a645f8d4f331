using Lanewright.Core.Charts;
using Lanewright.Core.Register;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>Makes the office's reports from the records.</summary>
internal sealed class OfficeReports(OfficeData data)
{
    private static readonly ReportSheetCell None = "";

    private static readonly IReadOnlyList<(string Word, Phrase Title)> Known =
    [
        ("fleet", "Fleet status"), ("due", "Due list"), ("season", "Season's calibrations"), ("before-after", "Before and after by spreader"),
        ("saved", "What calibration saved"),
        ("scales", "Use of the scales"),
    ];

    /// <summary>The reports there are: word and title.</summary>
    internal static IReadOnlyList<(string Word, string Title)> All => [.. Known.Select(report => (report.Word, Say(report.Title)))];

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
            "saved" => await SavedAsync(title, stop),
            "scales" => await ScalesAsync(title, stop),
            _ => null,
        };
        // A yard that keeps practice beside its own records must not take one for the other.
        if (report is null) return null;
        report = report with { Culture = OfficeText.Culture };
        return await data.Store.AnyInventedAsync(stop)
            ? report with { About = $"{report.About} {Say("The records hold invented data, made up for practice or demonstration.")}" }
            : report;
    }

    private static ReportSheet Fleet(string title, SpreaderState state) => new(
        "fleet", title, Say($"Every spreader in use on {OfficeText.Day(state.Day)}, with its latest adopted drop test."),
        [
            Column("Number"), Column("Depot"), Column("Body"), Column("Metering"), Column("Material"), Column("Constant"), Column("Known to, %", true), Column("Calibrated"), Column("Due"),
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
        "due", title,
        Say($"Spreaders to calibrate on {OfficeText.Day(state.Day)}, the dearest to wait for first. The errors to reckon with are rules of thumb."),
        [Column("Number"), Column("Depot"), Column("Why"), Column("Error to reckon with, %", true), Column("In a season, t", true), Column("Cost of waiting", true)],
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
                depot.Key.Length > 0 ? depot.Key : Say("no depot"), Count(depot.Count()), Count(calibrated), Percent((double)calibrated / depot.Count()),
                Count(depot.Count(one => one.Due is not null)), Count(own.Count),
                Count(checks.Count(check => check.Conformity == "pass")), Count(checks.Count(check => check.Conformity == "fail")),
                Count(checks.Count(check => check.Conformity == "cannot-tell")),
            ];
        });
        return new(
            "season", title, Say($"By depot, since the season's start on {OfficeText.Day(start)}. Calibrated: with a drop test adopted since then."),
            [
                Column("Depot"), Column("Spreaders", true), Column("Calibrated", true), Column("Calibrated, %", true), Column("Due", true), Column("Tests", true),
                Column("Checks passed", true), Column("Checks failed", true), Column("Checks open", true),
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
                one.Number, one.Record.Depot, before.Test.Date, Percent(found?.Share), Percent(found?.ShareExpanded), Verdict(found?.Conformity), before.Test.Keyed ?? "",
                after?.Test.Date ?? "", Percent(left?.Share), Percent(left?.ShareExpanded), Verdict(left?.Conformity),
            ]);
        }

        return new(
            "before-after", title,
            Say($"What each spreader delivered of what was asked before its calibration adopted since {OfficeText.Day(start)}, and in the latest check after it."),
            [
                Column("Number"), Column("Depot"), Column("Calibrated"), Column("Delivered before, %", true), Column("± before, %", true), Column("Verdict before"), Column("Keyed in"),
                Column("Checked"), Column("Delivered after, %", true), Column("± after, %", true), Column("Verdict after"),
            ],
            rows);
    }

    // What is asked in a season is the register's mass; the share before is kept for the whole season, the share after is that of the
    // latest check, or 1 without one.
    private async Task<ReportSheet> SavedAsync(string title, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        var (rules, prices) = (await data.RulesAsync(stop), await data.PricesAsync(stop));
        var start = rules.SeasonStart(state.Day);
        var tests = (await data.Store.TestsSinceAsync(start, stop)).ToLookup(test => test.Test.Spreader ?? "", StringComparer.Ordinal);
        List<IReadOnlyList<ReportSheetCell>> rows = [];
        List<Bar> bars = [];
        double mass = 0, money = 0, chloride = 0;
        foreach (var one in state.InUse)
        {
            if (one.Record.SeasonMass is not { } asked) continue;
            var before = tests[one.Id].Where(test => test.Test is { Kind: "drop-test", Verdict: "adopt" }).OrderBy(Decided).LastOrDefault();
            if (before?.Results.FirstOrDefault(result => result.Share is not null) is not { Share: { } found }) continue;
            var after = tests[one.Id].Where(test => test.Test.Kind == "verification" && Decided(test) > Decided(before)).OrderBy(Decided).LastOrDefault();
            var left = after is { Results: [{ Share: { } share }, ..] } ? share : (double?)null;
            var saved = Chloride.Saved(asked.Si, found, left ?? 1).Value;
            var price = prices.GetValueOrDefault(one.Record.Material);
            var cost = saved / 1000 * price;
            var salt = Chloride.InSalt(saved, Core.Liquids.SaltKind.SodiumChloride, 0, 1).Value;
            (mass, money, chloride) = (mass + saved, money + (cost ?? 0), chloride + salt);
            bars.Add(new(one.Number, saved, 0));
            rows.Add(
            [
                one.Number, one.Record.Depot, Percent(found), left is null ? Say("100 assumed") : Percent(left), Tonnes(asked.Si), Tonnes(saved), Tonnes(salt),
                cost is { } amount ? new(OfficeText.Money(amount), amount) : None,
            ]);
        }

        rows.Add([Say("all"), None, None, None, None, Tonnes(mass), Tonnes(chloride), new(OfficeText.Money(money), money)]);
        return new(
            "saved", title,
            Say(
                $"Against going on as found, for spreaders with a drop test adopted since {OfficeText.Day(start)}. Assumed: what is asked in a season is the mass in the "
                + $"spreader's record; without the calibration it would have delivered the share found before all season; since then it delivers the share of its latest "
                + $"check, or all that is asked where there is none; salt is pure, dry sodium chloride, 60.66 % of it chloride; prices are those of today. "
                + $"Negative: it had put down too little, and now puts down more."),
            [
                Column("Number"), Column("Depot"), Column("Delivered before, %", true), Column("Delivered after, %", true), Column("Asked in a season, t", true), Column("Saved, t", true),
                Column("Chloride saved, t", true), Column("Saved, money", true),
            ],
            rows)
        {
            Picture = bars.Count == 0 ? "" : BarPicture.Svg(Say("Saved"), bars, Core.Quantities.Units.Tonne, "saved", OfficeText.Culture),
        };
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
            .Select(name => Row(name, Say("not in the register"), "", ""));
        return new(
            "scales", title, Say($"Tests and checks decided or open since {OfficeText.Day(start)}, by the scale that weighed them."),
            [
                Column("Scale"), Column("Depot"), Column("Kind"), Column("Last verified"), Column("Tests", true), Column("First use"), Column("Last use"),
                Column("Days from verification to last use", true),
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

    private static string Say(Phrase phrase) => OfficeText.Say(phrase);

    private static ReportSheetColumn Column(Phrase heading, bool isNumber = false) => new(Say(heading), isNumber, heading.Key);

    private static string Verdict(string? word) => word switch
    {
        "pass" => Say("pass"),
        "fail" => Say("fail"),
        "cannot-tell" => Say("cannot tell"),
        _ => "",
    };

    private static DateTimeOffset Decided(ListedTest test) => test.Test.DecidedAt ?? test.Test.BegunAt;

    private static ReportSheetCell Tonnes(double kilograms) =>
        new(QuantityText.WriteNumber(kilograms / 1000, OfficeText.Culture, NumberForm.Decimals(1)), kilograms / 1000);

    private static ReportSheetCell Count(int count) => new(OfficeText.Count(count), count);

    // The number of percent, since the heading says so.
    private static ReportSheetCell Percent(double? share) =>
        share is { } value ? new(OfficeText.Percent(value)[..^2], value * 100) : None;
}
