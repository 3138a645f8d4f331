using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Pulses per distance from passes, and from tyre, axle and teeth.</summary>
public sealed class GroundSpeedTests
{
    private const double Mile = 1609.344;

    [Fact]
    public void A_thousand_feet_with_3790_pulses_give_20011_to_the_mile()
    {
        // 3,790 x 5,280 / 1,000 = 20,011.2, exact arithmetic.
        var report = Worked.Of("""
            { "kind": "ground-speed", "units": "us", "course": "1000 ft", "coursePlusMinus": "0 ft",
              "passes": [{ "pulses": 3790 }, { "pulses": 3790 }, { "pulses": 3790 }] }
            """);
        Assert.Equal(20_011.2, report.Figures[0].Value.Value * Mile, 1e-6);
        Assert.True(report.Usable);
    }

    [Theory]
    // 917 x 3.25 x 16 = 47,684 pulses per mile (a worked figure on ecomodder.com, forum post 461131).
    [InlineData("\"turnsPerMile\": 917, \"axle\": 3.25, \"teeth\": 16", 47_684, Mile)]
    // 16 / (pi x 0.57658 m) = 8,833.05 pulses per km with pi exact (same page, which has 8,833.3 with pi 3.1415).
    [InlineData("\"diameter\": \"0.57658 m\", \"teeth\": 16", 8_833.05, 1000)]
    public void Tyre_axle_and_teeth_give_the_published_figures(string tyre, double expected, double metres)
    {
        var report = Worked.Of(
            "{ \"kind\": \"ground-speed\", \"course\": \"1000 ft\", \"tyre\": { " + tyre + " }, \"passes\": [{ \"pulses\": 3790 }] }");
        var figure = Assert.Single(report.Figures, f => f.Name.StartsWith("expected", StringComparison.Ordinal));
        Assert.Equal(expected, figure.Value.Value * metres, 0.01);
        Assert.Contains(report.Findings, f => f.Code == "speed.unlike-tyre");
    }

    [Fact]
    public void An_uncertain_course_moves_all_passes_alike()
    {
        var sure = Relative(0);
        var unsure = Relative(5);
        // 5 ft in 1,000 ft, rectangular: 0.5 % half width adds 0.289 % of standard uncertainty whatever the number of passes.
        Assert.True(unsure > 1.5 * sure);
        Assert.InRange(unsure, 0.0045, 0.0075);

        static double Relative(int feet)
        {
            var passes = string.Join(", ", Enumerable.Range(0, 8).Select(i =>
                "{ \"pulses\": " + (3790 + (i % 3)).ToString(CultureInfo.InvariantCulture) + " }"));
            var report = Worked.Of(
                $"{{ \"kind\": \"ground-speed\", \"course\": \"1000 ft\", \"coursePlusMinus\": \"{feet} ft\", \"passes\": [{passes}] }}");
            return report.Figures[0].Expanded!.Value / report.Figures[0].Value.Value;
        }
    }

    [Fact]
    public void A_constant_that_is_too_high_makes_rates_too_low()
    {
        var report = Worked.Of("""
            { "kind": "ground-speed", "course": "1000 ft", "current": "22012.32 pulse/mile", "passes": [{ "pulses": 3790 }, { "pulses": 3790 }] }
            """);
        Assert.Contains(
            "rates came out 9.1 % too low", report.Lines[0].Text(Core.Text.TextCulture.UnitedStates, UnitPreferences.UnitedStates),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_is_said_and_nothing_throws()
    {
        var reading = Worked.Reading("""{ "kind": "ground-speed", "passes": [{ "pulses": "many" }] }""");
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Field == "course");
        Assert.Contains(reading.Findings, f => f.Field == "passes[0].pulses");
    }

    [Fact]
    public void A_page_gets_the_answer_ready_to_show()
    {
        var json = JsonSerializer.Serialize(new
        {
            culture = "de-DE",
            units = "si",
            fields = new Dictionary<string, string>
            {
                ["kind"] = "ground-speed", ["course"] = "304,8", ["passes[0].pulses"] = "3790", ["passes[2].pulses"] = "3791",
                ["passes[3].pulses"] = "x",
            },
        });
        using var answer = JsonDocument.Parse(Live.Answer(json));
        Assert.False(answer.RootElement.GetProperty("usable").GetBoolean());
        Assert.True(answer.RootElement.GetProperty("fields").TryGetProperty("passes[3].pulses", out _));

        using var form = JsonDocument.Parse(Live.Form("ground-speed"));
        Assert.True(form.RootElement.GetProperty("properties").TryGetProperty("course", out _));
    }
}
