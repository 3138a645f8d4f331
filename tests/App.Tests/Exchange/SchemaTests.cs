using System.Text.Json;
using Json.Schema;
using Lanewright.Core.Exchange;
using Lanewright.Core.Tests;
using Lanewright.Core.Tests.Exchange;

namespace Lanewright.App.Tests.Exchange;

/// <summary>The published schemas, judged by a validator that knows nothing of us.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema Sheet = JsonSchema.FromText(Repository.Text("docs", "formats", "sheet.schema.json"));
    private static readonly JsonSchema Plan = JsonSchema.FromText(Repository.Text("docs", "formats", "plan.schema.json"));

    public static TheoryData<string> Sheets => [.. Examples.Sheets];

    public static TheoryData<string> Plans => [.. Examples.Plans];

    [Theory]
    [InlineData("sheet.schema.json")]
    [InlineData("plan.schema.json")]
    public void A_published_schema_is_a_schema(string name)
    {
        using var document = JsonDocument.Parse(Repository.Text("docs", "formats", name));
        Assert.True(MetaSchemas.Draft202012.Evaluate(document.RootElement).IsValid);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_sheet_in_json_is_valid_as_it_is_and_every_sheet_is_valid_when_tidied(string name)
    {
        if (name.EndsWith(".json", StringComparison.Ordinal)) Assert.True(IsValid(Sheet, File.ReadAllText(Examples.PathOf(name))));
        Assert.True(IsValid(Sheet, SheetWriter.Write(SheetReader.Read(Examples.Tree(name)).Value!)));
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_sheet_in_yaml_or_csv_is_valid_as_the_json_that_says_the_same(string name) =>
        Assert.True(IsValid(Sheet, Examples.Json(Examples.Tree(name).Root!)!.ToJsonString()));

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_plan_is_valid_as_the_json_that_says_the_same(string name) =>
        Assert.True(IsValid(Plan, Examples.Json(Examples.Tree(name).Root!)!.ToJsonString()));

    [Fact]
    public void Every_generated_sheet_is_valid() =>
        Assert.All(SheetGen.Some(150), sheet => Assert.True(IsValid(Sheet, SheetWriter.Write(sheet)), SheetWriter.Write(sheet)));

    [Fact]
    public void Bare_numbers_are_valid_where_units_can_be_agreed() =>
        Assert.True(IsValid(Sheet, Example().Replace("\"2.6 lb\"", "2.6", StringComparison.Ordinal)));

    [Theory]
    [InlineData("\"kind\": \"drop-test\",", "")]
    [InlineData("\"drop-test\"", "\"drop test\"")]
    [InlineData("\"invented\": true", "\"invented\": \"perhaps\"")]
    [InlineData("\"id\": \"HR-104\",", "")]
    [InlineData("\"id\": \"HR-104\"", "\"id\": 104")]
    [InlineData("\"closed\"", "\"shut\"")]
    [InlineData("\"11.4 pulse/lb\"", "true")]
    [InlineData("\"2.6 lb\"", "[]")]
    [InlineData("\"2.6 lb\"", "null")]
    [InlineData("\"pulses\": 2309", "\"pulsse\": 2309")]
    [InlineData("\"commonError\": true", "\"commonError\": 1")]
    [InlineData("\"class\": \"iii\"", "\"class\": \"IV\"")]
    [InlineData("\"runs\"", "\"run\"")]
    [InlineData("{ \"tare\": \"2.9 lb\", \"gross\": \"35.2 lb\" }", "{ \"tare\": \"2.9 lb\" }")]
    public void A_wrong_sheet_is_refused_by_the_schema_and_reported_by_the_reader(string was, string becomes)
    {
        var text = Example();
        var wrong = text.Replace(was, becomes, StringComparison.Ordinal);
        Assert.NotEqual(text, wrong);
        Assert.False(IsValid(Sheet, wrong));
        Assert.NotEmpty(SheetReader.Read(JsonTree.Read(wrong)).Findings);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"scale\": {\"id\": \"bench\"}, \"method\": \"buckets\"}")]
    [InlineData("{\"scale\": {\"id\": \"bench\"}, \"method\": \"whole\", \"mostRuns\": 50}")]
    public void A_wrong_plan_is_refused_by_the_schema_and_reported_by_the_reader(string text)
    {
        Assert.False(IsValid(Plan, text));
        Assert.NotEmpty(PlanReader.Read(JsonTree.Read(text)).Findings);
    }

    private static string Example() => File.ReadAllText(Examples.PathOf("hr-104-closed-loop.json"));

    private static bool IsValid(JsonSchema schema, string text)
    {
        using var document = JsonDocument.Parse(text);
        return schema.Evaluate(document.RootElement).IsValid;
    }
}
