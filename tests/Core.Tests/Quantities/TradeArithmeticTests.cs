using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

/// <summary>The trade's worked examples, computed with quantities alone.</summary>
public sealed class TradeArithmeticTests
{
    // Minnesota field handbook, 2012: 200 lb/min at 20 mph is 600 lb to the mile.
    [Fact]
    public void Two_hundred_pounds_a_minute_at_20_mph_are_600_pounds_a_mile()
    {
        var time = Length.FromMiles(1) / Speed.FromMilesPerHour(20);
        Assert.Equal(3, time.Minutes, 1e-12);
        Assert.Equal(600, (MassFlow.FromPoundsPerMinute(200) * time).Pounds, 1e-9);
    }

    // 7 lb/rev at 30 rpm: a handbook's chart example, from memory; the arithmetic is exact.
    [Fact]
    public void Seven_pounds_a_turn_at_30_rpm_are_210_pounds_a_minute()
    {
        var flow = MassPerRevolution.FromPoundsPerRevolution(7) * RotationalSpeed.FromRevolutionsPerMinute(30);
        Assert.Equal(210, flow.PoundsPerMinute, 1e-9);
        Assert.Equal(
            7, (flow / RotationalSpeed.FromRevolutionsPerMinute(30)).PoundsPerRevolution, 1e-12);
    }

    // Measured course: N pulses over L feet are N x 5280 / L to the mile (arithmetic).
    [Fact]
    public void A_course_of_1000_feet_with_3790_pulses_gives_20_011_2_pulses_per_mile() =>
        Assert.Equal(20011.2, (PulseCount.FromPulses(3790) / Length.FromFeet(1000)).PulsesPerMile, 1e-9);

    // 300 lb/min of salt at 10 gal/ton: 0.15 ton/min x 10 = 1.5 gal/min (arithmetic).
    [Fact]
    public void Salt_at_300_pounds_a_minute_wetted_with_10_gallons_a_ton_takes_one_and_a_half_gallons_a_minute() =>
        Assert.Equal(
            1.5,
            (MassFlow.FromPoundsPerMinute(300) * LiquidPerMass.FromUsGallonsPerShortTon(10)).UsGallonsPerMinute,
            1e-12);

    // 20 g/m2 x 6 m x 40 km/h = 80 kg/min (arithmetic of the European static test).
    [Fact]
    public void A_dose_of_20_grams_6_metres_wide_at_40_km_an_hour_is_80_kilograms_a_minute()
    {
        var driven = Speed.FromKilometresPerHour(40) * Duration.FromMinutes(1);
        var mass = AreaRate.FromGramsPerSquareMetre(20) * (driven * Length.FromMetres(6));
        Assert.Equal(80, mass.Kilograms, 1e-9);
    }

    // 80 lb/ft3 is 1281 kg/m3 (worked out from the exact factors).
    [Fact]
    public void Loose_salt_of_80_pounds_a_cubic_foot_is_1281_kilograms_a_cubic_metre() =>
        Assert.Equal(1281, Density.FromPoundsPerCubicFoot(80).KilogramsPerCubicMetre, 0.5);

    // 18 in x 3 in gate, 10 ft/min belt, 80 lb/ft3: 300 lb/min (arithmetic).
    [Fact]
    public void A_belt_through_a_gate_delivers_width_times_height_times_speed_times_density()
    {
        var opening = Length.FromInches(18) * Length.FromInches(3);
        var perMinute = opening * (Speed.FromFeetPerMinute(10) * Duration.FromMinutes(1));
        Assert.Equal(300, (perMinute * Density.FromPoundsPerCubicFoot(80)).Pounds, 1e-9);
    }

    [Fact]
    public void A_calibration_constant_turned_over_is_mass_per_pulse()
    {
        var constant = PulseCount.FromPulses(4500) / Mass.FromPounds(50);
        Assert.Equal(90, constant.PulsesPerPound, 1e-12);
        Assert.Equal(1.0 / 90, constant.ToMassPerPulse().PoundsPerPulse, 1e-15);
        Assert.Equal(90, constant.ToMassPerPulse().ToPulsesPerMass().PulsesPerPound, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => default(PulsesPerMass).ToMassPerPulse());
    }

    // Figures invented here, worked by hand.
    [Fact]
    public void Pulses_per_turn_and_mass_per_turn_give_pulses_per_mass_both_ways()
    {
        var perTurn = PulsesPerRevolution.FromPulsesPerRevolution(360);
        var massPerTurn = MassPerRevolution.FromPoundsPerRevolution(4);
        Assert.Equal(90, (perTurn / massPerTurn).PulsesPerPound, 1e-12);
        Assert.Equal(1.0 / 90, (massPerTurn / perTurn).PoundsPerPulse, 1e-15);
        Assert.Equal(4, ((massPerTurn / perTurn) * perTurn).PoundsPerRevolution, 1e-12);
    }

    [Fact]
    public void A_rate_along_lanes_gives_back_the_mass()
    {
        var lanes = Length.FromMiles(12.5);
        var rate = LaneRate.Along(Mass.FromPounds(3000), lanes);
        Assert.Equal(240, rate.PoundsPerLaneMile, 1e-9);
        Assert.Equal(3000, rate.MassOn(lanes).Pounds, 1e-9);
        var liquid = LiquidLaneRate.Along(Volume.FromUsGallons(500), lanes);
        Assert.Equal(40, liquid.UsGallonsPerLaneMile, 1e-9);
        Assert.Equal(500, liquid.VolumeOn(lanes).UsGallons, 1e-9);
    }

    // 20/30/40/50/60 gal/lane-mile on 12 ft, worked out from the exact factors.
    [Theory]
    [InlineData(20, 12.862)]
    [InlineData(30, 19.293)]
    [InlineData(40, 25.723)]
    [InlineData(50, 32.154)]
    [InlineData(60, 38.585)]
    public void Direct_liquid_per_lane_mile_becomes_millilitres_per_square_metre(double gallons, double millilitres)
    {
        var width = Length.FromFeet(12);
        var area = LiquidLaneRate.FromUsGallonsPerLaneMile(gallons).ToAreaRate(width);
        Assert.Equal(millilitres, area.MillilitresPerSquareMetre, 0.0005);
        Assert.Equal(gallons, area.ToLaneRate(width).UsGallonsPerLaneMile, 1e-9);
    }

    // New Hampshire practice of 0.5 to 0.75 gal/1000 ft2 is 31.68 to 47.52 gal/lane-mile (arithmetic).
    [Theory]
    [InlineData(0.5, 31.68)]
    [InlineData(0.75, 47.52)]
    public void Gallons_per_thousand_square_feet_become_gallons_per_lane_mile(double perArea, double perLaneMile)
    {
        var rate = LiquidAreaRate.FromUsGallonsPerThousandSquareFeet(perArea);
        Assert.Equal(perLaneMile, rate.ToLaneRate(Length.FromFeet(12)).UsGallonsPerLaneMile, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3.6)]
    public void A_lane_without_width_has_no_area_rate(double metres)
    {
        var width = Length.FromMetres(metres);
        Assert.Throws<ArgumentOutOfRangeException>(() => LaneRate.FromPoundsPerLaneMile(300).ToAreaRate(width));
        Assert.Throws<ArgumentOutOfRangeException>(() => AreaRate.FromGramsPerSquareMetre(20).ToLaneRate(width));
        Assert.Throws<ArgumentOutOfRangeException>(() => LiquidLaneRate.FromSi(1).ToAreaRate(width));
        Assert.Throws<ArgumentOutOfRangeException>(() => LiquidAreaRate.FromSi(1).ToLaneRate(width));
    }
}
