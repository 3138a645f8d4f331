using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season.Roads;

/// <summary>A place on the earth, degrees (WGS 84). Latitude from -90 to 90, longitude from -180 to 180.</summary>
public readonly record struct GeoPoint(double Latitude, double Longitude);

/// <summary>A place on the plane of a network, metres east and north of its middle.</summary>
public readonly record struct PlanePoint(double X, double Y)
{
    /// <summary>Distance in metres.</summary>
    public double To(PlanePoint other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));
}

/// <summary>A piece of road as a file gives it: it is entered and left at its ends only.</summary>
/// <param name="Id">Its identity; each only once in a network.</param>
/// <param name="Name">The road's name or number; may be empty.</param>
/// <param name="From">Node at its first point; pieces meet where nodes are equal.</param>
/// <param name="To">Node at its last point.</param>
/// <param name="Points">At least two places.</param>
/// <param name="IsTwoWay">Whether it is driven both ways; else only as its points run.</param>
/// <param name="Lanes">How many lanes, both ways together; null when not known.</param>
/// <param name="Width">Width of the carriageway, m; null when not known.</param>
public sealed record RoadPiece(
    string Id, string Name, string From, string To, IReadOnlyList<GeoPoint> Points, bool IsTwoWay, double? Lanes = null, double? Width = null);

/// <summary>A piece of road on the plane of its network.</summary>
public sealed class RoadSegment
{
    internal RoadSegment(RoadPiece piece, int from, int to, PlanePoint[] points)
    {
        (Piece, From, To, Points) = (piece, from, to, points);
        Distances = new double[points.Length];
        for (var i = 1; i < points.Length; i++) Distances[i] = Distances[i - 1] + points[i - 1].To(points[i]);
    }

    /// <summary>What the file says of it.</summary>
    public RoadPiece Piece { get; }

    /// <summary>Length, m.</summary>
    public double Length => Distances[^1];

    /// <summary>Its points on the network's plane.</summary>
    public IReadOnlyList<PlanePoint> Points { get; }

    internal int From { get; }

    internal int To { get; }

    internal double[] Distances { get; }

    /// <summary>The nearest place of the segment: how far along, m, and how far away, m.</summary>
    internal (double Along, double Away) Nearest(PlanePoint point)
    {
        var (along, away) = (0.0, double.PositiveInfinity);
        for (var i = 1; i < Points.Count; i++)
        {
            var (a, b) = (Points[i - 1], Points[i]);
            var (dx, dy) = (b.X - a.X, b.Y - a.Y);
            var square = (dx * dx) + (dy * dy);
            var share = square > 0 ? Math.Clamp((((point.X - a.X) * dx) + ((point.Y - a.Y) * dy)) / square, 0, 1) : 0;
            var distance = point.To(new(a.X + (share * dx), a.Y + (share * dy)));
            if (distance >= away) continue;
            (along, away) = (Distances[i - 1] + (share * (Distances[i] - Distances[i - 1])), distance);
        }

        return (along, away);
    }
}

/// <summary>
/// Roads on a plane: east and north in metres from the middle of the network, by the length of a degree on a sphere of 6 371 008.8 m
/// (mean radius, IUGG) at the middle's latitude. Over 50 km north to south at 60° an east-west length is off by up to 0.7 %.
/// </summary>
public sealed class RoadNetwork
{
    private const double Radius = 6_371_008.8;
    private const double Radian = Math.PI / 180;
    private const double Cell = 200;
    private readonly Dictionary<(int X, int Y), List<int>> cells = [];
    private readonly List<(int Segment, bool Backwards)>[] leaving;
    private readonly double middleLatitude;
    private readonly double middleLongitude;
    private readonly double shrink;

    /// <summary>A network of pieces.</summary>
    /// <exception cref="ArgumentException">There is no piece, one has fewer than two points, or two have one identity.</exception>
    public RoadNetwork(IReadOnlyList<RoadPiece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        if (pieces.Count == 0) throw new ArgumentException("A network needs at least one piece of road.", nameof(pieces));
        if (pieces.Any(piece => piece.Points.Count < 2)) throw new ArgumentException("A piece of road needs at least two points.", nameof(pieces));
        if (pieces.DistinctBy(piece => piece.Id).Count() != pieces.Count) throw new ArgumentException("Two pieces have one identity.", nameof(pieces));
        var all = pieces.SelectMany(piece => piece.Points).ToList();
        middleLatitude = (all.Min(point => point.Latitude) + all.Max(point => point.Latitude)) / 2;
        middleLongitude = (all.Min(point => point.Longitude) + all.Max(point => point.Longitude)) / 2;
        shrink = Elementary.Cos(middleLatitude * Radian);
        var nodes = new Dictionary<string, int>(StringComparer.Ordinal);
        Segments = [.. pieces.Select(piece => new RoadSegment(piece, Node(piece.From), Node(piece.To), [.. piece.Points.Select(Place)]))];
        leaving = [.. Enumerable.Range(0, nodes.Count).Select(_ => new List<(int, bool)>())];
        for (var i = 0; i < Segments.Count; i++)
        {
            var segment = Segments[i];
            leaving[segment.From].Add((i, false));
            if (segment.Piece.IsTwoWay) leaving[segment.To].Add((i, true));
            Enter(i, segment);
        }

        int Node(string name)
        {
            if (!nodes.TryGetValue(name, out var number)) nodes.Add(name, number = nodes.Count);
            return number;
        }
    }

    /// <summary>Every segment.</summary>
    public IReadOnlyList<RoadSegment> Segments { get; }

    internal int Nodes => leaving.Length;

    /// <summary>A place on the plane.</summary>
    public PlanePoint Place(GeoPoint point) => new(
        (point.Longitude - middleLongitude) * Radian * Radius * shrink, (point.Latitude - middleLatitude) * Radian * Radius);

    /// <summary>Segments that leave a node, and whether against their points.</summary>
    internal IReadOnlyList<(int Segment, bool Backwards)> Leaving(int node) => leaving[node];

    /// <summary>Segments within a distance of a place, the nearest first.</summary>
    internal List<(int Segment, double Along, double Away)> Near(PlanePoint point, double within, int most)
    {
        var found = new HashSet<int>();
        for (var x = Index(point.X - within); x <= Index(point.X + within); x++)
            for (var y = Index(point.Y - within); y <= Index(point.Y + within); y++)
                if (cells.TryGetValue((x, y), out var some)) found.UnionWith(some);
        var near = new List<(int Segment, double Along, double Away)>();
        foreach (var i in found)
        {
            var (along, away) = Segments[i].Nearest(point);
            if (away <= within) near.Add((i, along, away));
        }

        // Equally far ones in the order of the file, so that the same roads give the same answer.
        near.Sort((a, b) => a.Away != b.Away ? a.Away.CompareTo(b.Away) : a.Segment.CompareTo(b.Segment));
        if (near.Count > most) near.RemoveRange(most, near.Count - most);
        return near;
    }

    private void Enter(int number, RoadSegment segment)
    {
        for (var i = 1; i < segment.Points.Count; i++)
        {
            var (a, b) = (segment.Points[i - 1], segment.Points[i]);
            // A long straight piece touches few of the cells of its box: go along it.
            var steps = (int)(a.To(b) / Cell) + 1;
            for (var step = 0; step < steps; step++)
            {
                var (p, q) = (Between(a, b, (double)step / steps), Between(a, b, (double)(step + 1) / steps));
                for (var x = Index(Math.Min(p.X, q.X)); x <= Index(Math.Max(p.X, q.X)); x++)
                    for (var y = Index(Math.Min(p.Y, q.Y)); y <= Index(Math.Max(p.Y, q.Y)); y++)
                    {
                        if (!cells.TryGetValue((x, y), out var here)) cells.Add((x, y), here = []);
                        if (here.Count == 0 || here[^1] != number) here.Add(number);
                    }
            }
        }
    }

    private static PlanePoint Between(PlanePoint a, PlanePoint b, double share) => new(a.X + (share * (b.X - a.X)), a.Y + (share * (b.Y - a.Y)));

    private static int Index(double metres) => (int)Math.Floor(metres / Cell);
}
