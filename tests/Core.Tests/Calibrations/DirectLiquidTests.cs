using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Liquid straight on the road.</summary>
public sealed class DirectLiquidTests
{
    private const string Brine = "\"liquid\": { \"salt\": \"sodium-chloride\", \"strength\": \"23.3 %\", \"temperature\": \"60 °F\" }";

    // 23.3 % brine of 9.8227 lb/gal on a lane of 12 ft (worked apart): gal, lb salt/lane-mile, g/m2, mL/m2. At 60 mph a lane mile takes a minute.
    [Theory]
    [InlineData(20, 45.8, 3.53, 12.9)]
    [InlineData(30, 68.7, 5.29, 19.3)]
    [InlineData(40, 91.5, 7.05, 25.7)]
    [InlineData(50, 114.4, 8.82, 32.15)]
    [InlineData(60, 137.3, 10.58, 38.6)]
    public void A_flow_puts_so_much_on_the_road(double gallons, double pounds, double grams, double millilitres)
    {
        var report = Of($$"""
            { "kind": "direct-liquid", {{Brine}}, "speed": "60 mph", "lanes": 1, "laneWidth": "12 ft", "flow": "{{gallons}} US gal/min" }
            """);
        Assert.Equal(gallons, In(report, "liquid on a lane", Units.UsGallonPerLaneMile), 1e-9);
        Assert.Equal(gallons * 2.352146, In(report, "the same", Units.LitrePerLaneKilometre), 1e-4);
        Assert.Equal(pounds, In(report, "salt on a lane", Units.PoundPerLaneMile), 0.051);
        Assert.Equal(grams, In(report, "salt by area", Units.GramPerSquareMetre), 0.0051);
        Assert.Equal(millilitres, In(report, "liquid by area", Units.MillilitrePerSquareMetre), 0.051);
    }

    // 40 gal/lane-mile at 30 mph on one lane need 20.0 gal/min, on two 40 (exact arithmetic).
    [Theory]
    [InlineData(1, 20)]
    [InlineData(2, 40)]
    public void A_wanted_rate_needs_a_flow(double lanes, double expected)
    {
        var report = Of($$"""
            { "kind": "direct-liquid", "speed": "30 mph", "lanes": {{lanes}}, "laneWidth": "12 ft", "wanted": "40 US gal/lane-mile" }
            """);
        Assert.Equal(expected, In(report, "flow needed", Units.UsGallonPerMinute), 1e-9);
    }

    [Fact]
    public void Salt_by_area_and_liquid_by_area_ask_for_the_same_flow()
    {
        static double Needed(string wanted) => In(
            Of($$"""{ "kind": "direct-liquid", {{Brine}}, "speed": "30 mph", "lanes": 1, "laneWidth": "3.5 m", "wanted": "{{wanted}}" }"""),
            "flow needed", Units.LitrePerMinute);
        // 1177.016 kg/m3 x 0.233 = 0.274245 g of salt in a mL.
        Assert.Equal(Needed("20 mL/m²"), Needed("5.4849 g/m²"), 0.002);
    }

    [Fact]
    public void The_width_of_the_lane_changes_amounts_by_area_only()
    {
        static CalibrationReport Wide(string width) => Of($$"""
            { "kind": "direct-liquid", "speed": "60 mph", "lanes": 1, "laneWidth": "{{width}}", "flow": "40 US gal/min" }
            """);
        // 12 ft against 3.5 m: 4.5 %.
        Assert.Equal(
            12 * 0.3048 / 3.5,
            In(Wide("3.5 m"), "liquid by area", Units.MillilitrePerSquareMetre) / In(Wide("12 ft"), "liquid by area", Units.MillilitrePerSquareMetre), 1e-9);
        Assert.Equal(In(Wide("3.5 m"), "liquid on a lane", Units.LitrePerLaneKilometre), In(Wide("12 ft"), "liquid on a lane", Units.LitrePerLaneKilometre), 1e-9);
        Assert.Contains(Wide("10 ft").Findings, f => f.Code == "direct.lane-width");
        Assert.DoesNotContain(Wide("12 ft").Findings, f => f.Code == "direct.lane-width");
    }

    [Fact]
    public void The_lane_width_is_never_assumed()
    {
        var reading = Worked.Reading("""{ "kind": "direct-liquid", "speed": "60 mph", "lanes": 1, "flow": "40 US gal/min" }""");
        Assert.Contains(reading.Findings, f => f.Field == "laneWidth");
    }

    [Theory]
    [InlineData("\"wanted\": \"5 g/m²\"", "liquid.needs-liquid")]
    [InlineData("\"wanted\": \"0 mL/m²\"", "liquid.wanted-impossible")]
    [InlineData("\"note\": \"nothing\"", "liquid.nothing-asked")]
    public void What_cannot_be_used_is_said(string fields, string code)
    {
        var reading = Worked.Reading("{ \"kind\": \"direct-liquid\", \"speed\": \"30 mph\", \"lanes\": 1, \"laneWidth\": \"12 ft\", " + fields + " }");
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code);
    }

    private static CalibrationReport Of(string json)
    {
        var report = Worked.Of(json);
        Assert.All(report.Findings, f => Assert.True(FindingText.IsComplete(f), f.Code));
        return report;
    }

    private static double In(CalibrationReport report, string name, Unit unit) =>
        unit.FromSi(report.Figures.First(f => f.Name == name).Value.Value);
}
