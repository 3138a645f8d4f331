using Lanewright.Core.Quantities;
using UnitsNet;
using Ours = Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

/// <summary>
/// The factors against UnitsNet 5.75.1, where it has the unit. Its lb/min is left out: it is 2.7e-6 off, for it is kept
/// with a rounded reciprocal.
/// </summary>
public sealed class SecondOpinionTests
{
    private static readonly Dictionary<Ours.Unit, double> Theirs = new()
    {
        [Units.Percent] = Ratio.FromPercent(1).DecimalFractions,
        [Units.PerMille] = Ratio.FromPartsPerThousand(1).DecimalFractions,
        [Units.Gram] = UnitsNet.Mass.FromGrams(1).Kilograms,
        [Units.Milligram] = UnitsNet.Mass.FromMilligrams(1).Kilograms,
        [Units.Tonne] = UnitsNet.Mass.FromTonnes(1).Kilograms,
        [Units.Pound] = UnitsNet.Mass.FromPounds(1).Kilograms,
        [Units.Ounce] = UnitsNet.Mass.FromOunces(1).Kilograms,
        [Units.ShortTon] = UnitsNet.Mass.FromShortTons(1).Kilograms,
        [Units.LongTon] = UnitsNet.Mass.FromLongTons(1).Kilograms,
        [Units.Inch] = UnitsNet.Length.FromInches(1).Meters,
        [Units.Foot] = UnitsNet.Length.FromFeet(1).Meters,
        [Units.Yard] = UnitsNet.Length.FromYards(1).Meters,
        [Units.Mile] = UnitsNet.Length.FromMiles(1).Meters,
        [Units.SquareFoot] = UnitsNet.Area.FromSquareFeet(1).SquareMeters,
        [Units.Litre] = UnitsNet.Volume.FromLiters(1).CubicMeters,
        [Units.Millilitre] = UnitsNet.Volume.FromMilliliters(1).CubicMeters,
        [Units.CubicFoot] = UnitsNet.Volume.FromCubicFeet(1).CubicMeters,
        [Units.UsGallon] = UnitsNet.Volume.FromUsGallons(1).CubicMeters,
        [Units.ImperialGallon] = UnitsNet.Volume.FromImperialGallons(1).CubicMeters,
        [Units.Minute] = UnitsNet.Duration.FromMinutes(1).Seconds,
        [Units.Hour] = UnitsNet.Duration.FromHours(1).Seconds,
        [Units.KilometrePerHour] = UnitsNet.Speed.FromKilometersPerHour(1).MetersPerSecond,
        [Units.MilePerHour] = UnitsNet.Speed.FromMilesPerHour(1).MetersPerSecond,
        [Units.FootPerMinute] = UnitsNet.Speed.FromFeetPerMinute(1).MetersPerSecond,
        [Units.RevolutionPerMinute] = UnitsNet.RotationalSpeed.FromRevolutionsPerMinute(1).RevolutionsPerSecond,
        [Units.GramPerMillilitre] = UnitsNet.Density.FromGramsPerMilliliter(1).KilogramsPerCubicMeter,
        [Units.KilogramPerMinute] = UnitsNet.MassFlow.FromKilogramsPerMinute(1).KilogramsPerSecond,
        [Units.KilogramPerHour] = UnitsNet.MassFlow.FromKilogramsPerHour(1).KilogramsPerSecond,
        [Units.GramPerSecond] = UnitsNet.MassFlow.FromGramsPerSecond(1).KilogramsPerSecond,
        [Units.PoundPerSecond] = UnitsNet.MassFlow.FromPoundsPerSecond(1).KilogramsPerSecond,
        [Units.TonnePerHour] = UnitsNet.MassFlow.FromTonnesPerHour(1).KilogramsPerSecond,
        [Units.LitrePerMinute] = UnitsNet.VolumeFlow.FromLitersPerMinute(1).CubicMetersPerSecond,
        [Units.UsGallonPerMinute] = UnitsNet.VolumeFlow.FromUsGallonsPerMinute(1).CubicMetersPerSecond,
        [Units.CubicMetrePerHour] = UnitsNet.VolumeFlow.FromCubicMetersPerHour(1).CubicMetersPerSecond,
        [Units.GramPerSquareMetre] = AreaDensity.FromGramsPerSquareMeter(1).KilogramsPerSquareMeter,
    };

    // UnitsNet carries these with a rounded factor; the tolerance is the size of its rounding.
    private static readonly Dictionary<Ours.Unit, (double Si, double Rounding)> TheirsRounded = new()
    {
        [Units.CubicYard] = (UnitsNet.Volume.FromCubicYards(1).CubicMeters, 1e-10),
        [Units.UsFluidOunce] = (UnitsNet.Volume.FromUsOunces(1).CubicMeters, 1e-11),
        [Units.ImperialFluidOunce] = (UnitsNet.Volume.FromImperialOunces(1).CubicMeters, 1e-11),
        [Units.PoundPerCubicFoot] = (UnitsNet.Density.FromPoundsPerCubicFoot(1).KilogramsPerCubicMeter, 1e-8),
        [Units.PoundPerUsGallon] = (UnitsNet.Density.FromPoundsPerUSGallon(1).KilogramsPerCubicMeter, 1e-8),
        [Units.PoundPerImperialGallon] = (UnitsNet.Density.FromPoundsPerImperialGallon(1).KilogramsPerCubicMeter, 1e-6),
        [Units.PoundPerHour] = (UnitsNet.MassFlow.FromPoundsPerHour(1).KilogramsPerSecond, 1e-6),
        [Units.ShortTonPerHour] = (UnitsNet.MassFlow.FromShortTonsPerHour(1).KilogramsPerSecond, 1e-10),
        [Units.ImperialGallonPerMinute] = (UnitsNet.VolumeFlow.FromUkGallonsPerMinute(1).CubicMetersPerSecond, 1e-5),
    };

    public static TheoryData<string> Symbols => [.. Theirs.Keys.Select(unit => unit.Symbol)];

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Both_agree_on_the_factor(string symbol)
    {
        var unit = Units.Find(symbol)!;
        Assert.Equal(Theirs[unit], unit.ToSi(1), Theirs[unit] * 1e-14);
    }

    public static TheoryData<string> RoundedSymbols => [.. TheirsRounded.Keys.Select(unit => unit.Symbol)];

    [Theory]
    [MemberData(nameof(RoundedSymbols))]
    public void Both_agree_as_far_as_their_factor_is_rounded(string symbol)
    {
        var unit = Units.Find(symbol)!;
        var (si, rounding) = TheirsRounded[unit];
        Assert.Equal(si, unit.ToSi(1), si * rounding);
    }

    [Theory]
    [InlineData(-40)]
    [InlineData(0)]
    [InlineData(14.5)]
    [InlineData(100)]
    public void Both_agree_on_temperatures(double degrees)
    {
        Assert.Equal(
            UnitsNet.Temperature.FromDegreesFahrenheit(degrees).Kelvins, Units.DegreeFahrenheit.ToSi(degrees), 1e-10);
        Assert.Equal(
            UnitsNet.Temperature.FromDegreesCelsius(degrees).Kelvins, Units.DegreeCelsius.ToSi(degrees), 1e-10);
    }
}
