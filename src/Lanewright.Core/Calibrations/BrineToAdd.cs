using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>What has to be added to brine, and what a batch takes; by mass, since volumes do not add up.</summary>
internal static class BrineToAdd
{
    // Water and brine of a batch are reckoned at the temperature of hydrometer scales, 60 °F.
    private const double BatchKelvins = Hydrometer.SixtyFahrenheit;
    private static readonly AddedSalt Pure = new(1, 0);

    internal static double UsualVolume(CalibrationHead head) => head.Units is UnitSystem.Si ? 1 : Units.UsGallon.ToSi(1000);

    internal static void Work(CalibrationReport report, BrineSheet sheet, LiquidState liquid, double target)
    {
        if (TooStrong(report, liquid.Salt, target, liquid.Kelvins)) return;
        var volume = sheet.Volume ?? UsualVolume(report.Head);
        var mass = volume * liquid.Density.Value;
        var strength = liquid.Strength.Value;
        var range = report.Figures.First(f => f.Name == "strength").Expanded ?? 0;
        if (Math.Abs(target - strength) <= range)
            report.Add(LiquidUseFindings.AsGoodAsTarget.At(
                "target", FindingValue.Number("difference", Math.Abs(target - strength), Dimension.Fraction),
                FindingValue.Number("range", range, Dimension.Fraction)));
        if (target < strength)
        {
            // m (w1/w2 - 1), with the sources of strength and density.
            var water = Measured.Linear(
                [liquid.Strength, liquid.Density], [mass / target, volume * ((strength / target) - 1)], Brine.WaterToAdd(mass, strength, target));
            report.Add("water to add", water, Dimension.Mass);
            report.Add("water to add, by volume", water / Solution.WaterDensity(BatchKelvins - 273.15), Dimension.Volume);
        }
        else
        {
            var added = Salt(report, sheet);
            if (Brine.DeliveredToAdd(mass, strength, target, added.Purity, added.MoistureOfDry) is not { } salt)
            {
                report.Add(LiquidUseFindings.SaltTooPoor.At("addedSalt"));
                return;
            }

            var gain = Brine.Gain(target, added.Purity, added.MoistureOfDry);
            report.Add(
                "salt to add, as delivered",
                Measured.Linear([liquid.Strength, liquid.Density], [-mass / gain, volume * (target - strength) / gain], salt), Dimension.Mass);
        }

        report.Say(
            "To bring {volume} of this liquid to {target:percent}; work by mass, for volumes do not add up. Stir, let it stand, and read it again.",
            FindingValue.Number("volume", volume, Dimension.Volume), FindingValue.Number("target", target, Dimension.Fraction));
    }

    internal static void Batch(CalibrationReport report, BrineSheet sheet, double volume, double target)
    {
        if (TooStrong(report, SaltKind.SodiumChloride, target, BatchKelvins)) return;
        var added = Salt(report, sheet);
        var mass = volume * Solution.Density(SaltKind.SodiumChloride, target, BatchKelvins)!.Value;
        var salt = Brine.Delivered(mass * target, added.Purity, added.MoistureOfDry);
        var water = (mass * (1 - target)) - salt.Water;
        if (!(water > 0))
        {
            report.Add(LiquidUseFindings.SaltTooPoor.At("addedSalt"));
            return;
        }

        report.Add("salt for the batch, as delivered", salt.Mass, Dimension.Mass);
        report.Add("water for the batch", water, Dimension.Mass, null, false);
        report.Add("water for the batch, by volume", water / Solution.WaterDensity(BatchKelvins - 273.15), Dimension.Volume);
        report.Say(
            "{volume} of brine of {target:percent} at {temperature}: {pure} of pure salt; the delivered salt brings {damp} of water and {dirt} that does not dissolve.",
            FindingValue.Number("volume", volume, Dimension.Volume), FindingValue.Number("target", target, Dimension.Fraction),
            FindingValue.Number("temperature", BatchKelvins, Dimension.Temperature), FindingValue.Number("pure", mass * target, Dimension.Mass),
            FindingValue.Number("damp", salt.Water, Dimension.Mass), FindingValue.Number("dirt", salt.Insoluble, Dimension.Mass));
        if (sheet.Liquid is null) BrineWork.Freezing(report, SaltKind.SodiumChloride, target, 0);
    }

    private static AddedSalt Salt(CalibrationReport report, BrineSheet sheet)
    {
        if (sheet.Added is null) report.Add(LiquidUseFindings.PureAssumed.At("addedSalt"));
        return sheet.Added ?? Pure;
    }

    private static bool TooStrong(CalibrationReport report, SaltKind salt, double target, double kelvins)
    {
        var most = salt is SaltKind.SodiumChloride
            ? Math.Min(Brine.Solubility(Math.Max(kelvins, 273.15)) ?? 1, Solution.MostStrength(salt))
            : Solution.MostStrength(salt);
        if (target <= most) return false;
        report.Add(LiquidUseFindings.TargetTooStrong.At(
            "target", FindingValue.Number("target", target, Dimension.Fraction), FindingValue.Number("most", most, Dimension.Fraction)));
        return true;
    }
}
