using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season.Roads;

/// <summary>Where a point of a track was put.</summary>
/// <param name="Segment">Place of the segment in the network.</param>
/// <param name="Along">Metres along its points.</param>
/// <param name="Away">Metres from the point to the road.</param>
public readonly record struct MatchedPoint(int Segment, double Along, double Away);

/// <summary>The roads that a track most likely ran on.</summary>
/// <param name="Network">The roads.</param>
/// <param name="Points">For each point of the track where it was put; null for one that is far from every road.</param>
/// <param name="Ways">The ways driven, one for each unbroken part of the track.</param>
/// <param name="Breaks">How often the track had to be broken because no road led on.</param>
/// <param name="Sigma">Standard deviation from the road as this match shows it, m: 1.4826 times the median distance (Newson and Krumm, eq. 6).</param>
/// <param name="Beta">Mean difference of way and straight line as this match shows it, m: the median divided by ln 2 (eq. 7).</param>
public sealed record MapMatch(
    RoadNetwork Network, IReadOnlyList<MatchedPoint?> Points, IReadOnlyList<IReadOnlyList<RoadStretch>> Ways, int Breaks, double Sigma, double Beta)
{
    /// <summary>Length driven, m.</summary>
    public double Length => Ways.Sum(way => way.Sum(stretch => stretch.Length));

    /// <summary>
    /// How wrong a match is by the measure of Newson and Krumm (2009, section 4): length of the true way that the match lacks plus length
    /// of what it has too much, by the length of the true way. Each metre of a segment counts as often as it was driven, whichever way.
    /// </summary>
    /// <param name="truth">The true way.</param>
    public double ErrorAgainst(IReadOnlyList<RoadStretch> truth)
    {
        ArgumentNullException.ThrowIfNull(truth);
        var driven = Ways.SelectMany(way => way).ToLookup(stretch => stretch.Segment);
        var should = truth.ToLookup(stretch => stretch.Segment);
        var wrong = driven.Select(one => one.Key).Union(should.Select(one => one.Key)).Sum(segment => Differing([.. driven[segment]], [.. should[segment]]));
        return wrong / truth.Sum(stretch => stretch.Length);
    }

    // Metres of a segment, counted by how much oftener one covers them than the other.
    private static double Differing(IReadOnlyList<RoadStretch> a, IReadOnlyList<RoadStretch> b)
    {
        var ends = a.Concat(b).SelectMany(one => new[] { one.From, one.To }).Distinct().Order().ToList();
        var sum = 0.0;
        for (var i = 1; i < ends.Count; i++)
        {
            var middle = (ends[i] + ends[i - 1]) / 2;
            sum += (ends[i] - ends[i - 1]) * Math.Abs(Covering(a, middle) - Covering(b, middle));
        }

        return sum;
    }

    private static int Covering(IReadOnlyList<RoadStretch> stretches, double at) =>
        stretches.Count(one => at > Math.Min(one.From, one.To) && at < Math.Max(one.From, one.To));
}

/// <summary>Gathers what a match found.</summary>
internal sealed class MatchBuilder(RoadNetwork network, int points)
{
    private readonly MatchedPoint?[] matched = new MatchedPoint?[points];
    private readonly List<IReadOnlyList<RoadStretch>> ways = [];
    private readonly List<double> away = [];
    private readonly List<double> differences = [];

    internal int Breaks { get; set; }

    internal void Point(int index, int segment, double along, double distance)
    {
        matched[index] = new(segment, along, distance);
        away.Add(distance);
    }

    internal void Difference(double metres) => differences.Add(metres);

    internal void Way(IReadOnlyList<RoadStretch> way) => ways.Add(way);

    internal MapMatch Done() => new(network, matched, ways, Breaks, 1.4826 * Median(away), Median(differences) / Elementary.Log(2));

    private static double Median(List<double> values)
    {
        if (values.Count == 0) return 0;
        values.Sort();
        return values.Count % 2 == 1 ? values[values.Count / 2] : (values[(values.Count / 2) - 1] + values[values.Count / 2]) / 2;
    }
}
