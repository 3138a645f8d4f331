using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Calibrations;

/// <summary>A flow of liquid: stated, or from catches with their time.</summary>
/// <param name="Catching">How it was caught.</param>
/// <param name="Runs">The catches.</param>
/// <param name="Stated">As stated, m³/s.</param>
/// <param name="PlusMinus">How far off it may be, as a share.</param>
internal sealed record LiquidFlow(Catching Catching, IReadOnlyList<LiquidRun> Runs, double? Stated, double? PlusMinus)
{
    // A stop-watch started and stopped by hand, both together (common practice, no source; as in a drop test).
    private const double Timing = 0.3;
    private const double DefaultStated = 0.03;
    private static readonly double SqrtThree = Math.Sqrt(3);

    /// <summary>Whether there is any flow.</summary>
    internal bool IsKnown => Stated is not null || Runs.Count > 0;

    /// <summary>Asks for the flow's fields; null when they contradict each other.</summary>
    internal static LiquidFlow? Read(Fields fields, CalibrationHead head, LiquidSheet? liquid)
    {
        var stated = fields.Quantity<VolumeFlow>(
            "flow", "Flow of the liquid, all nozzles together, when it is known already.", Need.Optional, LiquidWords.BareFlow(head),
            VolumeFlow.FromSi(1e-8), VolumeFlow.FromSi(1), true);
        var plusMinus = SheetReader.Share(
            fields, "flowPlusMinus", "How far off the stated flow may be, plus or minus, as a share of it.", 0, 0.5);
        var catching = Catching.Read(fields, head, liquid);
        var runs = fields.List("runs", "Catches of the liquid, each with its time.", (f, i) => LiquidRun.Read(f, i, head, false), 0, 50);
        if (stated is not null && runs.Count > 0)
        {
            fields.Report(LiquidUseFindings.FlowTwice, "flow");
            return null;
        }

        return catching.IsComplete(fields, runs) ? new(catching, runs, stated?.Si, plusMinus?.Si) : null;
    }

    /// <summary>The flow in m³/s; null when there is none.</summary>
    internal KnownFlow? Work(CalibrationReport report, LiquidState? liquid)
    {
        if (Stated is { } stated)
        {
            if (PlusMinus is null)
                report.Add(LiquidFindings.ReadingAssumed.At(
                    "flowPlusMinus", FindingValue.Said("what", "the flow"), FindingValue.Text("assumed", "3 %"),
                    FindingValue.Text("field", "flowPlusMinus")));
            return new(
                Measured.Of(stated, stated * (PlusMinus ?? DefaultStated) / SqrtThree, ErrorSource.Rectangular("flow", "stated flow")), null);
        }

        if (Runs.Count == 0) return null;
        if (Catching.Scale is { } scale) report.Add(scale, "scale");
        var answer = Catching.Choose(report.Head.Probability, common => Timed(liquid, common));
        report.Add(answer.Findings);
        if (answer.Estimate is not { } estimate) return null;
        if (estimate.Runs.Count == 1) report.Add(LiquidFindings.OneRun.At("runs"));
        CalibrationText.Spread(report, estimate, "runs");
        report.Add(new ReportTable(
            "The runs",
            [new("Run"), new("Volume", Dimension.Volume), new("Time", Dimension.Time), new("Flow", Dimension.VolumeFlow), new("Off by", Dimension.Fraction, null, 2)],
            [
                .. estimate.Runs.Select(run => (IReadOnlyList<ReportCell>)
                    [run.Id, run.Top.Value, run.Bottom.Value, run.Ratio, (run.Ratio / estimate.Known.Value) - 1]),
            ]));
        return new(estimate.Total(KnownFlow.Scatter), estimate);
    }

    private LiquidAnswer Timed(LiquidState? liquid, bool common)
    {
        List<Finding> findings = [];
        var volumes = Catching.Volumes(Runs, liquid, common, findings);
        List<RatioRun> ratios = [];
        for (var i = 0; i < Runs.Count; i++)
        {
            if (volumes[i] is not { Value: > 0 } volume) continue;
            var time = Measured.Of(Runs[i].Seconds!.Value, Timing, ErrorSource.Normal($"run:{Runs[i].Id}:time", "timing of runs"));
            ratios.Add(new(Runs[i].Id, Runs[i].Field, volume, time));
        }

        return new(ratios.Count == 0 ? null : RatioEstimate.Of(ratios), findings);
    }

    /// <summary>Shows the flow that is needed and compares the one that is there with it.</summary>
    internal static void Compare(CalibrationReport report, KnownFlow? flow, Measured needed)
    {
        report.Add("flow needed", needed, Dimension.VolumeFlow);
        if (flow is not { } now) return;
        var off = (now.Value / needed) - 1;
        if (Math.Abs(off.Value) > Math.Max(now.Error(off).Coverage(report.Head.Probability), 0.01))
            report.Add(LiquidUseFindings.FlowUnlikeWanted.At("wanted", FindingValue.Number("off", off.Value, Dimension.Fraction)));
    }
}

/// <summary>A flow with its error sources.</summary>
/// <param name="Value">m³/s.</param>
/// <param name="Estimate">The runs it was drawn from; null when it was stated.</param>
internal sealed record KnownFlow(Measured Value, RatioEstimate? Estimate)
{
    /// <summary>What the scatter of its runs is called.</summary>
    internal const string Scatter = "runs:scatter";

    /// <summary>The distribution of the error of something worked out from it.</summary>
    internal ErrorDistribution Error(Measured derived) => Estimate?.ErrorOf(derived, Scatter) ?? ErrorDistribution.Of(derived);

    /// <summary>Adds a figure worked out from it.</summary>
    internal void Show(CalibrationReport report, Phrase name, Measured derived, Dimension dimension, Unit? unit = null, bool main = true) =>
        report.Add(name, derived, dimension, unit, main, Error(derived));
}
