using System.Globalization;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Spreading;

/// <summary>Looks at the conditions under which the runs were made, before any arithmetic.</summary>
internal static class ConditionChecks
{
    private const double LowestEngineSpeed = 1200.0 / 60;
    private const double EngineSpeedBand = 0.10;
    // Common practice, no source: a drop lasts seconds to minutes.
    private const double LongestDrop = 30 * 60;

    /// <summary>What is said of a run that lasted longer than any drop; null for no such run.</summary>
    internal static Finding? LongRun(string field, string run, Duration time)
    {
        if (!(time.Si > LongestDrop)) return null;
        var minutes = Math.Floor(time.Si / 60);
        var hours = Math.Floor(minutes / 60);
        var lasted = string.Create(CultureInfo.InvariantCulture, $"{(hours > 0 ? $"{hours:0} h " : "")}{minutes - (60 * hours):0} min");
        return DropTestFindings.LongRun.At(field, FindingValue.Text("run", run), FindingValue.Text("lasted", lasted));
    }

    internal static void Of(TestSheet sheet, List<Finding> findings)
    {
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            var run = sheet.Runs[i];
            var name = FindingValue.Text("run", run.Id);
            if (run.Time is { } time && LongRun($"runs[{i}].time", run.Id, time) is { } lasted) findings.Add(lasted);
            if (run.EngineSpeed is { } speed && speed.Si < LowestEngineSpeed * (1 - 1e-9))
                findings.Add(DropTestFindings.LowEngineSpeed.At(
                    $"runs[{i}].engineSpeed", name,
                    FindingValue.Number("speed", speed.Si, Dimension.RotationalSpeed)));
            if (run.Oil is OilState.Cold)
                findings.Add(DropTestFindings.ColdOil.At($"runs[{i}].oil", name));
        }

        var speeds = sheet.Runs.Where(r => r.EngineSpeed is not null).Select(r => r.EngineSpeed!.Value.Si).ToList();
        if (speeds.Count > 1 && speeds.Max() - speeds.Min() > EngineSpeedBand * speeds.Average() * (1 + 1e-9))
            findings.Add(DropTestFindings.EngineSpeedDiffers.At(
                "runs", FindingValue.Number("low", speeds.Min(), Dimension.RotationalSpeed),
                FindingValue.Number("high", speeds.Max(), Dimension.RotationalSpeed)));
        var gates = sheet.Runs.Where(r => r.Gate is not null).Select(r => r.Gate!.Value.Si).ToList();
        if (gates.Count > 1 && gates.Max() - gates.Min() > 1e-6)
            findings.Add(DropTestFindings.GateDiffers.At(
                "runs", FindingValue.Number("low", gates.Min(), Dimension.Length),
                FindingValue.Number("high", gates.Max(), Dimension.Length)));
        PulsesPerTurn(sheet, findings);
    }

    // Pulses per turn is fixed by the sensor wheel, so each run must agree with the middle one within what counting to
    // whole steps at both ends allows them both. The middle one, because a bad run must not make the others look bad.
    private static void PulsesPerTurn(TestSheet sheet, List<Finding> findings)
    {
        var step = sheet.RevolutionStep?.Si ?? 1;
        var counts = new List<PulsesByTurns>();
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            if (sheet.Runs[i] is { Pulses.Si: > 0 and var p, Revolutions.Si: > 0 and var r })
                counts.Add(new(i, p / r, (1 + (p / r * step)) / r));
        }

        if (counts.Count < 2) return;
        var middle = counts.OrderBy(c => c.Ratio).ElementAt(counts.Count / 2);
        foreach (var (i, ratio, room) in counts)
        {
            if (Math.Abs(ratio - middle.Ratio) <= (room + middle.Room) * (1 + 1e-9)) continue;
            findings.Add(DropTestFindings.PulsesPerTurn.At(
                $"runs[{i}].pulses", FindingValue.Text("run", sheet.Runs[i].Id),
                FindingValue.Number("here", ratio, Dimension.Fraction),
                FindingValue.Number("middle", middle.Ratio, Dimension.Fraction)));
        }
    }

    /// <summary>Pulses by turns of a run, and how far counting to whole steps may put that off.</summary>
    private sealed record PulsesByTurns(int Index, double Ratio, double Room);
}
