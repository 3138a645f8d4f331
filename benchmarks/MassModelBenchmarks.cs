using BenchmarkDotNet.Attributes;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using RandomSource = Lanewright.Core.Statistics.RandomSource;

namespace Lanewright.Benchmarks;

/// <summary>
/// A million trials of the calibration of a mass standard (JCGM 101:2008, 9.3: model (31), inputs of table 5), in
/// milligrams of deviation from 100 g.
/// </summary>
public class MassModelBenchmarks
{
    private const int Trials = 1_000_000;
    private const double Nominal = 100_000;
    private readonly double[][] inputs = [.. Enumerable.Range(0, 5).Select(_ => new double[MathNetTrials.BlockSize])];

    /// <summary>Holds the two programs to the same answer before they are timed.</summary>
    [GlobalSetup]
    public void Compare() => Agreement.Demand(Ours(), WithMathNet());

    /// <summary>MathNet, filling arrays.</summary>
    [Benchmark(Baseline = true, Description = "mass model, 1e6 trials: MathNet, arrays")]
    public object WithMathNet() => MathNetTrials.Run(MathNetBlock, Trials, 1, 0.95);

    /// <summary>MathNet, one trial after the other: the plainest way to write it.</summary>
    [Benchmark(Description = "mass model, 1e6 trials: MathNet, trial by trial")]
    public object WithMathNetTrialByTrial()
    {
        var random = new Xoshiro256StarStar(1, threadSafe: false);
        var y = new double[Trials];
        for (var t = 0; t < y.Length; t++)
        {
            y[t] = Deviation(
                Normal.Sample(random, 100_000, 0.050), Normal.Sample(random, 1.234, 0.020),
                ContinuousUniform.Sample(random, 1.10, 1.30), ContinuousUniform.Sample(random, 7000, 9000),
                ContinuousUniform.Sample(random, 7950, 8050));
        }

        return MathNetTrials.Summarize(y, 0.95);
    }

    /// <summary>Lanewright.</summary>
    [Benchmark(Description = "mass model, 1e6 trials: Lanewright")]
    public MonteCarlo Ours() => MonteCarlo.Run(OurBlock, Trials, 1);

    private void MathNetBlock(Xoshiro256StarStar random, double[] results)
    {
        Normal.Samples(random, inputs[0], 100_000, 0.050);
        Normal.Samples(random, inputs[1], 1.234, 0.020);
        ContinuousUniform.Samples(random, inputs[2], 1.10, 1.30);
        ContinuousUniform.Samples(random, inputs[3], 7000, 9000);
        ContinuousUniform.Samples(random, inputs[4], 7950, 8050);
        for (var t = 0; t < results.Length; t++)
            results[t] = Deviation(inputs[0][t], inputs[1][t], inputs[2][t], inputs[3][t], inputs[4][t]);
    }

    private void OurBlock(RandomSource random, Span<double> results)
    {
        for (var i = 0; i < inputs.Length; i++)
        {
            if (i < 2) random.FillNormal(inputs[i].AsSpan(0, results.Length));
            else random.FillUniform(inputs[i].AsSpan(0, results.Length));
        }

        for (var t = 0; t < results.Length; t++)
        {
            results[t] = Deviation(
                100_000 + (0.050 * inputs[0][t]), 1.234 + (0.020 * inputs[1][t]), 1.10 + (0.20 * inputs[2][t]),
                7000 + (2000 * inputs[3][t]), 7950 + (100 * inputs[4][t]));
        }
    }

    private static double Deviation(double reference, double small, double air, double weight, double standard) =>
        ((reference + small) * (1 + ((air - 1.2) * ((1 / weight) - (1 / standard))))) - Nominal;
}
