using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

/// <summary>Conversions against figures printed elsewhere, or worked out by hand from the exact factors.</summary>
public sealed class HandbookConversionTests
{
    private static readonly Length TwelveFeet = Length.FromFeet(12);

    // Worked out from the exact factors: lb 0.45359237 kg, mile 1609.344 m, foot 0.3048 m.
    [Theory]
    [InlineData(1, 12 * 0.3048, 0.07705852)]
    [InlineData(300, 12 * 0.3048, 23.11756)]
    [InlineData(240, 12 * 0.3048, 18.49404)]
    [InlineData(1, 3.6, 0.07829145)]
    [InlineData(1, 11 * 0.3048, 0.0840638)]
    [InlineData(1, 3.5, 0.0805284)]
    [InlineData(1, 3.75, 0.0751598)]
    public void Pounds_per_lane_mile_need_the_lane_width_to_become_grams_per_square_metre(
        double poundsPerLaneMile, double widthInMetres, double expected)
    {
        var rate = LaneRate.FromPoundsPerLaneMile(poundsPerLaneMile);
        var grams = rate.ToAreaRate(Length.FromMetres(widthInMetres)).GramsPerSquareMetre;
        Assert.Equal(expected, grams, expected * 1e-6);
    }

    // Worked out from the exact factors; columns: lb/lane-mile, kg/lane-km, g/m2 on 12 ft, g/m2 on 3.5 m, lb/1000 ft2.
    [Theory]
    [InlineData(100, 28.18, 7.706, 8.053, 1.578)]
    [InlineData(150, 42.28, 11.559, 12.079, 2.367)]
    [InlineData(200, 56.37, 15.412, 16.106, 3.157)]
    [InlineData(250, 70.46, 19.265, 20.132, 3.946)]
    [InlineData(300, 84.55, 23.118, 24.159, 4.735)]
    [InlineData(400, 112.74, 30.823, 32.211, 6.313)]
    public void A_lane_rate_has_these_other_names(
        double pounds,
        double kilograms,
        double gramsOnTwelveFeet,
        double gramsOnThreeAndAHalfMetres,
        double poundsPerArea)
    {
        var rate = LaneRate.FromPoundsPerLaneMile(pounds);
        Assert.Equal(kilograms, rate.KilogramsPerLaneKilometre, 0.005);
        Assert.Equal(gramsOnTwelveFeet, rate.ToAreaRate(TwelveFeet).GramsPerSquareMetre, 0.0005);
        Assert.Equal(gramsOnThreeAndAHalfMetres, rate.ToAreaRate(Length.FromMetres(3.5)).GramsPerSquareMetre, 0.0005);
        Assert.Equal(poundsPerArea, rate.ToAreaRate(TwelveFeet).PoundsPerThousandSquareFeet, 0.0005);
    }

    // Worked out from the exact factors.
    [Theory]
    [InlineData(5, 64.9)]
    [InlineData(8, 103.8)]
    [InlineData(10, 129.8)]
    [InlineData(15, 194.7)]
    [InlineData(20, 259.5)]
    [InlineData(30, 389.3)]
    [InlineData(40, 519.1)]
    public void Grams_per_square_metre_become_pounds_per_twelve_foot_lane_mile(double grams, double pounds) =>
        Assert.Equal(
            pounds, AreaRate.FromGramsPerSquareMetre(grams).ToLaneRate(TwelveFeet).PoundsPerLaneMile, 0.05);

    [Fact]
    public void One_pound_per_lane_mile_is_0_281_849_23_kilograms_per_lane_kilometre() =>
        Assert.Equal(0.28184923, LaneRate.FromPoundsPerLaneMile(1).KilogramsPerLaneKilometre, 5e-9);

    // The 2012 Minnesota winter parking-lot and road field handbook prints its charts per two-lane mile.
    [Fact]
    public void A_rate_per_two_lane_mile_is_half_as_much_on_each_lane() =>
        Assert.Equal(LaneRate.FromPoundsPerLaneMile(150), LaneRate.FromPoundsPerTwoLaneMile(300));

    // Worked out from the exact factors; the contract band of 8 to 10 gal/ton in L/t.
    [Theory]
    [InlineData(1, 4.172702)]
    [InlineData(8, 33.38162)]
    [InlineData(10, 41.72702)]
    [InlineData(50, 208.6351)]
    public void Gallons_per_ton_become_litres_per_tonne(double gallonsPerTon, double litresPerTonne) =>
        Assert.Equal(
            litresPerTonne,
            LiquidPerMass.FromUsGallonsPerShortTon(gallonsPerTon).LitresPerTonne,
            litresPerTonne * 1e-6);

    // Minnesota Pollution Control Agency, "Material conversions for winter parking lot and sidewalk maintenance",
    // lb/lane-mile (12 ft) to lb/1000 ft2, printed to one decimal. 225 gives 3.551 and is printed as cut off, 3.5.
    [Theory]
    [InlineData(25, 0.4)]
    [InlineData(50, 0.8)]
    [InlineData(75, 1.2)]
    [InlineData(100, 1.6)]
    [InlineData(125, 2.0)]
    [InlineData(150, 2.4)]
    [InlineData(175, 2.8)]
    [InlineData(200, 3.2)]
    [InlineData(250, 3.9)]
    [InlineData(275, 4.3)]
    [InlineData(300, 4.7)]
    [InlineData(350, 5.5)]
    public void The_MPCA_table_from_lane_miles_is_met(double perLaneMile, double perThousandSquareFeet) =>
        Assert.Equal(
            perThousandSquareFeet,
            LaneRate.FromPoundsPerLaneMile(perLaneMile).ToAreaRate(TwelveFeet).PoundsPerThousandSquareFeet,
            0.05 + 1e-9);

    [Fact]
    public void The_MPCA_table_cuts_225_off_instead_of_rounding_it()
    {
        var perArea = LaneRate.FromPoundsPerLaneMile(225).ToAreaRate(TwelveFeet).PoundsPerThousandSquareFeet;
        Assert.Equal(3.551, perArea, 0.0005);
        Assert.Equal(3.5, Math.Truncate(perArea * 10) / 10);
    }

    // The same table the other way, printed whole. 2.5 gives 158.4 and is printed rounded up, 159.
    [Theory]
    [InlineData(0.5, 32)]
    [InlineData(0.75, 48)]
    [InlineData(1, 63)]
    [InlineData(1.25, 79)]
    [InlineData(1.5, 95)]
    [InlineData(1.75, 111)]
    [InlineData(2, 127)]
    [InlineData(2.25, 143)]
    [InlineData(2.75, 174)]
    [InlineData(3, 190)]
    [InlineData(3.25, 206)]
    [InlineData(5, 317)]
    public void The_MPCA_table_to_lane_miles_is_met(double perThousandSquareFeet, double perLaneMile) =>
        Assert.Equal(
            perLaneMile,
            AreaRate.FromPoundsPerThousandSquareFeet(perThousandSquareFeet).ToLaneRate(TwelveFeet).PoundsPerLaneMile,
            0.5 + 1e-9);

    [Fact]
    public void The_MPCA_table_prints_159_where_2_5_gives_158_4() =>
        Assert.Equal(
            158.4, AreaRate.FromPoundsPerThousandSquareFeet(2.5).ToLaneRate(TwelveFeet).PoundsPerLaneMile, 1e-9);

    // The same source: 1.08 short tons of salt to the cubic yard. Its rows for 10 and 20 yd3 hold; its row for 5 yd3
    // says 6.4 tons, which no density between those rows gives: a misprint for 5.4.
    [Theory]
    [InlineData(10, 10.8, true)]
    [InlineData(20, 21.6, true)]
    [InlineData(5, 5.4, true)]
    [InlineData(5, 6.4, false)]
    public void The_MPCA_row_of_5_cubic_yards_to_6_4_tons_is_a_misprint(double yards, double tons, bool agrees)
    {
        var density = Mass.FromShortTons(1.08) / Volume.FromCubicYards(1);
        var mass = Volume.FromCubicYards(yards) * density;
        Assert.Equal(agrees, Math.Abs(mass.ShortTons - tons) < 0.05);
    }
}
