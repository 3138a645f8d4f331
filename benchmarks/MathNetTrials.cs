using MathNet.Numerics.Random;
using MathNet.Numerics.Statistics;

namespace Lanewright.Benchmarks;

/// <summary>What a trial job yields: the figures of <see cref="Lanewright.Core.Uncertainty.MonteCarlo"/>.</summary>
internal readonly record struct TrialFigures(
    double Mean, double StandardUncertainty, double Low, double High, double ShortestLow, double ShortestHigh);

/// <summary>
/// The job of <see cref="Lanewright.Core.Uncertainty.MonteCarlo"/> as a competent user writes it with MathNet.Numerics: its
/// xoshiro256** without locks, results in one array filled block by block (its array samplers are its fastest), its
/// one-pass mean and standard deviation, one sort, the ends read off by rank and the shortest interval by one pass
/// (JCGM 101, 7.7). One thread on either side; blocks stay below the size from which MathNet would use more.
/// </summary>
internal static class MathNetTrials
{
    internal const int BlockSize = 1024;

    internal static TrialFigures Run(Action<Xoshiro256StarStar, double[]> model, int trials, int seed, double probability)
    {
        var random = new Xoshiro256StarStar(seed, threadSafe: false);
        var y = new double[trials];
        var block = new double[BlockSize];
        for (var start = 0; start < trials; start += BlockSize)
        {
            model(random, block);
            Array.Copy(block, 0, y, start, Math.Min(BlockSize, trials - start));
        }

        return Summarize(y, probability);
    }

    internal static TrialFigures Summarize(double[] y, double probability)
    {
        var (mean, deviation) = ArrayStatistics.MeanStandardDeviation(y);
        Array.Sort(y);
        var inside = (int)Math.Floor((probability * y.Length) + 0.5);
        var outside = y.Length - inside;
        var best = 0;
        for (var i = 1; i < outside; i++)
        {
            if (y[i + inside] - y[i] < y[best + inside] - y[best]) best = i;
        }

        var rank = (outside + 1) / 2;
        return new(
            mean, deviation, SortedArrayStatistics.OrderStatistic(y, rank),
            SortedArrayStatistics.OrderStatistic(y, rank + inside), y[best], y[best + inside]);
    }
}
