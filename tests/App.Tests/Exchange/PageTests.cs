using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Tests;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Files;

namespace Lanewright.App.Tests.Exchange;

/// <summary>The pages of the formats say what is so: their samples read, and they name every key that is written.</summary>
public sealed partial class PageTests
{
    [Fact]
    public void The_three_forms_of_the_page_are_one_sheet_without_findings_from_reading()
    {
        var page = Repository.Text("docs", "formats", "sheet.md");
        var texts = new List<string>();
        foreach (var (language, syntax) in new[] { ("json", SheetSyntax.Json), ("yaml", SheetSyntax.Yaml), ("csv", SheetSyntax.Csv) })
        {
            var reading = SheetReader.Read(SheetFile.Read(Encoding.UTF8.GetBytes(Sample(page, language)), syntax));
            Assert.Empty(reading.Findings);
            Assert.Single(SheetAnalysis.Analyse(reading.Value!).Results);
            texts.Add(SheetWriter.Write(reading.Value!));
        }

        Assert.Single(texts.Distinct());
    }

    [Fact]
    public void The_sample_of_the_plans_page_is_a_plan()
    {
        var sample = Sample(Repository.Text("docs", "formats", "plan.md"), "yaml");
        var reading = PlanReader.Read(SheetFile.Read(Encoding.UTF8.GetBytes(sample), SheetSyntax.Yaml));
        Assert.Empty(reading.Findings);
        Assert.NotNull(Planner.Plan(reading.Value!).Best);
    }

    [Fact]
    public void The_page_of_the_report_names_every_key_and_no_other()
    {
        var keys = new SortedSet<string>(StringComparer.Ordinal);
        IReadOnlyList<TestSheet> sheets =
            [.. Examples.Sheets.Select(name => SheetReader.Read(Examples.Tree(name)).Value!), .. SheetGen.Some(200)];
        for (var i = 0; i < sheets.Count; i++)
        {
            var report = SheetAnalysis.Analyse(sheets[i], new(i < 6 ? 2000 : 0));
            Collect(ReportWriter.Write(report, [ReadFindings.Empty.At("")], TextCulture.Invariant, UnitPreferences.Metric), keys);
        }

        // A drop test has no ensemble; a meter's calibration has.
        var source = ErrorSource.Normal("a", "b", 3, "c");
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream)) MeasuredJson.Write(json, Measured.Of(1, 1, source));
        var alone = new SortedSet<string>(StringComparer.Ordinal);
        Collect(Encoding.UTF8.GetString(stream.ToArray()), alone);
        keys.UnionWith(alone.Select(key => "results[].measured." + key));

        Same(Documented("report.md"), keys);
    }

    [Fact]
    public void The_page_of_the_plan_names_every_key_and_no_other()
    {
        var keys = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var name in Examples.Plans)
        {
            var request = PlanReader.Read(Examples.Tree(name)).Value!;
            foreach (var one in (PlanRequest[])[request, request with { Delivery = null, Method = CatchMethod.Truck }])
                Collect(PlanWriter.Write(Planner.Plan(one), [], TextCulture.Invariant, UnitPreferences.Metric), keys);
        }

        // The page describes a choice once.
        var once = keys.Where(key => !key.StartsWith("findings[].", StringComparison.Ordinal)
            && !key.StartsWith("choices[].", StringComparison.Ordinal) && !key.StartsWith("practices[].choice.", StringComparison.Ordinal));
        Assert.Equal(
            keys.Where(key => key.StartsWith("best.", StringComparison.Ordinal)).Select(key => key["best.".Length..]),
            keys.Where(key => key.StartsWith("choices[].", StringComparison.Ordinal)).Select(key => key["choices[].".Length..]));
        Same(Documented("plan.md"), new SortedSet<string>(once.Append("findings[]"), StringComparer.Ordinal));
    }

    [Fact]
    public void A_refusal_has_the_keys_that_the_page_shows()
    {
        var keys = new SortedSet<string>(StringComparer.Ordinal);
        Collect(FindingsWriter.Write([ReadFindings.Empty.At("")], TextCulture.Invariant, UnitPreferences.Metric), keys);
        Assert.Equal(["findings[]", "format", "usable"], keys.Where(key => !key.StartsWith("findings[].", StringComparison.Ordinal)));
        Assert.Contains(FindingsWriter.Format, Repository.Text("docs", "formats", "report.md"), StringComparison.Ordinal);
        Assert.Contains(ReportWriter.Format, Repository.Text("docs", "formats", "report.md"), StringComparison.Ordinal);
        Assert.Contains(PlanWriter.Format, Repository.Text("docs", "formats", "plan.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_of_the_report_names_every_word()
    {
        var page = Repository.Text("docs", "formats", "report.md");
        IEnumerable<string> words =
        [
            .. Enum.GetValues<RatioEstimator>().Select(ReportWords.Of), .. Enum.GetValues<EstimatorReason>().Select(ReportWords.Of),
            .. Enum.GetValues<Conformity>().Select(ReportWords.Of), .. Enum.GetValues<Severity>().Select(ReportWords.Of),
        ];
        Assert.All(words, word => Assert.Contains($"`{word}`", page, StringComparison.Ordinal));
    }

    private static void Same(SortedSet<string> documented, SortedSet<string> written)
    {
        // A group of keys need not have a row of its own.
        var missing = written.Except(documented).Where(key => !documented.Any(one => one.StartsWith(key + ".", StringComparison.Ordinal)
            || one.StartsWith(key.EndsWith("[]", StringComparison.Ordinal) ? key + "." : key + "[]", StringComparison.Ordinal)));
        Assert.Empty(missing);
        Assert.Empty(documented.Except(written));
    }

    private static SortedSet<string> Documented(string page)
    {
        var text = Repository.Text("docs", "formats", page);
        // The keys are the last table of the page.
        var table = text[text.LastIndexOf("| key | meaning |", StringComparison.Ordinal)..];
        return new(Row().Matches(table).Select(row => row.Groups[1].Value), StringComparer.Ordinal);
    }

    private static void Collect(string json, SortedSet<string> keys)
    {
        using var document = JsonDocument.Parse(json);
        Walk(document.RootElement, "");

        void Walk(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.Object)
            {
                foreach (var property in element.EnumerateObject())
                {
                    var key = path.Length == 0 ? property.Name : $"{path}.{property.Name}";
                    var isList = property.Value.ValueKind == JsonValueKind.Array;
                    keys.Add(isList ? key + "[]" : key);
                    // What is inside is named by the case, not by the format.
                    if (property.Name is not ("values" or "alternatives")) Walk(property.Value, key);
                }
            }
            else if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray()) Walk(item, path + "[]");
            }
        }
    }

    private static string Sample(string page, string language)
    {
        var fence = $"```{language}\n";
        var start = page.IndexOf(fence, StringComparison.Ordinal) + fence.Length;
        return page[start..page.IndexOf("```", start, StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"^\| `([^`]+)` \|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
