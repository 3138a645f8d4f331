using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace Lanewright.Documents;

/// <summary>
/// Writes a report as a spreadsheet (Office Open XML, ECMA-376). Cells are texts or numbers, never formulas, whatever they hold.
/// </summary>
public static class ReportWorkbook
{
    // What a spreadsheet takes in one cell.
    private const int LongestText = 32_767;

    /// <summary>Writes the workbook.</summary>
    public static async Task WriteAsync(ReportSheet report, Stream to, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(to);
        var spreadsheet = await Spreadsheet.CreateNewAsync(to, cancellationToken: stop);
        await using (spreadsheet)
        {
            var options = new WorksheetOptions { FrozenRows = 1 };
            for (var c = 0; c < report.Columns.Count; c++)
            {
                var longest = report.Rows.Select(row => row[c].Text.Length).Append(report.Columns[c].Heading.Length).Max();
                options.Column(c + 1).Width = Math.Clamp(longest + 2, 8, 60);
            }

            await spreadsheet.StartWorksheetAsync(report.Title.Length > 31 ? report.Title[..31] : report.Title, options, stop);
            var style = new Style();
            style.Font.Bold = true;
            var bold = spreadsheet.AddStyle(style);
            await spreadsheet.AddRowAsync([.. report.Columns.Select(column => new Cell(column.Heading, bold))], stop);
            foreach (var row in report.Rows)
            {
                await spreadsheet.AddRowAsync(
                    [.. row.Select(cell => cell.Number is { } number ? new Cell(number) : new Cell(Fitting(cell.Text)))], stop);
            }

            await spreadsheet.FinishAsync(stop);
        }
    }

    private static string Fitting(string text)
    {
        var clean = text.Any(c => c < ' ' && c != '\n') ? new string([.. text.Select(c => c < ' ' && c != '\n' ? ' ' : c)]) : text;
        return clean.Length > LongestText ? clean[..LongestText] : clean;
    }
}
