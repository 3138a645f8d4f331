using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>What a sheet says of a liquid; strengths as mass fractions, temperatures K, the rest in SI.</summary>
internal sealed record LiquidSheet
{
    internal required string Field { get; init; }

    internal required SaltKind Salt { get; init; }

    internal double? Strength { get; init; }

    internal double? SpecificGravity { get; init; }

    internal double? Salometer { get; init; }

    internal double? Density { get; init; }

    /// <summary>How far off the one that is given may be, in its own unit.</summary>
    internal double? PlusMinus { get; init; }

    internal Hydrometer Hydrometer { get; init; } = new(Hydrometer.SixtyFahrenheit);

    internal double FullSalometer { get; init; } = Brine.FullSalometer;

    internal double? Temperature { get; init; }

    internal double? ReadAt { get; init; }

    internal double? TemperaturePlusMinus { get; init; }
}

/// <summary>Reads what a sheet says of a liquid.</summary>
internal static class LiquidReader
{
    internal static LiquidSheet? Read(Fields fields, CalibrationHead head)
    {
        var bare = LiquidWords.BareTemperature(head);
        var salt = fields.Choice("salt", "What is dissolved.", LiquidWords.Salts);
        var strength = SheetReader.Share(fields, "strength", "Strength by mass, such as 23.3 %.", 0, 0.6);
        var strengthRange = SheetReader.Share(
            fields, "strengthPlusMinus", "How far off the strength may be, plus or minus, in percent of the liquid.", 0, 0.1);
        var gravity = fields.Number(
            "specificGravity", "Reading of a hydrometer marked in specific gravity, such as 1.178.", Need.Optional, 0.98, 1.6);
        var salometer = fields.Number("salometer", "Reading of a salometer, degrees.", Need.Optional, 0, 110);
        var readingRange = fields.Number(
            "readingPlusMinus", "How far off the hydrometer or salometer may be, plus or minus, in its own marks.", Need.Optional, 0, 20);
        var readAt = fields.Quantity<Temperature>(
            "readAt", "Temperature of the liquid when the hydrometer was read, if it was another.", Need.Optional, bare, null, null, true);
        var scale = fields.Quantity<Temperature>(
            "scaleTemperature", "Temperature that the hydrometer is marked for; 60 °F when left out.", Need.Optional, bare,
            Temperature.FromDegreesCelsius(0), Temperature.FromDegreesCelsius(40), true);
        var full = SheetReader.Share(
            fields, "salometerFull", "Strength at 100 degrees of the salometer; 26.395 % when left out.", 0.24, 0.28);
        var density = fields.Quantity<Density>(
            "density", "Density of the liquid as it was measured, at its temperature.", Need.Optional, null, Density.FromSi(900), Density.FromSi(1600));
        var densityRange = fields.Quantity<Density>(
            "densityPlusMinus", "How far off the density may be, plus or minus.", Need.Optional, null, Density.FromSi(1e-6), Density.FromSi(100));
        var temperature = fields.Quantity<Temperature>(
            "temperature", "Temperature of the liquid when it was caught.", Need.Optional, bare, Temperature.FromDegreesCelsius(-60),
            Temperature.FromDegreesCelsius(90), true);
        var temperatureRange = fields.Number(
            "temperaturePlusMinus",
            "How far off the thermometer may be, plus or minus: degrees Fahrenheit in a sheet with units us, otherwise Celsius.",
            Need.Optional, 0, 20);
        if (salt is not { } s) return null;

        List<string> ways = [];
        if (strength is not null) ways.Add("strength");
        if (gravity is not null) ways.Add("specificGravity");
        if (salometer is not null) ways.Add("salometer");
        if (density is not null) ways.Add("density");
        if (ways.Count > 1)
        {
            fields.Report(
                LiquidFindings.SeveralWays, ways[1], FindingValue.Number("count", ways.Count, Dimension.Fraction),
                FindingValue.Text("ways", string.Join(", ", ways)));
            return null;
        }

        if (ways.Count == 0 && s is not SaltKind.None)
        {
            fields.Report(LiquidFindings.NotKnown, null);
            return null;
        }

        if (salometer is not null && s is not SaltKind.SodiumChloride)
        {
            fields.Report(LiquidFindings.SalometerOtherSalt, "salometer");
            return null;
        }

        return new()
        {
            Field = fields.Path,
            Salt = s,
            Strength = strength?.Si,
            SpecificGravity = gravity,
            Salometer = salometer,
            Density = density?.Si,
            PlusMinus = strength is not null ? strengthRange?.Si : density is not null ? densityRange?.Si : readingRange,
            Hydrometer = new(scale?.Si ?? Hydrometer.SixtyFahrenheit),
            FullSalometer = full?.Si ?? Brine.FullSalometer,
            Temperature = temperature?.Si,
            ReadAt = readAt?.Si,
            TemperaturePlusMinus = temperatureRange is { } r ? (head.Units is UnitSystem.UnitedStates ? Units.DegreeFahrenheit : Units.Kelvin).DifferenceToSi(r) : null,
        };
    }
}
