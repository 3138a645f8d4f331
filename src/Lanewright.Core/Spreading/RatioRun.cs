using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>One run as a ratio: what the constant has on top, and below.</summary>
/// <param name="Id">Name of the run.</param>
/// <param name="Field">Where it stands in the sheet.</param>
/// <param name="Top">Pulses, mass or the like, SI.</param>
/// <param name="Bottom">Mass, pulses, turns or time, SI; its value is the size of the run.</param>
public sealed record RatioRun(string Id, string Field, Measured Top, Measured Bottom)
{
    /// <summary>Top by bottom.</summary>
    public double Ratio => Top.Value / Bottom.Value;

    /// <summary>
    /// Standard uncertainty of the ratio, as a share, from sources that only this run has.
    /// </summary>
    /// <param name="shared">Sources that other runs have too.</param>
    internal double OwnError(IReadOnlySet<ErrorSource> shared)
    {
        var ratio = Top / Bottom;
        var variance = 0.0;
        foreach (var c in ratio.Contributions)
        {
            if (!shared.Contains(c.Source)) variance += c.Amount * c.Amount;
        }

        return Math.Sqrt(variance) / Math.Abs(ratio.Value);
    }

    /// <summary>
    /// The sources that more than one of the runs have. One run alone does not show them; there they are the sources
    /// that do not carry the run's name.
    /// </summary>
    internal static HashSet<ErrorSource> SharedSources(IReadOnlyList<RatioRun> runs)
    {
        if (runs.Count == 1)
        {
            var own = $"run:{runs[0].Id}:";
            var others = new HashSet<ErrorSource>();
            foreach (var c in (runs[0].Top / runs[0].Bottom).Contributions)
            {
                if (!c.Source.Id.Contains(own, StringComparison.Ordinal)) others.Add(c.Source);
            }

            return others;
        }

        var seen = new HashSet<ErrorSource>();
        var shared = new HashSet<ErrorSource>();
        foreach (var run in runs)
        {
            foreach (var c in (run.Top / run.Bottom).Contributions)
            {
                if (!seen.Add(c.Source)) shared.Add(c.Source);
            }
        }

        return shared;
    }
}
