using BenchmarkDotNet.Attributes;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Lanewright.Benchmarks;

/// <summary>
/// A million trials of a drop test of 3 runs of 5 containers. Lanewright runs what the command line runs: the analysis
/// with trials, whose model is assembled from any sheet. The other program is written by hand for this one sheet: the
/// same errors of reading, scale, counter and run-to-run scatter, put straight into its formula.
/// </summary>
public class DropTestBenchmarks
{
    private const int Trials = 1_000_000;
    private readonly TestSheet sheet = InventedSheet.Read(InventedSheet.Write(3, 5));
    private readonly double[] net = new double[MathNetTrials.BlockSize];
    private readonly double[] pulses = new double[MathNetTrials.BlockSize];
    private readonly double[] draw = new double[MathNetTrials.BlockSize];
    private readonly double[] gains = new double[MathNetTrials.BlockSize];
    private readonly int[] sizes = new int[MathNetTrials.BlockSize];
    private RatioEstimate estimate = null!;
    private double[] chances = [];
    private double[] scatters = [];
    private double gain;

    /// <summary>Takes the weights of the runs and the chances of each scatter from the analysis: they are inputs of the
    /// trials. Holds the two programs to the same answer before they are timed.</summary>
    [GlobalSetup]
    public void Compare()
    {
        estimate = SheetAnalysis.Analyse(sheet).Results[0].Estimate;
        if (estimate.Estimator is RatioEstimator.RatioOfTotals or RatioEstimator.EqualVariance)
            throw new InvalidOperationException("The hand-written model takes the weights of the runs as fixed.");
        chances = estimate.Scatter.Chances.ToArray();
        scatters = RunScatter.Sizes.ToArray();
        gain = sheet.Scale.GainLimit(0);
        Agreement.Demand(Ours(), WithMathNet());
    }

    /// <summary>MathNet.</summary>
    [Benchmark(Baseline = true, Description = "drop test, 1e6 trials: MathNet by hand, arrays")]
    public object WithMathNet() => MathNetTrials.Run(MathNetBlock, Trials, 1, sheet.Probability);

    /// <summary>Lanewright.</summary>
    [Benchmark(Description = "drop test, 1e6 trials: Lanewright, any sheet")]
    public MonteCarlo Ours() => SheetAnalysis.Analyse(sheet, new(Trials)).Results[0].Trials!;

    private void MathNetBlock(Xoshiro256StarStar random, double[] results)
    {
        var half = sheet.Scale.Division!.Value.Si / 2;
        ContinuousUniform.Samples(random, gains, 1 - gain, 1 + gain);
        Categorical.Samples(random, sizes, chances);
        Array.Clear(results);
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            Array.Clear(net);
            foreach (var container in ((ContainerCatch)sheet.Runs[i].Catch).Containers)
            {
                // The scale's error in proportion to the load is common to both readings; rounding is each one's own.
                ContinuousUniform.Samples(random, draw, container.Gross.Si - half, container.Gross.Si + half);
                for (var t = 0; t < net.Length; t++)
                    net[t] += draw[t];
                ContinuousUniform.Samples(random, draw, container.Tare.Si - half, container.Tare.Si + half);
                for (var t = 0; t < net.Length; t++)
                    net[t] -= draw[t];
            }

            // The counter cuts off at its start and at its end.
            ContinuousUniform.Samples(random, pulses, -0.5, 0.5);
            ContinuousUniform.Samples(random, draw, -0.5, 0.5);
            for (var t = 0; t < pulses.Length; t++)
                pulses[t] += sheet.Runs[i].Pulses!.Value.Si + draw[t];
            Normal.Samples(random, draw, 0, Math.Sqrt(estimate.Growth[i]));
            for (var t = 0; t < results.Length; t++)
            {
                results[t] += estimate.Weights[i] * pulses[t] * (1 + (scatters[sizes[t]] * draw[t]))
                    / (net[t] * gains[t]);
            }
        }
    }
}
