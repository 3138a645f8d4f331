using Lanewright.Core.Statistics;

namespace Lanewright.Core.Uncertainty;

/// <summary>The classical expanded uncertainty U = k u with k from the t distribution (GUM G.4 and G.6.4).</summary>
/// <param name="DegreesOfFreedom">Effective degrees of freedom, not rounded; infinite when every spread is known.</param>
/// <param name="CoverageFactor">k.</param>
/// <param name="Expanded">U in SI.</param>
public readonly record struct WelchSatterthwaite(double DegreesOfFreedom, double CoverageFactor, double Expanded)
{
    /// <summary>Effective degrees of freedom: u^4 / sum(u_i^4 / nu_i), one term for each ensemble (GUM G.2b).</summary>
    public static double EffectiveDegreesOfFreedom(Measured x)
    {
        // Shares of the variance instead of variances: their squares neither over- nor underflow.
        var total = x.Variance;
        var sum = 0.0;
        Dictionary<string, (double Share, double Dof)>? ensembles = null;
        foreach (var c in x.Contributions)
        {
            if (double.IsInfinity(c.Source.DegreesOfFreedom)) continue;
            var share = c.Amount * c.Amount / total;
            if (c.Source.Ensemble is { } name)
            {
                ensembles ??= new(StringComparer.Ordinal);
                var known = ensembles.GetValueOrDefault(name);
                ensembles[name] = (known.Share + share, c.Source.DegreesOfFreedom);
            }
            else
            {
                sum += share * share / c.Source.DegreesOfFreedom;
            }
        }

        if (ensembles is not null)
        {
            foreach (var (share, dof) in ensembles.Values)
                sum += share * share / dof;
        }

        return sum == 0 ? double.PositiveInfinity : 1 / sum;
    }

    /// <summary>U for a coverage probability.</summary>
    /// <param name="x">The result.</param>
    /// <param name="probability">Between 0 and 1, e.g. 0.95.</param>
    /// <param name="truncate">Cut the degrees of freedom down to a whole number first, as GUM G.4.1 does for its table.</param>
    public static WelchSatterthwaite Of(Measured x, double probability, bool truncate = false)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Must lie between 0 and 1.");
        var dof = EffectiveDegreesOfFreedom(x);
        if (truncate && !double.IsInfinity(dof)) dof = Math.Max(1, Math.Floor(dof));
        var k = StudentT.Quantile((1 + probability) / 2, dof);
        return new(dof, k, k * x.StandardUncertainty);
    }
}
