using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Print;

namespace Lanewright.Commands;

/// <summary>A report at a terminal and as files.</summary>
internal static class ReportFiles
{
    /// <summary>Prints the table, and below it what it shows.</summary>
    internal static void Print(ReportSheet report, TextWriter output)
    {
        var table = new TextTable([.. report.Columns.Select(column => (column.Heading, column.IsNumber))]);
        foreach (var row in report.Rows) table.Add([.. row.Select(cell => cell.Text)]);
        CommonOptions.Print(table.Lines(""), output);
        output.WriteLine();
        CommonOptions.Print(Wrapped.Lines("", report.About), output);
    }

    /// <summary>Writes the files that are wanted; false when one could not be written, which is said.</summary>
    internal static async Task<bool> WriteAsync(ReportSheet report, string? pdf, string? xlsx, Paper paper, TextWriter error, CancellationToken stop)
    {
        if (pdf is not null && !WholeFile.Write(pdf, ReportPdf.Draw(report, "", DateTimeOffset.UtcNow, paper), error, "--pdf")) return false;
        if (xlsx is null) return true;
        using var workbook = new MemoryStream();
        await ReportWorkbook.WriteAsync(report, workbook, stop);
        return WholeFile.Write(xlsx, workbook.ToArray(), error, "--xlsx");
    }

    /// <summary>What is written to a stream.</summary>
    internal static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
