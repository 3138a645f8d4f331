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
        double pounds, double kilograms, double gramsOnTwelveFeet, double gramsOnThreeAndAHalfMetres, double poundsPerArea)
    {
        var rate = LaneRate.FromPoundsPerLaneMile(pounds);
        Assert.Equal(kilograms, rate.KilogramsPerLaneKilometre, 0.005);
        Assert.Equal(gramsOnTwelveFeet, rate.ToAreaRate(TwelveFeet).GramsPerSquareMetre, 0.0005);
        Assert.Equal(gramsOnThreeAndAHalfMetres, rate.ToAreaRate(Length.FromMetres(3.5)).GramsPerSquareMetre, 0.0005);
        Assert.Equal(poundsPerArea, rate.ToAreaRate(TwelveFeet).PoundsPerThousandSquareFeet, 0.0005);
    }
}
