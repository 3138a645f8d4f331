using Lanewright.Core.Exchange;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Office;

/// <summary>How two tests differ, with what their common scale cancels.</summary>
/// <param name="Sentence">The difference in words.</param>
/// <param name="Verdict">Whether it is more than the uncertainty.</param>
public sealed record TestDifference(string Sentence, string Verdict)
{
    private const double Factor = 2;

    /// <summary>The difference of the first results of two reports; null when they measure different things.</summary>
    internal static TestDifference? Of(TestReport? a, TestReport? b)
    {
        if (a?.Results is not [var first, ..] || b?.Results is not [var second, ..] || first.Dimension != second.Dimension)
            return null;
        // Each test's own errors are told apart by their sheet; what both share, one scale's proportional error, cancels.
        var ratio = SheetKey.Mark(second.Value, SheetKey.Of(b.Sheet)) / SheetKey.Mark(first.Value, SheetKey.Of(a.Sheet));
        var change = ratio.Value - 1;
        var expanded = Factor * ratio.StandardUncertainty;
        var (share, known) = (OfficeText.Percent(Math.Abs(change)), OfficeText.Percent(expanded));
        return new(
            change >= 0
                ? OfficeText.Say($"The second is {share} higher than the first, ± {known}.")
                : OfficeText.Say($"The second is {share} lower than the first, ± {known}."),
            Math.Abs(change) > expanded
                ? OfficeText.Say("That is more than their uncertainty explains.")
                : OfficeText.Say("Their uncertainty explains a difference of this size."));
    }
}
