using System.Text;
using Lanewright.Core.Spreading;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Folding;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>The office's addresses.</summary>
internal static class OfficePages
{
    private const int PageOfEntries = 200;
    private const int Choices = 200;

    internal static void Map(WebApplication app, EntryStore store)
    {
        var data = app.Services.GetRequiredService<OfficeData>();
        WhoPages.Map(app);
        new RegisterForms(data, app.Services.GetRequiredService<OfficeWriter>()).Map(app);
        foreach (var kind in RegisterKind.All.Where(kind => kind != RegisterKind.Spreader))
        {
            app.MapGet("/office/" + kind.List, async (CancellationToken stop) =>
                Page<RegisterListPage>(new() { ["Model"] = await data.ListAsync(kind, stop) }));
        }

        app.MapGet("/office", async (CancellationToken stop) =>
            Page<SpreadersPage>(new() { ["Spreaders"] = await data.SpreadersAsync(stop) }));
        app.MapGet("/office/spreaders.csv", async (CancellationToken stop) =>
            Csv("spreaders.csv", SpreaderRows(await data.SpreadersAsync(stop))));
        app.MapGet("/office/spreaders/{id}", (string id, CancellationToken stop) => Spreader(data, id, stop));
        app.MapGet("/office/tests", (string? q, string? open, long? before, CancellationToken stop) =>
            Tests(data, q ?? "", open is not null, before, stop));
        app.MapGet("/office/tests.csv", async (string? q, CancellationToken stop) => Csv(
            "tests.csv", TestRows(await store.TestsAsync(new() { Words = q, Most = TestQuery.MostTests }, stop))));
        app.MapGet("/office/tests/{id}", (string id, CancellationToken stop) => Test(store, id, stop));
        app.MapGet("/office/due", async (CancellationToken stop) => Page<DuePage>(new()
        {
            ["Due"] = (IReadOnlyList<OfficeSpreader>)
            [
                .. (await data.SpreadersAsync(stop)).Where(one => one.Due is not null)
                    .OrderByDescending(one => one.Due!.Cost ?? -1).ThenByDescending(one => one.Due!.Share),
            ],
        }));
        app.MapGet("/office/compare", (string? a, string? b, CancellationToken stop) => Compare(store, a, b, stop));
        app.MapGet("/office/audit", (long? before, CancellationToken stop) => Audit(store, before, stop));
    }

    private static async Task<IResult> Spreader(OfficeData data, string id, CancellationToken stop)
    {
        var spreader = (await data.SpreadersAsync(stop)).FirstOrDefault(one => one.Id == id);
        if (spreader is null) return Problems.Answer(404, "There is no spreader at this address.");
        return Page<SpreaderPage>(new()
        {
            ["Spreader"] = spreader,
            ["Tests"] = await data.Store.TestsAsync(new() { Spreader = id, Most = TestQuery.MostTests }, stop),
            ["Events"] = await data.Store.EventsAsync(id, stop),
        });
    }

    private static async Task<IResult> Tests(
        OfficeData data, string words, bool openOnly, long? before, CancellationToken stop)
    {
        var query = new TestQuery { Words = words, OpenOnly = openOnly, Before = before };
        var tests = await data.Store.TestsAsync(query, stop);
        return Page<TestsPage>(new()
        {
            ["Tests"] = tests,
            ["Words"] = words,
            ["OpenOnly"] = openOnly,
            ["Next"] = tests.Count == query.Most ? tests[^1].Test.LastNumber : (long?)null,
        });
    }

    private static async Task<IResult> Test(EntryStore store, string id, CancellationToken stop)
    {
        if (await store.TestAsync(id, stop) is not { } listed || await store.FoldAsync(id, stop) is not { } fold)
            return Problems.Answer(404, "There is no test at this address.");
        var reading = TestComputation.Sheet(fold);
        return Page<TestPage>(new()
        {
            ["Row"] = listed.Test,
            ["Fold"] = fold,
            ["Reading"] = reading,
            ["Report"] = reading.IsUsable ? SheetAnalysis.Analyse(reading.Value!) : null,
        });
    }

    private static async Task<IResult> Compare(EntryStore store, string? a, string? b, CancellationToken stop)
    {
        var choices = await store.TestsAsync(new() { Most = Choices }, stop);
        return Page<ComparePage>(new()
        {
            ["Choices"] = choices,
            ["A"] = a is null ? null : await store.TestAsync(a, stop),
            ["B"] = b is null ? null : await store.TestAsync(b, stop),
            ["Difference"] = TestDifference.Of(await ReportOf(a), await ReportOf(b)),
        });

        async Task<TestReport?> ReportOf(string? id) =>
            id is not null && await store.FoldAsync(id, stop) is { } fold
            && TestComputation.Sheet(fold) is { IsUsable: true, Value: { } sheet }
                ? SheetAnalysis.Analyse(sheet)
                : null;
    }

    private static async Task<IResult> Audit(EntryStore store, long? before, CancellationToken stop)
    {
        var (last, _) = await store.LastAsync(stop);
        var end = Math.Min(before ?? (last + 1), last + 1);
        var entries = await store.ReadAsync(after: Math.Max(0, end - 1 - PageOfEntries), most: PageOfEntries, stop: stop);
        return Page<AuditPage>(new()
        {
            ["Chain"] = await store.CheckChainAsync(stop),
            ["Entries"] = (IReadOnlyList<Storage.Entries.Entry>)[.. entries.Where(entry => entry.Number < end).Reverse()],
            ["Last"] = last,
            ["Before"] = end - 1 > PageOfEntries ? end - PageOfEntries : (long?)null,
        });
    }

    private static IEnumerable<string[]> SpreaderRows(IEnumerable<OfficeSpreader> spreaders)
    {
        yield return ["number", "depot", "body", "metering", "material", "constant", "calibrated", "due"];
        foreach (var one in spreaders)
        {
            var result = one.Latest?.Results.Count == 1 ? OfficeText.Constant(one.Latest.Results[0]) : "";
            yield return
            [
                one.Record.Spreader.Id, one.Record.Depot, one.Record.Body, one.Record.Spreader.Metering, one.Record.Material,
                result, one.Latest?.Test.Date ?? "", one.Due is null ? "" : OfficeText.Because(one.Due),
            ];
        }
    }

    private static IEnumerable<string[]> TestRows(IEnumerable<ListedTest> tests)
    {
        yield return ["day", "spreader", "title", "setting", "result", "known to", "decision", "keyed in"];
        foreach (var one in tests)
        {
            foreach (var result in one.Results)
            {
                yield return
                [
                    one.Test.Date, one.Test.SpreaderName, one.Test.Title, result.Setting, OfficeText.Constant(result),
                    OfficeText.Percent(result.RelativeExpanded), one.Test.Verdict ?? "open", one.Test.Keyed ?? "",
                ];
            }
        }
    }

    private static RazorComponentResult<T> Page<T>(Dictionary<string, object?> parameters)
        where T : IComponent => new(parameters);

    private static IResult Csv(string name, IEnumerable<string[]> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
            text.AppendJoin(',', row.Select(Cell)).Append("\r\n");
        return Results.File(Encoding.UTF8.GetBytes(text.ToString()), "text/csv; charset=utf-8", name);
    }

    // Quoted by RFC 4180; a cell that a spreadsheet would run as a formula is kept a text by an apostrophe.
    private static string Cell(string text)
    {
        var safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
