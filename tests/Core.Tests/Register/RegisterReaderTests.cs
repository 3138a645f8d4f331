using System.Globalization;
using Lanewright.Core.Exchange;
using Lanewright.Core.Register;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Register;

/// <summary>The yard's rules, and what is typed written down so that it reads the same everywhere.</summary>
public sealed class RegisterReaderTests
{
    [Fact]
    public void Rules_say_tolerance_season_and_changes_and_what_they_leave_out_is_as_usual()
    {
        var read = Rules("""{"tolerance":"4 %","seasonMonth":10,"seasonDay":15,"recalibrateAfter":{"gate":false,"other":true}}""");
        Assert.Empty(read.Findings);
        Assert.Equal((0.04, 10, 15), (read.Value!.Tolerance, read.Value.SeasonMonth, read.Value.SeasonDay));
        Assert.DoesNotContain(SpreaderChange.Gate, read.Value.RecalibrateAfter);
        Assert.Contains(SpreaderChange.Other, read.Value.RecalibrateAfter);
        Assert.Contains(SpreaderChange.Tyres, read.Value.RecalibrateAfter);
        var usual = Rules("{}").Value!;
        Assert.Equal(new YardRules().RecalibrateAfter, usual.RecalibrateAfter);
        Assert.Equal(new YardRules().Tolerance, usual.Tolerance);
    }

    [Theory]
    [InlineData("""{"seasonMonth":2,"seasonDay":29}""", "register.no-such-day")]
    [InlineData("""{"seasonMonth":13}""", "read.too-big")]
    [InlineData("""{"tolerance":"90 %"}""", "read.too-big")]
    public void Rules_that_cannot_hold_are_refused(string json, string code)
    {
        var read = Rules(json);
        Assert.False(read.IsUsable);
        Assert.Contains(read.Findings, finding => finding.Code == code);
    }

    [Theory]
    [InlineData("en-US", "420 ton", "420 short ton")]
    [InlineData("de-DE", "1.250,5 kg", "1250.5 kg")]
    [InlineData("de-DE", "1,250 t", "1.25 t")]
    [InlineData("en-US", "1,250 lb", "1250 lb")]
    public void What_was_typed_is_written_in_its_own_unit_and_reads_back_as_the_same(string culture, string typed, string written)
    {
        Assert.True(TextCulture.TryFind(culture, out var c));
        var texts = new Dictionary<string, string>
        {
            ["id"] = "A", ["loop"] = "Closed", ["constant"] = "pulses-per-mass", ["unit"] = "pulse/lb", ["seasonMass"] = typed, ["resolution"] = "0.01",
        };
        var (reading, fields) = AskedFields.Read(texts, c, RegisterReader.Spreader);
        Assert.True(reading.IsUsable);
        Assert.Equal(written, fields.Single(field => field.Path == "seasonMass").Text);
        Assert.Equal("closed", fields.Single(field => field.Path == "loop").Text);
        Assert.Equal("0.01 pulse/lb", fields.Single(field => field.Path == "resolution").Text);
        var again = fields.Where(field => field.Text is not null).ToDictionary(field => field.Path, field => field.Text!);
        Assert.Equal(reading.Value, AskedFields.Read(again, TextCulture.Invariant, RegisterReader.Spreader).Reading.Value);
    }

    [Fact]
    public void The_fields_of_a_record_are_listed_with_their_groups_words_and_needs()
    {
        var fields = AskedFields.Of(RegisterReader.Material);
        Assert.Contains(fields, field => field is { Path: "moisture.of", Shape: FieldShape.Choice, Words: [("wet", _), ("dry", _)] });
        Assert.Equal(Need.Required, fields.Single(field => field.Path == "name").Need);
        Assert.Equal(fields.Select(field => field.Path).Distinct().Count(), fields.Count);
    }

    [Fact]
    public void A_wrong_field_has_no_text_for_others_and_keeps_its_finding()
    {
        var (reading, fields) = AskedFields.Read(
            new Dictionary<string, string> { ["id"] = "s", ["capacity"] = "150" }, TextCulture.UnitedStates, RegisterReader.Scale);
        Assert.False(reading.IsUsable);
        Assert.Null(fields.Single(field => field.Path == "capacity").Text);
        Assert.Equal("read.unit-missing", Assert.Single(reading.Findings).Code);
    }

    [Fact]
    public void Something_done_to_a_spreader_needs_what_and_when()
    {
        var read = AskedFields.Read(new Dictionary<string, string> { ["event"] = "gate", ["date"] = "2026-11-24" }, TextCulture.Invariant, RegisterReader.Event);
        Assert.Equal(new RegisterEvent(SpreaderChange.Gate, DateOnly.Parse("2026-11-24", CultureInfo.InvariantCulture), ""), read.Reading.Value);
        Assert.Equal(2, AskedFields.Read(new Dictionary<string, string>(), TextCulture.Invariant, RegisterReader.Event).Reading.Findings.Count);
    }

    [Fact]
    public void The_page_of_the_register_names_every_field()
    {
        var page = Repository.Text("docs", "formats", "register.md");
        IReadOnlyList<AskedField>[] kinds =
        [
            AskedFields.Of(RegisterReader.Spreader), AskedFields.Of(RegisterReader.Scale), AskedFields.Of(RegisterReader.Material),
            AskedFields.Of(RegisterReader.Person), AskedFields.Of(RegisterReader.Depot), AskedFields.Of(RegisterReader.Rules),
            AskedFields.Of(RegisterReader.Event),
        ];
        Assert.All(kinds.SelectMany(fields => fields), field => Assert.Contains($"`{field.Path}`", page, StringComparison.Ordinal));
    }

    private static SheetReading<YardRules> Rules(string json) =>
        TreeFields.Read(JsonTree.Read(json), TextCulture.Invariant, RegisterReader.Rules);
}
