using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Print;

/// <summary>A calibration's report for a person at a terminal.</summary>
internal static class CalibrationLines
{
    internal static IEnumerable<string> Of(CalibrationReport report, IReadOnlyList<Finding> readFindings, Show show)
    {
        foreach (var line in Head(report, show)) yield return line;
        yield return "";
        var name = report.Figures.Count == 0 ? 0 : report.Figures.Max(figure => show.Say(figure.Label).Length);
        foreach (var figure in report.Figures)
        {
            var relative = figure.Expanded is { } u && figure.Value.Value != 0 && figure.Dimension is not (Dimension.Temperature or Dimension.Fraction)
                ? "   " + show.Say($"(± {show.Percent(u / Math.Abs(figure.Value.Value))}, {show.Percent(figure.Probability)} interval)")
                : "";
            yield return $"  {show.Say(figure.Label).PadRight(name)}  {figure.Text(show.Culture, show.Units)}{relative}";
        }

        if (report.Lines.Count > 0) yield return "";
        foreach (var line in report.Lines.SelectMany(line => Wrapped.Lines("  ", line.Text(show.Culture, show.Units)))) yield return line;
        foreach (var table in report.Tables)
        {
            yield return "";
            yield return show.Say(table.Title);
            foreach (var line in Table(table, show)) yield return line;
        }

        List<Finding> findings = [.. readFindings, .. report.Findings];
        yield return "";
        yield return show.Say(findings.Count == 0 ? "Findings: none." : "Findings");
        foreach (var line in FindingLines.Of(findings, show)) yield return line;
        if (!findings.Exists(f => f.Severity is Severity.Stop)) yield break;
        yield return "";
        yield return show.Say("DO NOT USE THIS ANSWER until what says STOP is cleared.");
    }

    private static IEnumerable<string> Head(CalibrationReport report, Show show)
    {
        var head = report.Head;
        var title = head.Title.Length > 0 ? head.Title : show.Say(report.Kind.Name);
        yield return head.Invented ? title + "  " + show.Say("(invented data)") : title;
        List<string> parts = [show.Say(report.Kind.Name).ToLowerInvariant()];
        if (head.Spreader.Length > 0) parts.Add(show.Say($"spreader {head.Spreader}"));
        if (head.Date is { } date) parts.Add(date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        if (head.Place.Length > 0) parts.Add(head.Place);
        if (head.People.Length > 0) parts.Add(head.People);
        yield return string.Join(" | ", parts);
    }

    private static IEnumerable<string> Table(ReportTable table, Show show)
    {
        var text = new TextTable([.. table.Columns.Select(c => (c.Heading(show.Culture, show.Units), c.Dimension is not null))]);
        foreach (var row in table.Rows)
            text.Add([.. row.Select((cell, i) => cell.Text(table.Columns[i], show.Culture, show.Units))]);
        return text.Lines();
    }
}
