namespace Lanewright.Core.Statistics;

/// <summary>Partial ordering of numbers, for when only the ends of a sorted list are wanted.</summary>
public static class Selection
{
    private const int SampleSize = 127;
    private const int ManyValues = 2000;

    /// <summary>
    /// Rearranges so that the first <paramref name="count"/> values are the smallest, in no order (Hoare's selection
    /// with a pivot from a sample). Linear time for any order of values not made to defeat it.
    /// </summary>
    /// <remarks>Choice of the pivot after R. W. Floyd and R. L. Rivest, "Expected time bounds for selection",
    /// Communications of the ACM 18 (1975).</remarks>
    /// <param name="values">Values without NaN.</param>
    /// <param name="count">0 to the number of values.</param>
    public static void Partition(Span<double> values, int count)
    {
        if (count < 0 || count > values.Length)
            throw new ArgumentOutOfRangeException(nameof(count), count, "Must lie between 0 and the number of values.");
        int left = 0, right = values.Length - 1;
        // Fixed places (first, middle, last) take quadratic time on values that rise and fall.
        var place = 1UL;
        while (left < right && count > 0 && count < values.Length)
        {
            var pivot = Pivot(values[left..(right + 1)], count - left, ref place);
            int i = left, j = right;
            while (i <= j)
            {
                while (values[i] < pivot) i++;
                while (values[j] > pivot) j--;
                if (i > j) break;
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }

            if (count <= j) right = j;
            else if (count >= i) left = i;
            else return;
        }
    }

    // The value of a sample that most likely lies just beyond the wanted place, on the side where more values are: one
    // pass then sends nearly all of them to that side, which the processor foresees, and leaves few to look at again.
    private static double Pivot(ReadOnlySpan<double> values, int count, ref ulong place)
    {
        Span<double> sample = stackalloc double[values.Length < ManyValues ? 3 : SampleSize];
        foreach (ref var one in sample)
            one = values[Place(ref place, values.Length)];
        sample.Sort();
        var share = (double)count / values.Length;
        var beyond = 2 * Math.Sqrt(share * (1 - share) * sample.Length);
        var rank = share * sample.Length;
        var wanted = (int)(share < 0.5 ? rank + beyond : rank - beyond);
        return sample[Math.Clamp(wanted, 1, sample.Length - 2)];
    }

    // The next of a linear congruential sequence (D. E. Knuth, The Art of Computer Programming 2, 3.3.4), high bits.
    private static int Place(ref ulong state, int length)
    {
        state = unchecked((state * 6364136223846793005UL) + 1442695040888963407UL);
        return (int)((state >> 33) % (ulong)length);
    }
}
