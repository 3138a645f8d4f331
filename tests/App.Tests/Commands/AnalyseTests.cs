using System.Text.Json;
using Lanewright.App.Tests.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Commands;

public sealed class AnalyseTests
{
    public static TheoryData<string> Sheets => [.. Examples.Sheets];

    public static TheoryData<string> Files => [.. Examples.All];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_example_is_answered_and_text_and_json_say_the_same(string name)
    {
        var text = CommandLine.Run(CommandLine.For(name));
        var json = CommandLine.Run([.. CommandLine.For(name), "--json"]);
        Assert.Equal((0, "", 0, ""), (text.Code, text.Errors, json.Code, json.Errors));
        Assert.True(json.Json.GetProperty("usable").GetBoolean());
        Assert.DoesNotContain("DO NOT USE", text.Output, StringComparison.Ordinal);
        Agree(text.Output, json.Json, TextCulture.UnitedStates);
    }

    [Fact]
    public void In_german_the_text_has_commas_and_json_is_the_same_apart_from_its_sentences()
    {
        string[] command = CommandLine.For("hr-104-closed-loop.json");
        var text = CommandLine.Run([.. command, "--culture", "de-DE"]);
        var json = CommandLine.Run([.. command, "--culture", "de-DE", "--json"]);
        Assert.Equal(0, text.Code);
        Agree(text.Output, json.Json, TextCulture.German);
        Assert.Equal(
            CommandLine.Run([.. command, "--json"]).Json.GetProperty("results").GetRawText(),
            json.Json.GetProperty("results").GetRawText());
    }

    [Fact]
    public void Units_choose_what_masses_are_shown_in_and_change_no_result()
    {
        string[] command = CommandLine.For("hr-104-closed-loop.json");
        Assert.Contains("net lb", CommandLine.Run(command).Output, StringComparison.Ordinal);
        var si = CommandLine.Run([.. command, "--units", "si"]).Output;
        Assert.Contains("net kg", si, StringComparison.Ordinal);
        Assert.DoesNotContain("net lb", si, StringComparison.Ordinal);
        Assert.Contains("net kg", CommandLine.Run([.. command, "--units", "SI"]).Output, StringComparison.Ordinal);
        Assert.Contains("net lb", CommandLine.Run([.. CommandLine.For("fm-03-closed-loop.yaml"), "--units", "us"]).Output, StringComparison.Ordinal);
    }

    /// <summary>The machine's own language changes nothing: every byte is the same.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void The_language_of_the_machine_changes_nothing(string name)
    {
        string[] command = Examples.Plans.Contains(name) ? ["plan", Examples.PathOf(name)] : CommandLine.For(name);
        var german = CommandLine.RunIn("de_DE.UTF-8", command);
        Assert.Equal(0, german.Code);
        Assert.Equal(CommandLine.RunIn("C", command).Output, german.Output);
    }

    [Fact]
    public void Trials_are_done_and_agree()
    {
        var command = CommandLine.For("hr-104-closed-loop.json")[..2];
        var json = CommandLine.Run([.. command, "--trials", "20,000", "--json"]).Json.GetProperty("results")[0].GetProperty("trials");
        Assert.Equal((20_000, true), (json.GetProperty("count").GetInt32(), json.GetProperty("agree").GetBoolean()));
        var german = CommandLine.Run([.. command, "--trials", "20.000", "--culture", "de-DE"]);
        Assert.True(german.Code == 1 || german.Output.Contains("20\u202F000", StringComparison.Ordinal), german.Output + german.Errors);
    }

    [Fact]
    public void A_result_that_must_not_be_used_gives_2_and_says_so()
    {
        using var file = new TemporaryFile(
            """
            {"kind": "drop-test", "units": "us", "spreader": {"id": "HR-1", "loop": "closed", "constant": "pulses-per-mass", "unit": "pulse/lb"},
             "material": {"name": "salt"}, "scale": {"id": "bench"}, "runs": [{"pulses": 1000, "whole": {"tare": 2, "gross": 90}}]}
            """);
        var text = CommandLine.Run("analyse", file.Path, "--trials", "0");
        Assert.Equal((2, ""), (text.Code, text.Errors));
        Assert.Contains("DO NOT USE THIS ANSWER", text.Output, StringComparison.Ordinal);
        Assert.Contains("STOP", text.Output, StringComparison.Ordinal);
        var json = CommandLine.Run("analyse", file.Path, "--trials", "0", "--json");
        Assert.Equal(2, json.Code);
        Assert.False(json.Json.GetProperty("usable").GetBoolean());
        Agree(text.Output, json.Json, TextCulture.UnitedStates);
    }

    // Every figure of the answer in JSON stands in the text, written for a reader.
    private static void Agree(string text, JsonElement json, TextCulture culture)
    {
        var flat = Answer.Flat(text);
        foreach (var result in json.GetProperty("results").EnumerateArray())
        {
            var unit = Units.Find(result.GetProperty("unit").GetString()!)!;
            double Of(string name) => result.GetProperty(name).GetDouble();
            double Si(string name) => unit.ToSi(Of(name));
            var symbol = QuantityText.Symbol(unit, culture);
            var (value, expanded) = QuantityText.WriteTogether(Si("value"), Si("expanded"), unit, culture);
            Assert.Contains($"{value} {symbol} ± {expanded}", flat, StringComparison.Ordinal);
            var (low, _) = QuantityText.WriteTogether(Si("low"), Si("expanded"), unit, culture);
            var (high, _) = QuantityText.WriteTogether(Si("high"), Si("expanded"), unit, culture);
            Assert.Contains($"{PercentText.Write(Of("probability"), culture)} interval {low} to {high}", flat, StringComparison.Ordinal);
            if (result.TryGetProperty("keyIn", out var key))
            {
                var keyed = QuantityText.Write(unit.ToSi(key.GetProperty("value").GetDouble()), unit, culture, NumberForm.Significant(3));
                Assert.Contains("Key in " + keyed[..3], flat, StringComparison.Ordinal);
            }

            if (result.TryGetProperty("delivery", out var delivery))
                Assert.Contains(
                    delivery.GetProperty("conformity").GetString()!.Replace('-', ' ').ToUpperInvariant(), flat, StringComparison.Ordinal);
            foreach (var run in result.GetProperty("runs").EnumerateArray())
            {
                var ratio = QuantityText.WriteValue(unit.ToSi(run.GetProperty("ratio").GetDouble()), unit, culture, NumberForm.Significant(4));
                Assert.Contains($" {ratio} ", flat, StringComparison.Ordinal);
                Assert.Contains(PercentText.Write(run.GetProperty("deviation").GetDouble(), culture), flat, StringComparison.Ordinal);
            }

            foreach (var line in result.GetProperty("budget").EnumerateArray())
                Assert.Contains(line.GetProperty("family").GetString()!, flat, StringComparison.Ordinal);
        }

        foreach (var finding in json.GetProperty("findings").EnumerateArray())
        {
            Assert.Contains(finding.GetProperty("code").GetString()! + ")", flat, StringComparison.Ordinal);
            Assert.Contains(Answer.Flat(finding.GetProperty("action").GetString()!), flat, StringComparison.Ordinal);
        }
    }
}
