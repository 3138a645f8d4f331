using Lanewright.Core.Uncertainty;

namespace Lanewright.Benchmarks;

/// <summary>A race counts only between programs that give the same answer.</summary>
internal static class Agreement
{
    /// <summary>Throws when the two differ by more than the trials' own chance: six standard errors of each figure.</summary>
    internal static void Demand(MonteCarlo ours, object theirs)
    {
        var other = (TrialFigures)theirs;
        var u = ours.StandardUncertainty;
        var mean = 6 * Math.Sqrt(2.0 / ours.Trials) * u;
        var end = 6 * Math.Sqrt(2) * ours.EndStandardError;
        // Where the density is flat about the ends the shortest interval may slide much further than its width changes.
        Demand(ours.Mean, other.Mean, mean);
        Demand(u, other.StandardUncertainty, mean);
        Demand(ours.Low, other.Low, end);
        Demand(ours.High, other.High, end);
        Demand(ours.ShortestHigh - ours.ShortestLow, other.ShortestHigh - other.ShortestLow, 2 * end);
    }

    private static void Demand(double ours, double theirs, double room)
    {
        if (!(Math.Abs(ours - theirs) <= room))
            throw new InvalidOperationException($"The programs disagree: {ours:R} against {theirs:R}, room {room:R}.");
    }
}
