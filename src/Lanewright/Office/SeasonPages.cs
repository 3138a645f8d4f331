using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Host;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Print;
using Lanewright.Season;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Where the salt went: the balance of tickets, piles and logs in the folder <c>season</c> of the data folder.</summary>
internal sealed class SeasonPages(OfficeData data)
{
    private static readonly AppliedBy[] Offered =
        [AppliedBy.Segment, AppliedBy.Route, AppliedBy.Storm, AppliedBy.Depot, AppliedBy.Spreader, AppliedBy.Material];

    internal void Map(WebApplication app)
    {
        app.MapGet("/office/season", Balance);
        app.MapGet("/office/season/storms", context => Storms(context).Send(context));
        app.MapGet("/office/season/storm", (string? of, CancellationToken stop) => Storm(of, stop));
        app.MapGet("/office/season/ledger.{form}", (string form, string? by, CancellationToken stop) => Ledger(form, by, stop));
    }

    /// <summary>What the logs say was spread, as a file (docs/formats/season.md).</summary>
    private async Task<IResult> Ledger(string form, string? by, CancellationToken stop)
    {
        if (!Enum.TryParse<AppliedBy>(by ?? "segment", ignoreCase: true, out var group) || !Offered.Contains(group))
            return Problems.Wrong(400, "by", by, "segment, route, storm, depot, spreader or material");
        if (form is not ("csv" or "parquet" or "geojson") || data.Season.Ledgers is not { } ledgers) return Problems.Answer(404, "There is no ledger at this address.");
        var file = Path.Combine(Path.GetTempPath(), $"lanewright-ledger-{Guid.NewGuid():N}.{form}");
        try
        {
            if (form == "geojson")
            {
                var roads = await ledgers.RoadsAsync(stop) ?? throw AppliedMap.LacksRoads;
                var onRoads = await ledgers.OfAsync(question => AppliedMap.OnRoads(question with { By = group }), stop);
                using var to = File.Create(file);
                AppliedMap.Write(to, roads, onRoads, group);
            }
            else
            {
                var answer = await ledgers.OfAsync(question => question with { By = group }, stop);
                if (form == "csv") AppliedFile.WriteCsv(file, answer);
                else AppliedFile.WriteParquet(file, answer);
            }

            var type = form switch { "csv" => "text/csv; charset=utf-8", "geojson" => "application/geo+json", _ => "application/vnd.apache.parquet" };
            return Results.File(await File.ReadAllBytesAsync(file, stop), type, $"ledger-by-{group.ToString().ToLowerInvariant()}.{form}");
        }
        catch (LogException wrong)
        {
            return Problems.Answer(404, wrong.Said);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private async Task<IResult> Balance(CancellationToken stop)
    {
        var balance = await data.Season.Balances.DepotsAsync(stop);
        return new RazorComponentResult<SeasonPage>(new Dictionary<string, object?>
        {
            ["Data"] = balance?.Answer, ["Refused"] = Texts(balance), ["Folder"] = data.Season.Place ?? "", ["Invented"] = data.Season.IsInvented,
            ["HasLogs"] = data.Season.Ledgers is { HasRows: true },
        });
    }

    private async Task<IResult> Storms(HttpContext context)
    {
        var balance = await data.Season.Balances.StormsAsync(context.RequestAborted);
        var query = ListQuery.Of(context.Request);
        var found = balance?.Answer.Depots.Where(ledger => query.Finds(ledger.Depot)).ToList();
        return new RazorComponentResult<StormsPage>(new Dictionary<string, object?>
        {
            ["List"] = found?.Skip(query.Skip).Take(ListQuery.PageSize).ToList(), ["Wanted"] = query, ["Count"] = found?.Count ?? 0, ["Outside"] = balance?.Outside ?? 0,
            ["Refused"] = Texts(balance), ["Invented"] = data.Season.IsInvented,
        });
    }

    private async Task<IResult> Storm(string? of, CancellationToken stop)
    {
        if ((await data.Season.Balances.StormsAsync(stop))?.Answer.Depots.FirstOrDefault(ledger => ledger.Depot == of) is not { } ledger)
            return Problems.Answer(404, "There is no ledger at this address.");
        return new RazorComponentResult<StormsPage>(new Dictionary<string, object?> { ["One"] = ledger, ["Invented"] = data.Season.IsInvented });
    }

    private static List<string> Texts(SeasonBalance? balance) => [.. (balance?.Refused ?? []).Select(row => OfficeText.Say(row.Said))];

    internal static Show Show => new(OfficeText.Culture, UnitPreferences.Metric.With(Units.Tonne));
}
