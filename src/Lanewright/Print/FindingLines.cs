using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Print;

/// <summary>Findings as lines: severity, what, where, what to do.</summary>
internal static class FindingLines
{
    internal static IEnumerable<string> Of(IEnumerable<Finding> findings, Show show)
    {
        foreach (var finding in findings)
        {
            var label = show.Say(ReportWords.Label(finding.Severity)).PadRight(5);
            var message = FindingText.Message(finding, show.Culture, show.Units);
            foreach (var line in Wrapped.Lines($"  {label} ", message)) yield return line;
            foreach (var line in Wrapped.Lines(new string(' ', label.Length + 3), FindingText.Action(finding, show.Culture, show.Units)))
                yield return line;
            var place = FindingText.Where(finding, show.Culture.Language);
            yield return new string(' ', label.Length + 3) + (place.Length == 0 ? $"({finding.Code})" : $"({place}: {finding.Code})");
        }
    }
}
