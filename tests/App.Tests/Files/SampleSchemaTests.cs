using System.Text.Json;
using Json.Schema;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Tests.Exchange;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Files;

/// <summary>The schema that is written from the reading function, judged by a validator that knows nothing of us.</summary>
public sealed class SampleSchemaTests
{
    private const string Good = """
        {
          "$schema": "sample.json", "spreader": "HR-104", "method": "containers", "day": "2026-01-31",
          "begun": null, "moist": "yes", "factor": 1.5, "scale": {"division": 0.5}, "checks": ["20 kg"],
          "runs": [{"pulses": "3,021", "gross": "412.5 lb", "tare": "21 lb"}, {"pulses": 3033, "gross": "187 kg"}]
        }
        """;

    private static readonly string Text = SchemaFields.Describe(SampleSheet.SchemaId, "A sample sheet", SampleSheet.Read);
    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    [Fact]
    public void The_schema_is_a_schema()
    {
        using var document = JsonDocument.Parse(Text);
        Assert.True(MetaSchemas.Draft202012.Evaluate(document.RootElement).IsValid);
        var root = document.RootElement;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", root.GetProperty("$schema").GetString());
        Assert.False(root.GetProperty("additionalProperties").GetBoolean());
        Assert.Equal(
            ["spreader", "method", "day", "scale", "runs"],
            root.GetProperty("required").EnumerateArray().Select(name => name.GetString()));
        var division = root.GetProperty("properties").GetProperty("scale").GetProperty("properties").GetProperty("division");
        Assert.Contains("a mass", division.GetProperty("description").GetString(), StringComparison.Ordinal);
        Assert.Contains("without a unit is in lb", division.GetProperty("description").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_good_sheet_is_accepted_by_the_schema_and_by_the_reader()
    {
        Assert.True(IsValid(Good));
        Assert.Empty(Read(Good));
    }

    [Theory]
    [InlineData("\"spreader\": \"HR-104\",", "")]
    [InlineData("\"spreader\": \"HR-104\"", "\"spreader\": 104")]
    [InlineData("\"spreader\": \"HR-104\"", "\"spreader\": \" \"")]
    [InlineData("\"spreader\": \"HR-104\"", "\"spreader\": \"a number longer than twenty\"")]
    [InlineData("\"containers\"", "\"by hand\"")]
    [InlineData("\"yes\"", "\"perhaps\"")]
    [InlineData("1.5", "11")]
    [InlineData("{\"division\": 0.5}", "[]")]
    [InlineData("{\"division\": 0.5}", "{}")]
    [InlineData("[\"20 kg\"]", "[20]")]
    [InlineData("[\"20 kg\"]", "[\"20 kg\", \"20 kg\", \"20 kg\", \"20 kg\"]")]
    [InlineData("3033", "3033.5")]
    [InlineData("3033", "-3")]
    [InlineData("\"187 kg\"", "187")]
    [InlineData("\"gross\": \"187 kg\"", "\"gross\": \"187 kg\", \"goss\": 1")]
    public void What_the_schema_refuses_the_reader_reports(string was, string becomes)
    {
        var text = Good.Replace(was, becomes, StringComparison.Ordinal);
        Assert.NotEqual(Good, text);
        Assert.False(IsValid(text));
        Assert.NotEmpty(Read(text));
    }

    /// <summary>Damaged sheets that the schema accepts never have the wrong shape for the reader.</summary>
    [Fact]
    public void What_the_schema_accepts_has_the_right_shape_for_the_reader()
    {
        string[] shape = ["read.wrong-shape", "read.missing-field", "read.unknown-field", "read.too-few-items", "read.too-many-items"];
        var random = new Random(20260205);
        var accepted = 0;
        string[] pieces =
        [
            "null", "true", "1", "1.5", "\"x\"", "[]", "{}", "\"yes\"", "\"whole-truck\"", "\"20 kg\"", "[\"1 lb\"]",
            "{\"division\": 1}", "[{\"pulses\": 1, \"gross\": \"1 kg\"}]", "\"2026-01-31\"",
        ];
        string[] values =
        [
            "\"HR-104\"", "\"containers\"", "\"2026-01-31\"", "null", "\"yes\"", "1.5", "{\"division\": 0.5}", "0.5",
            "[\"20 kg\"]", "\"20 kg\"", "\"3,021\"", "\"412.5 lb\"", "\"21 lb\"", "3033", "\"187 kg\"",
        ];
        for (var i = 0; i < 1500; i++)
        {
            var text = Good;
            for (var times = random.Next(1, 3); times > 0; times--)
                text = text.Replace(values[random.Next(values.Length)], pieces[random.Next(pieces.Length)], StringComparison.Ordinal);
            if (!IsValid(text)) continue;
            accepted++;
            Assert.DoesNotContain(Read(text), finding => shape.Contains(finding.Code));
        }

        Assert.True(accepted > 100, $"{accepted} accepted");
    }

    private static bool IsValid(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static IReadOnlyList<Finding> Read(string text) =>
        TreeFields.Read(JsonTree.Read(text), TextCulture.UnitedStates, SampleSheet.Read).Findings;
}
