using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>The constant of a flow meter, from caught mass or volume (docs/method/liquid-meter.md).</summary>
public static class LiquidMeter
{
    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "liquid-meter", "Flow meter for liquids", "How many pulses does the flow meter give for a gallon or a litre?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var unit = fields.Unit("unit", "Unit in which the controller takes the constant.", [Dimension.PulsesPerVolume], Need.Optional);
        var current = fields.Quantity<PulsesPerVolume>(
            "current", "Constant in the controller now.", Need.Optional, unit, PulsesPerVolume.FromSi(1e-3), PulsesPerVolume.FromSi(1e12), true);
        var step = fields.Quantity<PulsesPerVolume>(
            "step", "Smallest step of the constant that the controller takes.", Need.Optional, unit, PulsesPerVolume.FromSi(1e-9),
            PulsesPerVolume.FromSi(1e12), true);
        var shownStep = fields.Quantity<Volume>(
            "shownStep", "Smallest step in which the controller shows volume; 0.1 gal when left out.", Need.Optional,
            LiquidWords.BareVolume(head), Volume.FromSi(1e-9), Volume.FromSi(1), true);
        var liquid = fields.Group("liquid", "The liquid that was caught.", f => LiquidReader.Read(f, head), Need.Optional);
        var catching = Catching.Read(fields, head, liquid);
        var runs = fields.List("runs", "The runs.", (f, i) => LiquidRun.Read(f, i, head, true), 1, 50);
        if (runs.Count == 0 || !catching.IsComplete(fields, runs)) return null;

        var counted = true;
        foreach (var run in runs)
        {
            if (run.Pulses is not null || (run.Shown is not null && current is not null)) continue;
            fields.Report(LiquidFindings.NothingCounted.At(run.Field + ".pulses", FindingValue.Text("run", run.Id)));
            counted = false;
        }

        if (!counted) return null;
        return report => LiquidMeterWork.Work(
            report, new(catching, runs, unit ?? head.Preferences[Dimension.PulsesPerVolume], current?.Si, step?.Si, shownStep?.Si));
    }
}

/// <summary>The sheet of a flow meter, SI.</summary>
internal sealed record LiquidMeterSheet(
    Catching Catching, IReadOnlyList<LiquidRun> Runs, Unit Unit, double? Current, double? Step, double? ShownStep);
