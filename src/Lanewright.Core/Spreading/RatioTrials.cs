using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// The same model as <see cref="RatioEstimate"/> by random trials (JCGM 101): every source is drawn, tops and bottoms
/// are moved by it, each ratio gets its scatter, and the same estimator draws them together. Nothing is linearised.
/// A block of trials is worked source by source, in arrays that stay in the processor's nearest cache.
/// </summary>
internal sealed class RatioTrials
{
    private static readonly double SqrtThree = Math.Sqrt(3);
    private static readonly double SqrtSix = Math.Sqrt(6);

    private readonly RatioEstimate estimate;
    private readonly List<Move> moves;
    private readonly ChanceTable scatters;
    private readonly double[][] tops;
    private readonly double[][] bottoms;
    private readonly double[] draws = new double[MonteCarlo.BlockSize];
    private readonly double[] scatter = new double[MonteCarlo.BlockSize];
    private readonly double[] weights = new double[MonteCarlo.BlockSize];

    private RatioTrials(RatioEstimate estimate)
    {
        this.estimate = estimate;
        moves = Moves(estimate);
        scatters = new(estimate.Scatter.Chances);
        tops = Blocks(estimate.Runs.Count);
        bottoms = Blocks(estimate.Runs.Count);
    }

    internal static MonteCarlo Run(RatioEstimate estimate, int trials, ulong seed, double probability) =>
        MonteCarlo.Run(new RatioTrials(estimate).Fill, trials, seed, probability);

    private void Fill(RandomSource random, Span<double> results)
    {
        var count = results.Length;
        for (var i = 0; i < tops.Length; i++)
        {
            Array.Fill(tops[i], estimate.Runs[i].Top.Value);
            Array.Fill(bottoms[i], estimate.Runs[i].Bottom.Value);
        }

        var draw = draws.AsSpan(0, count);
        foreach (var move in moves)
        {
            var (scale, shift) = Draw(random, move.Source.Shape, draw);
            foreach (var target in move.Targets)
                Lanes.AddScaled(Part(target.Part).AsSpan(0, count), draw, target.Amount * scale, target.Amount * shift);
        }

        random.FillUniform(draw);
        for (var t = 0; t < count; t++)
            scatter[t] = RunScatter.Sizes[scatters.Find(draw[t])];
        var below = weights.AsSpan(0, count);
        results.Clear();
        below.Clear();
        for (var i = 0; i < tops.Length; i++)
        {
            var top = tops[i].AsSpan(0, count);
            random.FillNormal(draw);
            var growth = Math.Sqrt(estimate.Growth[i]);
            for (var t = 0; t < count; t++)
                top[t] *= 1 + (scatter[t] * growth * draw[t]);
            Gather(estimate.Weights[i], top, bottoms[i].AsSpan(0, count), results, below);
        }

        for (var t = 0; t < count; t++)
            results[t] /= below[t];
    }

    // Adds one run to the estimator's fraction: its weight times its ratio above, its weight below.
    private void Gather(double weight, Span<double> top, Span<double> bottom, Span<double> above, Span<double> below)
    {
        switch (estimate.Estimator)
        {
            case RatioEstimator.RatioOfTotals:
                for (var t = 0; t < top.Length; t++)
                {
                    above[t] += top[t];
                    below[t] += bottom[t];
                }

                break;
            case RatioEstimator.EqualVariance:
                for (var t = 0; t < top.Length; t++)
                {
                    above[t] += bottom[t] * top[t];
                    below[t] += bottom[t] * bottom[t];
                }

                break;
            default:
                Lanes.AddQuotient(above, top, bottom, weight);
                for (var t = 0; t < top.Length; t++)
                    below[t] += weight;
                break;
        }
    }

    // In the order of the sources' identities, so that the same sheet draws the same numbers.
    private static List<Move> Moves(RatioEstimate estimate)
    {
        var moves = new Dictionary<ErrorSource, Move>();
        for (var i = 0; i < estimate.Runs.Count; i++)
        {
            Collect(i, estimate.Runs[i].Top);
            Collect(~i, estimate.Runs[i].Bottom);
        }

        var ordered = new List<Move>(moves.Values);
        ordered.Sort(static (a, b) => a.Source.CompareTo(b.Source));
        return ordered;

        void Collect(int part, Measured value)
        {
            foreach (var c in value.Contributions)
            {
                if (!moves.TryGetValue(c.Source, out var move)) moves.Add(c.Source, move = new(c.Source, []));
                move.Targets.Add(new(part, c.Amount));
            }
        }
    }

    private double[] Part(int part) => part >= 0 ? tops[part] : bottoms[~part];

    // Fills with draws of any location and spread, and gives the scale and shift that bring them to mean 0 and standard
    // deviation 1.
    private static (double Scale, double Shift) Draw(RandomSource random, ErrorShape shape, Span<double> draw)
    {
        switch (shape)
        {
            case ErrorShape.Normal:
                random.FillNormal(draw);
                return (1, 0);
            case ErrorShape.Rectangular:
                random.FillUniform(draw);
                return (2 * SqrtThree, -SqrtThree);
            case ErrorShape.Triangular:
                random.FillUniform(draw);
                foreach (ref var d in draw)
                    d += random.NextDouble();
                return (SqrtSix, -SqrtSix);
            default:
                foreach (ref var d in draw)
                    d = random.NextArcsine();
                return (1, 0);
        }
    }

    private static double[][] Blocks(int count)
    {
        var blocks = new double[count][];
        for (var i = 0; i < count; i++)
            blocks[i] = new double[MonteCarlo.BlockSize];
        return blocks;
    }

    /// <summary>One error source and what it moves.</summary>
    private sealed record Move(ErrorSource Source, List<Target> Targets);

    /// <summary>A part of a run that a source moves.</summary>
    /// <param name="Part">The run's number for its top, the complement of it for its bottom.</param>
    /// <param name="Amount">By how much one standard deviation moves it, SI.</param>
    private sealed record Target(int Part, double Amount);
}
