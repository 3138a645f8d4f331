using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Delivery curve of an open-loop spreader: mass per minute at several drive settings, and the setting for a wanted delivery or
/// rate (docs/method/delivery-curve.md).
/// </summary>
public static class DeliveryCurve
{
    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "delivery-curve", "Delivery curve", "What does each drive setting deliver, and which setting delivers what is wanted?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var catches = Catches.Ask(fields, head);
        var trim = fields.Group("trim", "The trim made before the drops.", TrimOf, Need.Optional);
        var wanted = fields.List("wanted", "Deliveries or rates to find the setting for.", (f, i) => WantedOf(f, i, head), 0, 40);
        var runs = fields.List("runs", "The runs, each at one drive setting.", (f, i) => RunOf(f, i, head), 1, 500);
        return catches is null || runs.Count == 0 ? null : report => new DeliveryCurveWork(report, catches, trim, wanted).Do(runs);
    }

    private static CurveTrim? TrimOf(Fields fields)
    {
        var turns = Setting(fields, "turnsFrom", "Lowest setting at which the shaft or chain just turns.", Need.Optional);
        var gains = Setting(fields, "gainsUpTo", "Highest setting that still gains speed.", Need.Optional);
        return new(turns?.Si, gains?.Si);
    }

    private static CurveRun? RunOf(Fields fields, int index, CalibrationHead head)
    {
        var id = fields.Text("id", "Name of the run; its place in the list when left out.", Need.Optional, 40)
            ?? CalibrationText.Number(index + 1);
        var setting = Setting(
            fields, "setting", "Drive setting as a share of full; a number without a unit is percent (step 4 of 10 is 40).", Need.Required);
        var time = fields.Quantity<Duration>(
            "time", "How long it ran; seconds when no unit is given.", Need.Required, Units.Second, Duration.FromSi(0.1),
            Duration.FromSi(86_400));
        var engine = fields.Quantity<RotationalSpeed>(
            "engineSpeed", "Engine speed; rpm when no unit is given.", Need.Optional, Units.RevolutionPerMinute,
            RotationalSpeed.FromSi(0), RotationalSpeed.FromSi(200));
        var oil = fields.Choice("oil", "State of the hydraulic oil.", SheetWords.OilStates, Need.Optional);
        var note = fields.Notes("note", "Anything else.");
        var caught = RunReader.CaughtIn(fields, id, head.Bare);
        if (setting is not { } s || time is not { } t || caught is not var (what, filled)) return null;
        return new(s.Si, new()
        {
            Id = id,
            Time = t,
            EngineSpeed = engine,
            Oil = oil ?? OilState.NotStated,
            Filled = filled,
            Note = note ?? "",
            Catch = what,
        });
    }

    private static WantedDelivery? WantedOf(Fields fields, int index, CalibrationHead head)
    {
        var length = head.Units is UnitSystem.Si ? Units.Metre : head.Units is UnitSystem.UnitedStates ? Units.Foot : null;
        var name = fields.Text("name", "What to call it; its place in the list when left out.", Need.Optional, 60)
            ?? "wanted " + CalibrationText.Number(index + 1);
        var rate = fields.Amount(
            "rate", "A delivery (lb/min, kg/min) or a rate (lb/lane-mile, kg/lane-km, g/m²).",
            [Dimension.MassFlow, Dimension.LaneRate, Dimension.AreaRate]);
        var speed = fields.Quantity<Speed>(
            "speed", "Road speed, for a rate.", Need.Optional, null, Speed.FromSi(0.1), Speed.FromSi(60));
        var lanes = fields.Number("lanes", "Lanes that one pass spreads, for a rate by lane; 1 when left out.", Need.Optional, 0.1, 20);
        var width = fields.Quantity<Length>(
            "width", "Width that one pass spreads, for a rate by area.", Need.Optional, length, Length.FromSi(0.5), Length.FromSi(50), true);
        if (rate is not { } r) return null;
        if (r.Unit.Dimension is Dimension.MassFlow) return new(name, r.Si);
        var missing = speed is null ? "speed" : r.Unit.Dimension is Dimension.AreaRate && width is null ? "width" : null;
        if (missing is not null)
        {
            fields.Report(DeliveryFindings.WantedNeeds, missing, FindingValue.Text("what", missing));
            return null;
        }

        return new(name, r.Si * speed!.Value.Si * (r.Unit.Dimension is Dimension.AreaRate ? width!.Value.Si : lanes ?? 1));
    }

    private static Fraction? Setting(Fields fields, string name, string doc, Need need) => fields.Quantity<Fraction>(
        name, doc, need, Units.Percent, Fraction.FromSi(0), Fraction.FromSi(1));
}

/// <summary>The trim before the drops, as shares of full drive.</summary>
internal sealed record CurveTrim(double? TurnsFrom, double? GainsUpTo);

/// <summary>A run at a drive setting.</summary>
internal sealed record CurveRun(double Setting, Run Run);

/// <summary>A delivery to find the setting for, kg/s.</summary>
internal sealed record WantedDelivery(string Name, double Flow);
