using System.Globalization;
using Lanewright.Core.Register;
using Lanewright.Core.Season;
using Lanewright.Core.Statistics;
using Lanewright.Host;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Which spreader has drifted: the list, and the chart of each.</summary>
internal sealed class DriftPages(OfficeData data)
{
    internal void Map(WebApplication app)
    {
        app.MapGet("/office/drift", context => List(context).Send(context));
        app.MapGet("/office/drift.csv", context => Csv(context).Send(context));
        app.MapGet("/office/spreaders/{id}/drift", (string id, CancellationToken stop) => One(id, stop));
    }

    /// <summary>A spreader with looks, and the estimate alone: charts are worked out for the rows of a page.</summary>
    private sealed record Found(OfficeSpreader Spreader, List<DriftLook> Looks, double Share, double? Cost);

    private static readonly IReadOnlyDictionary<string, Func<Found, IComparable?>> Keys =
        new Dictionary<string, Func<Found, IComparable?>>(StringComparer.Ordinal)
        {
            ["number"] = one => one.Spreader.Number,
            ["depot"] = one => one.Spreader.Record.Depot,
            ["looks"] = one => one.Looks.Count,
            ["off"] = one => one.Share,
            ["cost"] = one => one.Cost,
        };

    private async Task<IResult> List(HttpContext context)
    {
        var query = ListQuery.Of(context.Request);
        var (found, state, rules) = await FindAsync(query, context.RequestAborted);
        var rows = query.Take(found, Keys).Rows.Select(one => Of(one.Spreader, one.Looks, rules, state.Day, one.Cost)).ToList();
        return Page<DriftListPage>(new() { ["List"] = rows, ["Wanted"] = query, ["Count"] = found.Count, ["Tolerance"] = rules.Tolerance, ["Invented"] = data.Season.IsInvented });
    }

    private async Task<IResult> Csv(HttpContext context)
    {
        var query = ListQuery.Of(context.Request);
        var (found, _, _) = await FindAsync(query, context.RequestAborted);
        return OfficeCsv.Answer("drift.csv", query.InOrder(found, Keys).Select(one => (string[])
        [
            one.Spreader.Number, one.Spreader.Record.Depot, one.Looks.Count.ToString(CultureInfo.InvariantCulture),
            OfficeCsv.Number(100 * one.Share, "0.0"), OfficeCsv.Number(one.Cost, "0"),
        ]).Prepend(["number", "depot", "looks", "off_percent", "cost_of_waiting"]));
    }

    // The dearest to wait for first.
    private async Task<(List<Found> Found, SpreaderState State, YardRules Rules)> FindAsync(ListQuery query, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        var (rules, prices) = (await data.RulesAsync(stop), await data.PricesAsync(stop));
        var checks = (await data.Store.ChecksSinceAsync(state.Day.AddDays(-OfficeDrift.DaysBack), null, stop))
            .ToLookup(check => check.Spreader, StringComparer.Ordinal);
        var found = new List<Found>();
        var season = await data.Season.LooksAsync(stop);
        foreach (var one in state.InUse.Where(one => query.Finds(one.Search)))
        {
            if (OfficeDrift.Looks(one.Latest, checks[one.Id], season, one.Number, state.Day) is not { Count: > 1 } looks) continue;
            var share = Elementary.Expm1(WearFilter.Of(looks, new DriftRules { Tolerance = rules.Tolerance }, state.Day).Level);
            found.Add(new(one, looks, share, Cost(one.Record, share, prices)));
        }

        found.Sort((a, b) => (b.Cost ?? -1).CompareTo(a.Cost ?? -1) is var order and not 0 ? order : Math.Abs(b.Share).CompareTo(Math.Abs(a.Share)));
        return (found, state, rules);
    }

    private async Task<IResult> One(string id, CancellationToken stop)
    {
        var state = await data.SpreadersAsync(stop);
        if (state.Find(id) is not { } spreader) return Problems.Answer(404, "There is no spreader at this address.");
        var rules = await data.RulesAsync(stop);
        DriftOf? drift = null;
        var checks = await data.Store.ChecksSinceAsync(state.Day.AddDays(-OfficeDrift.DaysBack), id, stop);
        if (OfficeDrift.Looks(spreader.Latest, checks, await data.Season.LooksAsync(stop), spreader.Number, state.Day) is { Count: > 1 } stored)
        {
            var looks = await OfficeDrift.ComputedAsync(data.Store, stored, stop);
            drift = Of(spreader, looks, rules, state.Day, null);
            drift = drift with { Cost = Cost(spreader.Record, drift.Drift.Share, await data.PricesAsync(stop)) };
        }

        return Page<DriftPage>(new() { ["One"] = spreader, ["Data"] = drift, ["Invented"] = data.Season.IsInvented });
    }

    private static DriftOf Of(OfficeSpreader spreader, List<DriftLook> looks, YardRules rules, DateOnly today, double? cost) => new(
        spreader, SpreaderDrift.Of(
            looks.First(look => look.Kind is DriftLookKind.Calibration), looks.Where(look => look.Kind is not DriftLookKind.Calibration),
            new() { Tolerance = rules.Tolerance }, today),
        rules.Tolerance, cost);

    private static double? Cost(RegisterSpreader record, double share, IReadOnlyDictionary<string, double?> prices) =>
        Math.Abs(share) * record.SeasonMass?.Si / 1000 * prices.GetValueOrDefault(record.Material);

    private static RazorComponentResult<T> Page<T>(Dictionary<string, object?> parameters)
        where T : IComponent => new(parameters);
}
