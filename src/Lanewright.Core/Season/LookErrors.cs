using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>
/// The errors of several looks taken apart: what each has for itself, and what the sources that two or more of them share do to
/// each.
/// </summary>
internal sealed class LookErrors
{
    private LookErrors(double[] own, double[,] shared) => (Own, Shared) = (own, shared);

    /// <summary>Standard deviation of each look's own error.</summary>
    internal double[] Own { get; }

    /// <summary>What source j (standardised) does to look i.</summary>
    internal double[,] Shared { get; }

    internal int Sources => Shared.GetLength(1);

    /// <param name="values">The looks.</param>
    /// <param name="dayToDay">A further own error of each.</param>
    /// <param name="reference">What all are held against: its sources are shared even when there is one look only.</param>
    internal static LookErrors Of(IReadOnlyList<Measured> values, double dayToDay, Measured reference = default)
    {
        var uses = new Dictionary<ErrorSource, int>();
        foreach (var value in values)
        {
            foreach (var c in value.Contributions) uses[c.Source] = uses.GetValueOrDefault(c.Source) + 1;
        }

        foreach (var c in reference.Contributions)
        {
            if (uses.TryGetValue(c.Source, out var used)) uses[c.Source] = used + 1;
        }

        var places = new Dictionary<ErrorSource, int>();
        foreach (var source in uses.Where(use => use.Value > 1).Select(use => use.Key).Order()) places.Add(source, places.Count);
        var (own, shared) = (new double[values.Count], new double[values.Count, places.Count]);
        for (var i = 0; i < own.Length; i++)
        {
            var variance = dayToDay * dayToDay;
            foreach (var c in values[i].Contributions)
            {
                if (places.TryGetValue(c.Source, out var j)) shared[i, j] = c.Amount;
                else variance += c.Amount * c.Amount;
            }

            own[i] = Math.Sqrt(variance);
        }

        return new(own, shared);
    }

    /// <summary>Standard deviation of what the shared sources do to the looks' mean, each look weighed by its own error.</summary>
    internal double Common()
    {
        var (weights, variance) = (0.0, 0.0);
        foreach (var s in Own) weights += 1 / (s * s);
        for (var j = 0; j < Sources; j++)
        {
            var sum = 0.0;
            for (var i = 0; i < Own.Length; i++) sum += Shared[i, j] / (Own[i] * Own[i]);
            variance += sum / weights * (sum / weights);
        }

        return Math.Sqrt(variance);
    }
}
