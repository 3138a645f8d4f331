using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Ground speed: pulses per distance of the truck's speed sensor, from passes over a measured course, or from tyre, axle and
/// teeth as an expectation (docs/method/ground-speed.md).
/// </summary>
public static class GroundSpeed
{
    private const double MostDisagreement = 0.03;

    // A tape or wheel is read at both ends, and the truck stopped by eye: half a metre either way unless somebody says better
    // (common practice, no source).
    private const double DefaultCourse = 0.5;
    private static readonly double SqrtThree = Math.Sqrt(3);
    private static readonly double SqrtSix = Math.Sqrt(6);

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "ground-speed", "Ground speed", "How many pulses does the speed sensor give for a mile or a kilometre?", Ask) { IsKeyedIn = true };

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var length = head.Units is UnitSystem.Si ? Units.Metre : head.Units is UnitSystem.UnitedStates ? Units.Foot : null;
        var course = fields.Quantity<Length>(
            "course", "Length of the measured course.", Need.Required, length, Length.FromSi(20), Length.FromSi(50_000), true);
        var plusMinus = fields.Quantity<Length>(
            "coursePlusMinus", "How far off its length, start and stop may be together, plus or minus; 0.5 m when left out.",
            Need.Optional, length, Length.FromSi(0), Length.FromSi(100), true);
        var current = fields.Amount(
            "current", "Pulses per distance in the controller now.", [Dimension.PulsesPerLength], null, Need.Optional);
        var tyre = fields.Group("tyre", "What tyre, axle and sensor make expect.", Tyre, Need.Optional);
        var passes = fields.List("passes", "The passes over the course.", (f, _) => Pass(f), 1, 50);
        if (course is not { } c || passes.Count == 0) return null;
        return report => Work(report, new(c.Si, plusMinus?.Si ?? DefaultCourse, plusMinus is null, current?.Si, tyre, passes));
    }

    private static SpeedPass? Pass(Fields fields)
    {
        var pulses = fields.Quantity<PulseCount>(
            "pulses", "Pulses counted over the course.", Need.Required, Units.Pulse, PulseCount.FromSi(1), PulseCount.FromSi(1e12));
        var speed = fields.Quantity<Speed>(
            "speed", "Speed of the pass.", Need.Optional, null, Speed.FromSi(0.1), Speed.FromSi(60));
        return pulses is { } p ? new(p.Si, speed?.Si) : null;
    }

    private static TyreDrive? Tyre(Fields fields)
    {
        var turns = fields.Number("turnsPerMile", "Turns of the tyre in a mile, from its maker's data.", Need.Optional, 100, 2000);
        var diameter = fields.Quantity<Length>(
            "diameter", "Rolling diameter, when its turns per mile are not known.", Need.Optional, null, Length.FromSi(0.2), Length.FromSi(3));
        var axle = fields.Number("axle", "Turns of the drive shaft for one of the wheel.", Need.Optional, 0.1, 50) ?? 1;
        var teeth = fields.Number("teeth", "Pulses for one turn of what the sensor looks at.", least: 0.1, most: 1000);
        if (teeth is not { } t) return null;
        return turns is { } n ? new(n * axle * t / Units.Mile.ToSi(1))
            : diameter is { } d ? new(axle * t / (Math.PI * d.Si))
            : null;
    }

    private static void Work(CalibrationReport report, SpeedSheet sheet)
    {
        var course = Measured.Of(
            sheet.Course, sheet.PlusMinus / SqrtThree, ErrorSource.Rectangular("course", "length of the course"));
        var runs = new List<RatioRun>(sheet.Passes.Count);
        for (var i = 0; i < sheet.Passes.Count; i++)
        {
            var id = CalibrationText.Number(i + 1);
            var pulses = Measured.Of(
                sheet.Passes[i].Pulses, 1 / SqrtSix, ErrorSource.Triangular($"run:{id}:pulses", "counting of pulses"));
            runs.Add(new(id, $"passes[{i}]", pulses, course));
        }

        var estimate = RatioEstimate.Of(runs);
        var result = CourseEstimate.Of(runs, "passes:scatter");
        var value = result.Value;
        report.Add("pulses per distance", value, Dimension.PulsesPerLength, null, true, result.Error);
        if (sheet.PlusMinusAssumed)
            report.Add(CalibrationFindings.CourseAssumed.At("coursePlusMinus", FindingValue.Number("assumed", sheet.PlusMinus, Dimension.Length)));
        if (runs.Count < 2) report.Add(CalibrationFindings.OnePass.At("passes"));
        CalibrationText.Spread(report, estimate, "passes");
        if (sheet.Current is { } current)
        {
            // The controller takes pulses by its old figure: with too many to the mile it believes in too short a way.
            var error = (value.Value / current) - 1;
            report.Say(
                "With {current} in the controller the truck seems {how}: rates came out {error:percent} {more}.",
                FindingValue.Number("current", current, Dimension.PulsesPerLength),
                FindingValue.Said("how", error > 0 ? "faster than it is" : "slower than it is"),
                FindingValue.Number("error", Math.Abs(error), Dimension.Fraction), FindingValue.Said("more", error > 0 ? "too high" : "too low"));
        }

        if (sheet.Tyre is { } tyre)
        {
            report.Add("expected from tyre, axle and teeth", tyre.PulsesPerMetre, Dimension.PulsesPerLength, null, false);
            var off = (value.Value / tyre.PulsesPerMetre) - 1;
            if (Math.Abs(off) > MostDisagreement)
                report.Add(CalibrationFindings.SpeedUnlikeTyre.At("tyre", FindingValue.Number("off", off, Dimension.Fraction)));
        }

        report.Add(new ReportTable(
            "The passes",
            [new("Pass"), new("Pulses", Dimension.Pulses, Units.Pulse, 6), new("Pulses per distance", Dimension.PulsesPerLength, null, 5), new("Off by", Dimension.Fraction, null, 2)],
            [
                .. runs.Select(run => (IReadOnlyList<ReportCell>)
                    [run.Id, run.Top.Value, run.Ratio, (run.Ratio / value.Value) - 1]),
            ]));
    }

    private sealed record SpeedPass(double Pulses, double? Speed);

    private sealed record TyreDrive(double PulsesPerMetre);

    private sealed record SpeedSheet(
        double Course, double PlusMinus, bool PlusMinusAssumed, double? Current, TyreDrive? Tyre, IReadOnlyList<SpeedPass> Passes);
}
