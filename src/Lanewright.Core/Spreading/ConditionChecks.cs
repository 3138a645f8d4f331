using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Spreading;

/// <summary>Looks at the conditions under which the runs were made, before any arithmetic.</summary>
internal static class ConditionChecks
{
    private const double LowestEngineSpeed = 1200.0 / 60;
    private const double EngineSpeedBand = 0.10;

    internal static void Of(TestSheet sheet, List<Finding> findings)
    {
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            var run = sheet.Runs[i];
            var name = FindingValue.Text("run", run.Id);
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

    // Pulses per turn is fixed by the sensor wheel, so each run must agree with all of them within what counting allows.
    private static void PulsesPerTurn(TestSheet sheet, List<Finding> findings)
    {
        double pulses = 0, turns = 0;
        foreach (var run in sheet.Runs)
        {
            if (run is { Pulses.Si: > 0, Revolutions.Si: > 0 })
            {
                pulses += run.Pulses.Value.Si;
                turns += run.Revolutions.Value.Si;
            }
        }

        if (turns == 0) return;
        var all = pulses / turns;
        var step = sheet.RevolutionStep?.Si ?? 1;
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            if (sheet.Runs[i] is not { Pulses.Si: > 0 and var p, Revolutions.Si: > 0 and var r } run) continue;
            if (Math.Abs((p / r) - all) <= (1 + (all * step)) / r) continue;
            findings.Add(DropTestFindings.PulsesPerTurn.At(
                $"runs[{i}].pulses", FindingValue.Text("run", run.Id),
                FindingValue.Number("here", p / r, Dimension.Fraction),
                FindingValue.Number("all", all, Dimension.Fraction)));
        }
    }
}
