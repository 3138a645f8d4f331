namespace Lanewright.Core.Uncertainty;

/// <summary>One line of an uncertainty budget: all sources of one family together.</summary>
/// <param name="Family">What it is.</param>
/// <param name="Sources">How many sources stand behind the line.</param>
/// <param name="StandardUncertainty">Their combined effect on the result, SI.</param>
/// <param name="Share">Their share of the variance, 0 to 1.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom of the line.</param>
public sealed record BudgetLine(
    string Family, int Sources, double StandardUncertainty, double Share, double DegreesOfFreedom);

/// <summary>Says where the uncertainty of a result comes from.</summary>
public static class Budget
{
    /// <summary>The lines, largest first; their squares add up to the variance of the result.</summary>
    public static IReadOnlyList<BudgetLine> Of(Measured x)
    {
        var total = x.Variance;
        var families = new Dictionary<string, List<Contribution>>(StringComparer.Ordinal);
        foreach (var c in x.Contributions)
        {
            if (!families.TryGetValue(c.Source.Family, out var list))
                families.Add(c.Source.Family, list = []);
            list.Add(c);
        }

        var lines = new List<BudgetLine>(families.Count);
        foreach (var (family, list) in families)
        {
            var part = Measured.Of(0, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(list));
            lines.Add(new(
                family, list.Count, part.StandardUncertainty, part.Variance / total,
                WelchSatterthwaite.EffectiveDegreesOfFreedom(part)));
        }

        lines.Sort(static (a, b) => b.StandardUncertainty.CompareTo(a.StandardUncertainty) is var order and not 0
            ? order
            : string.CompareOrdinal(a.Family, b.Family));
        return lines;
    }
}
