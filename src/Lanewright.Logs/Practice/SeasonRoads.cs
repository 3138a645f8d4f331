using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Core.Season.Roads;
using Lanewright.Logs.Roads;

namespace Lanewright.Logs.Practice;

/// <summary>The roads of an invented season: each route runs straight from its depot, cut into pieces of a kilometre.</summary>
internal sealed class SeasonRoads(SeasonWorld world)
{
    private const double KilometresPerDegree = 111;
    private const double Lanes = 2;
    private readonly Dictionary<(int Spreader, int Route), (SeasonSpreader Spreader, GeoPoint Depot, GeoPoint End, double Degrees)> ends = [];

    /// <summary>What logs call a route: each depot has its own.</summary>
    internal static string RouteName(SeasonSpreader spreader, int route) => string.Create(CultureInfo.InvariantCulture, $"R{spreader.Depot + 1}{route}");

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

    /// <summary>Writes the roads, and a table of the routes with an invented watershed and the length of all their lanes.</summary>
    internal void Write(string file, TextWriter routes)
    {
        var pieces = new List<RoadPiece>();
        var served = new List<(string Route, string Watershed)>();
        foreach (var ((_, route), (spreader, depot, end, degrees)) in ends.Where(one => one.Value.Degrees > 0).OrderBy(one => one.Key))
        {
            var count = Math.Max(1, (int)(degrees * KilometresPerDegree));
            for (var i = 0; i < count; i++)
            {
                pieces.Add(new(
                    $"{spreader.Name} road {route + 1}, km {i + 1}", $"Road {route + 1} out of {world.Depots[spreader.Depot]} (invented)", "", "", [At(i), At(i + 1)],
                    IsTwoWay: true, Lanes, 7.2));
                served.Add((RouteName(spreader, route), $"{world.Depots[spreader.Depot]} {(route == 2 ? "lake" : "creek")} (invented)"));
            }

            GeoPoint At(int i) => new(
                depot.Latitude + ((end.Latitude - depot.Latitude) * i / count), depot.Longitude + ((end.Longitude - depot.Longitude) * i / count));
        }

        using var to = File.Create(file);
        GeoJson.Write(to, pieces);
        if (pieces.Count == 0) return;
        foreach (var one in new RoadNetwork(pieces).Segments.Zip(served).GroupBy(piece => piece.Second))
            routes.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{one.Key.Route},{one.Key.Watershed},{Lanes * one.Sum(piece => piece.First.Length):0}"));
    }
}
