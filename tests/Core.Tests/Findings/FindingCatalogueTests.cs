using Lanewright.Core.Catalogue;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Tests.Findings;

public sealed partial class FindingCatalogueTests
{
    [Fact]
    public void No_kind_of_finding_is_forgotten()
    {
        var declared = typeof(FindingKind).Assembly.GetTypes()
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(field => field.FieldType == typeof(FindingKind) && !field.Name.StartsWith('<'))
            .Select(field => (FindingKind)field.GetValue(null)!)
            .ToList();
        Assert.True(declared.Count >= ReadFindings.All.Count);
        Assert.Equal(
            declared.Select(kind => kind.Code).Order(StringComparer.Ordinal),
            FindingCatalogue.All.Select(kind => kind.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Codes_are_unique_and_well_formed()
    {
        Assert.Equal(FindingCatalogue.All.Count, FindingCatalogue.All.Select(kind => kind.Code).Distinct().Count());
        Assert.All(FindingCatalogue.All, kind => Assert.Matches(WellFormed(), kind.Code));
        Assert.Same(ReadFindings.Empty, FindingCatalogue.Find("read.empty"));
        Assert.Null(FindingCatalogue.Find("read.nothing-like-it"));
    }

    [Fact]
    public void Texts_are_sentences_and_their_placeholders_have_names_and_known_forms()
    {
        foreach (var kind in FindingCatalogue.All)
        {
            Assert.False(string.IsNullOrWhiteSpace(kind.Message) || string.IsNullOrWhiteSpace(kind.Action), kind.Code);
            Assert.True(kind.Message[^1] is '.' or '?' or '}', kind.Code);
            Assert.True(kind.Action[^1] is '.' or '?' or '}', kind.Code);
            foreach (var (name, form) in FindingText.Placeholders(kind))
            {
                Assert.True(name.Length > 0 && name.All(char.IsAsciiLetterOrDigit), $"{kind.Code}: {name}");
                Assert.True(form is "" or "percent" or "count" || (form.Length == 1 && form[0] is >= '1' and <= '9'), $"{kind.Code}: {form}");
            }
        }
    }

    [Fact]
    public void The_page_of_findings_is_up_to_date() =>
        Repository.IsUpToDate(Page(), "docs", "formats", "findings.md");

    private static string Page()
    {
        var page = new StringBuilder();
        page.Append(
            """
            # Findings

            Everything the program can find, by its stable code. A code never changes its meaning. The severity is the
            usual one: `stop` means that the answer must not be used, `warn` that something should be looked at first,
            `note` that it is good to know. Words in braces stand for the values of the case. This page is written by a
            test from the catalogue in `src/Lanewright.Core/Catalogue/FindingCatalogue.cs`.

            """.ReplaceLineEndings("\n"));
        foreach (var area in FindingCatalogue.Areas)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {area.Title}\n\n| code | severity | what was found | what to do |\n|---|---|---|---|\n");
            foreach (var kind in area.Kinds)
            {
                var severity = kind.Severity.ToString().ToLowerInvariant();
                page.Append(CultureInfo.InvariantCulture, $"| `{kind.Code}` | {severity} | {Cell(kind.Message)} | {Cell(kind.Action)} |\n");
            }
        }

        return page.ToString();
    }

    private static string Cell(string text) => Form().Replace(text, "{$1}")
        .Replace("|", "\\|", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace("*", "\\*", StringComparison.Ordinal);

    [GeneratedRegex("^[a-z]+(-[a-z]+)*\\.[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex WellFormed();

    [GeneratedRegex("\\{(\\w+):\\w+\\}")]
    private static partial Regex Form();
}
