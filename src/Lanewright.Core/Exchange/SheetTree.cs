using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>What came of taking a text apart: a tree, and what was found wrong with the text on the way.</summary>
/// <param name="Root">The tree, or null when the text could not be taken apart; then a finding says why.</param>
/// <param name="Findings">What was found while taking the text apart; empty when nothing was wrong.</param>
public sealed record SheetTree(SheetNode? Root, IReadOnlyList<Finding> Findings)
{
    /// <summary>No tree, for one reason.</summary>
    public static SheetTree Refused(Finding reason) => new(null, [reason]);
}
