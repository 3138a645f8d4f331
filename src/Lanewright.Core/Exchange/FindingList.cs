using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>The findings of one reading; beyond <see cref="SheetLimits.Findings"/> they are only counted.</summary>
internal sealed class FindingList
{
    private readonly List<Finding> findings = [];
    private int unlisted;
    private Severity worstUnlisted;

    /// <summary>How many findings of severity stop there were, listed or not.</summary>
    internal int Stops { get; private set; }

    /// <summary>Whether a further finding would only be counted, so that its words need not be looked for.</summary>
    internal bool IsFull => findings.Count >= SheetLimits.Findings;

    internal void Add(Finding finding)
    {
        if (finding.Severity == Severity.Stop) Stops++;
        if (!IsFull)
        {
            findings.Add(finding);
            return;
        }

        unlisted++;
        if (finding.Severity > worstUnlisted) worstUnlisted = finding.Severity;
    }

    internal IReadOnlyList<Finding> ToList() =>
        unlisted == 0
            ? findings
            : [.. findings, ReadFindings.MoreFindings.At(worstUnlisted, "", Place.Count("count", unlisted))];
}
