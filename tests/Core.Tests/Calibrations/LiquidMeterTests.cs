using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>The constant of a flow meter.</summary>
public sealed class LiquidMeterTests
{
    private const double Gallon = 0.003785411784;
    private const string Brine = "\"salt\": \"sodium-chloride\", \"strength\": \"23.3 %\", \"strengthPlusMinus\": \"0.2 %\"";
    private const string Scale = """
        "scale": { "id": "bench", "capacity": "60 kg", "division": "0.01 kg", "class": "iii", "rules": "oiml", "verified": "2026-09-01" },
        "commonError": true
        """;

    [Fact]
    public void The_worked_catch_of_brine_gives_379_pulses_to_the_gallon()
    {
        // 22.210 kg net at 20 °C, air 1.1993: 18.92465 L = 4.99936 gal; 1,893 pulses: 100.028 pulse/L = 378.648 pulse/gal (worked apart).
        var report = Weighed("\"temperature\": \"20 °C\"", (1893, 22.210), (1893, 22.210), (1893, 22.210));
        Assert.Equal(378.648, report.Figures[0].Value.Value * Gallon, 0.002);
        Assert.Equal("pulse/US gal", report.Figures[0].UnitFor(UnitPreferences.UnitedStates).Symbol);
        Assert.True(report.Usable);
    }

    [Fact]
    public void What_the_controller_showed_gives_the_new_constant_from_the_old()
    {
        // K 370, shown 5.00 gal, caught 5.12: 370 x 5.00 / 5.12 = 361.328; it showed 2.344 % too little.
        var report = Worked.Of("""
            { "kind": "liquid-meter", "units": "us", "unit": "pulse/US gal", "current": 370, "step": 0.1, "shownStep": "0.01 US gal",
              "vessel": { "plusMinus": "0.01 US gal", "reading": "0.01 US gal" },
              "runs": [{ "shown": "5.00 US gal", "volume": "5.12 US gal" }, { "shown": "5.00 US gal", "volume": "5.12 US gal" }] }
            """);
        Assert.Equal(361.328, report.Figures[0].Value.Value * Gallon, 0.001);
        Assert.Equal(361.3, report.Figures[1].Value.Value * Gallon, 1e-6);
        Assert.Contains("2.3 % less than it delivered", report.Lines[0].Text(TextCulture.UnitedStates, UnitPreferences.UnitedStates), StringComparison.Ordinal);
    }

    [Fact]
    public void Density_without_a_temperature_stops_and_says_what_it_costs()
    {
        var report = Weighed("\"readAt\": null", (1893, 22.210), (1893, 22.210));
        Assert.False(report.Usable);
        var finding = Assert.Single(report.Findings, f => f.Code == "liquid.no-temperature");
        // 23.3 % brine: 1184.96 at 0 °C and 1171.91 at 25 °C, 1.11 % apart.
        Assert.Equal(0.0111, finding.Values.Single(v => v.Name == "error").Si, 1e-4);
    }

    [Fact]
    public void A_wider_thermometer_or_strength_widens_the_interval()
    {
        var narrow = Weighed("\"temperature\": \"20 °C\", \"temperaturePlusMinus\": 0.5", (1893, 22.21), (1894, 22.22), (1892, 22.20));
        var wide = Weighed("\"temperature\": \"20 °C\", \"temperaturePlusMinus\": 15", (1893, 22.21), (1894, 22.22), (1892, 22.20));
        Assert.True(wide.Figures[0].Expanded > 1.2 * narrow.Figures[0].Expanded);
        Assert.Equal(narrow.Figures[0].Value.Value, wide.Figures[0].Value.Value);
    }

    [Fact]
    public void A_hydrometer_read_in_the_caught_liquid_gives_its_density_whatever_the_temperature()
    {
        var cold = Density("\"specificGravity\": 1.18, \"temperature\": \"0 °C\"");
        var warm = Density("\"specificGravity\": 1.18, \"temperature\": \"30 °C\"");
        // Only glass is left: 30 K x 25e-6.
        Assert.Equal(30 * 25e-6, (cold - warm) / warm, 5e-6);

        // Read at 60 °F and caught at 0 °C it is not the same: the model carries it there.
        var carried = Density("\"specificGravity\": 1.1782, \"readAt\": \"60 °F\", \"temperature\": \"0 °C\"");
        Assert.Equal(1184.96, carried, 0.1);

        static double Density(string liquid) => Worked.Of(Sheet("\"salt\": \"sodium-chloride\", " + liquid, (1893, 22.21)))
            .Figures.Single(f => f.Name == "density of the liquid").Value.Value;
    }

    [Fact]
    public void A_difference_between_low_and_high_flow_is_found()
    {
        static string Run(string flow, int pulses) => $$"""{ "flow": "{{flow}}", "pulses": {{pulses}}, "volume": "20 L" }""";
        static CalibrationReport Of(int low) => Worked.Of($$"""
            { "kind": "liquid-meter", "units": "si", "vessel": { "plusMinus": "0.05 L", "reading": "0.02 L" },
              "runs": [{{Run("low", low)}}, {{Run("low", low + 2)}}, {{Run("low", low - 2)}},
                       {{Run("high", 2000)}}, {{Run("high", 2002)}}, {{Run("high", 1998)}}] }
            """);
        var same = Of(2001);
        Assert.DoesNotContain(same.Findings, f => f.Code == "liquid.flows-differ");
        var differs = Assert.Single(Of(2080).Findings, f => f.Code == "liquid.flows-differ");
        Assert.Equal(0.04, differs.Values.Single(v => v.Name == "difference").Si, 1e-9);
    }

    [Fact]
    public void The_marks_of_a_vessel_move_all_runs_alike()
    {
        static double Wide(string marks)
        {
            var runs = string.Join(", ", Enumerable.Range(0, 8).Select(i =>
                "{ \"volume\": \"20 L\", \"pulses\": " + (2000 + (i % 3)).ToString(CultureInfo.InvariantCulture) + " }"));
            var report = Worked.Of(
                $"{{ \"kind\": \"liquid-meter\", \"units\": \"si\", \"vessel\": {{ \"plusMinus\": \"{marks} L\", \"reading\": \"0 L\" }}, \"runs\": [{runs}] }}");
            return report.Figures[0].Expanded!.Value / report.Figures[0].Value.Value;
        }

        // 0.2 L in 20 L: a rectangle of 1 % half width that no number of runs lessens.
        Assert.True(Wide("0.2") > 0.0085);
        Assert.True(Wide("0") < 0.005);
    }

    [Theory]
    [InlineData("""{ "kind": "liquid-meter", "runs": [{ "pulses": 10, "volume": "1 L", "whole": { "tare": "1 kg", "gross": "2 kg" } }] }""", "liquid.one-catch")]
    [InlineData("""{ "kind": "liquid-meter", "runs": [{ "pulses": 10 }] }""", "liquid.one-catch")]
    [InlineData("""{ "kind": "liquid-meter", "runs": [{ "volume": "1 L" }] }""", "liquid.nothing-counted")]
    [InlineData("""{ "kind": "liquid-meter", "runs": [{ "pulses": 10, "whole": { "tare": "1 kg", "gross": "2 kg" } }] }""", "liquid.no-liquid")]
    [InlineData("""{ "kind": "liquid-meter", "runs": [{ "pulses": 10, "whole": { "tare": "1 kg", "gross": "2 kg" } }] }""", "liquid.no-scale")]
    [InlineData("""{ "kind": "liquid-meter", "liquid": { "salt": "sodium-chloride" }, "runs": [{ "pulses": 10, "volume": "1 L" }] }""", "liquid.not-known")]
    [InlineData("""{ "kind": "liquid-meter", "liquid": { "salt": "sodium-chloride", "strength": "20 %", "salometer": 80 }, "runs": [{ "pulses": 10, "volume": "1 L" }] }""", "liquid.several-ways")]
    [InlineData("""{ "kind": "liquid-meter", "liquid": { "salt": "calcium-chloride", "salometer": 80 }, "runs": [{ "pulses": 10, "volume": "1 L" }] }""", "liquid.salometer-other-salt")]
    public void What_cannot_be_used_is_said_in_the_trades_words(string json, string code)
    {
        var reading = Worked.Reading(json);
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code);
    }

    [Theory]
    [InlineData("\"salt\": \"sodium-chloride\", \"specificGravity\": 1.4, \"temperature\": \"20 °C\"", "liquid.out-of-range")]
    [InlineData("\"salt\": \"sodium-chloride\", \"strength\": \"40 %\", \"temperature\": \"20 °C\"", "liquid.out-of-range")]
    [InlineData("\"salt\": \"sodium-chloride\", \"strength\": \"23 %\", \"temperature\": \"75 °C\"", "liquid.temperature-outside")]
    [InlineData("\"salt\": \"water\", \"temperature\": \"-5 °C\"", "liquid.temperature-outside")]
    public void A_liquid_that_cannot_be_stops(string liquid, string code)
    {
        var report = Worked.Of(Sheet(liquid, (1893, 22.21)));
        Assert.False(report.Usable);
        Assert.Contains(report.Findings, f => f.Code == code);
    }

    [Fact]
    public void All_findings_are_complete_sentences()
    {
        var report = Weighed("\"temperature\": \"5 °C\"", (50, 0.6));
        Assert.All(report.Findings, f => Assert.True(Core.Findings.FindingText.IsComplete(f), f.Code));
        Assert.Contains(report.Findings, f => f.Code == "liquid.one-run");
        Assert.Contains(report.Findings, f => f.Code == "liquid.few-counts");
    }

    private static CalibrationReport Weighed(string temperature, params (int Pulses, double Net)[] runs) =>
        Worked.Of(Sheet(Brine + ", " + temperature, runs));

    private static string Sheet(string liquid, params (int Pulses, double Net)[] runs)
    {
        var list = string.Join(", ", runs.Select(r => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "pulses": {{r.Pulses}}, "whole": { "tare": "1 kg", "gross": "{{1 + r.Net:0.000}} kg" } }""")));
        return $$"""
            { "kind": "liquid-meter", "date": "2026-10-06", "liquid": { {{liquid}} }, {{Scale}},
              "air": { "temperature": "20 °C", "pressure": 1013.25, "humidity": "50 %" }, "runs": [{{list}}] }
            """;
    }
}
