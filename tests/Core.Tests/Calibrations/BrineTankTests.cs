using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Strength, freezing, and what to add.</summary>
public sealed class BrineTankTests
{
    // A hydrometer in 23.3 % brine shows this at each temperature (worked apart, see HydrometerTests).
    [Theory]
    [InlineData("1.1857", "32 °F")]
    [InlineData("1.1809", "50 °F")]
    [InlineData("1.1782", "60 °F")]
    [InlineData("1.1725", "80 °F")]
    public void A_hydrometer_with_its_temperature_gives_the_strength(string gravity, string temperature)
    {
        var report = Of($$"""
            { "kind": "brine", "liquid": { "salt": "sodium-chloride", "specificGravity": {{gravity}}, "temperature": "{{temperature}}" } }
            """);
        Assert.Equal(0.233, report.Figures[0].Value.Value, 1e-4);
        // Reading ± 0.001 is 0.12 % of salt, thermometer and tables come on top.
        Assert.InRange(report.Figures[0].Expanded!.Value, 0.001, 0.003);
    }

    [Fact]
    public void Seventy_degrees_of_a_salometer_are_18_48_percent_and_are_shown_again()
    {
        var report = Of("""{ "kind": "brine", "liquid": { "salt": "sodium-chloride", "salometer": 70, "temperature": "60 °F" } }""");
        Assert.Equal(0.1848, report.Figures[0].Value.Value, 5e-5);
        Assert.Contains(report.Lines, l => l.Text(TextCulture.UnitedStates, UnitPreferences.UnitedStates).Contains("70.0 degrees", StringComparison.Ordinal));
    }

    [Fact]
    public void Strengthening_and_thinning_a_thousand_gallons()
    {
        // 20 to 23.3 %: 413.0 lb of pure salt; 25 to 23.3 %: 725.2 lb = 87.0 gal of water; at 60 °F (worked apart).
        var weak = Of("""
            { "kind": "brine", "liquid": { "salt": "sodium-chloride", "strength": "20 %", "temperature": "60 °F" }, "target": "23.3 %" }
            """);
        Assert.Equal(413.0, In(weak, "salt to add, as delivered", Units.Pound), 0.06);
        var strong = Of("""
            { "kind": "brine", "liquid": { "salt": "sodium-chloride", "strength": "25 %", "temperature": "60 °F" }, "volume": "1000 US gal", "target": "23.3 %" }
            """);
        Assert.Equal(725.2, In(strong, "water to add", Units.Pound), 0.06);
        Assert.Equal(87.0, In(strong, "water to add, by volume", Units.UsGallon), 0.05);
        // Half a percent of strength is a large part of what is to be added, and the interval says so.
        var figure = weak.Figures.Single(f => f.Name == "salt to add, as delivered");
        Assert.InRange(figure.Expanded!.Value / figure.Value.Value, 0.1, 0.2);
    }

    [Fact]
    public void A_batch_of_a_thousand_gallons_from_impure_damp_salt()
    {
        // 2457.3 lb of salt of 95 % with 2 % water of the dry mass; it brings 48.2 lb of the 7534.0 lb water (worked apart).
        var report = Of("""
            { "kind": "brine", "batch": "1000 US gal", "target": "23.3 %", "addedSalt": { "purity": "95 %", "moisture": "2 %", "of": "dry" } }
            """);
        Assert.Equal(2457.3, In(report, "salt for the batch, as delivered", Units.Pound), 0.06);
        Assert.Equal(7534.0 - 48.2, In(report, "water for the batch", Units.Pound), 0.1);
        Assert.True(report.Usable);
    }

    [Fact]
    public void Salt_that_is_added_brings_the_brine_to_the_target()
    {
        // 1000 kg of 15 % to 22 % with salt of 95 %, 3 % water of the wet mass: what is dissolved afterwards is 22 % of the liquid.
        const double Moisture = 0.03 / 0.97;
        var added = Core.Liquids.Brine.DeliveredToAdd(1000, 0.15, 0.22, 0.95, Moisture)!.Value;
        var dry = added / (1 + Moisture);
        var salt = 150 + (0.95 * dry);
        var liquid = 1000 + added - (0.05 * dry);
        Assert.Equal(0.22, salt / liquid, 1e-12);
        Assert.Null(Core.Liquids.Brine.DeliveredToAdd(1000, 0.15, 0.9, 0.5, 0.3));
    }

    [Fact]
    public void Two_liquids_are_poured_together_by_mass()
    {
        // 90 parts of 23.3 % NaCl and 10 of 32 % CaCl2 at 20 °C: 20.742 % and 3.513 %, 1187.53 by volumes, 1187.83 by the model (worked apart).
        var report = Of("""
            { "kind": "brine", "units": "si", "volume": "90 L", "liquid": { "salt": "sodium-chloride", "strength": "23.3 %", "temperature": "20 °C" },
              "blend": { "volume": "10 L", "liquid": { "salt": "calcium-chloride", "strength": "32 %", "temperature": "20 °C" } } }
            """);
        Assert.Equal(0.20742, In(report, "sodium chloride in the blend", null), 5e-6);
        Assert.Equal(0.03513, In(report, "calcium chloride in the blend", null), 5e-6);
        Assert.Equal(1187.53, In(report, "density of the blend, volumes added up", null), 0.01);
        Assert.Equal(1187.83, In(report, "density of the blend by the model", null), 0.01);
    }

    [Fact]
    public void Freezing_comes_with_its_spread_or_not_at_all()
    {
        static CalibrationReport Liquid(string salt, string strength) => Of(
            $$"""{ "kind": "brine", "units": "si", "liquid": { "salt": "{{salt}}", "strength": "{{strength}}", "strengthPlusMinus": "0.1 %", "temperature": "15 °C" } }""");
        var sodium = Liquid("sodium-chloride", "20 %").Figures.Single(f => f.Name == "begins to freeze at");
        Assert.Equal(-16.456, sodium.Value.Value - 273.15, 1e-3);
        Assert.InRange(sodium.Expanded!.Value, 0.2, 0.5);
        Assert.Contains(Liquid("calcium-chloride", "30 %").Findings, f => f.Code == "brine.freezing-not-known");
        Assert.Contains(Liquid("magnesium-chloride", "30 %").Findings, f => f.Code == "brine.past-lowest");
        Assert.DoesNotContain(Liquid("magnesium-chloride", "20 %").Findings, f => f.Code == "brine.past-lowest");
    }

    [Theory]
    [InlineData("\"strength\": \"23 %\"", "\"target\": \"28 %\"", "brine.target-too-strong")]
    [InlineData("\"strength\": \"23 %\"", "\"target\": \"23.3 %\"", "brine.as-good-as-target")]
    [InlineData("\"strength\": \"20 %\"", "\"target\": \"23.3 %\"", "brine.pure-assumed")]
    [InlineData("\"specificGravity\": 1.2003", "\"target\": \"23.3 %\"", "liquid.reading-assumed")]
    [InlineData("\"strength\": \"26.6 %\"", "\"volume\": \"10 L\"", "liquid.above-solubility")]
    public void What_should_be_known_is_said(string liquid, string rest, string code) =>
        Assert.Contains(
            Of("{ \"kind\": \"brine\", \"liquid\": { \"salt\": \"sodium-chloride\", \"temperature\": \"15 °C\", " + liquid + " }, " + rest + " }").Findings,
            f => f.Code == code);

    [Fact]
    public void Nothing_stated_is_refused() =>
        Assert.Contains(Worked.Reading("""{ "kind": "brine", "target": "23.3 %" }""").Findings, f => f.Code == "brine.nothing");

    private static CalibrationReport Of(string json)
    {
        var report = Worked.Of(json);
        Assert.All(report.Findings, f => Assert.True(FindingText.IsComplete(f), f.Code));
        Assert.All(report.Lines, l => Assert.DoesNotContain("?", l.Text(TextCulture.UnitedStates, UnitPreferences.UnitedStates), StringComparison.Ordinal));
        return report;
    }

    private static double In(CalibrationReport report, string name, Unit? unit)
    {
        var value = report.Figures.Single(f => f.Name == name).Value.Value;
        return unit is null ? value : unit.FromSi(value);
    }
}
