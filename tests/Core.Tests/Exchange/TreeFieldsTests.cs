using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Exchange;

public sealed class TreeFieldsTests
{
    private static readonly Word<bool>[] Colours = [new("rock-salt", true, "White."), new("sand", false, "Brown.")];

    private static readonly FindingKind Contradiction = new("test.contradiction", Severity.Warn, "Two say {what}.", "Look.");

    [Fact]
    public void Text_is_trimmed_and_blank_null_and_absent_are_the_same()
    {
        Assert.Equal("HR-104", Read("""{"id": "  HR-104 "}""", f => f.Text("id", "Id.")).Value);
        foreach (var text in new[] { "{}", """{"id": null}""", """{"id": "  "}""" })
        {
            Assert.Empty(Read(text, f => f.Text("id", "Id.", Need.Optional)).Findings);
            var finding = Only(Read(text, f => f.Text("id", "Id.")).Findings);
            Assert.Equal(("read.missing-field", "id"), (finding.Code, finding.Field));
        }
    }

    [Fact]
    public void A_text_too_long_or_with_unseen_characters_is_refused_and_notes_may_have_lines()
    {
        Assert.Equal("read.too-long", Only(Read("""{"id": "abcd"}""", f => f.Text("id", "Id.", maxLength: 3)).Findings).Code);
        Assert.Equal("😀😀😀", Read("""{"id": "😀😀😀"}""", f => f.Text("id", "Id.", maxLength: 3)).Value);
        Assert.Equal("read.unprintable", Only(Read("""{"id": "a\u202Eb"}""", f => f.Text("id", "Id.")).Findings).Code);
        Assert.Equal("read.unprintable", Only(Read("""{"id": "a\nb"}""", f => f.Text("id", "Id.")).Findings).Code);
        Assert.Equal("read.unprintable", Only(Read("""{"n": "a\u0000b"}""", f => f.Notes("n", "Notes.")).Findings).Code);
        Assert.Equal("a\nb", Read("""{"n": "a\nb"}""", f => f.Notes("n", "Notes.")).Value);
    }

    [Theory]
    [InlineData("""{"x": 104}""")]
    [InlineData("""{"x": true}""")]
    [InlineData("""{"x": []}""")]
    [InlineData("""{"x": {}}""")]
    public void A_node_of_the_wrong_kind_is_reported_where_it_stands(string text)
    {
        foreach (var findings in new[]
        {
            Read(text, f => f.Text("x", "X.")).Findings,
            Read(text, f => f.Choice("x", "X.", Colours)).Findings,
            Read(text, f => f.Date("x", "X.")).Findings,
            Read(text, f => f.Moment("x", "X.")).Findings,
        })
        {
            var finding = Only(findings);
            Assert.Equal(("read.wrong-shape", "x"), (finding.Code, finding.Field));
            Assert.Equal((1, 7), JsonTreeTests.Where(finding));
        }
    }

    [Fact]
    public void Groups_and_lists_of_the_wrong_kind_are_reported()
    {
        Assert.Equal("read.wrong-shape", Only(Read("""{"g": []}""", f => f.Group("g", "G.", g => "x")).Findings).Code);
        Assert.Equal("read.wrong-shape", Only(Read("""{"l": {}}""", f => f.List("l", "L.", (g, i) => "x")).Findings).Code);
        var item = Only(Read("""{"l": [{}, 7]}""", f => f.List("l", "L.", (g, i) => "x")).Findings);
        Assert.Equal(("read.wrong-shape", "l[1]"), (item.Code, item.Field));
        Assert.Equal("read.wrong-shape", Only(Read("[]", f => "x").Findings).Code);
    }

    [Theory]
    [InlineData("\"yes\"", true)]
    [InlineData("\"No\"", false)]
    [InlineData("true", true)]
    [InlineData("\"FALSE\"", false)]
    public void Yes_and_no_are_words_or_flags(string value, bool expected) =>
        Assert.Equal(expected, Read($"{{\"x\": {value}}}", f => f.YesNo("x", "X.")).Value);

    [Fact]
    public void A_word_is_read_without_regard_to_case_and_another_word_lists_the_choices()
    {
        Assert.Equal(true, Read("""{"x": "Rock-Salt"}""", f => f.Choice("x", "X.", Colours)).Value);
        var finding = Only(Read("""{"x": "salt"}""", f => f.Choice("x", "X.", Colours)).Findings);
        Assert.Equal("read.unknown-word", finding.Code);
        Assert.Equal("rock-salt, sand", finding.Values.Single(value => value.Name == "words").Word);
        Assert.Equal("read.unknown-word", Only(Read("""{"x": "maybe"}""", f => f.YesNo("x", "X.")).Findings).Code);
    }

    [Theory]
    [InlineData("2026-01-31", true)]
    [InlineData("2026-02-29", false)]
    [InlineData("2026-1-31", false)]
    [InlineData("01/31/2026", false)]
    [InlineData("2026-01-31T00:00:00Z", false)]
    [InlineData("٢٠٢٦-٠١-٣١", false)]
    public void Only_the_iso_form_is_a_date(string text, bool good)
    {
        var reading = Read($"{{\"x\": \"{text}\"}}", f => f.Date("x", "X."));
        if (good) Assert.Equal(new DateOnly(2026, 1, 31), reading.Value);
        else Assert.Equal("read.not-a-date", Only(reading.Findings).Code);
    }

    // Examples of RFC 3339, section 5.8, and forms of our own around them.
    [Theory]
    [InlineData("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.52")]
    [InlineData("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57")]
    [InlineData("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.87")]
    [InlineData("2026-01-31T07:45+01:00", "2026-01-31T06:45:00")]
    [InlineData("2026-01-31T07:45:00", null)]
    [InlineData("2026-01-31T07:45:00+5", null)]
    [InlineData("2026-01-31T07:45:00+0500", null)]
    [InlineData("2026-01-31T24:45:00Z", null)]
    [InlineData("0001-01-01T00:00:00+10:00", null)]
    [InlineData("9999-12-31T23:59:59-10:00", null)]
    [InlineData("2026-01-31", null)]
    [InlineData("Z", null)]
    public void A_moment_has_an_offset_and_comes_back_in_utc(string text, string? utc)
    {
        var reading = Read($"{{\"x\": \"{text}\"}}", f => f.Moment("x", "X."));
        if (utc is null)
        {
            Assert.Equal("read.not-a-moment", Only(reading.Findings).Code);
            return;
        }

        Assert.Equal(TimeSpan.Zero, reading.Value!.Value.Offset);
        Assert.Equal(DateTime.Parse(utc, System.Globalization.CultureInfo.InvariantCulture), reading.Value.Value.DateTime);
    }

    [Fact]
    public void Unknown_fields_are_warned_of_with_the_nearest_known_name()
    {
        var reading = Read(
            """{"$schema": "x", "spreader": {"idd": "a", "$schema": 1}, "notse": "b", "zzzzzzzz": 0}""",
            f =>
            {
                f.Notes("notes", "Notes.");
                return f.Group("spreader", "S.", g => g.Text("id", "Id.", Need.Optional) ?? "none");
            });

        Assert.Equal(
            [("spreader.idd", "id"), ("spreader.$schema", "id"), ("notse", "notes"), ("zzzzzzzz", "notes, spreader")],
            reading.Findings.Select(finding => (finding.Field, finding.Values.Single(v => v.Name == "closest").Word!)));
        Assert.All(reading.Findings, finding => Assert.Equal(Severity.Warn, finding.Severity));
        Assert.Equal("none", reading.Value);
    }

    [Theory]
    [InlineData(0, 0, "read.missing-field")]
    [InlineData(1, 1, "read.too-few-items")]
    [InlineData(4, 0, "read.too-many-items")]
    public void The_number_of_items_is_kept_within_its_limits(int count, int kept, string code)
    {
        var text = count == 0 ? "{}" : $"{{\"l\": [{string.Join(',', Enumerable.Repeat("{}", count))}]}}";
        IReadOnlyList<string> items = [];
        var findings = Read(text, f => items = f.List("l", "L.", (g, i) => "x", minItems: 2, maxItems: 3)).Findings;
        Assert.Equal(code, Only(findings).Code);
        Assert.Equal(kept, items.Count);
    }

    [Fact]
    public void An_item_that_cannot_be_used_is_left_out_with_a_finding_even_when_the_reader_forgot_to_say_why()
    {
        var reading = Read(
            """{"l": [{"id": "a"}, {}, {"id": "c"}]}""",
            f => f.List("l", "L.", (g, i) => g.Text("id", "Id.", Need.Optional) is { } id ? $"{i}{id}" : null));
        Assert.Equal(["0a", "2c"], reading.Value!);
        Assert.Equal(("read.not-usable", "l[1]"), (Only(reading.Findings).Code, Only(reading.Findings).Field));
    }

    [Fact]
    public void A_reader_reports_its_own_findings_with_path_and_line()
    {
        var findings = Read("{\n\"g\": {\n\"a\": \"x\"}}", f => f.Group("g", "G.", g =>
        {
            g.Report(Contradiction, "a", FindingValue.Text("what", "x"));
            g.Report(Contradiction, "b");
            g.Report(Contradiction, null);
            g.Report(Contradiction.At("elsewhere"));
            return g.Text("a", "A.");
        })).Findings;
        Assert.Equal(["g.a", "g.b", "g", "elsewhere"], findings.Select(finding => finding.Field));
        Assert.Equal((3, 6), JsonTreeTests.Where(findings[0]));
        Assert.Equal((2, 6), JsonTreeTests.Where(findings[1]));
    }

    [Fact]
    public void Asking_twice_for_a_name_is_a_programming_mistake()
    {
        string? Twice(Fields f) => f.Text("a", "A.", Need.Optional) ?? f.Text("a", "A.", Need.Optional);
        Assert.Throws<ArgumentException>(() => Read("{}", Twice));
        Assert.Throws<ArgumentException>(() => SchemaFields.Describe("urn:x", "X", Twice));
    }

    [Fact]
    public void Findings_of_the_text_come_first_and_a_flood_is_counted()
    {
        var reading = TreeFields.Read(JsonTree.Read("{\"a\": \"x\", \"a\": \"y\"}"), TextCulture.UnitedStates, f => f.Text("a", "A."));
        Assert.Equal("read.duplicate-field", Only(reading.Findings).Code);
        Assert.False(reading.IsUsable);

        var many = string.Join(',', Enumerable.Range(0, 3000).Select(i => $"\"n{i}\": 0"));
        var flood = Read($"{{{many}}}", f => "x");
        Assert.Equal(SheetLimits.Findings + 1, flood.Findings.Count);
        Assert.Equal((Severity.Warn, 2500.0), (flood.Findings[^1].Severity, flood.Findings[^1].Values[0].Si));

        Assert.Null(TreeFields.Read(JsonTree.Read("{"), TextCulture.UnitedStates, f => "x").Value);
    }

    private static (T? Value, IReadOnlyList<Finding> Findings) Read<T>(string text, Func<Fields, T?> ask)
    {
        T? value = default;
        var reading = TreeFields.Read(JsonTree.Read(text), TextCulture.UnitedStates, fields =>
        {
            value = ask(fields);
            return "done";
        });
        return (value, reading.Findings);
    }

    private static Finding Only(IReadOnlyList<Finding> findings) => Assert.Single(findings);
}
