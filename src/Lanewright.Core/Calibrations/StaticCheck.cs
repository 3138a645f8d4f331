using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Static check by simulated speed: what dose, width, speed and time ask for against what was weighed, salt and brine apart
/// (docs/method/static-check.md).
/// </summary>
public static class StaticCheck
{
    private static readonly Word<bool>[] Bases =
    [
        new("total", false, "Salt and brine together, as European doses of pre-wetted salt are stated."),
        new("dry", true, "The dry salt alone; the brine comes on top."),
    ];

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "static-check", "Static check by simulated speed", "Does the spreader deliver the dose it is set to, at a speed that is simulated?",
        Ask);

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var catches = Catches.Ask(fields, head);
        var tolerance = SheetReader.Share(
            fields, "tolerance", "How far off the yard lets it be, plus or minus; without it there is no verdict.", 0.001, 0.5);
        var brine = fields.Group("brine", "The brine that pre-wets; leave out for dry salt.", BrineOf, Need.Optional);
        var runs = fields.List("runs", "The runs: at least one at each point of dose, width and speed.", (f, i) => RunOf(f, i, head), 1, 300);
        if (catches is null || runs.Count == 0) return null;
        return report => new StaticCheckWork(report, catches, tolerance?.Si, brine).Do(runs);
    }

    private static CheckBrine? BrineOf(Fields fields)
    {
        var share = SheetReader.Share(
            fields, "share", "Set share of brine by mass of salt and brine together.", 0.001, 0.9, Need.Required);
        var dose = fields.Choice("doseIs", "What the dose counts; salt and brine together when left out.", Bases, Need.Optional);
        var density = fields.Quantity<Density>(
            "density", "Density of the brine, when it was caught by volume.", Need.Optional, null, Density.FromSi(950), Density.FromSi(1400));
        var concentration = SheetReader.Share(fields, "concentration", "Share of salt by mass of the brine.", 0.001, 0.5);
        return share is { } s ? new(s.Si, dose, density?.Si, concentration?.Si) : null;
    }

    private static CheckRun? RunOf(Fields fields, int index, CalibrationHead head)
    {
        var length = head.Units is UnitSystem.Si ? Units.Metre : head.Units is UnitSystem.UnitedStates ? Units.Foot : null;
        var id = fields.Text("id", "Name of the run; its place in the list when left out.", Need.Optional, 40)
            ?? CalibrationText.Number(index + 1);
        var dose = fields.Amount("dose", "The dose set (g/m², lb/lane-mile).", [Dimension.AreaRate, Dimension.LaneRate]);
        var width = fields.Quantity<Length>(
            "width", "The width set, for a dose by area.", Need.Optional, length, Length.FromSi(0.5), Length.FromSi(50), true);
        var lanes = fields.Number("lanes", "Lanes set, for a dose by lane; 1 when left out.", Need.Optional, 0.1, 20);
        var speed = fields.Quantity<Speed>("speed", "The simulated speed.", Need.Required, null, Speed.FromSi(0.1), Speed.FromSi(60));
        var time = fields.Quantity<Duration>(
            "time", "How long it ran; seconds when no unit is given.", Need.Required, Units.Second, Duration.FromSi(0.1),
            Duration.FromSi(86_400));
        var brine = fields.Group("brine", "The brine caught in the same time.", Caught, Need.Optional);
        var note = fields.Notes("note", "Anything else.");
        var caught = RunReader.CaughtIn(fields, id, head.Bare);
        if (dose is not { } d || speed is not { } v || time is not { } t || caught is not var (what, filled)) return null;
        var byArea = d.Unit.Dimension is Dimension.AreaRate;
        if (byArea && width is null)
        {
            fields.Report(DeliveryFindings.WantedNeeds, "width", FindingValue.Text("what", "width"));
            return null;
        }

        var across = byArea ? width!.Value.Si : lanes ?? 1;
        return new(d, across, v.Si, brine, new() { Id = id, Time = t, Filled = filled, Note = note ?? "", Catch = what });
    }

    private static CaughtBrine? Caught(Fields fields)
    {
        var amount = fields.Amount("amount", "Mass or volume caught.", [Dimension.Mass, Dimension.Volume]);
        var plusMinus = SheetReader.Share(
            fields, "plusMinus", "How far off it may be, as a share, plus or minus; 1 % when left out.", 0.0001, 0.2);
        return amount is { Si: > 0 } a ? new(a.Si, a.Unit.Dimension is Dimension.Volume, plusMinus?.Si) : null;
    }
}

/// <summary>What is set for the brine.</summary>
internal sealed record CheckBrine(double Share, bool? DoseIsDry, double? Density, double? Concentration);

/// <summary>Brine caught in a run, kg or m³.</summary>
internal sealed record CaughtBrine(double Amount, bool ByVolume, double? PlusMinus);

/// <summary>A run at a point of dose, width (or lanes) and speed.</summary>
internal sealed record CheckRun(Text.Amount Dose, double Across, double Speed, CaughtBrine? Brine, Run Run);
