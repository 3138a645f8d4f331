using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Tests;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Commands;

public sealed class OtherCommandTests
{
    public static TheoryData<string> Sheets => [.. Examples.Sheets];

    public static TheoryData<string> Plans => [.. Examples.Plans];

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_plan_is_answered_cautions_first_and_json_says_the_same(string name)
    {
        var text = CommandLine.Run("plan", Examples.PathOf(name));
        var json = CommandLine.Run("plan", Examples.PathOf(name), "--json");
        Assert.Equal((0, "", 0, ""), (text.Code, text.Errors, json.Code, json.Errors));
        Assert.StartsWith("Before anything else", text.Output, StringComparison.Ordinal);
        var flat = Answer.Flat(text.Output);
        foreach (var caution in json.Json.GetProperty("cautions").EnumerateArray())
            Assert.Contains(Answer.Flat(caution.GetProperty("text").GetString()!), flat, StringComparison.Ordinal);
        var best = json.Json.GetProperty("best");
        var mass = QuantityText.Write(
            Mass.FromKilograms(best.GetProperty("massPerRunKilograms").GetDouble()), Units.Pound, TextCulture.UnitedStates, NumberForm.Significant(3));
        Assert.Contains($"Drop {best.GetProperty("runs")} runs of {mass} each", flat, StringComparison.Ordinal);
        Assert.Contains($"± {PercentText.Write(best.GetProperty("expected").GetDouble(), TextCulture.UnitedStates)} to expect", flat, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_plan_in_other_units_has_round_masses_in_them(string name)
    {
        var si = CommandLine.Run("plan", Examples.PathOf(name), "--units", "si").Output;
        Assert.Contains(" kg each", si, StringComparison.Ordinal);
        Assert.Contains("50.0 kg", si, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_tidied_sheet_is_the_canonical_form_and_stays_as_it_is(string name)
    {
        var tidy = CommandLine.Run("tidy", Examples.PathOf(name));
        Assert.Equal((0, ""), (tidy.Code, tidy.Errors));
        using var file = new TemporaryFile(tidy.Output);
        Assert.Equal(tidy.Output, CommandLine.Run("tidy", file.Path).Output);
        Assert.Equal(
            CommandLine.Run([.. CommandLine.For(name), "--json"]).Json.GetProperty("results").GetRawText(),
            CommandLine.Run([CommandLine.For(name)[0], file.Path, "--trials", "0", "--json"]).Json.GetProperty("results").GetRawText());
    }

    [Fact]
    public void Schemas_are_printed_as_they_are_published()
    {
        Assert.Equal(Repository.Text("docs", "formats", "sheet.schema.json"), CommandLine.Run("schema", "sheet").Output);
        Assert.Equal(Schemas.Plan(), CommandLine.Run("schema", "plan").Output);
    }

    [Fact]
    public void Help_and_version_are_answers()
    {
        var help = CommandLine.Run("--help");
        Assert.Equal((0, ""), (help.Code, help.Errors));
        foreach (var command in (string[])["plan", "analyse", "check", "convert", "tidy", "schema"])
            Assert.Contains($"  {command}", help.Output, StringComparison.Ordinal);
        Assert.Equal(help.Output, CommandLine.Run().Output);
        Assert.Matches(@"^\d+\.\d+\.\d+", CommandLine.Run("--version").Output);
    }
}
