using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Gate table: mass for each turn or pulse at several gate openings, the line between them, and what the geometry of auger or
/// chain leads to expect (docs/method/gate-table.md).
/// </summary>
public static class GateTable
{
    private static readonly Word<bool>[] Forms =
    [
        new("revolution", false, "Mass for each turn of the metering shaft."),
        new("pulse", true, "Mass for each sensor pulse."),
    ];

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "gate-table", "Gate table", "What does the spreader deliver for each turn or pulse at each gate opening?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var catches = Catches.Ask(fields, head, turns: true);
        var pulse = fields.Choice("per", "What was counted; turns when left out.", Forms, Need.Optional) ?? false;
        var perTurn = fields.Number(
            "pulsesPerTurn", "Pulses for one turn of the shaft, to hold pulses against the geometry.", Need.Optional, 0.1, 10_000);
        var auger = fields.Group("auger", "Sizes of the auger, as an expectation.", f => AugerOf(f, head), Need.Optional);
        var chain = fields.Group("chain", "Sizes of the chain or belt, as an expectation.", f => ChainOf(f, head), Need.Optional);
        var wanted = fields.List("wanted", "Openings to read the delivery off for.", (f, _) => WantedOf(f, head), 0, 40);
        var runs = fields.List("runs", "The runs, each at one gate opening.", (f, i) => RunOf(f, i, head), 1, 300);
        if (catches is null || runs.Count == 0) return null;
        return report => new GateTableWork(report, catches, new(pulse, perTurn, auger, chain)).Do(runs, wanted);
    }

    private static GateRun? RunOf(Fields fields, int index, CalibrationHead head)
    {
        var id = fields.Text("id", "Name of the run; its place in the list when left out.", Need.Optional, 40)
            ?? CalibrationText.Number(index + 1);
        var gate = Gate(fields, "Gate opening.", head);
        var revolutions = fields.Quantity<RevolutionCount>(
            "revolutions", "Counted turns of the metering shaft.", Need.Optional, Units.Revolution, RevolutionCount.FromSi(0),
            RevolutionCount.FromSi(1e12));
        var pulses = fields.Quantity<PulseCount>(
            "pulses", "Counted sensor pulses.", Need.Optional, Units.Pulse, PulseCount.FromSi(0), PulseCount.FromSi(1e12));
        var note = fields.Notes("note", "Anything else.");
        var caught = RunReader.CaughtIn(fields, id, head.Bare);
        if (gate is not { } g || caught is not var (what, filled)) return null;
        return new(g, new() { Id = id, Revolutions = revolutions, Pulses = pulses, Filled = filled, Note = note ?? "", Catch = what });
    }

    private static WantedOpening? WantedOf(Fields fields, CalibrationHead head) =>
        Gate(fields, "Gate opening.", head) is { } g ? new(g) : null;

    private static Amount? Gate(Fields fields, string doc, CalibrationHead head)
    {
        var gate = fields.Quantity<Length>(
            "gate", doc, Need.Required, head.Bare.Opening, Length.FromSi(0.001), Length.FromSi(2), true);
        var unit = head.Units is UnitSystem.UnitedStates ? Units.Inch : Units.Millimetre;
        return gate is { } g ? new(unit.FromSi(g.Si), unit) : null;
    }

    private static AugerSizes? AugerOf(Fields fields, CalibrationHead head)
    {
        var diameter = Size(fields, "diameter", "Diameter of the flight.", head);
        var shaft = Size(fields, "shaft", "Diameter of the shaft.", head);
        var pitch = Size(fields, "pitch", "Advance in one turn.", head);
        var fill = SheetReader.Share(fields, "fill", "Share of the swept space that is filled; 1 (flooded) when left out.", 0.01, 1);
        return diameter is { } d && shaft is { } s && pitch is { } p && d.Si > s.Si ? new(d, s, p, fill?.Si ?? 1) : null;
    }

    private static ChainSizes? ChainOf(Fields fields, CalibrationHead head)
    {
        var width = Size(fields, "width", "Width of the bed under the gate.", head);
        var travel = Size(fields, "travel", "How far the chain or belt moves in one turn of the shaft.", head);
        var fill = SheetReader.Share(fields, "fill", "Share of the opening that is filled; 1 when left out.", 0.01, 1);
        return width is { } w && travel is { } t ? new(w, t, fill?.Si ?? 1) : null;
    }

    private static Length? Size(Fields fields, string name, string doc, CalibrationHead head) => fields.Quantity<Length>(
        name, doc, Need.Required, head.Bare.Opening, Length.FromSi(0.001), Length.FromSi(5), true);
}

/// <summary>A run at a gate opening, as typed.</summary>
internal sealed record GateRun(Amount Gate, Run Run);

/// <summary>An opening to read the delivery off for.</summary>
internal sealed record WantedOpening(Amount Gate);

/// <summary>What was counted, and the sizes that make an expectation.</summary>
internal sealed record GateGeometry(bool PerPulse, double? PulsesPerTurn, AugerSizes? Auger, ChainSizes? Chain)
{
    /// <summary>Expected mass by turn or pulse at an opening, kg; null when something it needs was not stated.</summary>
    internal double? At(double gate, Density? density)
    {
        if (density is not { } d || (PerPulse && PulsesPerTurn is null)) return null;
        // A chain's advance in one turn as a speed of one turn a second.
        var turn = Chain is { } c ? Metering.Gate(c.Width, Length.FromSi(gate), Speed.FromSi(c.Travel.Si), d, c.Fill).Si
            : Auger is { } a ? Metering.Auger(a.Diameter, a.Shaft, a.Pitch, d, a.Fill).Si
            : (double?)null;
        return PerPulse ? turn / PulsesPerTurn : turn;
    }
}

/// <summary>An auger.</summary>
internal sealed record AugerSizes(Length Diameter, Length Shaft, Length Pitch, double Fill);

/// <summary>A chain or belt.</summary>
internal sealed record ChainSizes(Length Width, Length Travel, double Fill);
