namespace Lanewright.Core.Statistics;

/// <summary>Partial ordering of numbers, for when only the ends of a sorted list are wanted.</summary>
public static class Selection
{
    /// <summary>
    /// Rearranges so that the first <paramref name="count"/> values are the smallest, in no order (Hoare's selection,
    /// median of three taken here and there). Linear time for any order of values not made to defeat it.
    /// </summary>
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
            var pivot = MedianOfThree(
                values[Place(ref place, left, right)], values[Place(ref place, left, right)],
                values[Place(ref place, left, right)]);
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

    // The next of a linear congruential sequence (D. E. Knuth, The Art of Computer Programming 2, 3.3.4), high bits.
    private static int Place(ref ulong state, int left, int right)
    {
        state = unchecked((state * 6364136223846793005UL) + 1442695040888963407UL);
        return left + (int)((state >> 33) % (ulong)(right - left + 1));
    }

    private static double MedianOfThree(double a, double b, double c) =>
        Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
}
