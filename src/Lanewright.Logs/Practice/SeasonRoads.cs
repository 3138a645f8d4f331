using Lanewright.Core.Practice;
using Lanewright.Core.Season.Roads;
using Lanewright.Logs.Roads;

namespace Lanewright.Logs.Practice;

/// <summary>The roads of an invented season: each route runs straight from its depot, cut into pieces of a kilometre.</summary>
internal sealed class SeasonRoads(SeasonWorld world)
{
    private const double KilometresPerDegree = 111;
    private readonly Dictionary<(int Spreader, int Route), (SeasonSpreader Spreader, GeoPoint Depot, GeoPoint End, double Degrees)> ends = [];

    /// <summary>Takes the place of an interval: the farthest of a route is where its road ends.</summary>
    internal void Row(SeasonSpreader spreader, SeasonInterval row)
    {
        var key = (spreader.Index, row.Route);
        var here = new GeoPoint(row.Latitude, row.Longitude);
        if (!ends.TryGetValue(key, out var known))
        {
            // Trips begin at the depot.
            ends.Add(key, (spreader, here, here, 0));
            return;
        }

        var (up, over) = (here.Latitude - known.Depot.Latitude, here.Longitude - known.Depot.Longitude);
        var degrees = Math.Sqrt((up * up) + (over * over));
        if (degrees > known.Degrees) ends[key] = known with { End = here, Degrees = degrees };
    }

    internal void Write(string file)
    {
        var pieces = new List<RoadPiece>();
        foreach (var ((_, route), (spreader, depot, end, degrees)) in ends.Where(one => one.Value.Degrees > 0).OrderBy(one => one.Key))
        {
            var count = Math.Max(1, (int)(degrees * KilometresPerDegree));
            for (var i = 0; i < count; i++)
            {
                pieces.Add(new(
                    $"{spreader.Name} road {route + 1}, km {i + 1}", $"Road {route + 1} out of {world.Depots[spreader.Depot]} (invented)", "", "", [At(i), At(i + 1)],
                    IsTwoWay: true, 2, 7.2));
            }

            GeoPoint At(int i) => new(
                depot.Latitude + ((end.Latitude - depot.Latitude) * i / count), depot.Longitude + ((end.Longitude - depot.Longitude) * i / count));
        }

        using var to = File.Create(file);
        GeoJson.Write(to, pieces);
    }
}
