using Lanewright.Core.Season.Roads;
using Lanewright.Logs.Store;

namespace Lanewright.Logs.Roads;

/// <summary>What matching a spreader's track came to.</summary>
/// <param name="Spreader">The spreader.</param>
/// <param name="Points">Rows with a place.</param>
/// <param name="Matched">Of those, how many were put on a road.</param>
/// <param name="Breaks">How often no road led on.</param>
/// <param name="Metres">Length of the ways driven, m.</param>
/// <param name="Sigma">Standard deviation of places from their roads as the match shows it, m.</param>
public sealed record RoadMatched(LoggedSpreader Spreader, int Points, int Matched, int Breaks, double Metres, double Sigma);

/// <summary>Finds the road segment of every stored row that has a place.</summary>
public static class RoadMatching
{
    /// <summary>Matches every spreader of a season, or of all, and keeps the segments beside the rows.</summary>
    /// <exception cref="LogException">Something cannot be read or written.</exception>
    public static IEnumerable<RoadMatched> Run(LogFolder folder, RoadNetwork network, MapMatchSettings settings, string? season, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(folder);
        // The journal is read once, not for each spreader.
        var files = folder.Files();
        foreach (var spreader in MatchedSegments.Spreaders(files).Where(one => season is null || one.Season == season))
        {
            stop.ThrowIfCancellationRequested();
            var track = MatchedSegments.Track(files, spreader);
            if (track.Count == 0)
            {
                yield return new(spreader, 0, 0, 0, 0, 0);
                continue;
            }

            var match = new MapMatcher(network, settings)
                .Match([.. track.Select(point => new TracePoint((point.Moment - track[0].Moment) / 1e6, new(point.Latitude, point.Longitude), point.Gap))]);
            var matches = new List<SegmentMatch>();
            for (var i = 0; i < track.Count; i++)
                if (match.Points[i] is { } on) matches.Add(new(track[i].Moment, network.Segments[on.Segment].Piece.Id));
            MatchedSegments.Write(folder, spreader, matches);
            yield return new(spreader, track.Count, matches.Count, match.Breaks, match.Length, match.Sigma);
        }
    }
}
