using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Logs;
using Lanewright.Print;
using Lanewright.Season;
using Lanewright.Storage;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Where the salt went: the balance of tickets, piles and logs in the folder <c>season</c> of the data folder.</summary>
internal static class SeasonPages
{
    internal const string Folder = "season";

    internal static void Map(WebApplication app, EntryStore store) => app.MapGet("/office/season", () => Balance(store));

    private static RazorComponentResult<SeasonPage> Balance(EntryStore store)
    {
        var data = store.Place.DataFolder;
        var folder = data is null ? null : Path.Combine(data, Folder);
        if (folder is null || !File.Exists(Path.Combine(folder, "tickets.csv"))) return Page(null, [], folder);
        var season = new SeasonFolder(folder, OfficeText.Culture);
        var (tickets, piles) = (season.Tickets(), File.Exists(Path.Combine(folder, "piles.csv")) ? season.Piles() : []);
        return Page(new(SeasonLedger.Of(tickets, piles, Logged(season, folder, data!))), season.Refused, folder);
    }

    private static List<LoggedMass> Logged(SeasonFolder season, string folder, string data)
    {
        if (!File.Exists(Path.Combine(folder, "constants.csv"))) return [];
        var constants = season.Constants();
        if (File.Exists(Path.Combine(folder, "applied.csv"))) return season.Applied(Path.Combine(folder, "applied.csv"), constants);
        try
        {
            return season.FromLogs(data, constants);
        }
        catch (LogException wrong)
        {
            season.Refused.Add(new("logs", 0, wrong.Message));
            return [];
        }
    }

    private static RazorComponentResult<SeasonPage> Page(BalanceAnswer? answer, IReadOnlyList<RefusedRow> refused, string? folder) =>
        new(new Dictionary<string, object?>
        {
            ["Data"] = answer,
            ["Refused"] = refused.Select(row => row.ToString()).ToList(),
            ["Folder"] = folder ?? "",
        });

    internal static Show Show => new(OfficeText.Culture, UnitPreferences.Metric.With(Units.Tonne));
}
