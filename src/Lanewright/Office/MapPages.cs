using Lanewright.Core.Season.Roads;
using Lanewright.Host;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Season;
using Lanewright.Storage.Entries;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>How a road was served against what was asked for.</summary>
public enum RoadState
{
    /// <summary>No logged row lies on it.</summary>
    NotDriven,

    /// <summary>Driven, but no mass or no target is known.</summary>
    NoTarget,

    /// <summary>More than the band below the target.</summary>
    Under,

    /// <summary>Within the band.</summary>
    Within,

    /// <summary>More than the band above the target.</summary>
    Over,
}

/// <summary>A road on the map.</summary>
/// <param name="Segment">The road.</param>
/// <param name="State">How it was served.</param>
/// <param name="Line">What was spread on it; null when nothing was logged.</param>
public sealed record MapRoad(RoadSegment Segment, RoadState State, AppliedLine? Line);

/// <summary>What the map shows.</summary>
/// <param name="Roads">Roads within the view.</param>
/// <param name="All">How many roads there are.</param>
/// <param name="View">West, south, width and height, metres on the network's plane.</param>
/// <param name="Zoom">How much nearer than the whole, a power of two from 0.</param>
/// <param name="Band">Share above and below the target.</param>
public sealed record MapModel(IReadOnlyList<MapRoad> Roads, int All, (double West, double South, double Width, double Height) View, int Zoom, double Band);

/// <summary>The map of what was spread where, drawn from the kept roads; nothing comes from a network.</summary>
internal sealed class MapPages(OfficeData data)
{
    private const double Band = 0.1;
    private const int DeepestZoom = 8;
    private const int MostRoads = 20_000;

    internal void Map(WebApplication app) => app.MapGet("/office/map", context => Show(context).Send(context));

    private async Task<IResult> Show(HttpContext context)
    {
        if (data.Season.Ledgers is not { } ledgers) return Page(null, OfficeText.Say("Records in a database keep no logs; the map needs a data folder."));
        if (!WholeNumber.Read(context.Request.Query["zoom"], out var zoom) || zoom is < 0 or > DeepestZoom)
            return Problems.Wrong(400, "zoom", context.Request.Query["zoom"], $"0 to {DeepestZoom}");
        if (!WholeNumber.Read(context.Request.Query["x"], out var x) || !WholeNumber.Read(context.Request.Query["y"], out var y) || x is > 1000 || y is > 1000)
            return Problems.Wrong(400, "x, y", null, "thousandths of the whole map, 0 to 1000");
        try
        {
            if (await ledgers.RoadsAsync(context.RequestAborted) is not { } network) return Page(null, OfficeText.Say("No roads are kept yet."));
            return Page(Model(network, await LinesAsync(ledgers, context.RequestAborted), (int)(zoom ?? 0), x ?? 500, y ?? 500), null);
        }
        catch (LogException wrong)
        {
            return Page(null, OfficeText.Say(wrong.Said));
        }
    }

    private static async Task<IReadOnlyDictionary<string, AppliedLine>> LinesAsync(SeasonLedgers ledgers, CancellationToken stop)
    {
        if (!ledgers.HasRows) return new Dictionary<string, AppliedLine>();
        var answer = await ledgers.OfAsync(question => question with { By = AppliedBy.Segment, Band = Band }, stop);
        return answer.Lines.Where(line => line.Name.Length > 0).ToDictionary(line => line.Name, StringComparer.Ordinal);
    }

    private static MapModel Model(RoadNetwork network, IReadOnlyDictionary<string, AppliedLine> lines, int zoom, long x, long y)
    {
        var points = network.Segments.SelectMany(segment => segment.Points).ToList();
        var (west, east, south, north) = (points.Min(p => p.X), points.Max(p => p.X), points.Min(p => p.Y), points.Max(p => p.Y));
        // A straight road has a map too.
        var (width, height) = (Math.Max(east - west, 1000), Math.Max(north - south, 1000));
        var part = 1.0 / (1 << zoom);
        var view = (West: west + (width * ((x / 1000.0) - (part / 2))), South: south + (height * ((y / 1000.0) - (part / 2))), Width: width * part, Height: height * part);
        var shown = network.Segments.Where(segment => segment.Points.Any(p =>
                p.X >= view.West - (0.2 * view.Width) && p.X <= view.West + (1.2 * view.Width) && p.Y >= view.South - (0.2 * view.Height) && p.Y <= view.South + (1.2 * view.Height)))
            .Select(segment => new MapRoad(segment, State(lines.GetValueOrDefault(segment.Piece.Id)), lines.GetValueOrDefault(segment.Piece.Id)))
            // Driven roads lie on top of the others, and come first when there are too many.
            .OrderByDescending(road => road.Line is not null).Take(MostRoads).Reverse().ToList();
        return new(shown, network.Segments.Count, view, zoom, Band);
    }

    private static RoadState State(AppliedLine? line) => line switch
    {
        null => RoadState.NotDriven,
        { TargetMass: <= 0 } or { Mass.Value: <= 0 } => RoadState.NoTarget,
        { } known => (known.AppliedOnTarget / known.TargetMass) switch
        {
            < 1 - Band => RoadState.Under,
            > 1 + Band => RoadState.Over,
            _ => RoadState.Within,
        },
    };

    private RazorComponentResult<MapPage> Page(MapModel? map, string? why) =>
        new(new Dictionary<string, object?> { ["Map"] = map, ["Why"] = why, ["Invented"] = data.Season.IsInvented });
}
