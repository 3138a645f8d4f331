namespace Lanewright.Core.Statistics;

/// <summary>
/// The nearest rising sequence: the values that never fall and lie closest to the given ones by weighted squares
/// (isotonic regression by pooling adjacent violators; Ayer and others, Annals of Mathematical Statistics 26, 1955, from
/// memory).
/// </summary>
public static class Isotonic
{
    /// <summary>Fits.</summary>
    /// <param name="values">In the order of what they shall rise with; finite.</param>
    /// <param name="weights">Above 0, as many.</param>
    /// <returns>For each value the weighted mean of its block, and the first and last place of that block.</returns>
    /// <exception cref="ArgumentException">The spans differ in length or a weight is not above 0.</exception>
    public static IsotonicPoint[] Fit(ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        if (values.Length != weights.Length) throw new ArgumentException("One weight for each value.", nameof(weights));
        var blocks = new List<(double Mean, double Weight, int First, int Last)>(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            if (!(weights[i] > 0)) throw new ArgumentException("Weights must be above 0.", nameof(weights));
            var block = (Mean: values[i], Weight: weights[i], First: i, Last: i);
            while (blocks.Count > 0 && blocks[^1].Mean > block.Mean)
            {
                var before = blocks[^1];
                blocks.RemoveAt(blocks.Count - 1);
                var weight = before.Weight + block.Weight;
                block = (before.Mean + ((block.Mean - before.Mean) * block.Weight / weight), weight, before.First, block.Last);
            }

            blocks.Add(block);
        }

        var fitted = new IsotonicPoint[values.Length];
        foreach (var (mean, _, first, last) in blocks)
            for (var i = first; i <= last; i++) fitted[i] = new(mean, first, last);
        return fitted;
    }
}

/// <summary>One fitted value.</summary>
/// <param name="Value">The mean of its block.</param>
/// <param name="First">First place of the block.</param>
/// <param name="Last">Last place of the block.</param>
public readonly record struct IsotonicPoint(double Value, int First, int Last);
