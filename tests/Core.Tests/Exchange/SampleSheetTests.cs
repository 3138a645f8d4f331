using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Exchange;

public sealed class SampleSheetTests
{
    private const string Good = """
        {
          "$schema": "sample.json",
          "spreader": "HR-104", "method": "containers", "day": "2026-01-31", "begun": "2026-01-31T07:45:00-05:00",
          "moist": "yes", "factor": 1.5, "scale": {"division": 0.5},
          "checks": ["20 kg", "20.01 kg"],
          "runs": [{"pulses": "3,021", "gross": "412.5 lb", "tare": "21 lb"}, {"pulses": 3033, "gross": "187 kg"}]
        }
        """;

    [Fact]
    public void A_good_sheet_becomes_a_record_without_findings()
    {
        var reading = Read(Good);
        Assert.Empty(reading.Findings);
        Assert.True(reading.IsUsable);
        var sheet = reading.Value!;
        Assert.Equal(("HR-104", SampleMethod.Containers, true), (sheet.Spreader, sheet.Method, sheet.Moist));
        Assert.Equal(new DateTimeOffset(2026, 1, 31, 12, 45, 0, TimeSpan.Zero), sheet.Begun);
        // 0.453 592 37 kg: international yard and pound agreement, 1959.
        Assert.Equal(0.5 * 0.45359237, sheet.Scale.Division.Kilograms, 15);
        Assert.Equal(412.5 * 0.45359237, sheet.Runs[0].Gross.Kilograms, 12);
        Assert.Equal((1, 3033L, 187.0), (sheet.Runs[1].Place, sheet.Runs[1].Pulses, sheet.Runs[1].Gross.Kilograms));
        Assert.Equal([20, 20.01], sheet.Checks.Select(check => check!.Value.Kilograms));
    }

    [Fact]
    public void Every_problem_is_reported_at_once_with_its_path()
    {
        var reading = Read("""
            {
              "spreader": 104, "method": "by hand", "day": "1/31/2026", "factor": 11, "scale": {"division": "small"},
              "checks": ["20 kg", 20, "20 m", "-1 kg"],
              "runs": [{"pulses": 30.5, "gross": 412.5}, {"pulse": 1, "gross": "1,250 tons"}, {"pulses": 2, "gross": "20 kg", "tare": "30 kg"}]
            }
            """);
        Assert.Equal(
            [
                "spreader read.wrong-shape", "method read.unknown-word", "day read.not-a-date", "factor read.too-big",
                "scale.division read.not-a-quantity", "checks read.too-many-items",
                "runs[0].pulses read.not-whole", "runs[0].gross read.unit-missing",
                "runs[1].pulses read.missing-field", "runs[1].gross read.too-big", "runs[1].pulse read.unknown-field",
                "runs[2].gross sample.gross-below-tare",
            ],
            reading.Findings.Select(finding => $"{finding.Field} {finding.Code}"));
        Assert.All(reading.Findings, finding => Assert.True(FindingText.IsComplete(finding), finding.Code));
        Assert.Null(reading.Value);
    }

    [Fact]
    public void A_wrong_item_of_a_list_of_quantities_keeps_its_place()
    {
        var checks = new List<Mass?>();
        var reading = TreeFields.Read(
            JsonTree.Read("""{"c": ["20 kg", 20, "20 m", "-1 kg", null]}"""), TextCulture.UnitedStates, fields =>
            {
                checks.AddRange(fields.Quantities<Mass>("c", "Checks.", least: Mass.FromKilograms(0)));
                return "x";
            });
        Assert.Equal([20, null, null, null, null], checks.Select(check => check?.Kilograms));
        Assert.Equal(
            ["c[1] read.unit-missing", "c[2] read.not-a-quantity", "c[3] read.too-small", "c[4] read.wrong-shape"],
            reading.Findings.Select(finding => $"{finding.Field} {finding.Code}"));
    }

    [Theory]
    [InlineData("en-US", "\"1,250 lb\"", 1250.0)]
    [InlineData("de-DE", "\"1,250 lb\"", 1.25)]
    [InlineData("invariant", "\"1,250 lb\"", null)]
    [InlineData("de-DE", "\"1.250 lb\"", null)]
    public void A_text_with_two_meanings_is_asked_about_with_all_readings(string name, string value, double? pounds)
    {
        Assert.True(TextCulture.TryFind(name, out var culture));
        var (mass, findings) = ReadMass(value, culture, null);
        if (pounds is { } expected)
        {
            Assert.Equal(Mass.FromPounds(expected), mass);
            Assert.Empty(findings);
            return;
        }

        var finding = Assert.Single(findings);
        Assert.Equal(("read.ambiguous", Severity.Stop), (finding.Code, finding.Severity));
        Assert.Contains(" or ", finding.Values.Single(one => one.Name == "readings").Word, StringComparison.Ordinal);
        Assert.Null(mass);
    }

    [Fact]
    public void A_json_number_has_a_decimal_point_in_every_culture()
    {
        Assert.Equal(1.25, ReadMass("1.250", TextCulture.German, Units.Kilogram).Mass!.Value.Kilograms);
        Assert.Equal(1250, ReadMass("1.25e3", TextCulture.German, Units.Kilogram).Mass!.Value.Kilograms);
        Assert.Equal("read.unit-missing", Assert.Single(ReadMass("1.25", TextCulture.German, null).Findings).Code);
        Assert.Equal("read.unit-missing", Assert.Single(ReadMass("\"12\"", TextCulture.German, null).Findings).Code);
        Assert.Equal("read.not-a-quantity", Assert.Single(ReadMass("1e999", TextCulture.German, Units.Kilogram).Findings).Code);
    }

    [Theory]
    [InlineData("3021", 3021L, null)]
    [InlineData("3021.0", 3021L, null)]
    [InlineData("\"3,021\"", 3021L, null)]
    [InlineData("\"3021 \"", 3021L, null)]
    [InlineData("3021.5", null, "read.not-whole")]
    [InlineData("-1", null, "read.too-small")]
    [InlineData("1e300", null, "read.not-a-number")]
    [InlineData("1e13", null, "read.too-big")]
    [InlineData("\"many\"", null, "read.not-a-number")]
    [InlineData("\"30 lb\"", null, "read.not-a-number")]
    [InlineData("true", null, "read.wrong-shape")]
    public void A_count_is_a_whole_number_in_any_usual_form(string value, long? expected, string? code)
    {
        long? count = null;
        var findings = TreeFields.Read(JsonTree.Read($"{{\"n\": {value}}}"), TextCulture.UnitedStates, fields =>
        {
            count = fields.Count("n", "N.");
            return "x";
        }).Findings;
        Assert.Equal(expected, count);
        Assert.Equal(code, findings.SingleOrDefault()?.Code);
    }

    [Fact]
    public void A_flood_of_unknown_fields_is_answered_quickly()
    {
        var many = string.Concat(Enumerable.Range(0, 90_000).Select(i => $"\"a rather long unknown name {i}\": 0,"));
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var reading = Read($"{{{many}}}");
        Assert.Equal(SheetLimits.Findings + 1, reading.Findings.Count);
        Assert.True(clock.Elapsed < Patience.Longest, $"{clock.Elapsed}");
    }

    [Fact]
    public void Impossible_limits_and_a_foreign_unit_are_programming_mistakes()
    {
        Throws(fields => fields.Count("n", "N.", least: 2, most: 1));
        Throws(fields => fields.Number("n", "N.", Need.Optional, 2, 1));
        Throws(fields => fields.Quantity<Mass>("n", "N.", unitWhenNone: Units.Metre));
        Throws(fields => fields.Quantity<Mass>("n", "N.", least: Mass.FromKilograms(2), most: Mass.FromKilograms(1)));
        Throws(fields => fields.Text(" ", "N."));
        Throws(fields => fields.Text("n", ""));
    }

    [Fact]
    public void Damaged_sheets_give_complete_findings_whenever_there_is_no_record()
    {
        var mutator = new TextMutator(20260204);
        for (var i = 0; i < 3000; i++)
        {
            var text = mutator.Next([Good]);
            var reading = Read(text);
            Assert.True(reading.Value is not null || reading.Findings.Any(one => one.Severity == Severity.Stop), text);
            foreach (var finding in reading.Findings)
            {
                Assert.True(FindingText.IsComplete(finding), $"{finding.Code}: {text}");
                Assert.NotEmpty(FindingText.Message(finding, TextCulture.German, UnitPreferences.Metric));
            }
        }
    }

    private static void Throws(Action<Fields> ask)
    {
        string? Read(Fields fields)
        {
            ask(fields);
            return "x";
        }

        Assert.ThrowsAny<ArgumentException>(() => TreeFields.Read(JsonTree.Read("{}"), TextCulture.Invariant, Read));
        Assert.ThrowsAny<ArgumentException>(() => SchemaFields.Describe("urn:x", "X", Read));
    }

    private static (Mass? Mass, IReadOnlyList<Finding> Findings) ReadMass(string value, TextCulture culture, Unit? unit)
    {
        Mass? mass = null;
        var reading = TreeFields.Read(JsonTree.Read($"{{\"m\": {value}}}"), culture, fields =>
        {
            mass = fields.Quantity<Mass>("m", "M.", unitWhenNone: unit);
            return "x";
        });
        return (mass, reading.Findings);
    }

    private static SheetReading<SampleSheet> Read(string text) =>
        TreeFields.Read(JsonTree.Read(text), TextCulture.UnitedStates, SampleSheet.Read);
}
