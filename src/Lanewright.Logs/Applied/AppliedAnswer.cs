using Lanewright.Core.Uncertainty;

namespace Lanewright.Logs.Applied;

/// <summary>One line of the ledger. Values are SI.</summary>
/// <param name="Name">What it is about; empty for rows that do not say.</param>
/// <param name="Mass">Mass spread, with its error sources.</param>
/// <param name="Expanded">Half the width of its interval.</param>
/// <param name="TargetMass">Mass that the targets asked for, over the distance that is known; kg.</param>
/// <param name="AppliedOnTarget">Mass spread where a target and a distance are known; compare it with <paramref name="TargetMass"/>.</param>
/// <param name="Metres">Distance spread over.</param>
/// <param name="Seconds">Time spread, gaps not counted.</param>
/// <param name="OverSeconds">Time above the band of the target.</param>
/// <param name="UnderSeconds">Time below it.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Gaps">Rows behind a gap.</param>
/// <param name="Resets">Rows in whose interval the counter began again.</param>
/// <param name="CountsWithoutConstant">Counts at moments at which no constant was valid: they are in no mass.</param>
/// <param name="Constants">How many constants are behind it.</param>
public sealed record AppliedLine(
    string Name, Measured Mass, double Expanded, double TargetMass, double AppliedOnTarget, double Metres, double Seconds, double OverSeconds,
    double UnderSeconds, long Rows, long Gaps, long Resets, double CountsWithoutConstant, int Constants)
{
    internal const char Between = '\u001f';

    /// <summary>Rows with counts of an interval that come behind a gap: something may have been spread there that no row holds.</summary>
    public long Holes { get; init; }

    /// <summary>The names, where a line is about several things.</summary>
    public IReadOnlyList<string> Names => Name.Split(Between);
}

/// <summary>The lines and their sum.</summary>
/// <param name="Lines">In order of name.</param>
/// <param name="Total">All together, with what the lines share.</param>
public sealed record AppliedAnswer(IReadOnlyList<AppliedLine> Lines, AppliedLine Total);
