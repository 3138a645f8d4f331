namespace Lanewright.Core.Statistics;

/// <summary>Draws an index with given chances from a uniform number, in a time that does not grow with their count.</summary>
/// <remarks>Indexed search: H.-C. Chen and Y. Asau, "On generating random variates from an empirical distribution",
/// AIIE Transactions 6 (1974).</remarks>
internal sealed class ChanceTable
{
    private readonly double[] sums;

    // Where the search may start for a uniform number in each of equal parts of 0 to 1.
    private readonly int[] starts;

    /// <summary>A table for chances of 0 or more whose sum is above 0; only their proportions count.</summary>
    internal ChanceTable(ReadOnlySpan<double> chances)
    {
        sums = new double[chances.Length];
        var sum = 0.0;
        for (var i = 0; i < sums.Length; i++)
            sums[i] = sum += chances[i];
        for (var i = 0; i < sums.Length; i++)
            sums[i] /= sum;
        starts = new int[8 * chances.Length];
        for (int part = 0, i = 0; part < starts.Length; part++)
        {
            while (sums[i] * starts.Length < part)
                i++;
            starts[part] = i;
        }
    }

    /// <summary>The first index up to which the chances sum to at least <paramref name="uniform"/>.</summary>
    /// <param name="uniform">0 to 1, 1 excluded.</param>
    internal int Find(double uniform)
    {
        var i = starts[(int)(uniform * starts.Length)];
        while (sums[i] < uniform)
            i++;
        return i;
    }
}
