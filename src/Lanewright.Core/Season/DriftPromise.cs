using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season;

/// <summary>What a drift chart promises for the looks it has and will have.</summary>
/// <param name="Limit">A sum above it is an alarm.</param>
/// <param name="Looks">Looks the promise of no false alarm is for.</param>
/// <param name="FalseAlarm">At most this chance of an alarm, either way, in those looks when nothing has changed.</param>
/// <param name="MeanToFind">Looks until the change is found, on average, when it is there from the first look on.</param>
/// <param name="MostToFind">Looks within which it is found with 95 % chance; null when that takes more than 200.</param>
public readonly record struct DriftPromise(double Limit, int Looks, double FalseAlarm, double MeanToFind, int? MostToFind)
{
    private const int Most = 200;

    /// <summary>The lowest limit that keeps the chance of a false alarm, and what it costs in looks.</summary>
    /// <param name="deviations">Own standard deviation of each look; further ones are taken to be as their median. At least one.</param>
    /// <param name="common">Standard deviation of the error they share.</param>
    /// <param name="rules">The yard's.</param>
    public static DriftPromise For(IReadOnlyList<double> deviations, double common, DriftRules rules)
    {
        ArgumentNullException.ThrowIfNull(deviations);
        ArgumentNullException.ThrowIfNull(rules);
        if (deviations.Count == 0) throw new ArgumentException("At least one look is needed.", nameof(deviations));
        var typical = deviations.Order().ElementAt(deviations.Count / 2);
        var looks = Math.Max(deviations.Count, rules.Looks);
        var (own, still) = (new double[looks], new double[looks]);
        for (var i = 0; i < looks; i++) own[i] = i < deviations.Count ? deviations[i] : typical;

        var (limit, alarm) = Lowest(Alarm, rules.FalseAlarm);
        var (after, changed) = (new double[Most], new double[Most]);
        for (var i = 0; i < Most; i++) (after[i], changed[i]) = (i < looks ? own[i] : typical, rules.Change);
        var silence = DriftChart.ChanceOfSilence(changed, after, rules.Change, limit, common);
        var mean = 1.0;
        int? most = null;
        for (var i = 0; i < Most; i++)
        {
            mean += silence[i];
            if (most is null && silence[i] <= 0.05) most = i + 1;
        }

        return new(limit, looks, alarm, mean, most);

        // Both sums in one season: at most the sum of their chances, which are equal.
        double Alarm(double h) => Math.Min(1, 2 * (1 - DriftChart.ChanceOfSilence(still, own, rules.Change, h, common)[^1]));
    }

    // The chance falls nearly as e to the minus limit, so its logarithm is close to a line: secants on it, to 2 % below the chance
    // wanted.
    private static (double Limit, double Alarm) Lowest(Func<double, double> alarm, double wanted)
    {
        double limit = 3, chance = alarm(limit), slope = -1;
        for (var i = 0; i < 40 && !(chance <= wanted && chance >= 0.97 * wanted); i++)
        {
            var next = Math.Clamp(limit + ((Elementary.Log(0.985 * wanted) - Elementary.Log(chance)) / slope), limit / 2, limit + 6);
            var there = alarm(next);
            if (next != limit) slope = Math.Min(-0.02, (Elementary.Log(there) - Elementary.Log(chance)) / (next - limit));
            (limit, chance) = (next, there);
        }

        return (limit, chance);
    }
}
