using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Worked figures of the trade's handbooks, and what they cost when rounded.</summary>
public sealed class HandbookTests
{
    // Minutes per mile: 60/mph exactly (arithmetic); the printed chart of the Salt Institute's handbook, from memory.
    [Theory]
    [InlineData(5, 12, 12.00)]
    [InlineData(10, 6, 6.00)]
    [InlineData(15, 4, 4.00)]
    [InlineData(20, 3, 3.00)]
    [InlineData(25, 2.4, 2.40)]
    [InlineData(30, 2, 2.00)]
    [InlineData(35, 1.7142857142857142, 1.71)]
    [InlineData(40, 1.5, 1.50)]
    [InlineData(45, 1.3333333333333333, 1.33)]
    [InlineData(50, 1.2, 1.20)]
    public void Minutes_to_the_mile(double mph, double exact, double printed)
    {
        var minutes = (Length.FromMiles(1) / Speed.FromMilesPerHour(mph)).Minutes;
        Assert.Equal(exact, minutes, 1e-12);
        Assert.Equal(printed, minutes, 0.005);
    }

    // 7 lb/rev at 30 rpm and 20 mph: 210 lb/min, 630 lb/mile (Salt Institute's chart example, from memory). At 35 mph
    // the printed multiplier 1.71 gives 359.1 where 360 is exact.
    [Fact]
    public void A_printed_multiplier_costs_up_to_half_a_unit_of_its_last_digit()
    {
        var flow = MassPerRevolution.FromPoundsPerRevolution(7) * RotationalSpeed.FromRevolutionsPerMinute(30);
        Assert.Equal(630, PoundsPerMile(flow, 20), 1e-9);
        Assert.Equal(360, PoundsPerMile(flow, 35), 1e-9);
        var printed = flow.PoundsPerMinute * 1.71;
        Assert.Equal(359.1, printed, 1e-9);
        Assert.Equal(-0.0025, (printed / PoundsPerMile(flow, 35)) - 1, 1e-12);
        Assert.InRange(Math.Abs(printed - 360), 0, flow.PoundsPerMinute * 0.005);
    }

    // Distance catch: 1,000 ft x 5.28 and 100 ft x 52.8 (multipliers from memory of the handbook, exact arithmetic).
    [Theory]
    [InlineData(75, 1000, 5.28)]
    [InlineData(7.5, 100, 52.8)]
    public void A_sack_caught_over_a_measured_course_is_396_pounds_a_mile(double pounds, double feet, double multiplier)
    {
        Assert.Equal(multiplier, Length.FromMiles(1) / Length.FromFeet(feet), 1e-12);
        Assert.Equal(
            396, LaneRate.FromSi(Mass.FromPounds(pounds).Si / Length.FromFeet(feet).Si).PoundsPerLaneMile, 1e-9);
    }

    // Three samples, mean of lb/rev = sum / 3 (Minnesota field handbook, 2nd revision, 2012). Figures invented; one turn
    // each, so that sum of masses by sum of turns is the same mean.
    [Fact]
    public void Three_samples_of_one_turn_average_as_the_handbook_averages_them()
    {
        double[] pounds = [6.9, 7.2, 7.0];
        var sheet = Sheets.Drop() with
        {
            Spreader = new() { Id = "h", Form = ConstantForm.MassPerRevolution, Unit = Units.PoundPerRevolution },
            Runs = [.. pounds.Select((p, i) => new Run
            {
                Id = $"{i}", Revolutions = RevolutionCount.FromRevolutions(5), Catch = Sheets.Whole(5 * p),
            })],
        };
        Assert.Equal(pounds.Sum() / 3, Units.PoundPerRevolution.FromSi(sheet.Result().Value.Value), 1e-12);
    }

    // 917 tyre turns to the mile x axle 3.25 x 16 teeth: 47,684 pulses to the mile (ecomodder.com, post 461131).
    [Fact]
    public void Tyre_axle_and_teeth_give_47_684_pulses_a_mile()
    {
        var perMile = PulseCount.FromPulses(917 * 3.25 * 16) / Length.FromMiles(1);
        Assert.Equal(47_684, perMile.PulsesPerMile, 1e-9);
    }

    // Wheel of 0.57658 m with 16 pulses a turn: 8,833.05 pulses/km (the same page prints 8,833.3 with pi = 3.1415).
    [Fact]
    public void A_wheel_of_577_mm_gives_8833_pulses_a_kilometre()
    {
        var perKilometre = PulseCount.FromPulses(16) / Length.FromMetres(Math.PI * 0.57658);
        Assert.Equal(8833.05, perKilometre.PulsesPerMile / 1.609344, 0.005);
        Assert.Equal(8833.3, 16 / (3.1415 * 0.57658) * 1000, 0.05);
    }

    // Without ground-speed control the rate goes as 1/speed: 400 lb/mile set at 20 mph (arithmetic).
    [Theory]
    [InlineData(15, 533.3)]
    [InlineData(25, 320)]
    [InlineData(30, 266.7)]
    public void Without_ground_speed_control_the_rate_falls_as_the_truck_goes_faster(double mph, double poundsPerMile)
    {
        var flow = Mass.FromPounds(400) / (Length.FromMiles(1) / Speed.FromMilesPerHour(20));
        Assert.Equal(133.33, flow.PoundsPerMinute, 0.005);
        Assert.Equal(poundsPerMile, PoundsPerMile(flow, mph), 0.05);
    }

    private static double PoundsPerMile(MassFlow flow, double mph) =>
        (flow * (Length.FromMiles(1) / Speed.FromMilesPerHour(mph))).Pounds;
}
