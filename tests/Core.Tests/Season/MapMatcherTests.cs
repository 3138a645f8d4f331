using Lanewright.Campaigns;
using Lanewright.Core.Season.Roads;

namespace Lanewright.Core.Tests.Season;

public sealed class MapMatcherTests
{
    // One degree of latitude is 111.195 km on this sphere; at the equator one of longitude too.
    private const double Metre = 1 / 111_195.0797;

    private static RoadPiece Road(string id, string from, string to, bool twoWay, params (double X, double Y)[] points) =>
        new(id, id, from, to, [.. points.Select(point => Geo(point.X, point.Y))], twoWay);

    private static GeoPoint Geo(double x, double y) => new(y * Metre, x * Metre);

    private static MapMatch Match(RoadNetwork network, params (double Seconds, double X, double Y)[] track) =>
        new MapMatcher(network, new()).Match([.. track.Select(point => new TracePoint(point.Seconds, Geo(point.X, point.Y)))]);

    [Fact]
    public void A_bridge_over_a_road_is_not_taken_for_a_crossing()
    {
        // Two roads cross without meeting; the nearest road at the crossing is the wrong one.
        var network = new RoadNetwork([Road("below", "a", "b", true, (-500, 0), (500, 0)), Road("above", "c", "d", true, (0, -500), (0, 500))]);
        var match = Match(network, (0, -100, 3), (10, -20, 2), (20, 1, 9), (30, 60, -4), (40, 150, 2));
        Assert.All(match.Points, point => Assert.Equal("below", network.Segments[point!.Value.Segment].Piece.Id));
        var way = Assert.Single(match.Ways);
        Assert.Equal(new RoadStretch(0, 400, 650), Assert.Single(way), new Close(0.01));
        Assert.Equal(0, match.Breaks);
    }

    [Fact]
    public void The_way_between_far_points_runs_over_the_roads_and_obeys_one_way_streets()
    {
        // A block: the direct street is one-way against the drive, so the way leads around it.
        var network = new RoadNetwork(
        [
            Road("west", "0", "a", true, (-400, 0), (0, 0)), Road("direct", "b", "a", false, (200, 0), (0, 0)), Road("up", "a", "c", true, (0, 0), (0, 150)),
            Road("over", "c", "d", true, (0, 150), (200, 150)), Road("down", "d", "b", true, (200, 150), (200, 0)), Road("east", "b", "1", true, (200, 0), (600, 0)),
        ]);
        var match = Match(network, (0, -300, 0), (20, -50, 1), (60, 260, 0), (80, 500, -1));
        Assert.Equal(
            ["west", "up", "over", "down", "east"], Assert.Single(match.Ways).Select(stretch => network.Segments[stretch.Segment].Piece.Id));
        Assert.Equal(300 + 150 + 200 + 150 + 300, match.Length, 0.1);
        Assert.Equal(0, match.ErrorAgainst(Assert.Single(match.Ways)));
        // Half of the true way missing, nothing too much.
        Assert.Equal(0.5, match.ErrorAgainst([.. match.Ways[0], .. match.Ways[0]]), 1e-12);
    }

    [Fact]
    public void Points_far_from_roads_pauses_and_leaps_break_the_way()
    {
        var network = new RoadNetwork([Road("a", "0", "1", true, (0, 0), (2000, 0)), Road("island", "2", "3", true, (0, 1900), (2000, 1900))]);
        var match = Match(
            network, (0, 0, 0), (10, 100, 0), (20, 150, 900), (30, 200, 0), (40, 300, 0), (400, 400, 0), (410, 500, 0), (420, 600, 1900), (430, 700, 1900));
        Assert.Equal([true, true, false, true, true, true, true, true, true], match.Points.Select(point => point is not null));
        Assert.Equal([100, 100, 100, 100], match.Ways.Select(way => Math.Round(way.Sum(stretch => stretch.Length), 3)));
        Assert.Equal(1, match.Breaks);
    }

    [Fact]
    public void A_standing_vehicle_drives_nowhere()
    {
        var network = new RoadNetwork([Road("a", "0", "1", false, (0, 0), (1000, 0))]);
        var random = new Lanewright.Core.Statistics.RandomSource(5, 1);
        var match = Match(network, [.. Enumerable.Range(0, 200).Select(i => ((double)i, 500 + (2 * random.NextNormal()), 2 * random.NextNormal()))]);
        Assert.Equal(200, match.Points.Count(point => point is not null));
        Assert.InRange(match.Length, 0, 30);
    }

    [Theory]
    [InlineData(1, 4.07, 0.02)]
    [InlineData(5, 4.07, 0.02)]
    [InlineData(10, 4.07, 0.03)]
    [InlineData(10, 10, 0.06)]
    public void On_invented_roads_the_true_way_is_found(double everySeconds, double noise, double most)
    {
        var network = new RoadNetwork(InventedRoads.Town(20, 3));
        var (way, track) = InventedRoads.Drive(network, 30_000, everySeconds, noise, 7);
        var match = new MapMatcher(network, new() { Sigma = noise }).Match(track);
        Assert.True(track.Count > 60);
        Assert.InRange(match.ErrorAgainst(way), 0, most);
        Assert.Equal(track.Count, match.Points.Count(point => point is not null));
    }

    [Fact]
    public void Pieces_that_make_no_network_and_times_that_fall_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new RoadNetwork([]));
        Assert.Throws<ArgumentException>(() => new RoadNetwork([Road("a", "0", "1", true, (0, 0))]));
        var road = Road("a", "0", "1", true, (0, 0), (10, 0));
        Assert.Throws<ArgumentException>(() => new RoadNetwork([road, road]));
        Assert.Throws<ArgumentException>(() => Match(new([road]), (10, 0, 0), (9, 1, 0)));
    }

    private sealed class Close(double metres) : IEqualityComparer<RoadStretch>
    {
        public bool Equals(RoadStretch x, RoadStretch y) =>
            x.Segment == y.Segment && Math.Abs(x.From - y.From) < metres && Math.Abs(x.To - y.To) < metres;

        public int GetHashCode(RoadStretch obj) => obj.Segment;
    }
}
