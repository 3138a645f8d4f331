using CsCheck;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Quantities;
using Lanewright.Core.Rates;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Delivery, speed and rate, and the card made of them.</summary>
public sealed class RateCardTests
{
    private const double Mph = 0.44704;

    [Theory]
    // Minnesota Snow and Ice Control Field Handbook, 2nd revision (2012): 200 lb/min at 20 mph (3 min to the mile) is 600 lb/mile.
    [InlineData(600, 20, 200)]
    // 7 lb/rev at 30 rev/min, 20 mph: 210 lb/min, 630 lb/mile (handbook example from memory, arithmetic exact).
    [InlineData(630, 20, 210)]
    // The printed chart multiplies by 1.71 at 35 mph and gives 359.1; exact is 60/35 and 360.0.
    [InlineData(360, 35, 210)]
    public void Delivery_and_rate_agree_with_the_handbook(double poundsPerMile, double mph, double poundsPerMinute)
    {
        var rate = Units.PoundPerLaneMile.ToSi(poundsPerMile);
        var delivery = SpreadRate.Delivery(rate, mph * Mph, 1);
        Assert.Equal(poundsPerMinute, Units.PoundPerMinute.FromSi(delivery), 1e-9);
        Assert.Equal(mph, SpreadRate.HighestSpeed(delivery, rate, 1) / Mph, 1e-9);
    }

    [Theory]
    // Minutes to the mile, 60/mph, against the printed chart's two decimals: within half a unit of its last digit.
    [InlineData(5, 12.00)]
    [InlineData(10, 6.00)]
    [InlineData(15, 4.00)]
    [InlineData(20, 3.00)]
    [InlineData(25, 2.40)]
    [InlineData(30, 2.00)]
    [InlineData(35, 1.71)]
    [InlineData(40, 1.50)]
    [InlineData(45, 1.33)]
    public void The_printed_multipliers_are_rounded_minutes_to_the_mile(double mph, double printed)
    {
        var rate = Units.PoundPerLaneMile.ToSi(1000);
        var minutes = 1000 / Units.PoundPerMinute.FromSi(SpreadRate.Delivery(rate, mph * Mph, 1));
        Assert.InRange(minutes, printed - 0.005, printed + 0.005);
    }

    [Theory]
    // Without ground-speed control: 400 lb/mile at 20 mph becomes 533.3 at 15, 320 at 25, 266.7 at 30 (exact arithmetic).
    [InlineData(15, 533.3333333)]
    [InlineData(25, 320)]
    [InlineData(30, 266.6666667)]
    public void At_a_fixed_delivery_the_rate_goes_with_one_over_the_speed(double mph, double expected)
    {
        var delivery = SpreadRate.Delivery(Units.PoundPerLaneMile.ToSi(400), 20 * Mph, 1);
        var rate = delivery / (mph * Mph);
        Assert.Equal(expected, Units.PoundPerLaneMile.FromSi(rate), 1e-6);
    }

    [Fact]
    public void Two_lanes_need_twice_the_delivery()
    {
        // The Minnesota handbook's charts are per mile of a two-lane road; one lane is half.
        var one = SpreadRate.Delivery(Units.PoundPerLaneMile.ToSi(300), 10, 1);
        Assert.Equal(2 * one, SpreadRate.Delivery(Units.PoundPerLaneMile.ToSi(300), 10, 2), 1e-12);
        Assert.Equal(one, SpreadRate.Delivery(Units.PoundPerTwoLaneMile.ToSi(600), 10, 1), 1e-12);
    }

    [Theory]
    // Minnesota Pollution Control Agency, material conversions: lb/lane-mile to lb per 1,000 ft2 at 12 ft, as printed.
    [InlineData(25, 0.4)]
    [InlineData(100, 1.6)]
    [InlineData(200, 3.2)]
    [InlineData(250, 3.9)]
    [InlineData(300, 4.7)]
    [InlineData(350, 5.5)]
    public void Rates_by_area_agree_with_the_lane_mile_table(double perLaneMile, double printed)
    {
        var area = LaneRate.FromPoundsPerLaneMile(perLaneMile).ToAreaRate(Length.FromSi(12 * 0.3048));
        Assert.InRange(Units.PoundPerThousandSquareFeet.FromSi(area.Si), printed - 0.05, printed + 0.05);
    }

    [Fact]
    public void The_misprint_of_the_yards_to_tons_table_is_caught_by_name()
    {
        // Same page: salt is 1.08 ton to the cubic yard; "5 yd = 6.4 ton" is a misprint for 5.4.
        const double tonsPerYard = 1.08;
        var misprint = new Dictionary<int, double> { [5] = 6.4, [10] = 10.8, [20] = 21.6 }
            .Where(row => Math.Abs(row.Value - (tonsPerYard * row.Key)) > 0.05).Select(row => row.Key);
        Assert.Equal([5], misprint);
    }

    [Fact]
    public void A_setting_is_found_between_the_tested_ones_and_nowhere_else() => Gen.Select(
        Gen.Double[5, 40], Gen.Double[1, 30], Gen.Double[0.5, 3], Gen.Double[0.5, 3], Gen.Double[0, 1]).Sample((from, step, first, more, share) =>
    {
        List<(double, double)> tested = [(from, first), (from + step, first + more)];
        var setting = SpreadRate.Setting(tested, first + (share * more));
        Assert.NotNull(setting);
        Assert.InRange(setting.Value, from - 1e-9, from + step + 1e-9);
        Assert.Equal(from + (share * step), setting.Value, 1e-6);
        Assert.Null(SpreadRate.Setting(tested, first + (more * 1.01)));
        Assert.Null(SpreadRate.Setting(tested, first * 0.99));
    });

    [Fact]
    public void A_closed_loop_says_where_it_runs_out()
    {
        var report = Worked.Of("""
            { "kind": "rate-card", "units": "us", "spreader": { "id": "X" }, "loop": "closed", "material": "salt", "laneWidth": "12 ft", "lanes": 1,
              "speeds": ["20 mph", "40 mph"], "rates": ["300 lb/lane-mile"], "constant": "12.6 pulse/lb", "mostDelivery": "150 lb/min" }
            """);
        // 150 lb/min at 300 lb/lane-mile: 0.5 mile a minute, 30 mph.
        Assert.Equal(30, report.Figures[0].Value.Value / Mph, 1e-9);
        Assert.Equal("yes", report.Card!.Table.Rows[0][1].Word);
        Assert.Equal("too fast", report.Card.Table.Rows[0][2].Word);
        Assert.Equal("12.6 pulse/lb", report.Card.Constant);
    }

    [Theory]
    [InlineData("\"rates\": []", "card.no-rates")]
    [InlineData("\"rates\": [\"300 lb/lane-mile\"], \"settings\": [{ \"position\": 40, \"delivery\": \"100 lb/min\" }]", "card.few-settings")]
    [InlineData("\"rates\": [\"300 lb/lane-mile\"], \"settings\": [{ \"position\": 40, \"delivery\": \"100 lb/min\" }, { \"position\": 30, \"delivery\": \"120 lb/min\" }]", "card.settings-not-rising")]
    public void What_makes_no_card_is_said(string fields, string code)
    {
        var reading = Worked.Reading(
            "{ \"kind\": \"rate-card\", \"loop\": \"open\", \"material\": \"salt\", \"laneWidth\": \"12 ft\", \"lanes\": 1, \"speeds\": [\"20 mph\"], "
            + fields + " }");
        var findings = reading.Findings.Concat(reading.IsUsable ? reading.Value!.Analyse().Findings : []);
        Assert.Contains(findings, f => f.Code == code);
    }

    [Fact]
    public void Published_tables_are_shown_with_their_source_and_change_nothing()
    {
        Assert.All(PublishedRates.All, table => Assert.False(string.IsNullOrWhiteSpace(table.Source)));
        // Two cells as printed: MaineDOT 20-28 F 250-350 initially; Scotland light snow 20 g/m2.
        Assert.Equal("250-350 lb/lane-mile", PublishedRates.Find("maine")!.Rows[2].Rate);
        Assert.Equal("20 g/m²", PublishedRates.Find("scotland")!.Rows[5].Rate);
    }
}
