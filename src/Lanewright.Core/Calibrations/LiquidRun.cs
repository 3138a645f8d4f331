using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Calibrations;

/// <summary>A catch of liquid: weighed, or read in a vessel.</summary>
/// <param name="Id">Name of the run.</param>
/// <param name="Field">Where it stands in the sheet.</param>
/// <param name="Catch">How it was weighed; null when it was read.</param>
/// <param name="Volume">What was read in the vessel, m³; null when it was weighed.</param>
/// <param name="Pulses">Counted pulses.</param>
/// <param name="Shown">Volume that the controller showed, m³.</param>
/// <param name="High">Whether at high flow; null when not said.</param>
/// <param name="Seconds">How long it ran.</param>
internal sealed record LiquidRun(
    string Id, string Field, Catch? Catch, double? Volume, double? Pulses, double? Shown, bool? High, double? Seconds)
{
    private const double MostVolume = 20;

    internal static LiquidRun? Read(Fields fields, int index, CalibrationHead head, bool counted)
    {
        var volumeUnit = LiquidWords.BareVolume(head);
        var id = fields.Text("id", "Name of the run; its place in the list when left out.", Need.Optional, 40) ?? CalibrationText.Number(index + 1);
        double? pulses = null, shown = null;
        bool? high = null;
        if (counted)
        {
            pulses = fields.Quantity<PulseCount>(
                "pulses", "Counted pulses of the flow meter.", Need.Optional, Units.Pulse, PulseCount.FromSi(1), PulseCount.FromSi(1e12))?.Si;
            shown = fields.Quantity<Volume>(
                "shown", "Volume that the controller showed, when pulses cannot be counted.", Need.Optional, volumeUnit,
                Quantities.Volume.FromSi(1e-6), Quantities.Volume.FromSi(MostVolume), true)?.Si;
            high = fields.Choice("flow", "Whether at low or at high flow.", LiquidWords.Flows, Need.Optional);
        }

        var seconds = fields.Quantity<Duration>(
            "time", "How long it ran; seconds when no unit is given.", counted ? Need.Optional : Need.Required, Units.Second, Duration.FromSi(0.5),
            Duration.FromSi(86_400))?.Si;
        var volume = fields.Quantity<Volume>(
            "volume", "What was read in the vessel.", Need.Optional, volumeUnit, Quantities.Volume.FromSi(1e-6),
            Quantities.Volume.FromSi(MostVolume), true)?.Si;
        var catches = CatchReader.Read(fields, head.Bare);
        var ways = catches.Count + (volume is null ? 0 : 1);
        if (ways != 1)
        {
            fields.Report(
                LiquidFindings.OneCatch, null, FindingValue.Text("run", id), FindingValue.Number("count", ways, Dimension.Fraction));
            return null;
        }

        return !counted && seconds is null ? null : new(id, fields.Path, catches.Count > 0 ? catches[0] : null, volume, pulses, shown, high, seconds);
    }

    /// <summary>The largest reading of all runs, for scales without a stated capacity, kg.</summary>
    internal static double LargestReading(IReadOnlyList<LiquidRun> runs) => runs.Max(run => run.Catch switch
    {
        ContainerCatch c => c.Containers.Max(x => x.Gross.Si),
        CountedCatch c => c.Gross.Si,
        WholeCatch c => c.Gross.Si,
        TruckCatch c => Math.Max(c.Before.Si, c.After.Si),
        _ => 0,
    });
}

/// <summary>A vessel that shows volume by its marks.</summary>
/// <param name="PlusMinus">How far off its marks may be, m³.</param>
/// <param name="Reading">How far off a reading of the level may be, m³.</param>
internal sealed record Vessel(double PlusMinus, double Reading)
{
    internal static Vessel? Read(Fields fields, CalibrationHead head)
    {
        var marks = Ask("plusMinus", "How far off its marks may be, plus or minus.");
        var reading = Ask("reading", "How far off a reading of the level may be, plus or minus.");
        return marks is { } m && reading is { } r ? new(m.Si, r.Si) : null;

        Volume? Ask(string name, string doc) => fields.Quantity<Volume>(
            name, doc, Need.Required, LiquidWords.BareVolume(head), Volume.FromSi(0), Volume.FromSi(1), true);
    }
}

/// <summary>How the runs of a sheet were caught: scale, liquid, air and vessel.</summary>
internal sealed record Catching(Scale? Scale, bool? CommonError, LiquidSheet? Liquid, double? Air, Vessel? Vessel)
{
    private const double VesselShare = 0.005;
    private static readonly double SqrtThree = Math.Sqrt(3);

    internal static Catching Read(Fields fields, CalibrationHead head, LiquidSheet? liquid)
    {
        var scale = fields.Group("scale", "The scale that weighed the liquid.", f => ScaleReader.Read(f, head.Bare), Need.Optional);
        var common = fields.YesNo(
            "commonError",
            "Whether the scale's own error is the same in both readings of a difference: same scale, same place on it, "
            + "within minutes, not adjusted in between.",
            Need.Optional);
        var air = fields.Group("air", "The air around the scale, when its lift shall be worked out closely.", f => AirOf(f, head), Need.Optional);
        var vessel = fields.Group("vessel", "The vessel with marks that caught the liquid.", f => Vessel.Read(f, head), Need.Optional);
        return new(scale, common, liquid, air?.Density, vessel);
    }

    private static AirState? AirOf(Fields fields, CalibrationHead head)
    {
        var temperature = fields.Quantity<Temperature>(
            "temperature", "Temperature of the air.", Need.Required, LiquidWords.BareTemperature(head), Temperature.FromDegreesCelsius(-40),
            Temperature.FromDegreesCelsius(45), true);
        var pressure = fields.Number("pressure", "Pressure at the place, hPa (not reduced to sea level); 1013 when left out.", Need.Optional, 500, 1100);
        var humidity = SheetReader.Share(fields, "humidity", "Relative humidity; 50 % when left out.", 0, 1);
        return temperature is { } t && Liquids.Air.Density(t.Si, pressure ?? 1013.25, humidity?.Si ?? 0.5) is { } d ? new(d) : null;
    }

    /// <summary>Reports what the runs need and the sheet does not say; false when something stops.</summary>
    internal bool IsComplete(Fields fields, IReadOnlyList<LiquidRun> runs)
    {
        var weighed = runs.Any(run => run.Catch is not null);
        if (weighed && Scale is null) fields.Report(LiquidFindings.NoScale, "scale");
        if (weighed && Liquid is null) fields.Report(LiquidFindings.NoLiquid, "liquid");
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var twins = false;
        foreach (var run in runs)
        {
            if (seen.Add(run.Id)) continue;
            fields.Report(SheetFindings.RunTwice, "runs", FindingValue.Text("run", run.Id));
            twins = true;
        }

        return !twins && !(weighed && (Scale is null || Liquid is null));
    }

    /// <summary>
    /// Works out with the scale's error common to both readings or not, as the sheet says; when nobody said, both, uses the
    /// wider and asks.
    /// </summary>
    internal LiquidAnswer Choose(double probability, Func<bool, LiquidAnswer> build)
    {
        if (CommonError is not null || Scale is null) return build(CommonError ?? true);
        var together = build(true);
        var apart = build(false);
        var common = Width(together);
        var separate = Width(apart);
        var wide = common >= separate ? together : apart;
        if (wide.Estimate is not null)
            wide.Findings.Add(WeighingFindings.CommonErrorNotStated.At(
                "commonError", FindingValue.Text("scale", Scale.Id), FindingValue.Number("common", common, Dimension.Fraction),
                FindingValue.Number("separate", separate, Dimension.Fraction)));
        return wide;

        double Width(LiquidAnswer answer) => answer.Estimate is { } e ? e.Error().Coverage(probability) / e.Known.Value : 0;
    }

    /// <summary>The volume of each run, m³; null for one that cannot be used.</summary>
    internal List<Measured?> Volumes(
        IReadOnlyList<LiquidRun> runs, LiquidState? liquid, bool common, ICollection<Finding> findings)
    {
        var weigher = Scale is null ? null : new Weigher(Scale, common, Mass.FromSi(LiquidRun.LargestReading(runs)), findings);
        var air = Air is { } known
            ? Measured.Of(known, 0.01 * known, ErrorSource.Normal("air", "lift of the air"))
            : Measured.Of(Liquids.Air.Usual, Liquids.Air.UsualPlusMinus / SqrtThree, ErrorSource.Rectangular("air", "lift of the air"));
        var volumes = new List<Measured?>(runs.Count);
        var assumed = 0.0;
        foreach (var run in runs)
        {
            if (run.Catch is { } weighing)
            {
                var net = weigher!.Net(weighing, run.Id, run.Field);
                volumes.Add(net.Value > 1e-6 && liquid is not null ? Liquids.Air.Volume(net, liquid.Density, air) : null);
                continue;
            }

            var volume = run.Volume!.Value;
            if (Vessel is null) assumed = Math.Max(assumed, VesselShare * volume);
            volumes.Add(Measured.Of(
                volume,
                [
                    new(ErrorSource.Rectangular("vessel", "marks of the vessel"), (Vessel?.PlusMinus ?? (VesselShare * volume)) / SqrtThree),
                    new(ErrorSource.Rectangular($"run:{run.Id}:level", "reading of the vessel"), (Vessel?.Reading ?? (VesselShare * volume)) / SqrtThree),
                ]));
        }

        if (assumed > 0) findings.Add(LiquidFindings.VesselAssumed.At("vessel", FindingValue.Number("assumed", assumed, Dimension.Volume)));
        return volumes;
    }

    private sealed record AirState(double Density);
}

/// <summary>What runs of liquid say, and what was found on the way; no estimate when no run can be used.</summary>
internal sealed record LiquidAnswer(RatioEstimate? Estimate, List<Finding> Findings);
