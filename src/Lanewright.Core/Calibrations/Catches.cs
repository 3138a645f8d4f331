using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Calibrations;

/// <summary>What kinds that weigh catches ask besides their runs, and the runs made into ratios.</summary>
internal sealed record Catches(Scale Scale, bool? CommonError, Duration? Timing, RevolutionCount? Step, Material? Material)
{
    private const double LowEngineSpeed = 1200.0 / 60;

    internal static Catches? Ask(Fields fields, CalibrationHead head, bool turns = false)
    {
        var material = fields.Group("material", "What was dropped.", f => MaterialReader.Read(f, head.Bare), Need.Optional);
        var scale = fields.Group("scale", "The scale that weighed the catches.", f => ScaleReader.Read(f, head.Bare));
        var common = fields.YesNo(
            "commonError",
            "Whether the scale's own error is the same in both readings of a difference: same scale, same place on it, "
            + "within minutes, not adjusted in between.",
            Need.Optional);
        var timing = turns ? null : fields.Quantity<Duration>(
            "timingUncertainty", "Standard uncertainty of a timed run, start and stop together; 0.3 s is assumed when left out.",
            Need.Optional, Units.Second, Duration.FromSi(0), Duration.FromSi(60));
        var step = !turns ? null : fields.Quantity<RevolutionCount>(
            "revolutionStep", "Smallest step in which turns were counted, e.g. 0.25 rev; whole turns when left out.", Need.Optional,
            Units.Revolution, RevolutionCount.FromSi(0.001), RevolutionCount.FromSi(1));
        return scale is null ? null : new(scale, common, timing, step, material);
    }

    /// <summary>The runs as ratios, at their places; null for one that cannot be used, with findings in the report.</summary>
    internal IReadOnlyList<RatioRun?> Build(CalibrationReport report, ConstantForm form, IReadOnlyList<Run> runs)
    {
        var sheet = new TestSheet
        {
            Kind = TestKind.DropTest,
            Spreader = new() { Id = "", Form = form, Unit = UnitPreferences.Metric[DimensionOf(form)] },
            Material = Material ?? new() { Name = "" },
            Scale = Scale,
            TimingUncertainty = Timing,
            RevolutionStep = Step,
            Runs = runs,
        };
        report.Add(Scale, "scale");
        for (var i = 0; i < runs.Count; i++) Conditions(report, runs[i], i);
        if (CommonError is { } stated)
        {
            var (built, findings, _) = Try(stated);
            report.Add(findings);
            return built;
        }

        // Nobody said which it is: work out both, use the wider, and ask.
        var together = Try(true);
        var apart = Try(false);
        var wide = together.Widest >= apart.Widest ? together : apart;
        report.Add(wide.Findings);
        report.Add(WeighingFindings.CommonErrorNotStated.At(
            "commonError", FindingValue.Text("scale", Scale.Id),
            FindingValue.Number("common", 2 * together.Widest, Dimension.Fraction),
            FindingValue.Number("separate", 2 * apart.Widest, Dimension.Fraction)));
        return wide.Built;

        (List<RatioRun?> Built, List<Finding> Findings, double Widest) Try(bool common)
        {
            var findings = new List<Finding>();
            var builder = new RunBuilder(sheet, common, findings);
            var built = new List<RatioRun?>(runs.Count);
            var widest = 0.0;
            for (var i = 0; i < runs.Count; i++)
            {
                var run = builder.Build(runs[i], i);
                built.Add(run?.Ratio);
                if (run is not null) widest = Math.Max(widest, run.Net.RelativeUncertainty);
            }

            return (built, findings, widest);
        }
    }

    private static void Conditions(CalibrationReport report, Run run, int index)
    {
        var name = FindingValue.Text("run", run.Id);
        if (run.EngineSpeed is { } speed && speed.Si < LowEngineSpeed * (1 - 1e-9))
        {
            report.Add(DropTestFindings.LowEngineSpeed.At(
                $"runs[{index}].engineSpeed", name, FindingValue.Number("speed", speed.Si, Dimension.RotationalSpeed)));
        }

        if (run.Oil is OilState.Cold) report.Add(DropTestFindings.ColdOil.At($"runs[{index}].oil", name));
    }

    private static Dimension DimensionOf(ConstantForm form) => form switch
    {
        ConstantForm.MassFlow => Dimension.MassFlow,
        ConstantForm.MassPerPulse => Dimension.MassPerPulse,
        _ => Dimension.MassPerRevolution,
    };
}
