using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// The constant drawn from several runs: the estimator chosen by rule, the known error sources carried through it, and
/// what the runs say of their scatter. Formulas: docs/method/drop-test.md.
/// </summary>
public sealed class RatioEstimate
{
    private const double SizesAlike = 1.25;
    private const double CountsMatter = 1.0 / 3;
    private const double WeighingsDiffer = 2;
    private const double Decisive = 3;

    // Runs exactly at a limit must not be judged by how a quotient was rounded: that would hang on the unit of mass.
    private const double Rounding = 1e-12;

    private RatioEstimate(
        IReadOnlyList<RatioRun> runs, RatioEstimator estimator, EstimatorReason reason, double[] weights,
        double[] growth, RunScatter scatter)
    {
        Runs = runs;
        Estimator = estimator;
        Reason = reason;
        Weights = weights;
        Growth = growth;
        Scatter = scatter;
        var parts = new Measured[runs.Count];
        for (var i = 0; i < parts.Length; i++)
            parts[i] = runs[i].Top / runs[i].Bottom;
        Known = Measured.Linear(parts, weights);
        var square = 0.0;
        for (var i = 0; i < parts.Length; i++)
            square += weights[i] * weights[i] * growth[i];
        ScatterFactor = Math.Sqrt(square);
    }

    /// <summary>The runs used.</summary>
    public IReadOnlyList<RatioRun> Runs { get; }

    /// <summary>The estimator used.</summary>
    public RatioEstimator Estimator { get; }

    /// <summary>Why.</summary>
    public EstimatorReason Reason { get; }

    /// <summary>Weight of each run's ratio in the result; they sum to 1.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>Growth of the scatter's variance for each run, 1 at the mean size.</summary>
    public IReadOnlyList<double> Growth { get; }

    /// <summary>What is known of the scatter of one run.</summary>
    public RunScatter Scatter { get; }

    /// <summary>The constant with its known error sources, without the scatter.</summary>
    public Measured Known { get; }

    /// <summary>Scatter of the result by scatter of one run: sqrt(sum of w^2 g).</summary>
    public double ScatterFactor { get; }

    /// <summary>The constant with the scatter as one more source, named <paramref name="scatterId"/>.</summary>
    public Measured Total(string scatterId) => Known.With(
        ErrorSource.Normal(scatterId, "scatter from run to run", Math.Max(1, Scatter.DegreesOfFreedom)),
        Math.Abs(Known.Value) * ScatterFactor * Scatter.RootMeanSquare);

    /// <summary>
    /// What GUM clause 4.2 would make of the runs: their own standard deviation, which holds their own reading errors
    /// too, beside the sources they share. One run has no standard deviation; then all sources stand, without scatter.
    /// </summary>
    public Measured Classical(string scatterId)
    {
        if (Runs.Count == 1) return Known;
        var shared = RatioRun.SharedSources(Runs);
        var parts = new List<Contribution>();
        foreach (var c in Known.Contributions)
        {
            if (shared.Contains(c.Source)) parts.Add(c);
        }

        double squares = 0, weights = 0;
        for (var i = 0; i < Runs.Count; i++)
        {
            squares += (Runs[i].Ratio - Known.Value) * (Runs[i].Ratio - Known.Value);
            weights += Weights[i] * Weights[i];
        }

        var u = Math.Sqrt(squares / (Runs.Count - 1) * weights);
        parts.Add(new(ErrorSource.Normal(scatterId, "standard deviation of the runs", Runs.Count - 1), u));
        return Measured.Of(Known.Value, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(parts));
    }

    /// <summary>The distribution of the constant's error.</summary>
    public ErrorDistribution Error()
    {
        var spreads = new double[RunScatter.Sizes.Length];
        for (var j = 0; j < spreads.Length; j++)
            spreads[j] = Math.Abs(Known.Value) * ScatterFactor * RunScatter.Sizes[j];
        return ErrorDistribution.Of(Known, Scatter.Chances, spreads);
    }

    /// <summary>The distribution of the error of something worked out from <see cref="Total"/>, such as a rate from a flow.</summary>
    /// <param name="derived">What was worked out.</param>
    /// <param name="scatterId">The name that the scatter was given.</param>
    public ErrorDistribution ErrorOf(Measured derived, string scatterId)
    {
        var known = new List<Contribution>();
        var share = 0.0;
        foreach (var c in derived.Contributions)
        {
            if (c.Source.Id == scatterId) share = Math.Abs(c.Amount) / Scatter.RootMeanSquare;
            else known.Add(c);
        }

        var spreads = new double[RunScatter.Sizes.Length];
        for (var j = 0; j < spreads.Length; j++)
            spreads[j] = share * RunScatter.Sizes[j];
        return ErrorDistribution.Of(
            Measured.Of(derived.Value, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(known)), Scatter.Chances, spreads);
    }

    /// <summary>What each estimator would give, for comparison.</summary>
    public IReadOnlyList<(RatioEstimator Estimator, double Value)> Alternatives()
    {
        var list = new List<(RatioEstimator, double)>();
        foreach (var e in Enum.GetValues<RatioEstimator>())
        {
            var w = WeightsOf(e, Runs, Scatter.RootMeanSquare);
            var sum = 0.0;
            for (var i = 0; i < w.Length; i++)
                sum += w[i] * Runs[i].Ratio;
            list.Add((e, sum));
        }

        return list;
    }

    /// <summary>Chooses the estimator by rule and computes.</summary>
    /// <param name="runs">At least one; tops and bottoms positive.</param>
    /// <param name="earlierScatter">Scatter of one run known from earlier tests, as a share; 0 for none.</param>
    /// <param name="earlierFreedom">Its degrees of freedom; 0 for none.</param>
    /// <exception cref="ArgumentException">There is no run, or a top or bottom is not positive.</exception>
    public static RatioEstimate Of(
        IReadOnlyList<RatioRun> runs, double earlierScatter = 0, double earlierFreedom = 0)
    {
        ArgumentNullException.ThrowIfNull(runs);
        var n = runs.Count;
        if (n == 0) throw new ArgumentException("At least one run is needed.", nameof(runs));
        var ratios = new double[n];
        var own = new double[n];
        double least = double.PositiveInfinity, most = 0;
        foreach (var run in runs)
        {
            if (!(run.Top.Value > 0 && run.Bottom.Value > 0))
                throw new ArgumentException("Tops and bottoms must be positive.", nameof(runs));
        }

        var shared = RatioRun.SharedSources(runs);
        for (var i = 0; i < n; i++)
        {
            ratios[i] = runs[i].Ratio;
            own[i] = runs[i].OwnError(shared);
            least = Math.Min(least, runs[i].Bottom.Value);
            most = Math.Max(most, runs[i].Bottom.Value);
        }

        RunScatter Learn(int power) =>
            RunScatter.Learn(ratios, own, GrowthOf(runs, power), earlierScatter, earlierFreedom);

        var scatter = Learn(0);
        var (estimator, reason, power) = Choose();
        if (power != 0) scatter = Learn(power);
        return new(
            runs, estimator, reason, WeightsOf(estimator, runs, scatter.RootMeanSquare), GrowthOf(runs, power), scatter);

        (RatioEstimator Estimator, EstimatorReason Reason, int Power) Choose()
        {
            if (n == 1) return (RatioEstimator.RatioOfTotals, EstimatorReason.OneRun, 0);
            if (most <= SizesAlike * least * (1 + Rounding)) return (RatioEstimator.RatioOfTotals, EstimatorReason.SizesAlike, 0);
            double smallOwn = double.PositiveInfinity, largeOwn = 0, countShare = 0;
            for (var i = 0; i < n; i++)
            {
                smallOwn = Math.Min(smallOwn, own[i]);
                largeOwn = Math.Max(largeOwn, own[i]);
                var top = runs[i].Top.RelativeUncertainty;
                var bottom = runs[i].Bottom.RelativeUncertainty;
                if (Math.Max(top, bottom) > 0.5 * scatter.RootMeanSquare)
                    countShare = Math.Max(countShare, Math.Min(top, bottom) / Math.Max(top, bottom));
            }

            if (countShare > CountsMatter * (1 + Rounding)) return (RatioEstimator.ErrorsInBoth, EstimatorReason.CountsMatter, 0);
            // Every run scattering by the same share is the plainest assumption; the runs must speak against it.
            var share = scatter.LogEvidence;
            var adds = Learn(1).LogEvidence;
            var constant = Learn(2).LogEvidence;
            if (constant > share + Decisive && constant >= adds)
                return (RatioEstimator.EqualVariance, EstimatorReason.ScatterConstant, 2);
            if (adds > share + Decisive)
                return (RatioEstimator.RatioOfTotals, EstimatorReason.ScatterAdds, 1);
            return largeOwn > WeighingsDiffer * smallOwn && largeOwn > scatter.RootMeanSquare
                ? (RatioEstimator.Weighted, EstimatorReason.WeighingsDiffer, 0)
                : (RatioEstimator.MeanOfRatios, EstimatorReason.SameShare, 0);
        }
    }

    private static double[] GrowthOf(IReadOnlyList<RatioRun> runs, int power)
    {
        var mean = 0.0;
        foreach (var run in runs)
            mean += run.Bottom.Value / runs.Count;
        var growth = new double[runs.Count];
        for (var i = 0; i < growth.Length; i++)
        {
            var size = mean / runs[i].Bottom.Value;
            growth[i] = power switch { 0 => 1, 1 => size, _ => size * size };
        }

        return growth;
    }

    private static double[] WeightsOf(RatioEstimator estimator, IReadOnlyList<RatioRun> runs, double scatter)
    {
        var w = new double[runs.Count];
        for (var i = 0; i < w.Length; i++)
        {
            var size = runs[i].Bottom.Value;
            var top = runs[i].Top.RelativeUncertainty;
            var bottom = runs[i].Bottom.RelativeUncertainty;
            w[i] = estimator switch
            {
                RatioEstimator.MeanOfRatios => 1,
                RatioEstimator.EqualVariance => size * size,
                RatioEstimator.Weighted => 1 / (Square(scatter) + Square(Math.Max(top, bottom))),
                RatioEstimator.ErrorsInBoth => 1 / (Square(scatter) + Square(top) + Square(bottom)),
                _ => size,
            };
        }

        var sum = 0.0;
        foreach (var v in w)
            sum += v;
        for (var i = 0; i < w.Length; i++)
            w[i] /= sum;
        return w;

        static double Square(double x) => x * x;
    }
}
