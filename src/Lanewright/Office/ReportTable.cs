using Lanewright.Documents;
using Lanewright.Logs.Applied;

namespace Lanewright.Office;

/// <summary>A report as Parquet: its columns by their English headings in every language, numbers in the unit that the heading names.</summary>
internal static class ReportTable
{
    /// <exception cref="Logs.LogException">The file cannot be written.</exception>
    internal static void WriteParquet(string path, ReportSheet report) => TableFile.WriteParquet(
        path, [.. report.Columns.Select(column => new TableColumn(column.Name.Length > 0 ? column.Name : column.Heading, !column.IsNumber))],
        report.Rows.Select(row => (IReadOnlyList<object?>)[.. row.Select((cell, i) => report.Columns[i].IsNumber ? (object?)cell.Number : cell.Text)]));
}
