using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Pre-wet: how much liquid goes with the dry material, or what flow a wanted ratio needs (docs/method/pre-wet.md).</summary>
public static class PreWet
{
    private const double DefaultDry = 0.03;
    private static readonly double SqrtThree = Math.Sqrt(3);

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "pre-wet", "Pre-wet", "How much liquid goes with a ton of dry material, and what flow does a wanted ratio need?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var liquid = fields.Group("liquid", "The liquid; needed for shares by mass.", f => LiquidReader.Read(f, head), Need.Optional);
        var flow = LiquidFlow.Read(fields, head, liquid);
        var dry = fields.Group("dry", "The dry material that is delivered meanwhile.", f => Dry(f, head));
        var wanted = fields.Amount(
            "wanted", "Wanted: liquid for dry material, such as 10 gal/ton, or the liquid's share of the total mass (FS 30 is 30 %).",
            [Dimension.LiquidPerMass, Dimension.Fraction], null, Need.Optional);
        var dose = fields.Quantity<AreaRate>(
            "dose", "A dose on the road, dry and liquid together, to be split.", Need.Optional, null, AreaRate.FromSi(1e-5), AreaRate.FromSi(1));
        if (flow is null || dry is null) return null;
        if (!flow.IsKnown && wanted is null)
        {
            fields.Report(LiquidUseFindings.NothingAsked, null);
            return null;
        }

        if (wanted is { } w && !(w.Si > 0 && (w.Unit.Dimension is not Dimension.Fraction || w.Si < 1)))
        {
            fields.Report(
                LiquidUseFindings.WantedImpossible, "wanted", FindingValue.Number("wanted", w.Si, w.Unit.Dimension));
            return null;
        }

        if (wanted?.Unit.Dimension is Dimension.Fraction && liquid is null)
        {
            fields.Report(LiquidUseFindings.NeedsLiquid, "liquid");
            return null;
        }

        return report => Work(report, new(liquid, flow, dry, wanted, dose?.Si));
    }

    private static DryDelivery? Dry(Fields fields, CalibrationHead head)
    {
        var delivery = fields.Quantity<MassFlow>(
            "delivery", "Mass delivered in a time.", Need.Optional,
            head.Units is UnitSystem.UnitedStates ? Units.PoundPerMinute : head.Units is UnitSystem.Si ? Units.KilogramPerMinute : null,
            MassFlow.FromSi(1e-4), MassFlow.FromSi(1000), true);
        var rate = fields.Quantity<LaneRate>(
            "rate", "Or the rate on a lane, with the speed.", Need.Optional,
            head.Units is UnitSystem.UnitedStates ? Units.PoundPerLaneMile : head.Units is UnitSystem.Si ? Units.KilogramPerLaneKilometre : null,
            LaneRate.FromSi(1e-5), LaneRate.FromSi(10), true);
        var speed = fields.Quantity<Speed>(
            "speed", "Speed that goes with the rate.", Need.Optional, LiquidWords.BareSpeed(head), Speed.FromSi(0.1), Speed.FromSi(60), true);
        var lanes = fields.Number("lanes", "Lanes treated at once; 1 when left out.", Need.Optional, 0.25, 8);
        var plusMinus = SheetReader.Share(fields, "plusMinus", "How far off the delivery may be, plus or minus, as a share.", 0, 0.5);
        if (delivery is { } d) return new(d.Si, plusMinus?.Si);
        if (rate is { } r && speed is { } v) return new(r.Si * v.Si * (lanes ?? 1), plusMinus?.Si);
        fields.Report(LiquidUseFindings.NoDry, null);
        return null;
    }

    private static void Work(CalibrationReport report, PreWetSheet sheet)
    {
        LiquidState? liquid = null;
        if (sheet.Liquid is not null)
        {
            List<Finding> found = [];
            liquid = LiquidState.Of(sheet.Liquid, found);
            report.Add(found);
            if (liquid is null) return;
        }

        if (sheet.Dry.PlusMinus is null)
            report.Add(LiquidFindings.ReadingAssumed.At(
                "dry.plusMinus", FindingValue.Said("what", "the dry delivery"), FindingValue.Text("assumed", "3 %"), FindingValue.Text("field", "plusMinus")));
        var dry = Measured.Of(
            sheet.Dry.Delivery, sheet.Dry.Delivery * (sheet.Dry.PlusMinus ?? DefaultDry) / SqrtThree, ErrorSource.Rectangular("dry", "dry delivery"));
        var flow = sheet.Flow.Work(report, liquid);
        var share = Ratio(report, liquid, flow, dry);
        if (sheet.Wanted is { } wanted)
        {
            var perMass = wanted.Unit.Dimension is Dimension.LiquidPerMass
                ? (Measured)wanted.Si
                : wanted.Si / (1 - wanted.Si) / liquid!.Density;
            LiquidFlow.Compare(report, flow, dry * perMass);
            if (share is null && liquid is not null) share = ShareOf(perMass * liquid.Density);
        }

        if (share is { } s && liquid is not null) Split(report, sheet, s.Value, liquid.Strength.Value);
    }

    private static Measured? Ratio(CalibrationReport report, LiquidState? liquid, KnownFlow? flow, Measured dry)
    {
        if (flow is null) return null;
        var ratio = flow.Value / dry;
        flow.Show(report, "liquid for dry material", ratio, Dimension.LiquidPerMass);
        flow.Show(
            report, "the same", ratio, Dimension.LiquidPerMass, report.Head.Units is UnitSystem.Si ? Units.UsGallonPerShortTon : Units.LitrePerTonne, false);
        flow.Show(report, "flow of the liquid", flow.Value, Dimension.VolumeFlow, null, false);
        if (liquid is null) return null;
        var byMass = ratio * liquid.Density;
        var share = ShareOf(byMass);
        flow.Show(report, "share of the liquid in the total mass", share, Dimension.Fraction);
        flow.Show(report, "liquid by mass of the dry material", byMass, Dimension.Fraction, null, false);
        return share;
    }

    private static Measured ShareOf(Measured byMass)
    {
        var below = 1 + byMass.Value;
        return byMass.Map(byMass.Value / below, 1 / (below * below));
    }

    private static void Split(CalibrationReport report, PreWetSheet sheet, double share, double strength)
    {
        report.Say(
            "FS counts the liquid in the total: FS {fs:2} is {share:percent} liquid and {rest:percent} dry material by mass. Taken as dry material "
            + "alone, a dose puts {more:percent} too much on the road.",
            FindingValue.Number("fs", share * 100, Dimension.Fraction), FindingValue.Number("share", share, Dimension.Fraction),
            FindingValue.Number("rest", 1 - share, Dimension.Fraction), FindingValue.Number("more", share / (1 - share), Dimension.Fraction));
        report.Add("salt in the total mass, dry material taken as salt", 1 - share + (share * strength), Dimension.Fraction, null, false);
        if (sheet.Dose is not { } dose) return;
        report.Add("dry part of the dose", dose * (1 - share), Dimension.AreaRate, Units.GramPerSquareMetre, false);
        report.Add("liquid part of the dose", dose * share, Dimension.AreaRate, Units.GramPerSquareMetre, false);
        report.Add("salt in the dose", dose * (1 - share + (share * strength)), Dimension.AreaRate, Units.GramPerSquareMetre, false);
    }

    private sealed record DryDelivery(double Delivery, double? PlusMinus);

    private sealed record PreWetSheet(LiquidSheet? Liquid, LiquidFlow Flow, DryDelivery Dry, Amount? Wanted, double? Dose);
}
