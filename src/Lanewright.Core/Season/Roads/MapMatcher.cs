namespace Lanewright.Core.Season.Roads;

/// <summary>A place of a vehicle.</summary>
/// <param name="Seconds">When, in seconds from any begin; not falling.</param>
/// <param name="Place">Where.</param>
/// <param name="Gap">Whether the vehicle may have been anywhere since the point before.</param>
public readonly record struct TracePoint(double Seconds, GeoPoint Place, bool Gap = false);

/// <summary>What map matching assumes. Defaults are those of Newson and Krumm (2009) unless said otherwise.</summary>
public sealed record MapMatchSettings
{
    /// <summary>Standard deviation of a place from the road, m.</summary>
    public double Sigma { get; init; } = 4.07;

    /// <summary>
    /// Mean difference between the way over the roads and the straight line between two points, m. The paper estimates it for each time
    /// between points; 10 m is our choice for points 5 to 30 s apart, see <see cref="MapMatch.Beta"/>.
    /// </summary>
    public double Beta { get; init; } = 10;

    /// <summary>Roads farther away than this are not looked at, m.</summary>
    public double Within { get; init; } = 200;

    /// <summary>A way that is so much longer than the straight line is not believed, m.</summary>
    public double LongestDetour { get; init; } = 2000;

    /// <summary>A faster way is not believed, m/s.</summary>
    public double FastestSpeed { get; init; } = 50;

    /// <summary>Most roads looked at for one point, the nearest ones; our choice, for speed.</summary>
    public int Candidates { get; init; } = 12;

    /// <summary>A pause longer than this breaks the track, s; the paper's 180 s.</summary>
    public double LongestPause { get; init; } = 180;
}

/// <summary>
/// Finds the roads that a track most likely ran on, after P. Newson and J. Krumm, Hidden Markov map matching through noise and
/// sparseness, ACM SIGSPATIAL GIS 2009: states are roads near each point; a point lies normally about its road; ways and straight lines
/// differ exponentially; the likeliest sequence is found by Viterbi's method. See docs/method/map-matching.md.
/// </summary>
public sealed class MapMatcher(RoadNetwork network, MapMatchSettings settings)
{
    private readonly RoadRoutes routes = new(network);

    /// <summary>Matches a track.</summary>
    /// <exception cref="ArgumentException">The times fall.</exception>
    public MapMatch Match(IReadOnlyList<TracePoint> track)
    {
        ArgumentNullException.ThrowIfNull(track);
        for (var i = 1; i < track.Count; i++)
            if (!(track[i].Seconds >= track[i - 1].Seconds)) throw new ArgumentException($"Point {i} is earlier than the one before.", nameof(track));
        var result = new MatchBuilder(network, track.Count);
        var column = new List<Step>();
        for (var i = 0; i < track.Count; i++)
        {
            var place = network.Place(track[i].Place);
            var last = column.Count > 0 ? column[^1] : null;
            // Points closer than two sigma say nothing new of the road, only of the noise.
            if (last is not null && !track[i].Gap && track[i].Seconds - last.Seconds <= settings.LongestPause && place.To(last.Place) < 2 * settings.Sigma)
            {
                last.Also.Add(i);
                continue;
            }

            var near = network.Near(place, settings.Within, settings.Candidates);
            if (near.Count == 0)
            {
                // Off the known roads: what follows begins anew.
                Finish();
                continue;
            }

            if (last is not null && (track[i].Gap || track[i].Seconds - last.Seconds > settings.LongestPause)) Finish();
            var step = new Step(i, track[i].Seconds, place, near);
            if (column.Count > 0 && !Reach(column[^1], step))
            {
                Finish();
                result.Breaks++;
            }

            if (column.Count == 0)
                for (var j = 0; j < near.Count; j++) step.Score[j] = Emission(near[j].Away);
            column.Add(step);
        }

        Finish();
        return result.Done();

        void Finish()
        {
            if (column.Count > 0) Trace(column, result);
            column.Clear();
        }
    }

    // Gives each state of a step its likeliest predecessor; false when none can be reached from any.
    private bool Reach(Step from, Step to)
    {
        Array.Fill(to.Score, double.NegativeInfinity);
        var straight = from.Place.To(to.Place);
        var limit = Math.Min(straight + settings.LongestDetour, Math.Max(straight, settings.FastestSpeed * (to.Seconds - from.Seconds)) + (8 * settings.Sigma));
        for (var i = 0; i < from.States.Count; i++)
        {
            if (double.IsNegativeInfinity(from.Score[i])) continue;
            var (segment, along, _) = from.States[i];
            routes.From(segment, along, limit);
            for (var j = 0; j < to.States.Count; j++)
            {
                var way = routes.To(to.States[j].Segment, to.States[j].Along, 2 * settings.Sigma);
                if (way > limit) continue;
                var score = from.Score[i] - (Math.Abs(way - straight) / settings.Beta);
                if (score > to.Score[j]) (to.Score[j], to.Before[j], to.Way[j]) = (score, i, way);
            }
        }

        var reached = false;
        for (var j = 0; j < to.States.Count; j++)
        {
            if (double.IsNegativeInfinity(to.Score[j])) continue;
            to.Score[j] += Emission(to.States[j].Away);
            reached = true;
        }

        return reached;
    }

    // The logarithm of the normal density, without what is the same for all roads.
    private double Emission(double away) => -0.5 * (away / settings.Sigma) * (away / settings.Sigma);

    private void Trace(List<Step> column, MatchBuilder result)
    {
        var chosen = new int[column.Count];
        chosen[^1] = Best(column[^1].Score);
        for (var i = column.Count - 1; i > 0; i--) chosen[i - 1] = column[i].Before[chosen[i]];
        var way = new List<RoadStretch>();
        for (var i = 0; i < column.Count; i++)
        {
            var (segment, along, away) = column[i].States[chosen[i]];
            result.Point(column[i].Index, segment, along, away);
            foreach (var also in column[i].Also) result.Point(also, segment, along, away);
            if (i == 0) continue;
            var (before, beforeAlong, _) = column[i - 1].States[chosen[i - 1]];
            var length = column[i].Way[chosen[i]];
            result.Difference(Math.Abs(length - column[i - 1].Place.To(column[i].Place)));
            // How long the way is, is known already: its roads are looked for hardly farther, since sums in another order differ in the last digit.
            routes.From(before, beforeAlong, length + settings.Sigma);
            foreach (var stretch in routes.Way(segment, along, 2 * settings.Sigma)) Add(way, stretch);
        }

        result.Way(way);
    }

    // What goes on in the same direction is one stretch. A step back and forth on one segment by less than six sigma is noise, not driving.
    private void Add(List<RoadStretch> way, RoadStretch next)
    {
        if (next.Length == 0) return;
        if (way.Count == 0 || way[^1].Segment != next.Segment || way[^1].To != next.From)
        {
            way.Add(next);
            return;
        }

        var last = way[^1];
        var onward = last.To > last.From == next.To > next.From;
        if (!onward && Math.Min(last.Length, next.Length) > 6 * settings.Sigma)
        {
            way.Add(next);
            return;
        }

        way.RemoveAt(way.Count - 1);
        if (last.From != next.To) way.Add(last with { To = next.To });
    }

    private static int Best(double[] scores)
    {
        var best = 0;
        for (var i = 1; i < scores.Length; i++) if (scores[i] > scores[best]) best = i;
        return best;
    }

    private sealed class Step
    {
        internal Step(int index, double seconds, PlanePoint place, List<(int Segment, double Along, double Away)> states)
        {
            (Index, Seconds, Place, States) = (index, seconds, place, states);
            Score = new double[states.Count];
            Before = new int[states.Count];
            Way = new double[states.Count];
        }

        internal int Index { get; }

        internal double Seconds { get; }

        internal PlanePoint Place { get; }

        internal List<(int Segment, double Along, double Away)> States { get; }

        internal double[] Score { get; }

        internal int[] Before { get; }

        // How long the way from the state before is, m.
        internal double[] Way { get; }

        internal List<int> Also { get; } = [];
    }
}
