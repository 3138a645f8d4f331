namespace Lanewright.Core.Season.Roads;

/// <summary>A stretch of a segment that was driven: from and to, metres along its points; from is greater when driven backwards.</summary>
public readonly record struct RoadStretch(int Segment, double From, double To)
{
    /// <summary>Length, m.</summary>
    public double Length => Math.Abs(To - From);
}

/// <summary>Shortest ways over a network from one place, by Dijkstra's method (1959), no farther than a limit.</summary>
internal sealed class RoadRoutes(RoadNetwork network)
{
    private readonly double[] distance = new double[network.Nodes];
    private readonly (int Segment, bool Backwards)[] by = new (int, bool)[network.Nodes];
    private readonly int[] stamp = new int[network.Nodes];
    private readonly PriorityQueue<int, double> queue = new();
    private int round;
    private int fromSegment;
    private double fromAlong;

    /// <summary>Looks from a place on a segment.</summary>
    internal void From(int segment, double along, double limit)
    {
        (fromSegment, fromAlong) = (segment, along);
        round++;
        queue.Clear();
        var start = network.Segments[segment];
        Reach(start.To, start.Length - along, (segment, false), limit);
        if (start.Piece.IsTwoWay) Reach(start.From, along, (segment, true), limit);
        while (queue.TryDequeue(out var node, out var far))
        {
            if (far > distance[node]) continue;
            foreach (var (next, backwards) in network.Leaving(node))
            {
                var one = network.Segments[next];
                Reach(backwards ? one.From : one.To, far + one.Length, (next, backwards), limit);
            }
        }
    }

    /// <summary>Length of the way to a place, m; infinite beyond the limit. Standing in a one-way road, a step back by noise is none.</summary>
    internal double To(int segment, double along, double slack)
    {
        var best = double.PositiveInfinity;
        var target = network.Segments[segment];
        if (segment == fromSegment)
        {
            if (along >= fromAlong || target.Piece.IsTwoWay) best = Math.Abs(along - fromAlong);
            else if (fromAlong - along <= slack) best = 0;
        }

        if (Known(target.From)) best = Math.Min(best, distance[target.From] + along);
        if (target.Piece.IsTwoWay && Known(target.To)) best = Math.Min(best, distance[target.To] + target.Length - along);
        return best;
    }

    /// <summary>The stretches of the way to a place, which <see cref="To"/> found; the first begins where the look began.</summary>
    internal List<RoadStretch> Way(int segment, double along, double slack)
    {
        var length = To(segment, along, slack);
        var target = network.Segments[segment];
        if (segment == fromSegment && ((along >= fromAlong || target.Piece.IsTwoWay) ? Math.Abs(along - fromAlong) <= length : fromAlong - along <= slack))
            return [new(segment, fromAlong, along)];
        var forward = Known(target.From) && distance[target.From] + along <= length;
        var way = new List<RoadStretch> { forward ? new(segment, 0, along) : new(segment, target.Length, along) };
        var node = forward ? target.From : target.To;
        while (true)
        {
            var (number, backwards) = by[node];
            var one = network.Segments[number];
            // Only the first stretch begins within a segment; its node was reached over no more than the rest of it.
            if (number == fromSegment && distance[node] <= (backwards ? fromAlong : one.Length - fromAlong))
            {
                way.Add(new(number, fromAlong, backwards ? 0 : one.Length));
                break;
            }

            way.Add(backwards ? new(number, one.Length, 0) : new(number, 0, one.Length));
            node = backwards ? one.To : one.From;
        }

        way.Reverse();
        return way;
    }

    private bool Known(int node) => stamp[node] == round;

    private void Reach(int node, double far, (int, bool) over, double limit)
    {
        if (far > limit || (Known(node) && distance[node] <= far)) return;
        (distance[node], by[node], stamp[node]) = (far, over, round);
        queue.Enqueue(node, far);
    }
}
