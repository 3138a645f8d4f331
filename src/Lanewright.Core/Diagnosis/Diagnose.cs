using Lanewright.Core.Statistics;

namespace Lanewright.Core.Diagnosis;

/// <summary>
/// From a report to the causes behind it, ranked by chance. A pure function; the method, its limits and what it cannot tell apart
/// stand in docs/method/diagnosis.md.
/// </summary>
public static class Diagnose
{
    /// <summary>Below this chance of "nothing wrong" a cause is named (common practice, no source).</summary>
    public const double AlarmBelow = 0.10;

    /// <summary>A cause below this chance is not called the likely one.</summary>
    public const double LikelyFrom = 0.5;

    /// <summary>Chance that a sister has a trouble of its own, of some 20 % (common practice, no source).</summary>
    internal const double SisterTrouble = 0.1;

    private const int ScatterSizes = 8;
    private static readonly double[] Scatters = MakeScatters();

    /// <summary>The causes behind a report.</summary>
    public static DiagnosisReport Of(DiagnosisInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (Observations.Of(input) is not { } seen) return DiagnosisReport.Nothing(input);
        var priors = CauseTable.Priors(seen.Situation);
        var shared = new Shared(seen);
        var hypotheses = new Hypotheses(seen);
        var found = new List<(Cause Cause, double Log, Hypothesis Best, double Effect)>();
        foreach (var facts in CauseTable.All)
        {
            if (priors[(int)facts.Cause] == 0 || Weigh(shared, hypotheses.Of(facts.Cause)) is not { } weighed) continue;
            found.Add((facts.Cause, weighed.Log + Marks.OfCause(seen, facts.Cause) + Elementary.Log(priors[(int)facts.Cause]), weighed.Best, weighed.Effect));
        }

        var top = found.Max(f => f.Log);
        var sum = found.Sum(f => Elementary.Exp(f.Log - top));
        var ranked = found
            .Select(f => new RankedCause(CauseTable.Of(f.Cause), Elementary.Exp(f.Log - top) / sum, f.Effect, f.Best))
            .OrderByDescending(c => c.Chance).ThenBy(c => c.Facts.Cause).ToList();
        return new(input, seen, ranked);
    }

    private static (double Log, Hypothesis Best, double Effect)? Weigh(Shared shared, IEnumerable<Hypothesis> hypotheses)
    {
        double top = double.NegativeInfinity, sum = 0, effects = 0, weights = 0;
        Hypothesis? best = null;
        var bestLog = double.NegativeInfinity;
        foreach (var h in hypotheses)
        {
            var log = shared.LogLikelihood(h) + Elementary.Log(h.Weight);
            weights += h.Weight;
            if (log > bestLog) (best, bestLog) = (h, log);
            if (log > top)
            {
                var fall = Elementary.Exp(top - log);
                (sum, effects, top) = ((sum * fall) + 1, (effects * fall) + h.Effect, log);
            }
            else
            {
                var share = Elementary.Exp(log - top);
                sum += share;
                effects += share * h.Effect;
            }
        }

        return best is null ? null : (top + Elementary.Log(sum / weights), best, effects / sum);
    }

    // What all hypotheses of a sheet share, worked out once.
    private sealed class Shared(Observations seen)
    {
        private readonly Dictionary<double, Spread[]> spreads = [];
        private readonly (double Mean, double Variance, double LogEvidence) steady = Reference(seen, 0);
        private readonly List<(Channel Channel, Spread Spread)> others =
        [
            .. ((Channel?[])[seen.PulsesPerTurn, seen.ShaftSpeed, seen.ControllerCount]).OfType<Channel>().Select(c => (c, c.SpreadOf(0, 0))),
        ];

        internal double LogLikelihood(Hypothesis h)
        {
            var (reference, variance, evidence) = h.Slope == 0 ? steady : Reference(seen, h.Slope);
            variance += seen.CountedMass.Common * seen.CountedMass.Common;
            double top = double.NegativeInfinity, sum = 0;
            foreach (var spread in Spreads(h.Further))
            {
                var log = seen.CountedMass.LogLikelihood(h, spread, reference, variance);
                if (log > top) (sum, top) = ((sum * Elementary.Exp(top - log)) + 1, log);
                else sum += Elementary.Exp(log - top);
            }

            var all = evidence + top + Elementary.Log(sum / Scatters.Length);
            foreach (var (channel, spread) in others)
                all += channel.LogLikelihood(h, spread, 0, channel.Common * channel.Common);
            return all + Sisters(h) + Marks.OfHypothesis(seen, h);
        }

        private double Sisters(Hypothesis h)
        {
            var all = 0.0;
            foreach (var sister in seen.Input.Sisters)
            {
                var mean = (sister.SameMaterial ? h.SisterMaterial : 0) + (sister.SameScale ? h.SisterScale : 0);
                var spread = (sister.Uncertainty * sister.Uncertainty) + (EffectRanges.SeasonDrift * EffectRanges.SeasonDrift);
                var off = (sister.Change - mean) * (sister.Change - mean);
                // A sister may have a trouble of its own.
                all += Elementary.Log(
                    ((1 - SisterTrouble) * Elementary.Exp(-0.5 * off / spread) / Math.Sqrt(spread))
                    + (SisterTrouble * Elementary.Exp(-0.5 * off / (spread + 0.04)) / Math.Sqrt(spread + 0.04)) + 1e-12);
            }

            return all;
        }

        private static (double Mean, double Variance, double LogEvidence) Reference(Observations seen, double slope) =>
            seen.Referred ? (0, seen.ReferenceUncertainty * seen.ReferenceUncertainty, 0) : seen.History.Expect(slope, seen.Keyed);

        private Spread[] Spreads(double further)
        {
            if (!spreads.TryGetValue(further, out var known))
                spreads.Add(further, known = Array.ConvertAll(Scatters, s => seen.CountedMass.SpreadOf(s, further)));
            return known;
        }
    }

    private static double[] MakeScatters()
    {
        var step = Elementary.Log(EffectRanges.MostScatter / EffectRanges.LeastScatter) / ScatterSizes;
        var sizes = new double[ScatterSizes];
        for (var i = 0; i < ScatterSizes; i++) sizes[i] = EffectRanges.LeastScatter * Elementary.Exp(step * (i + 0.5));
        return sizes;
    }
}
