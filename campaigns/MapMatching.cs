using System.Globalization;
using Lanewright.Core.Season.Roads;

namespace Lanewright.Campaigns;

/// <summary>
/// How wrong map matching is, by the measure of Newson and Krumm (2009): on invented roads with a known way, and on their published trace
/// and roads (Seattle; gps_data.txt, road_network.txt, ground_truth_route.txt) when a folder that holds them is given.
/// </summary>
internal static class MapMatching
{
    internal static int Run(int drives, string? folder)
    {
        Console.WriteLine("invented town of 20 x 20 corners, drives of 30 km each; error = (length lacking + length too much) / true length");
        foreach (var noise in (double[])[4.07, 10, 20])
        {
            foreach (var every in (double[])[1, 5, 10, 30])
            {
                var errors = new List<double>();
                var points = 0;
                var clock = System.Diagnostics.Stopwatch.StartNew();
                for (var seed = 1; seed <= drives; seed++)
                {
                    var network = new RoadNetwork(InventedRoads.Town(20, (ulong)seed));
                    var (way, track) = InventedRoads.Drive(network, 30_000, every, noise, (ulong)seed);
                    clock.Start();
                    errors.Add(new MapMatcher(network, new() { Sigma = noise }).Match(track).ErrorAgainst(way));
                    clock.Stop();
                    points += track.Count;
                }

                errors.Sort();
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"  noise {noise,5:0.00} m, every {every,2:0} s: mean {errors.Average(),7:0.00 %}, median {errors[errors.Count / 2],7:0.00 %}, worst {errors[^1],7:0.00 %} of {drives}; {points / clock.Elapsed.TotalSeconds,8:0} points/s"));
            }
        }

        return folder is null ? 0 : Published(folder);
    }

    private static int Published(string folder)
    {
        var pieces = new List<RoadPiece>();
        foreach (var line in File.ReadLines(Path.Combine(folder, "road_network.txt")).Skip(1))
        {
            var cells = line.Split('\t');
            var text = cells[6][(cells[6].IndexOf('(', StringComparison.Ordinal) + 1)..cells[6].LastIndexOf(')')];
            pieces.Add(new(
                cells[0], "", cells[1], cells[2],
                [.. text.Split(',').Select(pair => pair.Trim().Split(' ')).Select(pair => new GeoPoint(Number(pair[1]), Number(pair[0])))], cells[3] == "1"));
        }

        var network = new RoadNetwork(pieces);
        var places = network.Segments.Select((segment, i) => (segment.Piece.Id, i)).ToDictionary(one => one.Id, one => one.i, StringComparer.Ordinal);
        var track = new List<TracePoint>();
        foreach (var line in File.ReadLines(Path.Combine(folder, "gps_data.txt")).Skip(1))
        {
            var cells = line.Split('\t');
            var at = DateTime.Parse(cells[0] + " " + cells[1], CultureInfo.InvariantCulture);
            track.Add(new((at - new DateTime(2009, 1, 1)).TotalSeconds, new(Number(cells[2]), Number(cells[3]))));
        }

        var truth = new List<RoadStretch>();
        foreach (var line in File.ReadLines(Path.Combine(folder, "ground_truth_route.txt")).Skip(1))
        {
            var cells = line.Split('\t');
            if (!places.TryGetValue(cells[0], out var segment)) continue;
            var length = network.Segments[segment].Length;
            truth.Add(cells[1] == "1" ? new(segment, 0, length) : new(segment, length, 0));
        }

        foreach (var every in (double[])[1, 5, 10, 30, 60])
        {
            var thin = track.Where((_, i) => i % (int)every == 0).ToList();
            var match = new MapMatcher(network, new()).Match(thin);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"published trace, every {every,2:0} s: error {match.ErrorAgainst(truth):0.00 %}; sigma {match.Sigma:0.00} m, beta {match.Beta:0.00} m, {match.Breaks} breaks"));
        }

        return 0;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
