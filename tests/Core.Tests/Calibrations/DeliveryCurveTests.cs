using System.Globalization;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Delivery by drive setting, and the setting for a wanted delivery.</summary>
public sealed class DeliveryCurveTests
{
    private const double PoundPerMinute = 0.45359237 / 60;

    [Theory]
    // 200 lb/min at 20 mph are 600 lb per mile (Minnesota field handbook, 2nd revision, 2012).
    [InlineData("600 lb/lane-mile", "20 mph", "", 200)]
    // 400 lb per mile at 20 mph are 133.33 lb/min; the same delivery is 533.3 lb per mile at 15 mph and 320 at 25 (exact arithmetic).
    [InlineData("400 lb/lane-mile", "20 mph", "", 133.333333333)]
    [InlineData("533.333333333 lb/lane-mile", "15 mph", "", 133.333333333)]
    [InlineData("320 lb/lane-mile", "25 mph", "", 133.333333333)]
    // The handbook's rates are for two lanes: 300 a lane on two lanes is the 600 of its example.
    [InlineData("300 lb/lane-mile", "20 mph", ", \"lanes\": 2", 200)]
    // 10 g/m2 on 3 m at 20 km/h are 10 kg/min (exact arithmetic), 22.046 lb/min.
    [InlineData("100 g/m2", "20 km/h", ", \"width\": \"3 m\"", 220.462262185)]
    public void A_rate_at_a_speed_is_a_delivery_and_a_setting(string rate, string speed, string more, double poundsPerMinute)
    {
        // 4 lb/min for each percent above 10 %, without error: the setting is 10 % + delivery / 400.
        var report = Worked.Of(Sheet(
            [20, 40, 60, 80, 100], s => 4 * (s - 10),
            "\"wanted\": [{ \"rate\": \"" + rate + "\", \"speed\": \"" + speed + "\"" + more + " }],"));
        Assert.Equal((poundsPerMinute / 400) + 0.10, Value(report, "setting for wanted 1"), 1e-9);
        Assert.Equal(0.10, Value(report, "delivery begins at"), 1e-9);
        Assert.Equal(360 * PoundPerMinute, Value(report, "delivery at full setting"), 1e-9);
        Assert.DoesNotContain(report.Findings, f => f.Code is "curve.nothing-gained" or "curve.not-rising");
    }

    [Fact]
    public void A_limit_of_the_pump_is_found_where_the_rising_line_meets_the_flat()
    {
        // 4 lb/min for each percent, never above 240: the bend is at 60 % exactly.
        var report = Worked.Of(Sheet(
            [10, 25, 40, 55, 70, 85, 100], s => Math.Min(4 * s, 240),
            "\"wanted\": [{ \"rate\": \"239 lb/min\" }, { \"rate\": \"300 lb/min\" }, { \"rate\": \"120 lb/min\" }],"));
        Assert.Equal(0.60, Value(report, "nothing is gained from"), 1e-9);
        Assert.Contains(report.Findings, f => f.Code == "curve.nothing-gained");
        Assert.Contains(report.Findings, f => f.Code == "curve.wanted-outside" && f.Field == "wanted[1]");
        Assert.Equal(0.30, Value(report, "setting for wanted 3"), 1e-6);
    }

    [Fact]
    public void A_wanted_delivery_in_the_flat_part_gets_no_setting()
    {
        var report = Worked.Of(Sheet(
            [10, 25, 40, 55, 70, 85, 100], s => Math.Min(4 * s, 240) + (0.001 * s), "\"wanted\": [{ \"rate\": \"240.08 lb/min\" }],"));
        Assert.Contains(report.Findings, f => f.Code == "curve.wanted-flat");
    }

    [Fact]
    public void A_setting_that_delivers_less_than_a_lower_one_is_pooled_and_said()
    {
        var report = Worked.Of(Sheet([20, 40, 60, 80], s => s == 60 ? 110 : 4 * (s - 10)));
        Assert.Contains(report.Findings, f => f.Code == "curve.not-rising");
        var fit = report.Tables[1].Rows.Select(row => row[1].Si).ToList();
        Assert.True(fit.Zip(fit.Skip(1)).All(pair => pair.Second >= pair.First - 1e-12));
    }

    [Fact]
    public void Engine_speed_that_matters_is_said()
    {
        var runs = Runs([20, 40, 60, 80], s => 4 * (s - 10), 1500) + ", " + Runs([80], _ => 210, 1250);
        var report = Worked.Of(SheetOf(runs));
        var finding = Assert.Single(report.Findings, f => f.Code == "curve.engine-matters");
        // 210 of 280.
        Assert.Equal(-0.25, finding.Values.Single(v => v.Name == "off").Si, 1e-9);
        Assert.DoesNotContain(
            Worked.Of(SheetOf(Runs([20, 40, 60, 80], s => 4 * (s - 10), 1500) + ", " + Runs([80], s => 4 * (s - 10), 1250))).Findings,
            f => f.Code == "curve.engine-matters");
    }

    [Fact]
    public void The_trim_is_held_against_the_runs()
    {
        var report = Worked.Of(Sheet([20, 40, 60, 80, 100], s => 4 * (s - 10), "\"trim\": { \"turnsFrom\": 30, \"gainsUpTo\": 25 },"));
        Assert.Contains(report.Findings, f => f.Code == "curve.trim-order");
        Assert.Contains(report.Findings, f => f.Code == "curve.trim-unlike");
        Assert.Contains(report.Findings, f => f.Code == "curve.above-trim");
        Assert.False(report.Usable);
    }

    [Fact]
    public void What_is_missing_is_said_and_nothing_throws()
    {
        Assert.Contains(Worked.Of(Sheet([40], s => s)).Findings, f => f.Code == "curve.none");
        var reading = Worked.Reading("""
            { "kind": "delivery-curve", "wanted": [{ "rate": "20 g/m2", "speed": "40 km/h" }, { "rate": "200 lb/lane-mile" }],
              "runs": [{ "setting": "much", "time": "60 s" }] }
            """);
        Assert.False(reading.IsUsable);
        Assert.Contains(reading.Findings, f => f.Field == "wanted[0].width" && f.Code == "curve.wanted-needs");
        Assert.Contains(reading.Findings, f => f.Field == "wanted[1].speed" && f.Code == "curve.wanted-needs");
        Assert.Contains(reading.Findings, f => f.Field == "runs[0].setting");
        Assert.Contains(reading.Findings, f => f.Field == "scale");
    }

    [Fact]
    public void The_curve_rises_and_its_picture_names_every_setting()
    {
        var report = Worked.Of(Sheet([15, 30, 50, 75, 100], s => s * s / 25));
        var svg = report.Pictures[0].Svg("p", TextCulture.UnitedStates, UnitPreferences.UnitedStates);
        Assert.Contains("75.0 %: 225 lb/min", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", svg, StringComparison.Ordinal);
        Assert.Contains("currentColor", svg, StringComparison.Ordinal);
    }

    private static double Value(CalibrationReport report, string name) =>
        Assert.Single(report.Figures, f => f.Name == name).Value.Value;

    private static string Sheet(int[] settings, Func<int, double> poundsPerMinute, string more = "") =>
        SheetOf(Runs(settings, poundsPerMinute, 1500), more);

    private static string SheetOf(string runs, string more = "") =>
        "{ \"kind\": \"delivery-curve\", \"units\": \"us\", \"commonError\": true, \"timingUncertainty\": \"0.1 s\", "
        + "\"scale\": { \"id\": \"pallet\", \"capacity\": \"2000 lb\", \"tolerance\": \"0.1 lb\" }, " + more + " \"runs\": [" + runs + "] }";

    private static string Runs(int[] settings, Func<int, double> poundsPerMinute, int engine) => string.Join(", ", settings.SelectMany(s =>
        Enumerable.Repeat(
            string.Create(CultureInfo.InvariantCulture, $"{{ \"setting\": {s}, \"time\": \"60 s\", \"engineSpeed\": {engine}, ")
            + string.Create(CultureInfo.InvariantCulture, $"\"whole\": {{ \"tare\": 50, \"gross\": {50 + poundsPerMinute(s):R} }} }}"), 2)));
}
