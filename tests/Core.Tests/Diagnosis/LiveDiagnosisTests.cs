using System.Text.Json;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;

namespace Lanewright.Core.Tests.Diagnosis;

public sealed class LiveDiagnosisTests
{
    [Fact]
    public void A_page_is_answered_with_causes_evidence_tests_and_a_picture()
    {
        var one = PracticeCase.Draw(Cause.Bridging, 5, 3);
        var answer = Ask(Json(one.Sheet.Fields));
        Assert.Equal(1, answer.GetProperty("causes").EnumerateArray().Sum(c => c.GetProperty("chance").GetDouble()), 0.005);
        Assert.NotEmpty(answer.GetProperty("evidence").EnumerateArray());
        Assert.NotEmpty(answer.GetProperty("next").EnumerateArray());
        Assert.StartsWith("<svg", answer.GetProperty("picture").GetString(), StringComparison.Ordinal);
        Assert.All(answer.GetProperty("causes").EnumerateArray(), c => Assert.NotNull(CauseTable.Find(c.GetProperty("code").GetString())));
    }

    [Fact]
    public void Earlier_tests_are_the_reference_and_sisters_are_taken_for_sisters()
    {
        string Test(string spreader, string date, double gain) => $$"""
            {"fields": {"kind": "drop-test", "units": "us", "date": "{{date}}", "spreader.id": "{{spreader}}", "spreader.loop": "closed",
             "spreader.constant": "pulses-per-mass", "spreader.unit": "pulse/lb", "material.name": "salt", "scale.id": "pallet", "scale.class": "iii",
             "scale.capacity": "2000", "scale.division": "0.5", "commonError": "yes", {{Runs(gain)}} } }
            """;
        string Runs(double gain) => string.Join(", ", new[] { 1003, 2006, 1509 }.Select((p, i) =>
            FormattableString.Invariant($"\"runs[{i}].pulses\": \"{p}\", \"runs[{i}].whole.tare\": \"50.5\", \"runs[{i}].whole.gross\": \"{Math.Round((50.5 + (p / 10.0 * gain)) * 2) / 2}\"")));
        string Whole(double gain, string history) => Test("A", "2026-10-01", gain).TrimEnd().TrimEnd('}').TrimEnd() + $$""", "history": [{{history}}] }""";
        var own = Test("A", "2025-10-01", 1);
        var right = Ask(Whole(1, own));
        Assert.True(right.GetProperty("outcome").GetString() == "nothing-wrong", right.GetRawText());
        var kilograms = Ask(Whole(1 / 2.20462262, own));
        Assert.Equal("mass-unit", kilograms.GetProperty("causes")[0].GetProperty("code").GetString());
        var sisters = string.Join(",", new[] { own, Test("B", "2025-10-02", 1), Test("B", "2026-09-20", 1.1), Test("C", "2025-10-02", 1), Test("C", "2026-09-20", 1.1) });
        var shifted = Ask(Whole(1.1, sisters));
        Assert.Contains(shifted.GetProperty("evidence").EnumerateArray(), e => e.GetString()!.StartsWith("Spreader B", StringComparison.Ordinal));
        Assert.Equal(
            ["material-changed", "scale-off"],
            shifted.GetProperty("causes").EnumerateArray().Take(2).Select(c => c.GetProperty("code").GetString()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"fields\": 3, \"history\": 4, \"facts\": 5}")]
    [InlineData("{\"fields\": {\"runs[0].pulses\": \"x\"}, \"history\": [1, [], {}, {\"fields\": []}]}")]
    [InlineData("{\"fields\": {\"runs[99999999999].pulses\": \"1\"}, \"facts\": {\"teeth\": \"-1\", \"gates\": [1, \"x\"], \"events\": [[]]}}")]
    public void Nothing_that_is_sent_makes_it_throw(string json) =>
        Assert.Equal("cannot-tell", Ask(json).GetProperty("outcome").GetString());

    [Fact]
    public void A_sheet_with_any_field_garbled_is_still_answered()
    {
        var fields = PracticeCase.Draw(Cause.NothingWrong, 5, 8).Sheet.Fields;
        foreach (var wrong in (string[])["", "x", "-1", "1e308", "0", "NaN", "999999999999999999999"])
            for (var i = 0; i < fields.Count; i += 3)
            {
                var garbled = fields.ToList();
                garbled[i] = (garbled[i].Path, wrong);
                Assert.NotEmpty(Ask(Json(garbled)).GetProperty("headline").GetString()!);
            }
    }

    private static string Json(IEnumerable<(string Path, string Text)> fields) =>
        JsonSerializer.Serialize(new { fields = fields.ToDictionary(f => f.Path, f => f.Text) });

    private static JsonElement Ask(string json) => JsonDocument.Parse(LiveDiagnosis.Answer(json)).RootElement;
}
