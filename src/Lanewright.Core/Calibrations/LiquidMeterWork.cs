using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Calibrations;

/// <summary>Works out the constant of a flow meter.</summary>
internal static class LiquidMeterWork
{
    private const double DefaultShownStep = 0.0003785411784;
    private const double DearCount = 0.005;
    private const double DearStep = 0.001;
    private static readonly double SqrtSix = Math.Sqrt(6);

    internal static void Work(CalibrationReport report, LiquidMeterSheet sheet)
    {
        var catching = sheet.Catching;
        LiquidState? liquid = null;
        if (sheet.Runs.Any(run => run.Catch is not null))
        {
            List<Finding> found = [];
            liquid = LiquidState.Of(catching.Liquid!, found);
            report.Add(found);
            report.Add(catching.Scale!, "scale");
            if (liquid is null) return;
        }

        var answer = catching.Choose(report.Head.Probability, common => Build(sheet, liquid, common));
        report.Add(answer.Findings);
        if (answer.Estimate is not { } estimate) return;
        var value = estimate.Total("runs:scatter");
        var figure = report.Add("pulses per volume", value, Dimension.PulsesPerVolume, sheet.Unit, true, estimate.Error());
        Key(report, sheet, value.Value, figure.Expanded ?? 0);
        if (estimate.Runs.Count < 2) report.Add(LiquidFindings.OneRun.At("runs"));
        CalibrationText.Spread(report, estimate, "runs");
        Flows(report, sheet, estimate);
        if (liquid is not null)
        {
            report.Add("density of the liquid", liquid.Density, Dimension.Density, LiquidWords.Density(report.Head), false);
            if (liquid.Strength.Value > 0) report.Add("strength of the liquid", liquid.Strength, Dimension.Fraction, null, false);
        }

        Table(report, sheet, estimate);
    }

    private static LiquidAnswer Build(LiquidMeterSheet sheet, LiquidState? liquid, bool common)
    {
        List<Finding> findings = [];
        var volumes = sheet.Catching.Volumes(sheet.Runs, liquid, common, findings);
        List<RatioRun> runs = [];
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            if (volumes[i] is { Value: > 0 } volume) runs.Add(new(sheet.Runs[i].Id, sheet.Runs[i].Field, Counted(sheet, sheet.Runs[i], findings), volume));
        }

        return new(runs.Count == 0 ? null : RatioEstimate.Of(runs), findings);
    }

    // A count is cut off to a whole step at its start and again at its end: triangular within one step either way.
    private static Measured Counted(LiquidMeterSheet sheet, LiquidRun run, List<Finding> findings)
    {
        double count, step;
        if (run.Pulses is { } pulses)
        {
            (count, step) = (pulses, 1);
        }
        else
        {
            // What the controller shows is its pulses by the constant in use.
            var current = sheet.Current!.Value;
            (count, step) = (run.Shown!.Value * current, (sheet.ShownStep ?? DefaultShownStep) * current);
        }

        var u = step / SqrtSix;
        if (2 * u / count > DearCount)
            findings.Add(LiquidFindings.FewCounts.At(
                $"{run.Field}.{(run.Pulses is null ? "shown" : "pulses")}", FindingValue.Text("run", run.Id),
                FindingValue.Number("cost", 2 * u / count, Dimension.Fraction)));
        return Measured.Of(count, u, ErrorSource.Triangular($"run:{run.Id}:pulses", "counting of pulses"));
    }

    private static void Key(CalibrationReport report, LiquidMeterSheet sheet, double value, double expanded)
    {
        if (sheet.Step is { } step)
        {
            // Rounded in the unit that is keyed in, so that the value shown is exactly a step of it.
            var inUnit = sheet.Unit.FromSi(step);
            var keyed = sheet.Unit.ToSi(Math.Round(sheet.Unit.FromSi(value) / inUnit) * inUnit);
            report.Add("value to key in", keyed, Dimension.PulsesPerVolume, sheet.Unit);
            var cost = step / 2 / value;
            if (cost > Math.Max(DearStep, expanded / value / 4))
                report.Add(LiquidFindings.CoarseStep.At(
                    "step", FindingValue.Number("step", step, Dimension.PulsesPerVolume), FindingValue.Number("cost", cost, Dimension.Fraction)));
        }
        else
        {
            report.Add(LiquidFindings.StepNotStated.At("step"));
        }

        if (sheet.Current is not { } current) return;
        // Shown is pulses by the old constant, delivered is pulses by the true one.
        var error = (value / current) - 1;
        report.Say(
            "With {current} in the controller it showed {error:percent} {more} than it delivered: of every 100 shown, {came:4} came out.",
            FindingValue.Number("current", current, Dimension.PulsesPerVolume), FindingValue.Number("error", Math.Abs(error), Dimension.Fraction),
            FindingValue.Said("more", error > 0 ? "more" : "less"), FindingValue.Number("came", 100 / (1 + error), Dimension.Fraction));
    }

    private static void Flows(CalibrationReport report, LiquidMeterSheet sheet, RatioEstimate estimate)
    {
        var low = Of(false);
        var high = Of(true);
        if (low.Count == 0 || high.Count == 0)
        {
            report.Add(LiquidFindings.OneFlow.At("runs"));
            return;
        }

        // What both share - density, scale, vessel - cancels in the difference.
        var atLow = RatioEstimate.Of(low);
        var atHigh = RatioEstimate.Of(high);
        report.Add("pulses per volume at low flow", atLow.Total("low:scatter"), Dimension.PulsesPerVolume, sheet.Unit, false, atLow.Error());
        report.Add("pulses per volume at high flow", atHigh.Total("high:scatter"), Dimension.PulsesPerVolume, sheet.Unit, false, atHigh.Error());
        var difference = (atLow.Total("low:scatter") / atHigh.Total("high:scatter")) - 1;
        var range = WelchSatterthwaite.Of(difference, report.Head.Probability).Expanded;
        var values = new[]
        {
            FindingValue.Number("difference", difference.Value, Dimension.Fraction), FindingValue.Number("range", range, Dimension.Fraction),
        };
        if (Math.Abs(difference.Value) > range) report.Add(LiquidFindings.FlowsDiffer.At("runs", values));
        else report.Say("Low and high flow agree: {difference:percent} apart, which chance explains up to {range:percent}.", values);

        List<RatioRun> Of(bool wanted) =>
            [.. estimate.Runs.Where(run => sheet.Runs.First(r => r.Id == run.Id).High == wanted)];
    }

    private static void Table(CalibrationReport report, LiquidMeterSheet sheet, RatioEstimate estimate) =>
        report.Add(new ReportTable(
            "The runs",
            [
                new("Run"), new("Flow"), new("Pulses", Dimension.Pulses, Units.Pulse, 6), new("Volume", Dimension.Volume),
                new("Flow", Dimension.VolumeFlow, null, 3), new("Pulses per volume", Dimension.PulsesPerVolume, sheet.Unit, 5), new("Off by", Dimension.Fraction, null, 2),
            ],
            [
                .. estimate.Runs.Select(run =>
                {
                    var seen = sheet.Runs.First(r => r.Id == run.Id);
                    return (IReadOnlyList<ReportCell>)
                    [
                        run.Id, ReportCell.Said(seen.High switch { true => "high", false => "low", _ => "" }), Math.Round(run.Top.Value), run.Bottom.Value,
                        run.Bottom.Value / (seen.Seconds ?? double.NaN), run.Ratio, (run.Ratio / estimate.Known.Value) - 1,
                    ];
                }),
            ]));
}
