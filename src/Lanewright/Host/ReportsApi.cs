using System.Text.Json;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Documents;
using Lanewright.Office;
using Lanewright.Storage;
using Lanewright.Storage.Folding;

namespace Lanewright.Host;

/// <summary>What is computed from the records: the report of a test, and the office's reports.</summary>
internal sealed class ReportsApi(EntryStore store, OfficeReports reports)
{
    internal static void Map(WebApplication app, EntryStore store)
    {
        var api = new ReportsApi(store, new(app.Services.GetRequiredService<OfficeData>()));
        app.MapGet("/api/tests/{id}/fields", async (string id, CancellationToken stop) => await api.Fields(id, stop));
        app.MapGet("/api/tests/{id}/report", async (string id, CancellationToken stop) => await api.Report(id, stop));
        app.MapGet("/api/reports", Index);
        app.MapGet("/api/reports/{word}", async (string word, CancellationToken stop) => await api.Table(word, stop));
    }

    private async Task<IResult> Fields(string id, CancellationToken stop) =>
        await store.FoldAsync(id, stop) is not { } fold
            ? TestsApi.None(id)
            : ApiJson.Written(json =>
            {
                json.WriteStartObject();
                json.WriteString("test", fold.Id);
                json.WriteString("kind", fold.Kind);
                EarlierTests.Fields(json, fold);
                json.WriteStartArray("conflicts");
                foreach (var field in fold.Fields.Where(field => field.IsConflict)) json.WriteStringValue(field.Path);
                json.WriteEndArray();
                json.WriteEndObject();
            });

    private async Task<IResult> Report(string id, CancellationToken stop)
    {
        if (await store.FoldAsync(id, stop) is not { } fold) return TestsApi.None(id);
        if (fold.Fields.Any(field => field.IsConflict))
            return Problems.Answer(409, "Fields in conflict wait to be settled; nothing is computed until then.");
        var culture = OfficeText.Culture;
        if (TestComputation.Other(fold) is { } other)
        {
            return Text(other.IsUsable
                ? CalibrationWriter.Write(other.Value!.Analyse(), other.Findings, culture, other.Value!.Head.Preferences)
                : FindingsWriter.Write(other.Findings, culture, UnitPreferences.UnitedStates));
        }

        var reading = TestComputation.Sheet(fold);
        return Text(reading.IsUsable
            ? ReportWriter.Write(SheetAnalysis.Analyse(reading.Value!), reading.Findings, culture, reading.Value!.Preferences)
            : FindingsWriter.Write(reading.Findings, culture, UnitPreferences.UnitedStates));
    }

    private static IResult Index() => ApiJson.Written(json =>
    {
        json.WriteStartObject();
        json.WriteStartArray("reports");
        foreach (var (word, title) in OfficeReports.All)
        {
            json.WriteStartObject();
            json.WriteString("word", word);
            json.WriteString("title", title);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    });

    private async Task<IResult> Table(string word, CancellationToken stop) =>
        await reports.MakeAsync(word, stop) is { } report
            ? ApiJson.Written(json => Write(json, report))
            : Problems.Answer(404, $"There is no report of this name; there are {string.Join(", ", OfficeReports.All.Select(one => one.Word))}.");

    private static void Write(Utf8JsonWriter json, ReportSheet report)
    {
        json.WriteStartObject();
        json.WriteString("word", report.Word);
        json.WriteString("title", report.Title);
        json.WriteString("about", report.About);
        json.WriteStartArray("columns");
        foreach (var column in report.Columns)
        {
            json.WriteStartObject();
            json.WriteString("heading", column.Heading);
            json.WriteString("type", column.IsNumber ? "number" : "text");
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in report.Rows)
        {
            json.WriteStartArray();
            foreach (var (cell, column) in row.Zip(report.Columns))
            {
                if (cell.Number is { } number && double.IsFinite(number)) json.WriteNumberValue(number);
                else if (column.IsNumber && string.IsNullOrEmpty(cell.Text)) json.WriteNullValue();
                else json.WriteStringValue(cell.Text ?? "");
            }

            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static IResult Text(string json) => Results.Text(json, "application/json", System.Text.Encoding.UTF8);
}
