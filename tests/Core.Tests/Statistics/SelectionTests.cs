using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

public sealed class SelectionTests
{
    // Many repeats on purpose: equal values are where partitions go wrong.
    private static readonly Gen<double[]> Values = Gen.OneOf(
        Gen.Int[-3, 3].Select(i => (double)i).Array[0, 40], Gen.Double[-1e6, 1e6].Array[0, 200]);

    [Fact]
    public void The_first_are_the_smallest_and_nothing_is_lost() =>
        Gen.Select(Values, Gen.Double[0, 1]).Sample(
            (values, share) =>
            {
                var count = (int)Math.Round(share * values.Length);
                var sorted = values.Order().ToArray();
                var parted = (double[])values.Clone();
                Selection.Partition(parted, count);
                Assert.Equal(sorted.Take(count), parted.Take(count).Order());
                Assert.Equal(sorted.Skip(count), parted.Skip(count).Order());
            },
            iter: 5000, threads: 1);

    [Fact]
    public void Ordered_and_equal_values_take_linear_time()
    {
        const int Count = 300_000;
        const int Half = Count / 2;
        double[][] cases =
        [
            [.. Enumerable.Range(0, Count).Select(i => (double)i)],
            [.. Enumerable.Range(0, Count).Select(i => (double)-i)],
            [.. Enumerable.Repeat(7.0, Count)],
            [.. Enumerable.Range(0, Count).Select(i => (double)Math.Min(i, Count - i))],
        ];
        foreach (var values in cases)
        {
            var sorted = (double[])values.Clone();
            Array.Sort(sorted);
            var clock = System.Diagnostics.Stopwatch.StartNew();
            Selection.Partition(values, Half);
            // Quadratic time would be minutes.
            Assert.True(clock.Elapsed < Patience.Longest, $"{clock.Elapsed}");
            Array.Sort(values, 0, Half);
            Assert.Equal(sorted[..Half], values[..Half]);
        }
    }

    [Fact]
    public void A_count_outside_the_values_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Selection.Partition([1, 2], -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Selection.Partition([1, 2], 3));
        Selection.Partition([], 0);
    }
}
