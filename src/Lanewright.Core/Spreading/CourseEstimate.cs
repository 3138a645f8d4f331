using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// Passes over a course drawn together: the ratio of their totals. They scatter far less than drops of material do, so what is
/// taken for likely before the passes are seen is a sixth of what it is for drops: level from 0.033 % to 0.75 %, falling as the square
/// above (ours; docs/method/ground-speed.md).
/// </summary>
public static class CourseEstimate
{
    private const double Quieter = 6;

    /// <summary>The estimate.</summary>
    /// <param name="passes">At least one; tops and bottoms positive.</param>
    /// <param name="scatterId">Identity of the scatter as an error source.</param>
    public static CombinedRatios Of(IReadOnlyList<RatioRun> passes, string scatterId)
    {
        var estimate = RatioEstimate.Of(passes);
        var known = estimate.Known;
        // Deviations six times as large, for which the sizes of drops are right; then a sixth of those sizes.
        var shared = RatioRun.SharedSources(passes);
        var stretched = new double[passes.Count];
        var own = new double[passes.Count];
        var growth = new double[passes.Count];
        for (var i = 0; i < stretched.Length; i++)
        {
            stretched[i] = Math.Max(1 + (Quieter * ((passes[i].Ratio / known.Value) - 1)), double.Epsilon);
            own[i] = Quieter * passes[i].OwnError(shared);
            growth[i] = 1;
        }

        var scatter = RunScatter.Learn(stretched, own, growth);
        var factor = Math.Abs(known.Value) * estimate.ScatterFactor / Quieter;
        var spreads = new double[RunScatter.Sizes.Length];
        for (var j = 0; j < spreads.Length; j++) spreads[j] = factor * RunScatter.Sizes[j];
        return new(
            known.With(
                ErrorSource.Normal(scatterId, "scatter from run to run", Math.Max(1, scatter.DegreesOfFreedom)),
                factor * scatter.RootMeanSquare),
            ErrorDistribution.Of(known, scatter.Chances, spreads));
    }
}
