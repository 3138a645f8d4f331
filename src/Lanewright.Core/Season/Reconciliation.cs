using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>A balance that the true values obey: the sum of factor times value is 0.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Terms">Place of the value and its factor, usually +1 in and -1 out.</param>
public sealed record Balance(string Name, IReadOnlyList<(int Place, double Factor)> Terms);

/// <summary>What a balance leaves open.</summary>
/// <param name="Name">The balance.</param>
/// <param name="Open">The sum of its terms as measured.</param>
/// <param name="Chance">Chance of one at least as large, either way, when nothing is wrong.</param>
public sealed record BalanceGap(string Name, Measured Open, double Chance);

/// <summary>A measurement, or an error that several share, that would explain what does not fit.</summary>
/// <param name="Places">Places of the measurements that would explain it equally well; those it is shared by, for a shared
/// error.</param>
/// <param name="Source">Family of the shared error; null for a measurement of its own.</param>
/// <param name="Statistic">How much of the misfit it explains: chi-squared with one degree of freedom when nothing is wrong.</param>
/// <param name="Chance">Chance of one as large among all candidates when nothing is wrong (Sidak).</param>
/// <param name="Size">How wrong it would be: in the measurement's unit, or in standard uncertainties of a shared error.</param>
public sealed record Suspect(IReadOnlyList<int> Places, string? Source, double Statistic, double Chance, double Size);

/// <summary>
/// Measurements moved as little as possible, weighed by their uncertainties and what they share, so that every balance closes
/// (D. R. Kuehn and H. Davidson, Chem. Eng. Progress 57, 1961), and which of them is most likely wrong (generalized likelihood
/// ratio, S. Narasimhan and R. S. H. Mah, AIChE Journal 33, 1987; docs/method/reconciliation.md).
/// </summary>
/// <param name="Adjusted">The measurements after the balance; they carry the same error sources.</param>
/// <param name="Gaps">What each balance left open before.</param>
/// <param name="Misfit">Sum of squares of what did not fit: chi-squared with a degree of freedom for each balance when nothing is
/// wrong.</param>
/// <param name="Chance">Chance of one at least as large when nothing is wrong.</param>
/// <param name="Suspects">The likeliest first.</param>
public sealed record Reconciliation(
    IReadOnlyList<Measured> Adjusted, IReadOnlyList<BalanceGap> Gaps, double Misfit, double Chance, IReadOnlyList<Suspect> Suspects)
{
    private const double Same = 1e-9;

    /// <summary>Reconciles.</summary>
    /// <param name="values">The measurements; what they share they carry.</param>
    /// <param name="balances">Independent of each other, each with an uncertain measurement.</param>
    /// <exception cref="ArgumentException">The balances are not independent, or one has nothing uncertain in it.</exception>
    public static Reconciliation Of(IReadOnlyList<Measured> values, IReadOnlyList<Balance> balances)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(balances);
        var open = balances.Select(balance => Measured.Linear(
            [.. balance.Terms.Select(term => values[term.Place])], [.. balance.Terms.Select(term => term.Factor)])).ToArray();
        var m = open.Length;
        // Columns: what is open, then what a unit error in each candidate does to each balance.
        var candidates = Candidates(values, balances, open);
        var (spread, right) = (new double[m, m], new double[m, 1 + candidates.Count]);
        for (var a = 0; a < m; a++)
        {
            for (var b = 0; b < m; b++) spread[a, b] = Measured.Covariance(open[a], open[b]);
            right[a, 0] = open[a].Value;
            for (var c = 0; c < candidates.Count; c++) right[a, 1 + c] = candidates[c].Effect[a];
        }

        var solved = LinearSystem.Solve(spread, right)
            ?? throw new ArgumentException("A balance follows from the others or has nothing uncertain in it.", nameof(balances));
        var misfit = 0.0;
        for (var b = 0; b < m; b++) misfit += open[b].Value * solved[b, 0];
        return new(
            Adjust(values, open, spread), [.. balances.Select((balance, b) => new BalanceGap(balance.Name, open[b], Chances(open[b])))],
            misfit, m == 0 ? 1 : ChiSquared.Survival(misfit, m), Judge(candidates, solved));

        static double Chances(Measured gap) =>
            gap.Variance == 0 ? (gap.Value == 0 ? 1 : 0) : 2 * NormalDistribution.Survival(Math.Abs(gap.Value) / gap.StandardUncertainty);
    }

    // x - V A' H^-1 (A x): each value less its share of what is open, with the sources of both.
    private static Measured[] Adjust(IReadOnlyList<Measured> values, Measured[] open, double[,] spread)
    {
        var m = open.Length;
        var shared = new double[m, values.Count];
        for (var i = 0; i < values.Count; i++)
        {
            for (var b = 0; b < m; b++) shared[b, i] = Measured.Covariance(values[i], open[b]);
        }

        var gains = LinearSystem.Solve(spread, shared)!;
        var adjusted = new Measured[values.Count];
        Measured[] parts = [default, .. open];
        var factors = new double[1 + m];
        for (var i = 0; i < adjusted.Length; i++)
        {
            (parts[0], factors[0]) = (values[i], 1);
            for (var b = 0; b < m; b++) factors[1 + b] = -gains[b, i];
            adjusted[i] = Measured.Linear(parts, factors);
        }

        return adjusted;
    }

    private sealed record Candidate(List<int> Places, string? Source, double[] Effect);

    private static List<Candidate> Candidates(IReadOnlyList<Measured> values, IReadOnlyList<Balance> balances, Measured[] open)
    {
        var candidates = new List<Candidate>();
        var uses = new SortedDictionary<ErrorSource, List<int>>();
        for (var i = 0; i < values.Count; i++)
        {
            foreach (var c in values[i].Contributions)
            {
                if (!uses.TryGetValue(c.Source, out var places)) uses.Add(c.Source, places = []);
                places.Add(i);
            }

            var place = i;
            if (values[i].Variance > 0)
                candidates.Add(new([i], null, [.. balances.Select(b => b.Terms.Where(t => t.Place == place).Sum(t => t.Factor))]));
        }

        foreach (var (source, places) in uses)
        {
            if (places.Count < 2) continue;
            var effect = new double[open.Length];
            for (var b = 0; b < effect.Length; b++)
            {
                foreach (var c in open[b].Contributions)
                    if (c.Source == source) effect[b] += c.Amount;
            }

            candidates.Add(new(places, source.Family, effect));
        }

        candidates.RemoveAll(candidate => candidate.Effect.All(e => e == 0));
        return candidates;
    }

    private static List<Suspect> Judge(List<Candidate> candidates, double[,] solved)
    {
        var (suspects, directions) = (new List<Suspect>(), new List<Candidate>());
        for (var c = 0; c < candidates.Count; c++)
        {
            var (effect, along, power) = (candidates[c].Effect, 0.0, 0.0);
            for (var b = 0; b < effect.Length; b++)
            {
                along += effect[b] * solved[b, 0];
                power += effect[b] * solved[b, 1 + c];
            }

            // Measurements that only ever appear side by side explain the same: one suspect for all of them.
            var twin = candidates[c].Source is null ? directions.FindIndex(d => d.Source is null && IsParallel(d.Effect, effect)) : -1;
            if (twin >= 0)
            {
                suspects[twin] = suspects[twin] with { Places = [.. suspects[twin].Places, .. candidates[c].Places] };
                continue;
            }

            directions.Add(candidates[c]);
            suspects.Add(new(candidates[c].Places, candidates[c].Source, along * along / power, 0, along / power));
        }

        // Sidak: among n candidates the chance of at least one so large.
        return
        [
            .. suspects.Select(s => s with { Chance = -Elementary.Expm1(suspects.Count * Elementary.Log1p(-Math.Min(1 - 1e-16, ChiSquared.Survival(s.Statistic, 1)))) })
                .OrderByDescending(s => s.Statistic),
        ];
    }

    private static bool IsParallel(double[] a, double[] b)
    {
        double ab = 0, aa = 0, bb = 0;
        for (var i = 0; i < a.Length; i++)
        {
            ab += a[i] * b[i];
            aa += a[i] * a[i];
            bb += b[i] * b[i];
        }

        return Math.Abs((ab * ab) - (aa * bb)) <= Same * aa * bb;
    }
}
