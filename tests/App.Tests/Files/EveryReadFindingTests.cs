using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Core.Text;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

/// <summary>Every kind of reading finding is made by some text, and each with exactly the values its text asks for.</summary>
public sealed class EveryReadFindingTests
{
    private const string Runs = "\"runs\": [{\"pulses\": 1, \"gross\": \"1 kg\"}]";
    private const string Rest = "\"method\": \"containers\", \"day\": \"2026-01-31\", \"scale\": {\"division\": 1}, " + Runs;

    private static readonly (SheetSyntax Syntax, string Text)[] Broken =
    [
        (SheetSyntax.Json, new string(' ', (4 * 1024 * 1024) + 1)),
        (SheetSyntax.Json, "[" + string.Concat(Enumerable.Repeat("0,", 100_001)) + "0]"),
        (SheetSyntax.Json, new string('[', 40)),
        (SheetSyntax.Json, ""),
        (SheetSyntax.Json, "{\"a\": \"\\ud800\"}"),
        (SheetSyntax.Json, "{"),
        (SheetSyntax.Json, "{\"a\": NaN}"),
        (SheetSyntax.Yaml, "a: b: c"),
        (SheetSyntax.Yaml, "a:\n\tb: 1"),
        (SheetSyntax.Yaml, "a: *b"),
        (SheetSyntax.Yaml, "a: !b c"),
        (SheetSyntax.Yaml, "? [a]\n: b"),
        (SheetSyntax.Yaml, "a: 1\n---\na: 2"),
        (SheetSyntax.Csv, "a,\"b"),
        (SheetSyntax.Csv, "container,tare\n1,2"),
        (SheetSyntax.Csv, "a b,c"),
        (SheetSyntax.Csv, "a,b,c,d"),
        (SheetSyntax.Csv, "a,b\na.c,d"),
        (SheetSyntax.Csv, "a[1],b"),
        (SheetSyntax.Csv, "a,b\na,d"),
        (SheetSyntax.Json, "{\"spreader\": \"a\", \"spreader\": \"b\"," + Rest + "}"),
        (SheetSyntax.Json, "{\"spraeder\": \"a\", \"factor\": \"x\", " + Rest + "}"),
        (SheetSyntax.Json, "{\"spreader\": 1, \"factor\": 11, " + Rest + "}"),
        (SheetSyntax.Json, "{\"spreader\": \"a number longer than twenty\", \"factor\": -1, " + Rest + "}"),
        (SheetSyntax.Json, "{\"spreader\": \"a\\u0007\", \"factor\": \"1,234\", " + Rest + "}"),
        (SheetSyntax.Json, "{\"method\": \"x\", \"day\": \"x\", \"begun\": \"x\", \"runs\": []}"),
        (SheetSyntax.Json, "{\"checks\": [\"x\", 1, \"1 kg\", \"1 kg\"], \"runs\": [{\"pulses\": 1.5, \"gross\": 1}]}"),
        (SheetSyntax.Json, "{\"runs\": [{\"pulses\": 1, \"gross\": \"x\"}]}"),
        (SheetSyntax.Json, "{" + string.Concat(Enumerable.Range(0, 600).Select(i => $"\"n{i}\": 0,")) + "}"),
    ];

    [Fact]
    public void All_are_made_and_complete()
    {
        var findings = Broken.SelectMany(broken => Read(broken.Syntax, broken.Text)).ToList();
        findings.AddRange(TreeFields.Read(JsonTree.Read("{}"), TextCulture.Invariant, fields => (string?)null).Findings);
        findings.AddRange(SheetFile.Read(Path.Combine(Path.GetTempPath(), "lanewright-no-such-file.json")).Findings);
        findings.AddRange(SheetFile.Read(Path.GetTempPath()).Findings);
        findings.Add(SheetFile.Failure(new UnauthorizedAccessException(), "a.json"));
        findings.Add(SheetFile.Failure(new IOException("The disk is gone."), "a.json"));

        Assert.Equal(
            ReadFindings.All.Select(kind => kind.Code).Order(StringComparer.Ordinal),
            findings.Select(finding => finding.Code).Where(code => code.StartsWith("read.", StringComparison.Ordinal))
                .Distinct().Order(StringComparer.Ordinal));
        foreach (var finding in findings)
        {
            Assert.True(FindingText.IsComplete(finding), $"{finding.Code}: {string.Join(", ", finding.Values)}");
            var text = FindingText.Message(finding, TextCulture.Norwegian, UnitPreferences.Metric)
                + FindingText.Action(finding, TextCulture.Norwegian, UnitPreferences.Metric);
            Assert.False(text.Contains("..", StringComparison.Ordinal), text);
        }
    }

    private static IReadOnlyList<Finding> Read(SheetSyntax syntax, string text) => TreeFields.Read(
        SheetFile.Read(Encoding.UTF8.GetBytes(text), syntax), TextCulture.Invariant, SampleSheet.Read).Findings;
}
