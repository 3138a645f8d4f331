using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Liquids;

/// <summary>Making, strengthening and thinning brine, by mass.</summary>
public sealed class BrineTests
{
    private const double Pound = 0.45359237;
    private const double Gallon = 0.003785411784;
    private const double WaterPerGallon = 8.3372;

    private static double PoundsPerGallon(double strength) =>
        Solution.Density(SaltKind.SodiumChloride, strength, Hydrometer.SixtyFahrenheit)!.Value * Gallon / Pound;

    // Chou 1987, worked out apart from this code.
    [Theory]
    [InlineData(0, 0.26218)]
    [InlineData(10, 0.26301)]
    [InlineData(15.56, 0.26356)]
    [InlineData(20, 0.26404)]
    [InlineData(25, 0.26464)]
    public void Water_holds_so_much_salt(double t, double expected) =>
        Assert.Equal(expected, Brine.Solubility(t + 273.15)!.Value, 6e-6);

    [Fact]
    public void Nothing_is_said_of_solubility_below_freezing() => Assert.Null(Brine.Solubility(272));

    // The table of brine making at 60 °F, worked out apart from this code with water of 8.3372 lb/gal.
    [Theory]
    [InlineData(0.20, 9.5995, 1.9199, 0.9211, 2.0843)]
    [InlineData(0.233, 9.8227, 2.2887, 0.9037, 2.5327)]
    [InlineData(0.25, 9.9391, 2.4848, 0.8941, 2.7791)]
    [InlineData(0.26395, 10.0354, 2.6488, 0.8860, 2.9897)]
    public void A_gallon_of_brine_weighs_and_holds(double strength, double brine, double salt, double water, double perGallonWater)
    {
        var weight = PoundsPerGallon(strength);
        Assert.Equal(brine, weight, 6e-5);
        Assert.Equal(salt, weight * strength, 6e-5);
        Assert.Equal(water, weight * (1 - strength) / WaterPerGallon, 6e-5);
        Assert.Equal(perGallonWater, strength / (1 - strength) * WaterPerGallon, 6e-5);
    }

    [Fact]
    public void A_thousand_gallons_are_strengthened_and_thinned()
    {
        // +413.0 lb NaCl from 20 % to 23.3 %; +725.2 lb = 87.0 gal of water from 25 % to 23.3 %.
        Assert.Equal(413.0, Brine.DeliveredToAdd(1000 * PoundsPerGallon(0.20), 0.20, 0.233, purity: 1, moistureOfDry: 0)!.Value, 0.05);
        var water = Brine.WaterToAdd(1000 * PoundsPerGallon(0.25), 0.25, 0.233);
        Assert.Equal(725.2, water, 0.05);
        Assert.Equal(87.0, water / WaterPerGallon, 0.05);
    }

    [Fact]
    public void Impure_and_damp_salt_needs_more_and_brings_water()
    {
        // 2288.7 lb NaCl from salt of 95 % with 2 % water of the dry mass: 2457.3 lb, with 48.2 lb water and 120.5 lb insolubles.
        var salt = Brine.Delivered(2288.7, 0.95, 0.02);
        Assert.Equal(2457.3, salt.Mass, 0.05);
        Assert.Equal(48.2, salt.Water, 0.05);
        Assert.Equal(120.5, salt.Insoluble, 0.05);
    }

    [Fact]
    public void Units_agree_with_the_trades() =>
        Assert.Equal(PoundsPerGallon(0.233), Density.FromSi(Solution.Density(SaltKind.SodiumChloride, 0.233, Hydrometer.SixtyFahrenheit)!.Value).PoundsPerUsGallon, 1e-9);
}
