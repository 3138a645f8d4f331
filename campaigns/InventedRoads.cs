using Lanewright.Core.Season.Roads;
using Lanewright.Core.Statistics;

namespace Lanewright.Campaigns;

/// <summary>A town's roads and a drive over them, all invented: the true way is known.</summary>
internal static class InventedRoads
{
    private const double Degree = 111_195; // metres of a degree of latitude on the sphere of 6371 km
    private const double Latitude = 45;

    /// <summary>A grid of bent streets, some missing, some one-way, with a dual carriageway whose halves lie 14 m apart.</summary>
    internal static List<RoadPiece> Town(int size, ulong seed)
    {
        var random = new RandomSource(seed, 1);
        var corners = new (double X, double Y)[size, size];
        for (var i = 0; i < size; i++)
            for (var j = 0; j < size; j++)
                corners[i, j] = ((i * 160) + (40 * random.NextDouble()), (j * 140) + (40 * random.NextDouble()));
        var pieces = new List<RoadPiece>();
        for (var i = 0; i < size; i++)
            for (var j = 0; j < size; j++)
            {
                if (i + 1 < size && random.NextInt(12) > 0) Street(i, j, i + 1, j);
                if (j + 1 < size && random.NextInt(12) > 0) Street(i, j, i, j + 1);
            }

        return pieces;

        void Street(int i, int j, int k, int l)
        {
            var (a, b) = (corners[i, j], corners[k, l]);
            var middle = (X: ((a.X + b.X) / 2) + (20 * (random.NextDouble() - 0.5)), Y: ((a.Y + b.Y) / 2) + (20 * (random.NextDouble() - 0.5)));
            var (from, to) = ($"{i}/{j}", $"{k}/{l}");
            var id = $"{from} {to}";
            // One street in the middle is a dual carriageway.
            if (j == l && j == size / 2)
            {
                pieces.Add(new(id + " a", "", from, to, [Geo(a), Geo((middle.X, middle.Y - 7)), Geo(b)], IsTwoWay: false, 2));
                pieces.Add(new(id + " b", "", to, from, [Geo(b), Geo((middle.X, middle.Y + 7)), Geo(a)], IsTwoWay: false, 2));
                return;
            }

            pieces.Add(new(id, "", from, to, [Geo(a), Geo(middle), Geo(b)], IsTwoWay: random.NextInt(8) > 0, 2));
        }
    }

    /// <summary>A drive without turning on the spot, about so long, m; with a stop at some corners.</summary>
    internal static (List<RoadStretch> Way, List<TracePoint> Track) Drive(RoadNetwork network, double metres, double everySeconds, double noise, ulong seed)
    {
        var random = new RandomSource(seed, 2);
        var way = new List<RoadStretch>();
        var track = new List<TracePoint>();
        var ends = network.Segments.Select(segment => (segment.Piece.From, segment.Piece.To)).ToList();
        var current = random.NextInt(ends.Count);
        var backwards = false;
        var (driven, clock, next) = (0.0, 0.0, 0.0);
        while (driven < metres)
        {
            var segment = network.Segments[current];
            way.Add(backwards ? new(current, segment.Length, 0) : new(current, 0, segment.Length));
            var speed = 6 + (7 * random.NextDouble());
            for (var end = clock + (segment.Length / speed); next <= end; next += everySeconds)
            {
                var along = (next - clock) * speed;
                track.Add(new(next, Noisy(At(segment, backwards ? segment.Length - along : along))));
            }

            clock += segment.Length / speed;
            driven += segment.Length;
            var node = backwards ? ends[current].From : ends[current].To;
            var onward = Enumerable.Range(0, ends.Count)
                .SelectMany(i => new (int Segment, bool Backwards, string Node)[] { (i, false, ends[i].From), (i, true, ends[i].To) })
                .Where(one => one.Node == node && one.Segment != current && (!one.Backwards || network.Segments[one.Segment].Piece.IsTwoWay)).ToList();
            // The other half of the dual carriageway is a turn too.
            onward.RemoveAll(one => ends[one.Segment].To == (backwards ? ends[current].To : ends[current].From) && ends[one.Segment].From == node);
            if (onward.Count == 0) break;
            (current, backwards, _) = onward[random.NextInt(onward.Count)];
            if (random.NextInt(6) == 0)
                for (var stop = clock + 20; clock < stop; clock += everySeconds, next = Math.Max(next, clock)) { }
        }

        return (way, track);

        GeoPoint Noisy(PlanePoint at)
        {
            var middle = network.Place(new(Latitude, 0));
            var perDegree = network.Place(new(Latitude, 1)).X - middle.X;
            var (x, y) = (at.X + (noise * random.NextNormal()), at.Y + (noise * random.NextNormal()));
            return new(Latitude + ((y - middle.Y) / (network.Place(new(Latitude + 1, 0)).Y - middle.Y)), (x - middle.X) / perDegree);
        }
    }

    /// <summary>The place so far along a segment.</summary>
    internal static PlanePoint At(RoadSegment segment, double along)
    {
        for (var i = 1; i < segment.Points.Count; i++)
        {
            var (a, b) = (segment.Points[i - 1], segment.Points[i]);
            var length = a.To(b);
            if (along <= length || i == segment.Points.Count - 1)
            {
                var share = Math.Clamp(along / length, 0, 1);
                return new(a.X + (share * (b.X - a.X)), a.Y + (share * (b.Y - a.Y)));
            }

            along -= length;
        }

        return segment.Points[^1];
    }

    private static GeoPoint Geo((double X, double Y) at) =>
        new(Latitude + (at.Y / Degree), at.X / (Degree * Math.Cos(Latitude * Math.PI / 180)));
}
