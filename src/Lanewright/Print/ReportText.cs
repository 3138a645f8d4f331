using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Print;

/// <summary>A report for a person at a terminal: the answer first, then what stands behind it.</summary>
internal static class ReportText
{
    internal static IEnumerable<string> Lines(TestReport report, IReadOnlyList<Finding> readFindings, Show show)
    {
        foreach (var line in Head(report.Sheet, show)) yield return line;
        foreach (var result in report.Results)
        {
            yield return "";
            foreach (var line in Answer(report.Sheet, result, show)) yield return line;
            yield return "";
            foreach (var line in Runs(result, show)) yield return line;
            yield return "";
            foreach (var line in Budget(result, show)) yield return line;
            yield return "";
            foreach (var line in Method(result, show)) yield return line;
        }

        List<Finding> findings = [.. readFindings, .. report.Findings];
        yield return "";
        yield return show.Say(findings.Count == 0 ? "Findings: none." : "Findings");
        foreach (var line in FindingLines.Of(findings, show)) yield return line;
        if (findings.Exists(f => f.Severity is Severity.Stop))
        {
            yield return "";
            yield return show.Say("DO NOT USE THIS ANSWER until what says STOP is cleared.");
        }
    }

    private static IEnumerable<string> Head(TestSheet sheet, Show show)
    {
        var title = sheet.Title.Length == 0 ? show.Say($"Spreader {sheet.Spreader.Id}") : sheet.Title;
        yield return sheet.Invented ? title + "  " + show.Say("(invented data)") : title;
        List<string> parts = [show.Say($"spreader {sheet.Spreader.Id}"), sheet.Material.Name];
        if (sheet.Date is { } date)
            parts.Add(date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        if (sheet.Place.Length > 0) parts.Add(sheet.Place);
        if (sheet.People.Count > 0) parts.Add(string.Join(", ", sheet.People));
        yield return string.Join(" | ", parts);
    }

    private static IEnumerable<string> Answer(TestSheet sheet, TestResult result, Show show)
    {
        var unit = result.Unit;
        if (result.Setting.Length > 0) yield return show.Say($"At setting {result.Setting}");
        var (value, expanded) = QuantityText.WriteTogether(result.Value.Value, result.Expanded, unit, show.Culture);
        var verification = sheet.Kind is TestKind.Verification;
        var words = (KeyIn: show.Say("Key in"), Value: show.Say(verification ? "Delivered" : "Constant"), InUse: show.Say("In use"), Tolerance: show.Say("Tolerance"));
        var width = new[] { words.KeyIn, words.Value, words.InUse, words.Tolerance }.Max(word => word.Length);
        string Label(string word) => $"  {word.PadRight(width)}  ";
        if (!verification && result.KeyIn is { } key)
        {
            yield return Label(words.KeyIn) + show.Keyed(key, unit) + "   "
                + show.Say($"(rounding costs {show.SignedPercent(key.Cost)}, at most {show.Percent(key.WorstCost)})");
        }

        var symbol = QuantityText.Symbol(unit, show.Culture);
        var (low, _) = QuantityText.WriteTogether(result.Low, result.Expanded, unit, show.Culture);
        var (high, _) = QuantityText.WriteTogether(result.High, result.Expanded, unit, show.Culture);
        yield return Label(words.Value) + $"{value} {symbol} ± {expanded}"
            + (verification ? " " + show.Say("of what the controller says") : $" (± {show.Percent(result.RelativeExpanded)})")
            + (sheet.Material.Moisture is null ? "" : ", " + show.Say("dry material"))
            + ", " + show.Say($"{show.Percent(result.Probability)} interval {low} to {high}");
        if (result.Delivery is not { } delivery) yield break;
        if (!verification)
        {
            var (current, share) = (show.With(sheet.Spreader.Current!.Value, unit), show.Percent(delivery.Share.Value));
            yield return Label(words.InUse) + show.Say(
                $"{current}: the spreader has been putting down {share} of what was asked (± {show.Percent(delivery.Expanded)}), {TooMuch(delivery.Share.Value, show)}");
        }

        yield return Label(words.Tolerance) + $"± {show.Percent(delivery.Tolerance)}"
            + (verification ? "" : " " + show.Say("for the constant in use")) + ": " + show.Say(delivery.Conformity switch
            {
                Conformity.Pass => "PASS, inside even with the uncertainty against it",
                Conformity.Fail => "FAIL, outside even with the uncertainty in its favour",
                _ => (Phrase)$"CANNOT TELL, the interval reaches across the limit; chance of being inside {show.Percent(delivery.ChanceWithin)}",
            });
        if (result.More is { Runs: > 0 } more)
        {
            yield return "  " + show.Say(
                $"To reach ± {show.Percent(sheet.WantedUncertainty)}: {more.Runs} more run like these, about {show.Mass(more.Mass, 2)} in all|To reach ± {show.Percent(sheet.WantedUncertainty)}: {more.Runs} more runs like these, about {show.Mass(more.Mass, 2)} in all");
        }
    }

    private static Phrase TooMuch(double share, Show show) =>
        share >= 1 ? (Phrase)$"{show.Percent(share - 1)} too much" : $"{show.Percent(1 - share)} too little";

    private static IEnumerable<string> Runs(TestResult result, Show show)
    {
        var mass = show.Units[Dimension.Mass];
        var symbol = QuantityText.Symbol(result.Unit, show.Culture);
        var table = new TextTable(
            (show.Say("run"), false), (show.Say($"net {mass.Symbol}"), true), (symbol, true), (show.Say("off"), true), (show.Say("own u"), true),
            (show.Say("[ interval ]   | result   o run"), false));
        var share = result.RelativeExpanded;
        var reach = DotPlot.Reach(result.Runs.Select(r => r.Deviation), share);
        foreach (var run in result.Runs)
        {
            var (net, _) = QuantityText.WriteTogether(
                run.Net.Value, run.Net.StandardUncertainty, mass, show.Culture);
            table.Add(
                run.Id, net, show.Number(run.Ratio, result.Unit), show.SignedPercent(run.Deviation),
                show.Percent(run.OwnUncertainty), DotPlot.Row(run.Deviation, share, reach));
        }

        return table.Lines();
    }

    private static IEnumerable<string> Budget(TestResult result, Show show)
    {
        yield return "  " + show.Say("Where the uncertainty comes from (standard uncertainty, share of the variance)");
        var table = new TextTable(("", false), ("", true), ("", true), ("", false));
        foreach (var line in result.Budget)
        {
            var bar = new string('#', (int)Math.Round(line.Share * 24));
            table.Add(
                show.Say(Phrase.OfFamily(line.Family)) + (line.Sources == 1 ? "" : $" ({line.Sources})"),
                show.Percent(line.StandardUncertainty / Math.Abs(result.Value.Value)), show.Percent(line.Share), bar);
        }

        foreach (var line in table.Lines()) yield return line;
    }

    private static IEnumerable<string> Method(TestResult result, Show show)
    {
        var method = new AnswerText(show.Culture, show.Units).Method(result);
        foreach (var line in Wrapped.Lines("  ", method)) yield return line;
        var classical = result.Classical;
        var freedom = double.IsInfinity(classical.DegreesOfFreedom)
            ? show.Say("infinite")
            : QuantityText.WriteNumber(classical.DegreesOfFreedom, show.Culture, NumberForm.Significant(2));
        var compare = show.Say(
            $"One run scatters by about {show.Percent(result.Estimate.Scatter.Median)}. The classical evaluation (standard deviation of these runs, t with {freedom} degrees of freedom) would say ± {show.Percent(classical.Expanded / Math.Abs(result.Value.Value))}.");
        foreach (var line in Wrapped.Lines("  ", compare)) yield return line;
        if (result.Trials is not { } trials) yield break;
        var (low, _) = QuantityText.WriteTogether(trials.Low, result.Expanded, result.Unit, show.Culture);
        var (high, _) = QuantityText.WriteTogether(trials.High, result.Expanded, result.Unit, show.Culture);
        var count = QuantityText.WriteNumber(trials.Trials, show.Culture);
        Phrase agree = result.TrialsAgree is true ? "they agree" : "THEY DISAGREE";
        foreach (var line in Wrapped.Lines(
            "  ", show.Say($"{count} random trials (seed {trials.Seed}) give {low} to {high}: {agree} with the formula.")))
            yield return line;
    }
}
