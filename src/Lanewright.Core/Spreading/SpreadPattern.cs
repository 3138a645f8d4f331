namespace Lanewright.Core.Spreading;

/// <summary>A strip of road along the direction of travel and how much lies on it.</summary>
/// <param name="From">Its left edge, m from the truck's middle; negative to the left.</param>
/// <param name="To">Its right edge.</param>
/// <param name="Height">Mass by width caught on it, kg/m (for the length of the pans or mats).</param>
public readonly record struct PatternStrip(double From, double To, double Height)
{
    /// <summary>Its middle.</summary>
    public double Middle => (From + To) / 2;

    /// <summary>How much of its width lies between two edges.</summary>
    public double Within(double left, double right) => Math.Max(0, Math.Min(To, right) - Math.Max(From, left));
}

/// <summary>What overlapping passes leave on the road.</summary>
/// <param name="Totals">The sum of the passes at each point of one swath, kg/m.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="VariationSample">Coefficient of variation with the divisor n - 1.</param>
/// <param name="VariationWhole">Coefficient of variation with the divisor n.</param>
public sealed record SwathOverlap(IReadOnlyList<double> Totals, double Mean, double VariationSample, double VariationWhole);

/// <summary>Arithmetic of a profile across the road. Formulas: docs/method/pattern.md.</summary>
public static class SpreadPattern
{
    /// <summary>The mass between two edges, for the length of pans or mats, kg.</summary>
    public static double MassWithin(IReadOnlyList<PatternStrip> strips, double left, double right)
    {
        ArgumentNullException.ThrowIfNull(strips);
        return strips.Sum(s => s.Height * s.Within(left, right));
    }

    /// <summary>The height of the profile at a place: straight between the middles of the strips, nothing outside them.</summary>
    public static double HeightAt(IReadOnlyList<PatternStrip> strips, double at)
    {
        ArgumentNullException.ThrowIfNull(strips);
        const double Rounding = 1e-9;
        for (var i = 0; i < strips.Count; i++)
        {
            if (Math.Abs(at - strips[i].Middle) <= Rounding) return strips[i].Height;
            if (i + 1 == strips.Count || at < strips[i].Middle || at > strips[i + 1].Middle) continue;
            var t = (at - strips[i].Middle) / (strips[i + 1].Middle - strips[i].Middle);
            return strips[i].Height + (t * (strips[i + 1].Height - strips[i].Height));
        }

        return 0;
    }

    /// <summary>The width between the outermost places where the profile reaches half its greatest height, m.</summary>
    public static double WidthAtHalf(IReadOnlyList<PatternStrip> strips)
    {
        ArgumentNullException.ThrowIfNull(strips);
        var half = strips.Max(s => s.Height) / 2;
        if (!(half > 0)) return 0;
        var first = 0;
        while (strips[first].Height < half) first++;
        var last = strips.Count - 1;
        while (strips[last].Height < half) last--;
        return Crossing(last, 1) - Crossing(first, -1);

        // From a strip at or above half to its neighbour below it; at the end of the catch, the strip's own edge.
        double Crossing(int i, int step)
        {
            var next = i + step;
            if (next < 0 || next == strips.Count) return step < 0 ? strips[i].From : strips[i].To;
            var t = (strips[i].Height - half) / (strips[i].Height - strips[next].Height);
            return strips[i].Middle + (t * (strips[next].Middle - strips[i].Middle));
        }
    }

    /// <summary>What passes side by side leave: the sum at points one strip apart, over one swath, or over two when every second
    /// pass is driven the other way.</summary>
    /// <param name="strips">The profile of one pass, from left to right.</param>
    /// <param name="swath">Distance between passes, m; above 0.</param>
    /// <param name="backAndForth">Whether every second pass is driven the other way, its profile turned round.</param>
    /// <exception cref="ArgumentOutOfRangeException">The swath is not above 0.</exception>
    public static SwathOverlap Overlap(IReadOnlyList<PatternStrip> strips, double swath, bool backAndForth)
    {
        ArgumentNullException.ThrowIfNull(strips);
        if (!(swath > 0)) throw new ArgumentOutOfRangeException(nameof(swath), swath, "Must be above 0.");
        var spacing = strips.Count < 2 ? strips[0].To - strips[0].From
            : strips.Zip(strips.Skip(1), (a, b) => b.Middle - a.Middle).Min();
        var period = backAndForth ? 2 * swath : swath;
        var count = Math.Max(1, (int)Math.Round(period / spacing));
        var reach = strips.Max(s => Math.Abs(s.Middle));
        var passes = (int)Math.Ceiling((reach + period) / swath) + 1;
        var totals = new double[count];
        for (var i = 0; i < count; i++)
        {
            var at = period * i / count;
            for (var k = -passes; k <= passes; k++)
            {
                var off = at - (k * swath);
                totals[i] += HeightAt(strips, backAndForth && k % 2 != 0 ? -off : off);
            }
        }

        var mean = totals.Average();
        var squares = totals.Sum(t => (t - mean) * (t - mean));
        return new(
            totals, mean, count < 2 || mean == 0 ? double.NaN : Math.Sqrt(squares / (count - 1)) / mean,
            mean == 0 ? double.NaN : Math.Sqrt(squares / count) / mean);
    }
}
