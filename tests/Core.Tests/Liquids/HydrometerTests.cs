using Lanewright.Core.Liquids;

namespace Lanewright.Core.Tests.Liquids;

/// <summary>Hydrometer and salometer.</summary>
public sealed class HydrometerTests
{
    private static readonly Hydrometer Usual = new(Hydrometer.SixtyFahrenheit);

    // Worked out apart from this code with the model of 2009 and 25e-6 per °C for glass (from memory). Brine of 23.3 %.
    [Theory]
    [InlineData(0.233, 20, 1.1884)]
    [InlineData(0.233, 32, 1.1857)]
    [InlineData(0.233, 40, 1.1836)]
    [InlineData(0.233, 50, 1.1809)]
    [InlineData(0.233, 60, 1.1782)]
    [InlineData(0.233, 70, 1.1753)]
    [InlineData(0.233, 80, 1.1725)]
    [InlineData(0.20, 32, 1.1578)]
    [InlineData(0.20, 60, 1.1514)]
    [InlineData(0.25, 80, 1.1862)]
    public void It_shows_more_in_the_cold_and_the_strength_comes_back(double strength, double fahrenheit, double expected)
    {
        var kelvins = (fahrenheit + 459.67) * 5 / 9;
        var shown = Usual.Reading(Solution.Density(SaltKind.SodiumChloride, strength, kelvins)!.Value, kelvins);
        Assert.Equal(expected, shown, 6e-5);
        Assert.Equal(strength, Solution.Strength(SaltKind.SodiumChloride, Usual.Density(shown, kelvins), kelvins)!.Value, 1e-9);
    }

    // Read as if it stood at 60 °F, the same brine seems this strong.
    [Theory]
    [InlineData(32, 0.2421)]
    [InlineData(40, 0.2397)]
    [InlineData(50, 0.2364)]
    [InlineData(70, 0.2295)]
    [InlineData(80, 0.2260)]
    public void Without_the_temperature_the_strength_would_be_wrong(double fahrenheit, double expected)
    {
        var kelvins = (fahrenheit + 459.67) * 5 / 9;
        var shown = Usual.Reading(Solution.Density(SaltKind.SodiumChloride, 0.233, kelvins)!.Value, kelvins);
        var naive = Solution.Strength(SaltKind.SodiumChloride, Usual.Density(shown, Hydrometer.SixtyFahrenheit), Hydrometer.SixtyFahrenheit)!.Value;
        Assert.Equal(expected, naive, 6e-5);
    }

    // 100 degrees are 26.395 % (spotidoc.com doc 221243), so 23.3 % are 88.27 degrees and 70 degrees 18.48 %; SG 60/60 of 26.395 %: 1.2037.
    [Theory]
    [InlineData(88.2743, 0.233)]
    [InlineData(70, 0.184765)]
    [InlineData(100, 0.26395)]
    public void Degrees_of_a_salometer_are_percent_of_saturation(double degrees, double strength)
    {
        var gravity = Usual.SpecificGravity(degrees, Brine.FullSalometer)!.Value;
        Assert.Equal(
            strength, Solution.Strength(SaltKind.SodiumChloride, Usual.Density(gravity, Hydrometer.SixtyFahrenheit), Hydrometer.SixtyFahrenheit)!.Value, 1e-6);
        if (degrees == 100) Assert.Equal(1.2037, gravity, 6e-5);
    }

    [Fact]
    public void Another_constant_of_the_salometer_gives_another_strength() =>
        Assert.Equal(87.9, 100 * 0.233 / 0.265, 0.05);
}
