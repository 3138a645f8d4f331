using System.Globalization;

namespace Lanewright.Documents;

/// <summary>Draws a report on paper that lies on its long side.</summary>
public static class ReportPdf
{
    /// <summary>The report as a PDF file.</summary>
    /// <param name="report">The report.</param>
    /// <param name="yard">Whose it is; empty when nobody said.</param>
    /// <param name="made">When it is made, UTC.</param>
    /// <param name="paper">Its paper.</param>
    public static byte[] Draw(ReportSheet report, string yard, DateTimeOffset made, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(yard);
        var at = made.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
        var head = new FlowHead(
            report.Title, report.About, yard.Length > 0 ? yard : "Lanewright", $"{report.Title}. {(yard.Length > 0 ? yard + ". " : "")}{at}", made, report.Culture, Lying: true);
        return Flow.Make(head, paper, flow =>
        {
            flow.Text(report.Title, 18, true);
            flow.Text(report.About, 9);
            flow.Y += 6;
            if (report.Picture.Length > 0) flow.Pictures([report.Picture]);
            if (report.Rows.Count == 0) flow.Text(report.Culture.Say("Nothing to show."), 10);
            else
            {
                flow.Table(new(
                    "", [.. report.Columns.Select(column => column.Heading)],
                    [.. report.Rows.Select(row => (IReadOnlyList<string>)[.. row.Select(cell => cell.Text)])],
                    [.. report.Columns.Select(column => column.IsNumber)]));
            }
        });
    }
}
