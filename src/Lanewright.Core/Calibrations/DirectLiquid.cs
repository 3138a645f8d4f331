using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Direct liquid: what a flow puts on the road, or what flow a wanted rate needs (docs/method/direct-liquid.md).</summary>
public static class DirectLiquid
{
    private const double NarrowLane = 3.2;
    private const double WideLane = 4;
    private const double DefaultSpeed = 0.02;
    private static readonly double SqrtThree = Math.Sqrt(3);

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "direct-liquid", "Direct liquid", "How much liquid comes on a lane mile or a square metre, and what flow does a wanted rate need?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var liquid = fields.Group("liquid", "The liquid; needed for salt by area.", f => LiquidReader.Read(f, head), Need.Optional);
        var flow = LiquidFlow.Read(fields, head, liquid);
        var speed = fields.Quantity<Speed>(
            "speed", "Speed of the truck.", Need.Required, LiquidWords.BareSpeed(head), Speed.FromSi(0.1), Speed.FromSi(60), true);
        var speedRange = SheetReader.Share(fields, "speedPlusMinus", "How far off the speed may be, plus or minus, as a share.", 0, 0.5);
        var lanes = fields.Number("lanes", "Lanes treated at once.", Need.Required, 0.25, 8);
        var width = fields.Quantity<Length>(
            "laneWidth", "Width of one lane.", Need.Required,
            head.Units is UnitSystem.UnitedStates ? Units.Foot : head.Units is UnitSystem.Si ? Units.Metre : null, Length.FromSi(1.5), Length.FromSi(8), true);
        var wanted = fields.Amount(
            "wanted", "Wanted: liquid on a lane (gal/lane-mile), liquid by area (mL/m²), or salt by area (g/m²).",
            [Dimension.LiquidLaneRate, Dimension.LiquidAreaRate, Dimension.AreaRate], null, Need.Optional);
        if (flow is null || speed is not { } v || lanes is not { } n || width is not { } b) return null;
        if (!flow.IsKnown && wanted is null)
        {
            fields.Report(LiquidUseFindings.NothingAsked, null);
            return null;
        }

        if (wanted is { } w && !(w.Si > 0))
        {
            fields.Report(LiquidUseFindings.WantedImpossible, "wanted", FindingValue.Number("wanted", w.Si, w.Unit.Dimension));
            return null;
        }

        if (wanted?.Unit.Dimension is Dimension.AreaRate && liquid is not { Salt: not Liquids.SaltKind.None })
        {
            fields.Report(LiquidUseFindings.NeedsLiquid, "liquid");
            return null;
        }

        return report => Work(report, new(liquid, flow, v.Si, speedRange?.Si, n, b.Si, wanted));
    }

    private static void Work(CalibrationReport report, DirectSheet sheet)
    {
        LiquidState? liquid = null;
        if (sheet.Liquid is not null)
        {
            List<Finding> found = [];
            liquid = LiquidState.Of(sheet.Liquid, found);
            report.Add(found);
            if (liquid is null) return;
        }

        if (sheet.LaneWidth is < NarrowLane or > WideLane)
            report.Add(LiquidUseFindings.LaneWidthUnusual.At("laneWidth", FindingValue.Number("width", sheet.LaneWidth, Dimension.Length)));
        if (sheet.SpeedPlusMinus is null)
            report.Add(LiquidFindings.ReadingAssumed.At(
                "speedPlusMinus", FindingValue.Said("what", "the speed"), FindingValue.Text("assumed", "2 %"), FindingValue.Text("field", "speedPlusMinus")));
        var speed = Measured.Of(
            sheet.Speed, sheet.Speed * (sheet.SpeedPlusMinus ?? DefaultSpeed) / SqrtThree, ErrorSource.Rectangular("speed", "speed of the truck"));
        var alongLanes = speed * sheet.Lanes;
        var flow = sheet.Flow.Work(report, liquid);
        if (flow is not null)
        {
            var rate = flow.Value / alongLanes;
            flow.Show(report, "liquid on a lane", rate, Dimension.LiquidLaneRate);
            flow.Show(
                report, "the same", rate, Dimension.LiquidLaneRate,
                report.Head.Units is UnitSystem.Si ? Units.UsGallonPerLaneMile : Units.LitrePerLaneKilometre, false);
            flow.Show(report, "liquid by area", rate / sheet.LaneWidth, Dimension.LiquidAreaRate, Units.MillilitrePerSquareMetre, false);
            if (liquid is { Strength.Value: > 0 })
            {
                var salt = rate * liquid.Density * liquid.Strength;
                flow.Show(report, "salt by area", salt / sheet.LaneWidth, Dimension.AreaRate, Units.GramPerSquareMetre);
                flow.Show(report, "salt on a lane", salt, Dimension.LaneRate, null, false);
            }

            flow.Show(report, "flow of the liquid", flow.Value, Dimension.VolumeFlow, null, false);
        }

        report.Say(
            "Amounts by area are for lanes of {width}; lanes covered at once: {lanes}, at {speed}.",
            FindingValue.Number("width", sheet.LaneWidth, Dimension.Length), FindingValue.Number("lanes", sheet.Lanes, Dimension.Fraction),
            FindingValue.Number("speed", sheet.Speed, Dimension.Speed));
        if (sheet.Wanted is not { } wanted) return;
        var perLane = wanted.Unit.Dimension switch
        {
            Dimension.LiquidLaneRate => (Measured)wanted.Si,
            Dimension.LiquidAreaRate => wanted.Si * sheet.LaneWidth,
            _ => wanted.Si * sheet.LaneWidth / (liquid!.Density * liquid.Strength),
        };
        LiquidFlow.Compare(report, flow, perLane * alongLanes);
    }

    private sealed record DirectSheet(
        LiquidSheet? Liquid, LiquidFlow Flow, double Speed, double? SpeedPlusMinus, double Lanes, double LaneWidth, Amount? Wanted);
}
