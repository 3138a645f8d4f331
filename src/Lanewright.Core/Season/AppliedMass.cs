using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>What a group of intervals counted under one constant.</summary>
/// <param name="Constant">The constant.</param>
/// <param name="Counts">Sum of counts, 0 or more.</param>
/// <param name="Intervals">How many intervals that sum is of.</param>
public readonly record struct CountsUnder(SeasonConstant Constant, double Counts, long Intervals);

/// <summary>The mass that counts stand for, with its uncertainty. <c>docs/method/as-applied.md</c> explains the formulas.</summary>
public static class AppliedMass
{
    /// <summary>
    /// Mass of a group: the sum over constants of counts times mass for one count. Everything counted under one constant is
    /// wrong by the same share, so it does not average out; constants that share a source are wrong together through it
    /// (JCGM 100:2008, 5.2.2). Counting is whole: each interval may be wrong by part of a count at its begin and at its end.
    /// </summary>
    /// <param name="parts">The counts, each constant once or several times.</param>
    /// <param name="group">Name of the group among all results; its counting errors are its own.</param>
    public static Measured Of(IReadOnlyList<CountsUnder> parts, string group)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var value = 0.0;
        var counting = 0.0;
        var contributions = new List<Contribution>();
        foreach (var (constant, counts, intervals) in parts)
        {
            var mass = counts * constant.MassPerCount;
            value += mass;
            counting += CountingVariance * intervals * constant.MassPerCount * constant.MassPerCount;
            foreach (var relative in constant.Relative) contributions.Add(new(relative.Source, mass * relative.Amount));
        }

        if (counting > 0) contributions.Add(new(ErrorSource.Normal($"applied:{group}:counting", "counting of pulses"), Math.Sqrt(counting)));
        return Measured.Of(value, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(contributions));
    }

    // Two roundings down, of the count at the begin and at the end, each anywhere within one count: 2 x 1/12 (triangular).
    private const double CountingVariance = 1 / 6.0;
}
