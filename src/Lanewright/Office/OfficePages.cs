using System.Runtime.CompilerServices;
using Lanewright.Core.Spreading;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>The office's addresses.</summary>
internal static class OfficePages
{
    private const int Choices = 200;

    internal static void Map(WebApplication app, EntryStore store)
    {
        var data = app.Services.GetRequiredService<OfficeData>();
        WhoPages.Map(app);
        var writer = app.Services.GetRequiredService<OfficeWriter>();
        new RegisterForms(data, writer).Map(app);
        foreach (var kind in RegisterKind.All.Where(kind => kind != RegisterKind.Spreader))
        {
            app.MapGet("/office/" + kind.List, context => Register(data, kind, context).Send(context));
        }

        new SpreaderEvents(data, writer).Map(app);
        new DiagnosisPages(store, writer).Map(app);
        new DriftPages(data).Map(app);
        new SeasonPages(data).Map(app);
        new SaltPages(data).Map(app);
        new ImportPages(data, writer, TimeProvider.System).Map(app);
        new AuditPages(store, TimeProvider.System).Map(app);
        app.MapGet("/office", context => Spreaders<SpreadersPage>(data, context, "").Send(context));
        app.MapGet("/office/due", context => Spreaders<DuePage>(data, context, "due").Send(context));
        app.MapGet("/office/due.csv", context => DueCsv(data, context).Send(context));
        app.MapGet("/office/spreaders.csv", context => SpreadersCsv(data, context).Send(context));
        app.MapGet("/office/tests", context => Tests(store, ListQuery.Of(context.Request), context.RequestAborted).Send(context));
        app.MapGet("/office/tests.csv", (HttpContext context) =>
            OfficeCsv.Answer("tests.csv", () => TestRows(store, ListQuery.Of(context.Request), context.RequestAborted)));
        app.MapGet("/office/tests/{id}", (string id, CancellationToken stop) => Test(store, id, stop));
        new MapPages(data).Map(app);
        CardPages.Map(app, store);
        CertificatePages.Map(app, data);
        app.MapGet("/office/compare", (string? a, string? b, string? q, CancellationToken stop) => Compare(store, a, b, q, stop));
        app.MapGet("/office/search", context => Search(data, context).Send(context));
    }

    private static async Task<IResult> Register(OfficeData data, RegisterKind kind, HttpContext context) =>
        Page<RegisterListPage>(new() { ["Model"] = await data.ListAsync(kind, ListQuery.Of(context.Request), context.RequestAborted) });

    private static async Task<IResult> SpreadersCsv(OfficeData data, HttpContext context)
    {
        var query = ListQuery.Of(context.Request);
        return OfficeCsv.Answer(
            "spreaders.csv", SpreaderRows(query.InOrder(SpreaderList.Found(await data.SpreadersAsync(context.RequestAborted), query), SpreaderList.Keys)));
    }

    private static async Task<IResult> DueCsv(OfficeData data, HttpContext context)
    {
        var (state, query) = (await data.SpreadersAsync(context.RequestAborted), ListQuery.Of(context.Request));
        return OfficeCsv.Answer("due.csv", DueRows(query.InOrder(Due(state, query), SpreaderList.Keys)));
    }

    // What is due has an order of its own, the dearest first.
    private static List<OfficeSpreader> Due(SpreaderState state, ListQuery query) => [.. state.Due.Where(one => query.Finds(one.Search))];

    private static async Task<IResult> Search(OfficeData data, HttpContext context)
    {
        var query = ListQuery.Of(context.Request);
        return Page<SearchPage>(new() { ["Words"] = query.Words, ["Data"] = await SearchResult.OfAsync(data, query, context.RequestAborted) });
    }

    private static async Task<IResult> Spreaders<T>(OfficeData data, HttpContext context, string only)
        where T : IComponent
    {
        var state = await data.SpreadersAsync(context.RequestAborted);
        var query = ListQuery.Of(context.Request);
        return Page<T>(new()
        {
            ["List"] = only.Length == 0
                ? SpreaderList.Of(state, query)
                : new SpreaderList(
                    query, query.Take(Due(state, query), SpreaderList.Keys), state.InUse.Count,
                    state.Due.Count, []),
        });
    }

    private static async Task<IResult> Tests(EntryStore store, ListQuery query, CancellationToken stop)
    {
        var (tests, count) = await store.TestsAsync(Wanted(query), Order(query), query.Down, query.Skip, stop);
        return Page<TestsPage>(new() { ["Tests"] = tests, ["Query"] = query, ["Count"] = count });
    }

    private static TestQuery Wanted(ListQuery query) =>
        new() { Words = query.Words, OpenOnly = query.Only == "open", Most = ListQuery.PageSize };

    private static TestOrder Order(ListQuery query) => query.Sort switch
    {
        "day" => TestOrder.Day,
        "spreader" => TestOrder.Spreader,
        "title" => TestOrder.Title,
        "decision" => TestOrder.Decision,
        _ => TestOrder.Touched,
    };

    private static async Task<IResult> Test(EntryStore store, string id, CancellationToken stop)
    {
        if (await store.TestAsync(id, stop) is not { } listed || await store.FoldAsync(id, stop) is not { } fold)
            return Problems.Answer(404, "There is no test at this address.");
        if (TestComputation.Other(fold) is { } other)
        {
            return Page<CalibrationPage>(new()
            {
                ["Row"] = listed.Test,
                ["Fold"] = fold,
                ["Kind"] = Core.Calibrations.Calibration.Find(fold.Kind),
                ["Reading"] = other,
                ["Report"] = other.IsUsable ? other.Value!.Analyse() : null,
            });
        }

        var reading = TestComputation.Sheet(fold);
        return Page<TestPage>(new()
        {
            ["Row"] = listed.Test,
            ["Fold"] = fold,
            ["Reading"] = reading,
            ["Report"] = reading.IsUsable ? SheetAnalysis.Analyse(reading.Value!) : null,
        });
    }

    private static async Task<IResult> Compare(EntryStore store, string? a, string? b, string? words, CancellationToken stop)
    {
        var choices = await store.TestsAsync(new() { Most = Choices, Words = words }, stop);
        return Page<ComparePage>(new()
        {
            ["Choices"] = choices,
            ["Words"] = words ?? "",
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

    private static IEnumerable<string[]> SpreaderRows(IEnumerable<OfficeSpreader> spreaders)
    {
        yield return ["number", "depot", "body", "metering", "material", "constant", "calibrated", "due"];
        foreach (var one in spreaders)
        {
            var result = one.Result is null ? "" : OfficeText.Constant(one.Result);
            yield return
            [
                one.Record.Spreader.Id, one.Record.Depot, one.Record.Body, one.Record.Spreader.Metering, one.Record.Material,
                result, one.Latest?.Date ?? "", one.Due is null ? "" : OfficeText.Because(one.Due),
            ];
        }
    }

    private static IEnumerable<string[]> DueRows(IEnumerable<OfficeSpreader> spreaders)
    {
        yield return ["number", "depot", "due", "error_percent", "season_tonnes", "cost_of_waiting"];
        foreach (var one in spreaders)
        {
            yield return
            [
                one.Number, one.Record.Depot, OfficeText.Because(one.Due!), OfficeCsv.Number(100 * one.Due!.Share, "0.##"), OfficeCsv.Number(one.Due.Mass / 1000, "0.###"),
                OfficeCsv.Number(one.Due.Cost, "0"),
            ];
        }
    }

    private static async IAsyncEnumerable<string[]> TestRows(
        EntryStore store, ListQuery query, [EnumeratorCancellation] CancellationToken stop)
    {
        yield return ["day", "spreader", "title", "setting", "result", "known to", "decision", "keyed in"];
        var wanted = Wanted(query) with { Most = TestQuery.MostTests };
        for (var some = await store.TestsAsync(wanted, stop); some.Count > 0;
            some = await store.TestsAsync(wanted with { Before = some[^1].Test.LastNumber }, stop))
        {
            foreach (var one in some)
            {
                // A test without a result, such as an open one, is a row too.
                foreach (var result in one.Results.Cast<TestResultRow?>().DefaultIfEmpty())
                {
                    yield return
                    [
                        one.Test.Date, one.Test.SpreaderName, one.Test.Title, result?.Setting ?? "", result is null ? "" : OfficeText.Constant(result),
                        result is null ? "" : OfficeText.Percent(result.RelativeExpanded), one.Test.Verdict ?? "open", one.Test.Keyed ?? "",
                    ];
                }
            }
        }
    }

    private static RazorComponentResult<T> Page<T>(Dictionary<string, object?> parameters)
        where T : IComponent => new(parameters);
}
