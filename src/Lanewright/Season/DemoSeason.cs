using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Season;

/// <summary>
/// The demo's season: some of its spreaders through the two months before today, with logs, tickets, piles, checks and roads. One
/// has drifted, and of another one the ticket of a load is lost. All of it is invented.
/// </summary>
internal static class DemoSeason
{
    private const int Days = 60;
    private const int OfDepot = 4;
    private const double MostOff = 0.006;

    /// <summary>Writes the season into the records' data folder and takes its logs in.</summary>
    internal static async Task WriteAsync(EntryStore store, ulong seed, DateOnly today, CancellationToken stop)
    {
        var begins = today.AddDays(-Days);
        var depots = (await store.RegisterAsync(RegisterKind.Spreader.Word, stop)).ToDictionary(
            item => OfficeText.Member(item.Payload, "id"), item => OfficeText.Member(item.Payload, "depot"), StringComparer.Ordinal);
        // The season's controllers reckon with what the records say they were given.
        var fleet = (await RecordConstants.OfAsync(store, stop))
            .Where(constant => constant.To is null && DateOnly.FromDateTime(constant.From.UtcDateTime) < begins && depots.ContainsKey(constant.Spreader))
            .GroupBy(constant => depots[constant.Spreader], StringComparer.Ordinal)
            .OrderByDescending(depot => Math.Min(depot.Count(), OfDepot)).ThenBy(depot => depot.Key, StringComparer.Ordinal).Take(2)
            // Those whose constants are known best.
            .SelectMany(depot => depot.OrderBy(Known).Take(OfDepot).Select(constant => (Depot: depot.Key, Constant: constant)))
            .ToList();
        if (fleet.Count == 0) return;
        var world = SeasonWorld.Make(new()
        {
            Seed = seed, Interval = 60, Storms = 4, Begins = begins, Days = Days,
            // The second of the first depot puts down too little from the third week on; the first of the last lacks a ticket.
            Fleet = [.. fleet.Select((one, i) => new SeasonUnit(
                one.Constant.Spreader, one.Depot, one.Constant.MassPerCount, Math.Min(MostOff, Relative(one.Constant)), i == 1 ? -0.08 : 0, 20))],
            LostTicketOf = fleet.First(one => one.Depot == fleet[^1].Depot).Constant.Spreader,
        });
        var place = Path.Combine(store.Place.DataFolder!, "season");
        // Whole or not at all, for whoever looks meanwhile.
        SeasonWriter.Write(world, place + ".draft");
        File.Delete(Path.Combine(place + ".draft", "constants.csv"));
        Directory.Move(place + ".draft", place);
        var folder = new LogFolder(store.Place.DataFolder!);
        foreach (var logs in Directory.GetFiles(Path.Combine(place, "logs")).GroupBy(file => Path.GetFileName(file).Split('-')[0], StringComparer.Ordinal))
        {
            using var import = LogImport.Begin(folder, LogProfileReader.Read(await File.ReadAllTextAsync(Path.Combine(place, "profiles", logs.Key + ".json"), stop)));
            foreach (var file in logs.Order(StringComparer.Ordinal)) import.Take(file, null, stop);
        }

        RoadStore.Write(folder, RoadFile.Read(Path.Combine(place, "roads.geojson")).Pieces);
    }

    /// <summary>Puts the season's logs on its roads. It takes a while, and the other pages need not wait for it.</summary>
    internal static void Match(string data, CancellationToken stop)
    {
        var folder = new LogFolder(data);
        if (RoadStore.Read(folder) is not { } roads) return;
        foreach (var _ in RoadMatching.Run(folder, roads, new MapMatchSettings(), null, stop))
        {
        }
    }

    private static double Relative(SeasonConstant constant) => Math.Sqrt(constant.Relative.Sum(part => part.Amount * part.Amount));

    private static double Known(SeasonConstant constant) => WelchSatterthwaite.Of(AppliedMass.Of([new(constant, 1 / constant.MassPerCount, 0)], ""), 0.95).Expanded;
}
