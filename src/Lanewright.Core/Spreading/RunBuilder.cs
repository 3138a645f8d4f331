using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>A run ready for the ratio.</summary>
/// <param name="Run">As seen.</param>
/// <param name="Net">Mass weighed, dry when the moisture is stated.</param>
/// <param name="Ratio">Top and bottom of the constant.</param>
internal sealed record BuiltRun(Run Run, Measured Net, RatioRun Ratio);

/// <summary>Turns the runs of a sheet into ratios with error sources, reporting what is missing.</summary>
internal sealed class RunBuilder
{
    private const double DefaultTiming = 0.3;

    // Pulses, turns, seconds or kilograms: what is less is a slip of the pen, and dividing by it would overflow.
    private const double LeastCount = 1e-6;
    private static readonly double SqrtSix = Math.Sqrt(6);

    private readonly TestSheet sheet;
    private readonly List<Finding> findings;
    private readonly Weigher weigher;
    private bool timingReported;

    internal RunBuilder(TestSheet sheet, bool commonError, List<Finding> findings)
    {
        this.sheet = sheet;
        this.findings = findings;
        weigher = new(sheet.Scale, commonError, Mass.FromSi(LargestReading(sheet)), findings);
        if (sheet.Material.Moisture is { PlusMinus: null } moisture)
            findings.Add(DropTestFindings.MoistureTakenAsExact.At(
                "material.moisture.plusMinus", Share("share", moisture.Share)));
    }

    /// <summary>The run as a ratio, or null with findings when something it needs is missing or absurd.</summary>
    internal BuiltRun? Build(Run run, int index)
    {
        var field = $"runs[{index}]";
        var wet = weigher.Net(run.Catch, run.Id, field);
        var net = Dry(wet);
        var other = sheet.Kind is TestKind.Verification ? Delivered(run, field) : Counted(run, field);
        if (other is not { } count || !(net.Value >= Weigher.LeastNet)) return null;
        var ratio = sheet.MassOnTop
            ? new RatioRun(run.Id, field, net, count)
            : new RatioRun(run.Id, field, count, net);
        ReportSmallDrop(run, field, wet);
        return new(run, net, ratio);
    }

    private Measured? Counted(Run run, string field) => sheet.Spreader.Form switch
    {
        ConstantForm.PulsesPerMass or ConstantForm.MassPerPulse =>
            Count(run, run.Pulses?.Si, 1, "pulses", field + ".pulses"),
        ConstantForm.MassPerRevolution =>
            Count(run, run.Revolutions?.Si, sheet.RevolutionStep?.Si ?? 1, "revolutions", field + ".revolutions"),
        _ => Timed(run, field + ".time"),
    };

    // A count is cut off to a whole step at its start and again at its end: triangular within one step either way.
    private Measured? Count(Run run, double? value, double step, string what, string field)
    {
        if (Usable(run, value, what, field) is not { } count) return null;
        var u = step / SqrtSix;
        var cost = 2 * u / count;
        if (cost > sheet.WantedUncertainty / 4)
        {
            findings.Add(DropTestFindings.FewCounts.At(
                field, Word("run", run.Id), FindingValue.Number("count", count, Dimension.Fraction),
                FindingValue.Said("what", what), Share("cost", cost)));
        }

        return Measured.Of(count, u, ErrorSource.Triangular($"run:{run.Id}:{what}", what == "pulses" ? "counting of pulses" : "counting of revolutions"));
    }

    private Measured? Timed(Run run, string field)
    {
        if (Usable(run, run.Time?.Si, "time", field) is not { } seconds) return null;
        var u = sheet.TimingUncertainty?.Si ?? DefaultTiming;
        if (sheet.TimingUncertainty is null && !timingReported)
        {
            timingReported = true;
            findings.Add(DropTestFindings.TimingAssumed.At(
                "timingUncertainty", FindingValue.Number("assumed", u, Dimension.Time)));
        }

        return Measured.Of(seconds, u, ErrorSource.Normal($"run:{run.Id}:time", "timing of runs"));
    }

    private Measured? Delivered(Run run, string field)
    {
        if (run.Delivered is not { } delivered)
        {
            findings.Add(DropTestFindings.NoDelivered.At(field + ".delivered", Word("run", run.Id)));
            return null;
        }

        return Usable(run, delivered.Si, "delivered mass", field + ".delivered");
    }

    private double? Usable(Run run, double? value, string what, string field)
    {
        if (value is null)
            findings.Add(DropTestFindings.NoCount.At(field, Word("run", run.Id), FindingValue.Said("what", what)));
        else if (!(value >= LeastCount))
            findings.Add(DropTestFindings.CountNotPositive.At(field, Word("run", run.Id), FindingValue.Said("what", what)));
        return value >= LeastCount ? value : null;
    }

    private Measured Dry(Measured net)
    {
        if (sheet.Material.Moisture is not { } moisture) return net;
        var u = (moisture.PlusMinus ?? 0) / Math.Sqrt(3);
        var share = Measured.Of(
            moisture.Share, u, ErrorSource.Rectangular("material:moisture", "moisture of the material"));
        return moisture.OfDry ? net / (1 + share) : net * (1 - share);
    }

    private void ReportSmallDrop(Run run, string field, Measured net)
    {
        var cost = 2 * net.RelativeUncertainty;
        if (cost <= sheet.WantedUncertainty) return;
        findings.Add(DropTestFindings.SmallDrop.At(
            field, Word("run", run.Id), FindingValue.Number("net", net.Value, Dimension.Mass),
            Share("cost", cost), Share("wanted", sheet.WantedUncertainty)));
    }

    private static double LargestReading(TestSheet sheet)
    {
        var largest = 0.0;
        foreach (var run in sheet.Runs)
        {
            largest = Math.Max(largest, run.Catch switch
            {
                ContainerCatch { Containers.Count: > 0 } c => c.Containers.Max(x => x.Gross.Si),
                CountedCatch c => c.Gross.Si,
                WholeCatch c => c.Gross.Si,
                TruckCatch c => Math.Max(c.Before.Si, c.After.Si),
                _ => 0,
            });
        }

        return largest;
    }

    private static FindingValue Word(string name, string word) => FindingValue.Text(name, word);

    private static FindingValue Share(string name, double share) =>
        FindingValue.Number(name, share, Dimension.Fraction);
}
