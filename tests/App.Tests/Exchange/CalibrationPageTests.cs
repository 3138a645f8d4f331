using System.Text;
using System.Text.Json;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Tests;

namespace Lanewright.App.Tests.Exchange;

/// <summary>The page of the other calibrations' sheets says what their readers ask.</summary>
public sealed class CalibrationPageTests
{
    private const string Begin = "<!-- fields -->\n";
    private const string End = "<!-- /fields -->";

    [Fact]
    public void The_page_lists_every_field_of_every_kind()
    {
        var file = Repository.File("docs", "formats", "calibrations.md");
        var page = File.ReadAllText(file);
        var from = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var wanted = page[..from] + Fields() + page[page.IndexOf(End, StringComparison.Ordinal)..];
        if (Environment.GetEnvironmentVariable("LANEWRIGHT_UPDATE_DOCS") == "1") File.WriteAllText(file, wanted);
        else Assert.Equal(wanted, page);
    }

    private static string Fields()
    {
        var text = new StringBuilder();
        foreach (var kind in Calibration.Kinds)
        {
            text.Append("### ").Append(kind.Word).Append("\n\n").Append(kind.Name).Append(": ").Append(kind.Doc)
                .Append("\n\n| field | needed | meaning |\n|---|---|---|\n");
            using var schema = JsonDocument.Parse(Calibration.Schema(kind));
            Rows(text, schema.RootElement, "");
            text.Append('\n');
        }

        return text.ToString();
    }

    private static void Rows(StringBuilder text, JsonElement group, string path)
    {
        var needed = group.TryGetProperty("required", out var list) ? list.EnumerateArray().Select(one => one.GetString()!).ToHashSet() : [];
        foreach (var field in group.GetProperty("properties").EnumerateObject())
        {
            if (field.Name == "$schema") continue;
            var about = field.Value;
            var isList = about.TryGetProperty("items", out var items);
            var here = path + field.Name + (isList ? "[]" : "");
            var doc = about.TryGetProperty("description", out var words) ? words.GetString()! : "";
            var choices = about.TryGetProperty("oneOf", out var oneOf)
                ? string.Join(", ", oneOf.EnumerateArray().Where(one => one.TryGetProperty("const", out _)).Select(one => $"`{one.GetProperty("const").GetString()}`")) : "";
            text.Append("| `").Append(here).Append("` | ").Append(needed.Contains(field.Name) ? "yes" : "").Append(" | ")
                .Append(doc.Replace("|", "\\|", StringComparison.Ordinal)).Append(choices.Length > 0 ? " " + choices : "").Append(" |\n");
            var inner = isList ? items : about;
            if (inner.TryGetProperty("properties", out _)) Rows(text, inner, here + ".");
        }
    }
}
