using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Geometry of metering devices against worked figures, each with its source.</summary>
public sealed class MeteringTests
{
    private static readonly Density Salt = Density.FromPoundsPerCubicFoot(80);

    // A screw-conveyor calculator's worked figure (calculator.city): 0.15 m, no shaft, pitch 0.2 m, 60 rpm, fill 0.40
    // -> 5.0894 m3/h. Density 1 kg/m3 turns volume into mass.
    [Fact]
    public void An_auger_of_15_cm_at_60_rpm_moves_5_0894_cubic_metres_an_hour()
    {
        var turn = Metering.Auger(
            Length.FromMetres(0.15), default, Length.FromMetres(0.2), Density.FromKilogramsPerCubicMetre(1), 0.4);
        Assert.Equal(5.0894, (turn * RotationalSpeed.FromRevolutionsPerMinute(60)).KilogramsPerHour, 5e-5);
    }

    // Arithmetic from exact factors: D 9 in, d 2.5 in, pitch 9 in, 80 lb/ft3.
    [Theory]
    [InlineData(9, 1, 24.462)]
    [InlineData(9, 0.45, 11.008)]
    public void A_nine_inch_auger_moves_24_pounds_a_turn_when_flooded(double inches, double fill, double pounds) =>
        Assert.Equal(pounds, Auger(inches, fill).PoundsPerRevolution, 5e-4);

    // (8.5^2 - 2.5^2) / (9^2 - 2.5^2) = 66 / 74.75 (arithmetic).
    [Fact]
    public void A_quarter_inch_of_wear_costs_11_7_percent_of_what_the_flight_sweeps()
    {
        Assert.Equal(66 / 74.75, Auger(8.5) / Auger(9), 1e-12);
        Assert.Equal(-0.117, (Auger(8.5) / Auger(9)) - 1, 5e-4);
    }

    // Arithmetic: 18 in x 3 in gate, 10 ft/min, 80 lb/ft3 -> 300 lb/min; linear in the gate.
    [Theory]
    [InlineData(3, 300)]
    [InlineData(2, 200)]
    public void A_chain_under_a_gate_delivers_in_proportion_to_the_opening(double gate, double poundsPerMinute) =>
        Assert.Equal(
            poundsPerMinute,
            Metering.Gate(Length.FromInches(18), Length.FromInches(gate), Speed.FromFeetPerMinute(10), Salt).PoundsPerMinute,
            1e-9);

    // A belt conveyor's design sheet (Scribd 405524856): 2.15 m x 1.905 m, 0.28 m/s, factor 0.75. It prints
    // 3,096.58 m3/h from an area rounded to 4.096 m2; the unrounded area gives 3,096.39.
    [Fact]
    public void A_belt_of_a_design_sheet_carries_3096_cubic_metres_an_hour()
    {
        var flow = Metering.Gate(
            Length.FromMetres(2.15), Length.FromMetres(1.905), Speed.FromMetresPerSecond(0.28),
            Density.FromKilogramsPerCubicMetre(1), 0.75);
        Assert.Equal(3096.39, flow.KilogramsPerHour, 5e-3);
        Assert.Equal(3096.58, flow.KilogramsPerHour, 3096.58 * 0.0005 / 4.096);
    }

    // Worked figures of three sources on fluid power (nottco.com, ktnfluidpower.com, calculator.academy).
    [Theory]
    [InlineData(8, 0.95, 1945.3)]
    [InlineData(6, 0.75, 1848)]
    [InlineData(24.351, 3.75, 1500)]
    [InlineData(13.039, 2.51, 1200)]
    [InlineData(34.632, 4, 2000)]
    public void A_hydraulic_motor_turns_231_times_gallons_by_cubic_inches(double gallons, double cubicInches, double rpm)
    {
        var displacement = Volume.FromCubicFeet(cubicInches / 1728);
        Assert.Equal(
            rpm, Metering.HydraulicMotor(VolumeFlow.FromUsGallonsPerMinute(gallons), displacement).RevolutionsPerMinute, 0.06);
    }

    // 24.351 gpm turn a motor of 3.75 in3 at 1,500 rpm (as above), so a pump that gives them at 1,500 rpm of the engine supports 1,500 there and
    // 1,000 at 1,000: the lower of what is asked and what the oil allows (derived).
    [Theory]
    [InlineData(2000, 1500, 1500)]
    [InlineData(800, 1500, 800)]
    [InlineData(1200, 1000, 1000)]
    [InlineData(1200, 0, 0)]
    public void A_motor_turns_no_faster_than_the_pump_supplies(double asked, double engine, double rpm)
    {
        var pump = Volume.FromUsGallons(24.351 / 1500);
        var turns = Metering.MotorSpeed(
            RotationalSpeed.FromRevolutionsPerMinute(asked), pump, RotationalSpeed.FromRevolutionsPerMinute(engine),
            Volume.FromCubicFeet(3.75 / 1728));
        Assert.Equal(rpm, turns.RevolutionsPerMinute, 0.06);
    }

    [Fact]
    public void Sizes_outside_their_range_are_programming_mistakes()
    {
        Length one = Length.FromMetres(1);
        Assert.Throws<ArgumentOutOfRangeException>(() => Metering.Auger(one, one, one, Salt));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metering.Auger(one, -one, one, Salt));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metering.Auger(one, default, one, Salt, 1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metering.Gate(one, default, Speed.FromMetresPerSecond(1), Salt));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Metering.HydraulicMotor(VolumeFlow.FromSi(1), Volume.FromSi(0)));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Metering.HydraulicMotor(VolumeFlow.FromSi(1), Volume.FromSi(1), 0));
    }

    private static MassPerRevolution Auger(double inches, double fill = 1) => Metering.Auger(
        Length.FromInches(inches), Length.FromInches(2.5), Length.FromInches(9), Salt, fill);
}
