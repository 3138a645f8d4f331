using Lanewright.Core.Calibrations;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Liquid for dry material.</summary>
public sealed class PreWetTests
{
    private const string Brine = "\"liquid\": { \"salt\": \"sodium-chloride\", \"strength\": \"23.3 %\", \"strengthPlusMinus\": \"0.2 %\", \"temperature\": \"60 °F\" }";

    // Exact arithmetic: 300 lb/min at 10 and 8 gal/ton are 1.5 and 1.2 gal/min; 250 lb/lane-mile at 25 mph are 104.17 lb/min, at 10 gal/ton 0.521 gal/min.
    [Theory]
    [InlineData("\"delivery\": \"300 lb/min\"", "10", 1.5)]
    [InlineData("\"delivery\": \"300 lb/min\"", "8", 1.2)]
    [InlineData("\"rate\": \"250 lb/lane-mile\", \"speed\": \"25 mph\"", "10", 0.520833)]
    public void A_wanted_ratio_needs_a_flow(string dry, string wanted, double gallonsPerMinute)
    {
        var report = Of($$"""{ "kind": "pre-wet", "dry": { {{dry}} }, "wanted": "{{wanted}} US gal/short ton" }""");
        Assert.Equal(gallonsPerMinute, In(report, "flow needed", Units.UsGallonPerMinute), 1e-6);
    }

    // With 23.3 % brine of 9.8227 lb/gal: liquid in percent of the dry mass and of the total (worked apart).
    [Theory]
    [InlineData(5, 0.0246, 0.0240)]
    [InlineData(8, 0.0393, 0.0378)]
    [InlineData(10, 0.0491, 0.0468)]
    [InlineData(12, 0.0589, 0.0557)]
    [InlineData(20, 0.0982, 0.0894)]
    [InlineData(50, 0.2456, 0.1972)]
    public void A_caught_flow_gives_gallons_to_the_ton_and_shares_by_mass(double gallonsPerTon, double ofDry, double ofTotal)
    {
        // 2,000 lb/min of dry material make gallons to the ton and gallons a minute the same number.
        var report = Of($$"""{ "kind": "pre-wet", {{Brine}}, "dry": { "delivery": "2000 lb/min" }, "flow": "{{gallonsPerTon}} US gal/min" }""");
        Assert.Equal(gallonsPerTon, In(report, "liquid for dry material", Units.UsGallonPerShortTon), 1e-9);
        Assert.Equal(gallonsPerTon * 4.172702, In(report, "the same", Units.LitrePerTonne), 1e-4 * gallonsPerTon);
        Assert.Equal(ofDry, In(report, "liquid by mass of the dry material", null), 6e-5);
        Assert.Equal(ofTotal, In(report, "share of the liquid in the total mass", null), 6e-5);
    }

    [Fact]
    public void FS_30_is_428_57_kg_of_brine_for_a_tonne_of_dry_salt()
    {
        // 428.57 kg/t = 364.1 L/t = 87.26 gal/ton with 23.3 % brine at 60 °F.
        var report = Of($$"""{ "kind": "pre-wet", {{Brine}}, "dry": { "delivery": "1000 kg/min" }, "wanted": "30 %" }""");
        Assert.Equal(364.1, In(report, "flow needed", Units.LitrePerMinute), 0.05);
        Assert.Equal(0.7699, In(report, "salt in the total mass, dry material taken as salt", null), 6e-5);
    }

    // Salt in 20 g/m2: FS 30 with 22 % brine 15.32, FS 50 12.20, FS 70 9.08; with 20 % brine FS 30 15.2 (exact arithmetic).
    [Theory]
    [InlineData("30 %", "22 %", 15.32)]
    [InlineData("50 %", "22 %", 12.20)]
    [InlineData("70 %", "22 %", 9.08)]
    [InlineData("30 %", "20 %", 15.2)]
    public void A_dose_is_split_in_dry_and_liquid(string wanted, string strength, double salt)
    {
        var report = Of($$"""
            { "kind": "pre-wet", "liquid": { "salt": "sodium-chloride", "strength": "{{strength}}", "temperature": "10 °C" },
              "dry": { "delivery": "100 kg/min" }, "wanted": "{{wanted}}", "dose": "20 g/m²" }
            """);
        Assert.Equal(salt, In(report, "salt in the dose", Units.GramPerSquareMetre), 1e-9);
        if (wanted != "30 %") return;
        Assert.Equal(14, In(report, "dry part of the dose", Units.GramPerSquareMetre), 1e-9);
        Assert.Equal(6, In(report, "liquid part of the dose", Units.GramPerSquareMetre), 1e-9);
        // Dry only: 20 g of dry material with 30 % liquid on top of it are 28.57 in all.
        Assert.Contains(report.Lines, l => l.Text(TextCulture.UnitedStates, UnitPreferences.Metric).Contains("43 % too much", StringComparison.Ordinal)
            || l.Text(TextCulture.UnitedStates, UnitPreferences.Metric).Contains("42.9 % too much", StringComparison.Ordinal));
    }

    [Fact]
    public void Weighed_catches_with_their_time_give_the_flow()
    {
        var report = Of($$"""
            { "kind": "pre-wet", {{Brine}}, "dry": { "delivery": "300 lb/min", "plusMinus": "2 %" }, "wanted": "10 US gal/short ton", "commonError": true,
              "scale": { "id": "s", "capacity": "150 lb", "division": "0.05 lb", "class": "iii", "verified": "2026-09-01" },
              "runs": [{ "time": 120, "whole": { "tare": "5 lb", "gross": "34.45 lb" } }, { "time": 120, "whole": { "tare": "5 lb", "gross": "34.40 lb" } }] }
            """);
        // 29.45 lb / 9.8227 lb/gal in two minutes, with the air's lift of 0.09 %.
        Assert.Equal(1.4995, In(report, "flow of the liquid", Units.UsGallonPerMinute), 0.003);
        Assert.DoesNotContain(report.Findings, f => f.Code == "liquid.flow-unlike-wanted");
        Assert.True(report.Usable);
        // What is worked out from the flow is never surer than the flow.
        Assert.True(Share("liquid for dry material") > Share("flow of the liquid"));

        double Share(string name) => report.Figures.Single(f => f.Name == name) is var f ? f.Expanded!.Value / f.Value.Value : 0;
    }

    [Fact]
    public void A_flow_far_from_the_wanted_one_is_said() =>
        Assert.Contains(
            Of("""{ "kind": "pre-wet", "dry": { "delivery": "300 lb/min" }, "flow": "2.5 US gal/min", "wanted": "10 US gal/short ton" }""").Findings,
            f => f.Code == "liquid.flow-unlike-wanted");

    [Theory]
    [InlineData("\"dry\": { \"delivery\": \"300 lb/min\" }", "liquid.nothing-asked")]
    [InlineData("\"dry\": { \"speed\": \"30 mph\" }, \"flow\": \"2 L/min\"", "prewet.no-dry")]
    [InlineData("\"dry\": { \"delivery\": \"300 lb/min\" }, \"wanted\": \"30 %\"", "liquid.needs-liquid")]
    [InlineData("\"dry\": { \"delivery\": \"300 lb/min\" }, \"wanted\": \"100 %\"", "liquid.wanted-impossible")]
    [InlineData("\"dry\": { \"delivery\": \"300 lb/min\" }, \"wanted\": \"-3 L/t\"", "liquid.wanted-impossible")]
    [InlineData("\"dry\": { \"delivery\": \"300 lb/min\" }, \"flow\": \"2 L/min\", \"runs\": [{ \"time\": 60, \"volume\": \"2 L\" }]", "liquid.flow-twice")]
    public void What_cannot_be_used_is_said(string fields, string code)
    {
        var reading = Worked.Reading("{ \"kind\": \"pre-wet\", " + fields + " }");
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Code == code);
    }

    private static CalibrationReport Of(string json)
    {
        var report = Worked.Of(json);
        Assert.All(report.Findings, f => Assert.True(FindingText.IsComplete(f), f.Code));
        return report;
    }

    private static double In(CalibrationReport report, string name, Unit? unit)
    {
        var value = report.Figures.First(f => f.Name == name).Value.Value;
        return unit is null ? value : unit.FromSi(value);
    }
}
