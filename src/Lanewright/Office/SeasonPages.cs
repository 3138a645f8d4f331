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
            return Problems.Answer(404, $"{wrong.Message}");
        }
        finally
        {
            File.Delete(file);
        }
    }

    private async Task<RazorComponentResult<SeasonPage>> Balance(CancellationToken stop)
    {
        if (!data.Season.Has("tickets.csv")) return Page(null, []);
        var season = data.Season.Open(OfficeText.Culture);
        var (tickets, piles) = (season.Tickets(), data.Season.Has("piles.csv") ? season.Piles() : []);
        return Page(new(SeasonLedger.Of(tickets, piles, await LoggedAsync(season, tickets, stop))), season.Refused);
    }

    private async Task<List<LoggedMass>> LoggedAsync(SeasonFolder season, List<LoadTicket> tickets, CancellationToken stop)
    {
        if (data.Season.Has("applied.csv") && data.Season.Has("constants.csv"))
            return season.Applied(Path.Combine(data.Season.Place!, "applied.csv"), season.Constants());
        try
        {
            return SeasonFolder.FromLogs(data.Store.Place.DataFolder!, await data.Season.ConstantsAsync(stop), SeasonFolder.Depots(tickets));
        }
        catch (LogException wrong)
        {
            season.Refused.Add(new("logs", 0, wrong.Message));
            return [];
        }
    }

    private RazorComponentResult<SeasonPage> Page(BalanceAnswer? answer, IReadOnlyList<RefusedRow> refused) =>
        new(new Dictionary<string, object?>
        {
            ["Data"] = answer,
            ["Refused"] = refused.Select(row => row.ToString()).ToList(),
            ["Folder"] = data.Season.Place ?? "",
            ["Invented"] = data.Season.IsInvented,
        });

    internal static Show Show => new(OfficeText.Culture, UnitPreferences.Metric.With(Units.Tonne));
}
