namespace Lanewright.Core.Statistics;

/// <summary>Partial ordering of numbers, for when only the ends of a sorted list are wanted.</summary>
public static class Selection
{
    /// <summary>
    /// Rearranges so that the first <paramref name="count"/> values are the smallest, in no order (Hoare's selection,
    /// median of three). Linear time on average.
    /// </summary>
    /// <param name="values">Values without NaN.</param>
    /// <param name="count">0 to the number of values.</param>
    public static void Partition(Span<double> values, int count)
    {
        if (count < 0 || count > values.Length)
            throw new ArgumentOutOfRangeException(nameof(count), count, "Must lie between 0 and the number of values.");
        int left = 0, right = values.Length - 1;
        while (left < right && count > 0 && count < values.Length)
        {
            var pivot = MedianOfThree(values[left], values[left + ((right - left) / 2)], values[right]);
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

    private static double MedianOfThree(double a, double b, double c) =>
        Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
}
