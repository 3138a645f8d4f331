using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Storage.Entries;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>The office's reports as pages, CSV, spreadsheets and paper, and the booklets of cards.</summary>
internal sealed class ReportPages(OfficeData data)
{
    private readonly OfficeReports reports = new(data);

    internal void Map(WebApplication app)
    {
        app.MapGet("/office/reports", (CancellationToken stop) => Index(stop));
        app.MapGet("/office/reports/{file}", (string file, string? paper, HttpContext context) => Report(file, paper, context));
        app.MapGet("/office/booklet.pdf", (string? depot, string? paper, HttpContext context) => Cards(depot ?? "", paper, context));
    }

    private async Task<IResult> Index(CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        return new RazorComponentResult<ReportsPage>(new Dictionary<string, object?>
        {
            ["Depots"] = (IReadOnlyList<string>)[.. state.InUse.Select(one => one.Record.Depot).Where(name => name.Length > 0).Distinct().Order(NaturalOrder.Instance)],
        });
    }

    private async Task<IResult> Report(string file, string? paper, HttpContext context)
    {
        if (paper is not (null or "a4" or "letter")) return Problems.Wrong(400, "paper", paper, "a4 or letter");
        var stop = context.RequestAborted;
        var dot = file.LastIndexOf('.');
        var ending = dot < 0 ? "" : file[dot..];
        if (ending is not ("" or ".csv" or ".xlsx" or ".pdf" or ".parquet") || await reports.MakeAsync(dot < 0 ? file : file[..dot], stop) is not { } report)
            return Problems.Answer(404, "There is no report at this address.");
        switch (ending)
        {
            case ".csv":
                return OfficeCsv.Answer(
                    report.Word + ".csv", report.Rows.Select(row => row.Select(cell => cell.Text).ToArray()).Prepend([.. report.Columns.Select(column => column.Heading)]));
            case ".xlsx":
                using (var stream = new MemoryStream())
                {
                    await ReportWorkbook.WriteAsync(report, stream, stop);
                    return Results.File(stream.ToArray(), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", report.Word + ".xlsx");
                }

            case ".parquet":
                var table = Path.Combine(Path.GetTempPath(), $"lanewright-report-{Guid.NewGuid():N}.parquet");
                try
                {
                    ReportTable.WriteParquet(table, report);
                    return Results.File(await File.ReadAllBytesAsync(table, stop), "application/vnd.apache.parquet", report.Word + ".parquet");
                }
                finally
                {
                    File.Delete(table);
                }

            case ".pdf":
                var yard = (await data.RulesAsync(stop)).Yard.Name;
                return Results.Bytes(ReportPdf.Draw(report, yard, DateTimeOffset.UtcNow, paper == "a4" ? Paper.A4 : Paper.Letter), "application/pdf");
            default:
                return new RazorComponentResult<ReportPage>(new Dictionary<string, object?> { ["Report"] = report });
        }
    }

    private async Task<IResult> Cards(string depot, string? paper, HttpContext context)
    {
        if (paper is not (null or "a5" or "letter")) return Problems.Wrong(400, "paper", paper, "a5 or letter");
        var address = $"{context.Request.Scheme}://{context.Request.Host}/office/tests/";
        var booklet = await DepotCards.OfAsync(data, depot, address, OfficeText.Culture, context.RequestAborted);
        if (booklet.Cards.Count == 0) return Problems.Answer(404, $"There is no card to print for '{Core.Text.Excerpt.Of(depot)}'.", $"{string.Join(' ', booklet.Without)}");
        return Results.Bytes(CabCardPdf.Booklet(booklet.Cards, paper == "letter" ? CardPaper.Letter : CardPaper.A5, OfficeText.Culture), "application/pdf");
    }
}
