using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// The same model as <see cref="RatioEstimate"/> by random trials (JCGM 101): every source is drawn, tops and bottoms
/// are moved by it, each ratio gets its scatter, and the same estimator draws them together. Nothing is linearised.
/// </summary>
internal static class RatioTrials
{
    private static readonly double SqrtThree = Math.Sqrt(3);
    private static readonly double SqrtSix = Math.Sqrt(6);

    internal static MonteCarlo Run(RatioEstimate estimate, int trials, ulong seed, double probability)
    {
        var moves = Moves(estimate);
        var n = estimate.Runs.Count;
        var cumulative = Cumulative(estimate.Scatter.Chances);
        return MonteCarlo.Run(Block, trials, seed, probability);

        void Block(RandomSource random, Span<double> results)
        {
            var count = results.Length;
            var tops = new double[n][];
            var bottoms = new double[n][];
            for (var i = 0; i < n; i++)
            {
                (tops[i] = new double[count]).AsSpan().Fill(estimate.Runs[i].Top.Value);
                (bottoms[i] = new double[count]).AsSpan().Fill(estimate.Runs[i].Bottom.Value);
            }

            var draw = new double[count];
            foreach (var (source, targets) in moves)
            {
                Fill(random, source, draw);
                foreach (var (run, top, amount) in targets)
                    AddScaled(top ? tops[run] : bottoms[run], draw, amount);
            }

            var scatter = new double[count];
            for (var t = 0; t < count; t++)
                scatter[t] = Pick(random.NextDouble(), cumulative);
            var below = new double[count];
            results.Clear();
            for (var i = 0; i < n; i++)
            {
                random.FillNormal(draw);
                var growth = Math.Sqrt(estimate.Growth[i]);
                for (var t = 0; t < count; t++)
                    tops[i][t] *= 1 + (scatter[t] * growth * draw[t]);
                Gather(estimate.Estimator, estimate.Weights[i], tops[i], bottoms[i], results, below);
            }

            for (var t = 0; t < count; t++)
                results[t] /= below[t];
        }
    }

    // Adds one run to the estimator's fraction.
    private static void Gather(
        RatioEstimator estimator, double weight, double[] top, double[] bottom, Span<double> above, double[] below)
    {
        for (var t = 0; t < top.Length; t++)
        {
            var w = estimator switch
            {
                RatioEstimator.RatioOfTotals => bottom[t],
                RatioEstimator.EqualVariance => bottom[t] * bottom[t],
                _ => weight,
            };
            above[t] += w * top[t] / bottom[t];
            below[t] += w;
        }
    }

    private static List<(ErrorSource Source, List<(int Run, bool Top, double Amount)> Targets)> Moves(
        RatioEstimate estimate)
    {
        var moves = new SortedDictionary<ErrorSource, List<(int, bool, double)>>();
        for (var i = 0; i < estimate.Runs.Count; i++)
        {
            Collect(i, true, estimate.Runs[i].Top);
            Collect(i, false, estimate.Runs[i].Bottom);
        }

        return [.. moves.Select(m => (m.Key, m.Value))];

        void Collect(int run, bool top, Measured part)
        {
            foreach (var c in part.Contributions)
            {
                if (!moves.TryGetValue(c.Source, out var list)) moves.Add(c.Source, list = []);
                list.Add((run, top, c.Amount));
            }
        }
    }

    // Every shape with mean 0 and standard deviation 1.
    private static void Fill(RandomSource random, ErrorSource source, double[] draw)
    {
        switch (source.Shape)
        {
            case ErrorShape.Normal:
                random.FillNormal(draw);
                break;
            case ErrorShape.Rectangular:
                random.FillUniform(draw);
                for (var i = 0; i < draw.Length; i++)
                    draw[i] = ((2 * draw[i]) - 1) * SqrtThree;
                break;
            case ErrorShape.Triangular:
                random.FillUniform(draw);
                for (var i = 0; i < draw.Length; i++)
                    draw[i] = (draw[i] + random.NextDouble() - 1) * SqrtSix;
                break;
            default:
                for (var i = 0; i < draw.Length; i++)
                    draw[i] = random.NextArcsine();
                break;
        }
    }

    private static void AddScaled(double[] target, double[] draw, double amount)
    {
        for (var t = 0; t < target.Length; t++)
            target[t] += amount * draw[t];
    }

    private static double[] Cumulative(ReadOnlySpan<double> chances)
    {
        var sums = new double[chances.Length];
        var sum = 0.0;
        for (var i = 0; i < sums.Length; i++)
            sums[i] = sum += chances[i];
        return sums;
    }

    private static double Pick(double uniform, double[] cumulative)
    {
        var i = Array.BinarySearch(cumulative, uniform * cumulative[^1]);
        return RunScatter.Sizes[Math.Min(i < 0 ? ~i : i, cumulative.Length - 1)];
    }
}
