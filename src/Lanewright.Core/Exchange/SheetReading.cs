using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>What came of reading a sheet: the record, as far as one could be made, and all findings on the way.</summary>
/// <param name="Value">The record; null when nothing usable could be made of the text, and then a finding of severity
/// <see cref="Severity.Stop"/> says why.</param>
/// <param name="Findings">Everything that was found, in the order of reading.</param>
public sealed record SheetReading<T>(T? Value, IReadOnlyList<Finding> Findings)
    where T : class
{
    /// <summary>Whether the record may be used: it is there and no finding says to stop.</summary>
    public bool IsUsable => Value is not null && !Findings.Any(finding => finding.Severity == Severity.Stop);
}
