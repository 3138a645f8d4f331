using Lanewright.Core.Exchange;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>Words and units of the sheets about liquids.</summary>
internal static class LiquidWords
{
    internal static readonly Word<SaltKind>[] Salts =
    [
        new("sodium-chloride", SaltKind.SodiumChloride, "Sodium chloride: salt brine."),
        new("calcium-chloride", SaltKind.CalciumChloride, "Calcium chloride."),
        new("magnesium-chloride", SaltKind.MagnesiumChloride, "Magnesium chloride."),
        new("potassium-acetate", SaltKind.PotassiumAcetate, "Potassium acetate."),
        new("water", SaltKind.None, "Plain water."),
    ];

    internal static readonly Word<bool>[] Flows =
        [new("low", false, "At low flow."), new("high", true, "At high flow.")];

    internal static string Name(SaltKind salt) => salt switch
    {
        SaltKind.SodiumChloride => "sodium chloride",
        SaltKind.CalciumChloride => "calcium chloride",
        SaltKind.MagnesiumChloride => "magnesium chloride",
        SaltKind.PotassiumAcetate => "potassium acetate",
        _ => "water",
    };

    internal static Unit? BareTemperature(CalibrationHead head) => Bare(head, Units.DegreeFahrenheit, Units.DegreeCelsius);

    internal static Unit? BareVolume(CalibrationHead head) => Bare(head, Units.UsGallon, Units.Litre);

    internal static Unit? BareFlow(CalibrationHead head) => Bare(head, Units.UsGallonPerMinute, Units.LitrePerMinute);

    internal static Unit? BareSpeed(CalibrationHead head) => Bare(head, Units.MilePerHour, Units.KilometrePerHour);

    /// <summary>The unit in which the trade weighs liquids: pounds to the gallon, or the reader's.</summary>
    internal static Unit? Density(CalibrationHead head) => head.Units is UnitSystem.Si ? null : Units.PoundPerUsGallon;

    private static Unit? Bare(CalibrationHead head, Unit us, Unit si) => head.Units switch
    {
        UnitSystem.UnitedStates => us,
        UnitSystem.Si => si,
        _ => null,
    };
}
