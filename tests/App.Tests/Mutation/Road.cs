using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Tests;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Files;

namespace Lanewright.App.Tests.Mutation;

/// <summary>What came of one text on the whole road from bytes to the report for machines.</summary>
/// <param name="Reading">The sheet as read.</param>
/// <param name="Findings">All findings, of reading and of the report.</param>
/// <param name="Canonical">The sheet in its canonical form; null when there is none.</param>
internal sealed record Road(SheetReading<TestSheet> Reading, IReadOnlyList<Finding> Findings, string? Canonical)
{
    /// <summary>Goes the road and checks what must hold for every text.</summary>
    public static Road Take(byte[] utf8, SheetSyntax? syntax)
    {
        var clock = Stopwatch.StartNew();
        var reading = SheetReader.Read(SheetFile.Read(utf8, syntax));
        Assert.True(reading.Value is not null || reading.Findings.Any(f => f.Severity is Severity.Stop), "neither sheet nor finding");
        List<Finding> findings = [.. reading.Findings];
        string? canonical = null;
        if (reading.Value is { } sheet)
        {
            // Also what is not usable is analysed, because a page shows what there is while it is being filled in.
            var report = SheetAnalysis.Analyse(sheet, new(0));
            findings.AddRange(report.Findings);
            CheckNumbers(ReportWriter.Write(report, reading.Findings, TextCulture.German, UnitPreferences.UnitedStates));
            CheckResults(report);
            canonical = SheetWriter.Write(sheet);
        }

        CheckNumbers(FindingsWriter.Write(findings, TextCulture.UnitedStates, UnitPreferences.Metric));
        foreach (var finding in findings)
            Assert.True(FindingText.IsComplete(finding), $"{finding.Code}: {string.Join(", ", finding.Values)}");
        Assert.True(clock.Elapsed < Patience.Longest, $"{clock.Elapsed} for {utf8.Length} bytes");
        return new(reading, findings, canonical);
    }

    /// <summary>The same, with the text in the message of whatever goes wrong.</summary>
    public static Road TakeShown(byte[] utf8, SheetSyntax? syntax, string what)
    {
        try
        {
            return Take(utf8, syntax);
        }
        catch (Exception error)
        {
            var text = Encoding.UTF8.GetString(utf8);
            throw new InvalidOperationException($"{what} ({syntax}): {error.Message}\n{text[..Math.Min(text.Length, 6000)]}", error);
        }
    }

    private static void CheckResults(TestReport report)
    {
        foreach (var result in report.Results)
        {
            Assert.True(result.Value.Value > 0, "a result that is not positive");
            Assert.True(result.Expanded >= 0 && result.Low <= result.Value.Value && result.Value.Value <= result.High, "an interval without its value");
        }
    }

    private static void CheckNumbers(string json)
    {
        using var document = JsonDocument.Parse(json);
        Walk(document.RootElement);

        static void Walk(JsonElement element)
        {
            switch (element.ValueKind)
            {
                case JsonValueKind.Object:
                    foreach (var property in element.EnumerateObject()) Walk(property.Value);
                    break;
                case JsonValueKind.Array:
                    foreach (var item in element.EnumerateArray()) Walk(item);
                    break;
                case JsonValueKind.Number:
                    Assert.True(double.IsFinite(element.GetDouble()), "a number that is not finite");
                    break;
            }
        }
    }
}
