using Lanewright.Core.Exchange;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Brine: its strength from hydrometer or salometer, where it freezes, what to add to reach a target, a batch, a blend
/// (docs/method/brine.md).
/// </summary>
public static class BrineTank
{
    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "brine", "Brine", "How strong is it, when does it freeze, and what has to be added?", Ask);

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var unit = LiquidWords.BareVolume(head);
        var liquid = fields.Group("liquid", "The liquid in the tank.", f => LiquidReader.Read(f, head), Need.Optional);
        var volume = fields.Quantity<Volume>(
            "volume", "How much is in the tank; 1,000 gal or 1 m³ when left out.", Need.Optional, unit, Volume.FromSi(1e-4), Volume.FromSi(1e5), true);
        var target = SheetReader.Share(fields, "target", "Wanted strength.", 0.01, 0.6);
        var batch = fields.Quantity<Volume>(
            "batch", "How much salt brine of the target strength to make from water and salt.", Need.Optional, unit, Volume.FromSi(1e-4),
            Volume.FromSi(1e5), true);
        var added = fields.Group("addedSalt", "The salt that is added, as delivered; pure and dry when left out.", Added, Need.Optional);
        var blend = fields.Group("blend", "Another liquid that is poured in.", f => Blend(f, head), Need.Optional);
        if (liquid is null && (batch is null || target is null))
        {
            fields.Report(LiquidUseFindings.BrineNothing, null);
            return null;
        }

        return report => BrineWork.Work(report, new(liquid, volume?.Si, target?.Si, batch?.Si, added, blend));
    }

    private static AddedSalt? Added(Fields fields)
    {
        var purity = SheetReader.Share(fields, "purity", "Share of pure salt in the dry mass; 100 % when left out.", 0.5, 1);
        var moisture = SheetReader.Share(fields, "moisture", "Share of water by mass; none when left out.", 0, 0.3);
        var dry = fields.Choice("of", "Share of which mass the moisture is; of the dry mass when left out.", SheetWords.MoistureBases, Need.Optional);
        var share = moisture?.Si ?? 0;
        return new(purity?.Si ?? 1, dry ?? true ? share : share / (1 - share));
    }

    private static BlendIn? Blend(Fields fields, CalibrationHead head)
    {
        var liquid = fields.Group("liquid", "The other liquid.", f => LiquidReader.Read(f, head));
        var volume = fields.Quantity<Volume>(
            "volume", "How much of it.", Need.Required, LiquidWords.BareVolume(head), Volume.FromSi(1e-4), Volume.FromSi(1e5), true);
        return liquid is not null && volume is { } v ? new(liquid, v.Si) : null;
    }
}

/// <summary>Salt as it is delivered.</summary>
/// <param name="Purity">Share of pure salt in the dry mass.</param>
/// <param name="MoistureOfDry">Water by mass of the dry salt.</param>
internal sealed record AddedSalt(double Purity, double MoistureOfDry);

/// <summary>Another liquid that is poured in, m³.</summary>
internal sealed record BlendIn(LiquidSheet Liquid, double Volume);

/// <summary>The sheet of a tank of brine, SI.</summary>
internal sealed record BrineSheet(
    LiquidSheet? Liquid, double? Volume, double? Target, double? Batch, AddedSalt? Added, BlendIn? Blend);
