using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Works out a tank of brine.</summary>
internal static class BrineWork
{
    private static readonly double SqrtThree = Math.Sqrt(3);

    internal static void Work(CalibrationReport report, BrineSheet sheet)
    {
        if (sheet.Liquid is { } seen)
        {
            if (State(report, seen) is not { } liquid) return;
            Describe(report, liquid, seen.FullSalometer);
            if (sheet.Target is { } target && sheet.Batch is null && liquid.Salt is not SaltKind.None) BrineToAdd.Work(report, sheet, liquid, target);
            if (sheet.Blend is { } blend) Pour(report, sheet, liquid, blend);
        }

        if (sheet.Batch is { } batch && sheet.Target is { } wanted) BrineToAdd.Batch(report, sheet, batch, wanted);
    }

    private static LiquidState? State(CalibrationReport report, LiquidSheet sheet)
    {
        List<Finding> found = [];
        var state = LiquidState.Of(sheet, found);
        report.Add(found);
        return state;
    }

    private static void Describe(CalibrationReport report, LiquidState liquid, double fullSalometer)
    {
        if (liquid.Salt is SaltKind.None)
        {
            report.Add("density", liquid.Density, Dimension.Density, LiquidWords.Density(report.Head));
            return;
        }

        var strength = report.Add("strength", liquid.Strength, Dimension.Fraction);
        Freezing(report, liquid.Salt, liquid.Strength, strength.Expanded ?? 0);
        report.Add("density", liquid.Density, Dimension.Density, LiquidWords.Density(report.Head), false);
        report.Add("salt in a volume of brine", liquid.Density * liquid.Strength, Dimension.Density, LiquidWords.Density(report.Head), false);
        if (liquid.Salt is SaltKind.SodiumChloride)
            report.Say(
                "That is {degrees:3} degrees of a salometer with {full:5} % at 100 degrees.",
                FindingValue.Number("degrees", 100 * liquid.Strength.Value / fullSalometer, Dimension.Fraction),
                FindingValue.Number("full", 100 * fullSalometer, Dimension.Fraction));
    }

    internal static void Freezing(CalibrationReport report, SaltKind salt, Measured strength, double range)
    {
        if (FreezingPoint.Of(salt, strength.Value) is not { } point)
        {
            report.Add(LiquidUseFindings.FreezingNotKnown.At("liquid"));
        }
        else
        {
            var step = Math.Max(1e-4, range / 2);
            var low = FreezingPoint.Of(salt, strength.Value - step) ?? point;
            var high = FreezingPoint.Of(salt, strength.Value + step) ?? point;
            var slope = (high.Kelvins - low.Kelvins) / ((low == point || high == point ? 1 : 2) * step);
            var value = strength.Map(point.Kelvins, low == point && high == point ? 0 : slope)
                .With(ErrorSource.Rectangular("freezing:sources", "sources of the freezing point disagree"), point.PlusMinus / SqrtThree);
            report.Add("begins to freeze at", value, Dimension.Temperature);
            report.Say(
                "For this strength the sources put the beginning of freezing between {cold:3} and {warm:3}. It says nothing of the road, where the liquid is thinned.",
                FindingValue.Number("cold", point.Kelvins - point.PlusMinus, Dimension.Temperature),
                FindingValue.Number("warm", point.Kelvins + point.PlusMinus, Dimension.Temperature));
        }

        if (FreezingPoint.Eutectic(salt) is { } lowest && salt is SaltKind.MagnesiumChloride && strength.Value > 0.22)
            report.Add(LiquidUseFindings.PastLowest.At("liquid", FindingValue.Number("strength", lowest.Strength, Dimension.Fraction)));
    }

    private static void Pour(CalibrationReport report, BrineSheet sheet, LiquidState first, BlendIn blend)
    {
        if (State(report, blend.Liquid) is not { } second) return;
        var volume = sheet.Volume ?? BrineToAdd.UsualVolume(report.Head);
        var a = volume * first.Density;
        var b = blend.Volume * second.Density;
        var total = a + b;
        var one = a * first.Strength / total;
        var two = b * second.Strength / total;
        if (first.Salt == second.Salt)
        {
            report.Add("strength of the blend", one + two, Dimension.Fraction);
            Freezing(report, first.Salt, one + two, 0);
        }
        else
        {
            if (one.Value > 0) report.Add($"{(Phrase)LiquidWords.Name(first.Salt)} in the blend", one, Dimension.Fraction);
            if (two.Value > 0) report.Add($"{(Phrase)LiquidWords.Name(second.Salt)} in the blend", two, Dimension.Fraction);
        }

        var density = total / (volume + blend.Volume);
        report.Add("density of the blend, volumes added up", density, Dimension.Density, LiquidWords.Density(report.Head), false);
        if (first.Salt == second.Salt || Solution.Density([(first.Salt, one.Value), (second.Salt, two.Value)], first.Kelvins) is not { } model) return;
        report.Add("density of the blend by the model", model, Dimension.Density, LiquidWords.Density(report.Head), false);
    }
}
