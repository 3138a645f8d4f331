using Lanewright.Core.Calibrations;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>What dose, width, speed and time ask for, against what came.</summary>
public sealed class StaticCheckTests
{
    private const string Scale = "\"commonError\": true, \"timingUncertainty\": \"0.1 s\", \"scale\": { \"id\": \"pallet\", \"capacity\": \"1000 kg\", \"tolerance\": \"0.05 kg\" }";

    [Theory]
    // dose x width x speed / 60: 20 g/m2 x 6 m x 40 km/h = 80 kg/min; 10 x 3 x 20 = 10 kg/min (exact arithmetic).
    [InlineData("20 g/m2", "\"width\": \"6 m\"", "40 km/h", 80)]
    [InlineData("10 g/m2", "\"width\": \"3 m\"", "20 km/h", 10)]
    // 200 lb/min at 20 mph are 600 lb per mile (Minnesota field handbook, 2nd revision, 2012): 90.718 kg/min.
    [InlineData("600 lb/lane-mile", "\"lanes\": 1", "20 mph", 90.718474)]
    [InlineData("300 lb/lane-mile", "\"lanes\": 2", "20 mph", 90.718474)]
    public void What_is_asked_is_dose_by_width_by_speed_by_time(string dose, string across, string speed, double kilogramsPerMinute)
    {
        var run = Run(dose, across, speed, kilogramsPerMinute * 1.03);
        var report = Worked.Of($"{{ \"kind\": \"static-check\", {Scale}, \"runs\": [{run}, {run}] }}");
        Assert.Equal(0.03, Value(report, "salt off by, point 1"), 1e-9);
        Assert.Contains(report.Findings, f => f.Code == "check.no-tolerance");
        Assert.DoesNotContain(report.Findings, f => f.Code is "check.outside" or "check.cannot-tell");
    }

    [Fact]
    public void Thirty_percent_brine_of_20_grams_is_14_of_salt_and_6_of_brine()
    {
        // FS30 at 20 g/m2: 14 dry + 6 brine; 20 % brine: 14 + 1.2 = 15.2 of salt (exact arithmetic).
        var dose = PrewetDose.OfTotal(20, 0.30);
        Assert.Equal((14.0, 6.0), (dose.Salt, Math.Round(dose.Brine, 12)));
        Assert.Equal(15.2, dose.SaltAltogether(0.20), 1e-12);
        // 428.57 kg of brine to a tonne of dry salt.
        Assert.Equal(428.571, PrewetDose.OfDry(1000, 0.30).Brine, 0.001);
        // NaCl in 20 g/m2 with 22 % brine: 15.32 with 30 % brine, 12.20 with 50 %, 9.08 with 70 %.
        Assert.Equal(15.32, PrewetDose.OfTotal(20, 0.30).SaltAltogether(0.22), 1e-9);
        Assert.Equal(12.20, PrewetDose.OfTotal(20, 0.50).SaltAltogether(0.22), 1e-9);
        Assert.Equal(9.08, PrewetDose.OfTotal(20, 0.70).SaltAltogether(0.22), 1e-9);
    }

    [Fact]
    public void Salt_and_brine_are_checked_apart_and_the_share_by_mass_is_given()
    {
        // 80 kg/min: 56 of salt, 24 of brine (20 L at 1.2 kg/L).
        var run = Run("20 g/m2", "\"width\": \"6 m\"", "40 km/h", 56, ", \"brine\": { \"amount\": \"20 L\", \"plusMinus\": \"0.5 %\" }");
        var report = Worked.Of($$"""
            { "kind": "static-check", {{Scale}}, "tolerance": "6 %", "brine": { "share": "30 %", "doseIs": "total", "density": "1200 kg/m3", "concentration": "20 %" },
              "runs": [{{run}}, {{run}}] }
            """);
        Assert.Equal(0, Value(report, "salt off by, point 1"), 1e-9);
        Assert.Equal(0, Value(report, "brine off by, point 1"), 1e-9);
        Assert.Equal(0.30, Value(report, "brine by mass of both, point 1"), 1e-9);
        Assert.Equal(["within", "within"], report.Tables[0].Rows.Select(row => row[^1].Word));
        Assert.Contains("76 %", report.Lines[0].Text(Core.Text.TextCulture.UnitedStates, Core.Quantities.UnitPreferences.UnitedStates), StringComparison.Ordinal);
    }

    [Fact]
    public void A_spreader_that_takes_the_dose_as_dry_is_recognised()
    {
        var run = Run("20 g/m2", "\"width\": \"6 m\"", "40 km/h", 80);
        var report = Worked.Of($$"""
            { "kind": "static-check", {{Scale}}, "tolerance": "5 %", "brine": { "share": "30 %" }, "runs": [{{run}}, {{run}}] }
            """);
        // 80 instead of 56 is 42.9 % too much.
        Assert.Equal(24.0 / 56, Value(report, "salt off by, point 1"), 1e-9);
        Assert.Contains(report.Findings, f => f.Code == "check.dose-basis");
        Assert.Contains(report.Findings, f => f.Code == "check.dose-basis-assumed");
        Assert.Contains(report.Findings, f => f.Code == "check.outside");
        Assert.Contains(report.Findings, f => f.Code == "check.no-brine");
    }

    [Fact]
    public void A_single_run_near_the_tolerance_does_not_decide()
    {
        var report = Worked.Of($$"""
            { "kind": "static-check", {{Scale}}, "tolerance": "5 %", "runs": [{{Run("20 g/m2", "\"width\": \"6 m\"", "40 km/h", 83)}}] }
            """);
        Assert.Contains(report.Findings, f => f.Code == "check.cannot-tell");
        Assert.Contains(report.Findings, f => f.Code == "check.one-run");
        Assert.Contains(report.Findings, f => f.Code == "check.one-point");
    }

    [Fact]
    public void What_is_missing_is_said_and_nothing_throws()
    {
        var reading = Worked.Reading("""
            { "kind": "static-check", "runs": [{ "dose": "20 g/m2", "speed": "40 km/h", "time": "60 s", "whole": { "tare": "1 kg", "gross": "2 kg" } }] }
            """);
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Field == "runs[0].width");
        Assert.Contains(reading.Findings, f => f.Field == "scale");
    }

    private static double Value(CalibrationReport report, string name) => Assert.Single(report.Figures, f => f.Name == name).Value.Value;

    private static string Run(string dose, string across, string speed, double kilograms, string more = "") =>
        $"{{ \"dose\": \"{dose}\", {across}, \"speed\": \"{speed}\", \"time\": \"60 s\", "
        + string.Create(System.Globalization.CultureInfo.InvariantCulture, $"\"whole\": {{ \"tare\": \"30 kg\", \"gross\": \"{30 + kilograms:R} kg\" }}{more} }}");
}
