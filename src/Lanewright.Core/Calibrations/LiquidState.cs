using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>A liquid as the sheet's readings give it, with error sources.</summary>
/// <param name="Salt">What is dissolved.</param>
/// <param name="Strength">Mass fraction.</param>
/// <param name="Density">At <paramref name="Kelvins"/>, kg/m³.</param>
/// <param name="Kelvins">Its temperature, K.</param>
internal sealed record LiquidState(SaltKind Salt, Measured Strength, Measured Density, double Kelvins)
{
    // Without a temperature the density is unknown by what it changes over these, a cold and a warm yard.
    private const double Cold = 273.15;
    private const double Warm = 298.15;
    private const double DefaultThermometer = 1;
    private static readonly double SqrtThree = Math.Sqrt(3);

    /// <summary>Works the readings out; null, with findings that stop, when they do not give a liquid.</summary>
    internal static LiquidState? Of(LiquidSheet sheet, ICollection<Finding> findings)
    {
        if (sheet.Temperature is not { } kelvins)
        {
            findings.Add(LiquidFindings.NoTemperature.At(
                $"{sheet.Field}.temperature", Degrees("cold", Cold), Degrees("warm", Warm),
                FindingValue.Number("error", Change(sheet), Dimension.Fraction)));
            return null;
        }

        var readAt = sheet.ReadAt ?? kelvins;
        foreach (var (name, t) in new[] { ("temperature", kelvins), ("readAt", readAt) })
        {
            if (t >= Solution.Coldest && t <= Solution.Warmest && (sheet.Salt is not SaltKind.None || t >= Water.Coldest)) continue;
            findings.Add(LiquidFindings.TemperatureOutside.At(
                $"{sheet.Field}.{name}", Degrees("temperature", t),
                Degrees("cold", sheet.Salt is SaltKind.None ? Water.Coldest : Solution.Coldest), Degrees("warm", Solution.Warmest)));
            return null;
        }

        var thermometer = (sheet.TemperaturePlusMinus ?? DefaultThermometer) / SqrtThree;
        if (sheet.TemperaturePlusMinus is null) findings.Add(LiquidFindings.ThermometerAssumed.At($"{sheet.Field}.temperaturePlusMinus"));
        var caughtAt = Measured.Of(kelvins, thermometer, ErrorSource.Rectangular($"{sheet.Field}:temperature", "temperature of the liquid"));
        var seenAt = sheet.ReadAt is null
            ? caughtAt
            : Measured.Of(readAt, thermometer, ErrorSource.Rectangular($"{sheet.Field}:readAt", "temperature of the liquid"));
        var state = Work(sheet, caughtAt, seenAt, findings);
        if (state is null) return null;
        if (Solution.IsExtrapolated(sheet.Salt, kelvins))
            findings.Add(LiquidFindings.Extrapolated.At(
                $"{sheet.Field}.temperature", Degrees("temperature", kelvins),
                FindingValue.Number("range", Solution.PlusMinus(sheet.Salt, kelvins), Dimension.Density)));
        if (sheet.Salt is SaltKind.SodiumChloride && Brine.Solubility(Math.Max(kelvins, 273.15)) is { } most && state.Strength.Value > most + 0.001)
            findings.Add(LiquidFindings.AboveSolubility.At(
                sheet.Field, FindingValue.Number("strength", state.Strength.Value, Dimension.Fraction),
                FindingValue.Number("most", most, Dimension.Fraction)));
        return state;
    }

    private static LiquidState? Work(LiquidSheet sheet, Measured caughtAt, Measured seenAt, ICollection<Finding> findings)
    {
        var salt = sheet.Salt;
        if (sheet.Strength is { } stated)
        {
            if (Solution.Density(salt, stated, caughtAt.Value) is null) return OutOfRange(sheet, caughtAt.Value, findings);
            var strength = Reading(sheet, stated, 0.005, "the strength", "strengthPlusMinus", findings);
            return new(salt, strength, Modelled(salt, strength, caughtAt, sheet.Field), caughtAt.Value);
        }

        Measured density;
        if (sheet.Density is { } known)
        {
            density = Reading(sheet, known, 0.002 * known, "the density", "densityPlusMinus", findings);
        }
        else if (sheet.SpecificGravity is { } gravity)
        {
            density = Floating(sheet, Reading(sheet, gravity, 0.001, "the hydrometer", "readingPlusMinus", findings), seenAt);
        }
        else if (sheet.Salometer is { } degrees)
        {
            var d = Reading(sheet, degrees, 0.5, "the salometer", "readingPlusMinus", findings);
            if (sheet.Hydrometer.SpecificGravity(degrees, sheet.FullSalometer) is not { } sg) return OutOfRange(sheet, seenAt.Value, findings);
            var slope = Solution.ByStrength(salt, degrees / 100 * sheet.FullSalometer, sheet.Hydrometer.ScaleKelvins)
                * sheet.FullSalometer / 100 / sheet.Hydrometer.Water;
            density = Floating(sheet, d.Map(sg, slope), seenAt);
        }
        else
        {
            // Plain water.
            return new(salt, 0, Modelled(salt, 0, caughtAt, sheet.Field), caughtAt.Value);
        }

        if (salt is SaltKind.None) return new(salt, 0, density, caughtAt.Value);
        if (Solution.Strength(salt, density.Value, seenAt.Value) is not { } found) return OutOfRange(sheet, seenAt.Value, findings);
        var byStrength = Solution.ByStrength(salt, found, seenAt.Value);
        var byTemperature = Solution.ByTemperature(salt, found, seenAt.Value);
        var inverted = Measured.Linear(
            [density, seenAt, Model(salt, seenAt.Value, sheet.Field)], [1 / byStrength, -byTemperature / byStrength, -1 / byStrength], found);
        // What was measured at the temperature of the catch is its density; the model only carries it to another one.
        var caught = sheet.ReadAt is null || sheet.Density is not null
            ? density
            : Modelled(salt, inverted, caughtAt, sheet.Field);
        return new(salt, inverted, caught, caughtAt.Value);
    }

    private static Measured Floating(LiquidSheet sheet, Measured gravity, Measured at)
    {
        var density = sheet.Hydrometer.Density(gravity.Value, at.Value);
        return Measured.Linear([gravity, at], [density / gravity.Value, -density * Hydrometer.GlassExpansion], density);
    }

    private static Measured Modelled(SaltKind salt, Measured strength, Measured at, string field)
    {
        var density = Solution.Density(salt, strength.Value, at.Value)!.Value;
        var byStrength = salt is SaltKind.None ? 0 : Solution.ByStrength(salt, strength.Value, at.Value);
        return Measured.Linear(
            [strength, at, Model(salt, at.Value, field)],
            [byStrength, Solution.ByTemperature(salt, strength.Value, at.Value), 1], density);
    }

    // One source whatever the temperature: a table that is too high at one is too high beside it.
    private static Measured Model(SaltKind salt, double kelvins, string field) => Measured.Of(
        0, Solution.PlusMinus(salt, kelvins) / SqrtThree, ErrorSource.Rectangular($"{field}:model", "tables of density"));

    private static Measured Reading(
        LiquidSheet sheet, double value, double assumed, string what, string field, ICollection<Finding> findings)
    {
        if (sheet.PlusMinus is null)
            findings.Add(LiquidFindings.ReadingAssumed.At(
                $"{sheet.Field}.{field}", FindingValue.Said("what", what), FindingValue.Text("field", field),
                sheet.Density is not null ? FindingValue.Number("assumed", assumed, Dimension.Density)
                : what switch
                {
                    "the strength" => FindingValue.Text("assumed", "0.5 %"),
                    "the hydrometer" => FindingValue.Text("assumed", "0.001"),
                    _ => FindingValue.Said("assumed", "0.5 degrees"),
                }));
        return Measured.Of(
            value, (sheet.PlusMinus ?? assumed) / SqrtThree, ErrorSource.Rectangular($"{sheet.Field}:reading", "strength or density of the liquid"));
    }

    private static LiquidState? OutOfRange(LiquidSheet sheet, double kelvins, ICollection<Finding> findings)
    {
        var most = Solution.MostStrength(sheet.Salt);
        findings.Add(LiquidFindings.OutOfRange.At(
            sheet.Field, FindingValue.Number("most", most, Dimension.Fraction), Degrees("temperature", kelvins),
            FindingValue.Number("low", Solution.Density(sheet.Salt, 0, kelvins) ?? double.NaN, Dimension.Density),
            FindingValue.Number("high", Solution.Density(sheet.Salt, most, kelvins) ?? double.NaN, Dimension.Density)));
        return null;
    }

    // By how much the density changes between cold and warm, as a share; of water when the strength cannot be found.
    private static double Change(LiquidSheet sheet)
    {
        var middle = (Cold + Warm) / 2;
        var strength = sheet.Strength
            ?? (sheet.Salometer is { } degrees ? degrees / 100 * sheet.FullSalometer
            : sheet.SpecificGravity is { } g ? Solution.Strength(sheet.Salt, g * sheet.Hydrometer.Water, sheet.Hydrometer.ScaleKelvins)
            : sheet.Density is { } d ? Solution.Strength(sheet.Salt, d, middle)
            : 0) ?? 0;
        var cold = Solution.Density(sheet.Salt, strength, Cold) ?? Solution.Density(SaltKind.None, 0, Cold)!.Value;
        var warm = Solution.Density(sheet.Salt, strength, Warm) ?? Solution.Density(SaltKind.None, 0, Warm)!.Value;
        return (cold - warm) / warm;
    }

    private static FindingValue Degrees(string name, double kelvins) => FindingValue.Number(name, kelvins, Dimension.Temperature);
}
