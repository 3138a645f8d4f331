using Lanewright.Core.Charts;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>Works a delivery curve out.</summary>
internal sealed class DeliveryCurveWork(
    CalibrationReport report, Catches catches, CurveTrim? trim, IReadOnlyList<WantedDelivery> wanted)
{
    private const int EnoughSettings = 4;

    // Engine speeds this close together count as one (ours).
    private const double OneSpeed = 0.05;
    private const double Settings = 1e-6;

    internal void Do(IReadOnlyList<CurveRun> runs)
    {
        var built = catches.Build(report, ConstantForm.MassFlow, [.. runs.Select(r => r.Run)]);
        var speeds = BySpeed(runs, built);
        var main = speeds.OrderByDescending(s => s.Points.Count).ThenByDescending(s => s.Speed).FirstOrDefault();
        if (main is null || main.Points.Count < 2)
        {
            report.Add(DeliveryFindings.NoCurve.At("runs"));
            return;
        }

        var fit = DeliveryFit.Of(main.Points);
        Say(fit);
        Begin(fit);
        Saturation(fit);
        Trim(fit);
        Wanted(fit);
        foreach (var other in speeds.Where(s => s != main)) Compare(main, other);
        Tables(fit, speeds);
        Draw(fit, speeds.Where(s => s != main));
    }

    private double Probability => report.Head.Probability;

    private void Say(DeliveryFit fit)
    {
        var top = fit.Points[^1].Setting;
        var full = fit.At(top);
        report.Add(
            top >= 1 - Settings ? "delivery at full setting" : "delivery at the highest setting tested", full.Value, Dimension.MassFlow,
            null, true, full.Error);
        if (fit.Points.Count < EnoughSettings)
        {
            report.Add(DeliveryFindings.FewSettings.At(
                "runs", FindingValue.Number("count", fit.Points.Count, Dimension.Fraction)));
        }

        if (fit.WasPooled) report.Add(DeliveryFindings.NotRising.At("runs"));
        var single = fit.Points.Count(p => p.Estimate.Runs.Count == 1);
        if (single > 0)
            report.Add(DeliveryFindings.OneRunSettings.At("runs", FindingValue.Number("count", single, Dimension.Fraction)));
        foreach (var point in fit.Points) CalibrationText.Spread(report, point.Estimate, "runs");
    }

    private void Begin(DeliveryFit fit)
    {
        if (fit.Beginning() is not { } start) return;
        if (start.Value.Value <= 0)
        {
            report.Say("The lowest two settings point to delivery from the very start: no dead band is seen.");
            return;
        }

        report.Add("delivery begins at", start.Value, Dimension.Fraction, Units.Percent, true, start.Error);
        if (trim?.TurnsFrom is { } turns && Math.Abs(turns - start.Value.Value) > start.Error.Coverage(Probability) + OneSpeed)
        {
            report.Add(DeliveryFindings.TrimUnlike.At(
                "trim.turnsFrom", Share("trim", turns), Share("curve", start.Value.Value)));
        }
    }

    private void Saturation(DeliveryFit fit)
    {
        if (fit.NothingGainedFrom(Probability) is { } knee)
        {
            report.Add("nothing is gained from", knee.Value, Dimension.Fraction, Units.Percent, true, knee.Error);
            report.Add(DeliveryFindings.NothingGained.At("runs", Share("setting", knee.Value.Value)));
            Range(fit, knee.Value.Value);
        }
        else
        {
            report.Say("No limit is seen: by the rule, gains do not fall away up to {top:percent}.", Share("top", fit.Points[^1].Setting));
            Range(fit, fit.Points[^1].Setting);
        }
    }

    private void Range(DeliveryFit fit, double end)
    {
        report.Say(
            "Working range: {from:percent} to {to:percent}, {low} to {high}.", Share("from", fit.Points[0].Setting), Share("to", end),
            Flow("low", fit.Least), Flow("high", fit.ValueAt(end)));
    }

    private void Trim(DeliveryFit fit)
    {
        if (trim is { TurnsFrom: { } low, GainsUpTo: { } high } && low >= high)
            report.Add(DeliveryFindings.TrimOrder.At("trim", Share("low", low), Share("high", high)));
        if (trim?.GainsUpTo is { } end && fit.Points[^1].Setting > end + Settings)
        {
            report.Add(DeliveryFindings.AboveTrim.At(
                "trim.gainsUpTo", Share("setting", fit.Points[^1].Setting), Share("trim", end)));
        }
    }

    private void Wanted(DeliveryFit fit)
    {
        for (var i = 0; i < wanted.Count; i++)
        {
            var (name, flow) = wanted[i];
            var at = $"wanted[{CalibrationText.Number(i)}]";
            if (fit.SettingFor(flow) is { } setting)
            {
                report.Add($"setting for {name}", setting.Value, Dimension.Fraction, Units.Percent, true, setting.Error);
                report.Say("{name} needs {flow}.", FindingValue.Text("name", name), Flow("flow", flow));
            }
            else if (flow < fit.Least || flow > fit.Full)
            {
                report.Add(DeliveryFindings.WantedOutside.At(
                    at, FindingValue.Text("name", name), Flow("flow", flow), Flow("low", fit.Least), Flow("high", fit.Full)));
            }
            else
            {
                report.Add(DeliveryFindings.WantedFlat.At(at, FindingValue.Text("name", name), Flow("flow", flow)));
            }
        }
    }

    private void Compare(SpeedRuns main, SpeedRuns other)
    {
        foreach (var point in other.Points)
        {
            if (main.Points.FirstOrDefault(p => Math.Abs(p.Setting - point.Setting) < Settings) is not { } same) continue;
            double y = point.Estimate.Known.Value, x = same.Estimate.Known.Value;
            var off = CombinedRatios.Of([point.Estimate, same.Estimate], [1 / x, -y / (x * x)], (y / x) - 1, "speed");
            if (Math.Abs(off.Value.Value) <= off.Error.Coverage(Probability)) continue;
            report.Add(DeliveryFindings.EngineMatters.At(
                "runs", Share("setting", point.Setting), Share("off", off.Value.Value), Turns("other", other.Speed), Turns("main", main.Speed)));
        }
    }

    private void Tables(DeliveryFit fit, IReadOnlyList<SpeedRuns> speeds)
    {
        report.Add(new ReportTable(
            "Delivery by setting",
            [
                new("Setting", Dimension.Fraction, Units.Percent, 3), new("Engine", Dimension.RotationalSpeed, Units.RevolutionPerMinute, 4),
                new("Runs"), new("Delivery", Dimension.MassFlow), new("±", Dimension.MassFlow, null, 2),
            ],
            [
                .. speeds.SelectMany(s => s.Points.Select(p => (IReadOnlyList<ReportCell>)
                    [p.Setting, s.Speed, CalibrationText.Number(p.Estimate.Runs.Count), p.Estimate.Known.Value, Half(p)])),
            ]));
        var places = Enumerable.Range(1, 20).Select(i => i * 0.05)
            .Where(s => s >= fit.Points[0].Setting - Settings && s <= fit.Points[^1].Setting + Settings);
        report.Add(new ReportTable(
            "Read off the curve (between settings it includes what is not known of the shape)",
            [new("Setting", Dimension.Fraction, Units.Percent, 3), new("Delivery", Dimension.MassFlow), new("±", Dimension.MassFlow, null, 2)],
            [
                .. places.Select(s => (Setting: s, At: fit.At(s))).Select(p => (IReadOnlyList<ReportCell>)
                    [p.Setting, p.At.Value.Value, p.At.Error.Coverage(Probability)]),
            ]));
    }

    private void Draw(DeliveryFit fit, IEnumerable<SpeedRuns> others)
    {
        const int Pieces = 48;
        double first = fit.Points[0].Setting, last = fit.Points[^1].Setting;
        var curve = Enumerable.Range(0, Pieces + 1).Select(i => first + ((last - first) * i / Pieces))
            .Select(s => (Setting: s, At: fit.At(s)))
            .Select(p => new CurvePlace(p.Setting, p.At.Value.Value, p.At.Error.Coverage(Probability))).ToList();
        var points = fit.Points.Select(p => new CurvePoint(p.Setting, p.Estimate.Known.Value, Half(p)))
            .Concat(others.SelectMany(s => s.Points.Select(p => new CurvePoint(p.Setting, p.Estimate.Known.Value, Half(p), true)))).ToList();
        var picture = new CurvePicture(
            "Delivery by setting", "setting", Dimension.Fraction, "delivery", Dimension.MassFlow, points, curve, Units.Percent);
        report.Add(new ReportPicture(picture.Title, picture.Svg));
    }

    private double Half(SettingDelivery point) => point.Estimate.Error().Coverage(Probability);

    // Runs by engine speed (one not stated counts as the first stated), and within it by setting.
    private static List<SpeedRuns> BySpeed(IReadOnlyList<CurveRun> runs, IReadOnlyList<RatioRun?> built)
    {
        var first = runs.FirstOrDefault(r => r.Run.EngineSpeed is not null)?.Run.EngineSpeed?.Si ?? double.NaN;
        var groups = new List<(double Speed, SortedDictionary<double, List<RatioRun>> Settings)>();
        for (var i = 0; i < runs.Count; i++)
        {
            if (built[i] is not { } run) continue;
            var speed = runs[i].Run.EngineSpeed?.Si ?? first;
            var group = groups.Find(g => double.IsNaN(speed) || Math.Abs(speed - g.Speed) <= OneSpeed * g.Speed);
            if (group.Settings is null) groups.Add(group = (speed, []));
            // Settings are percent typed by a person: what is nearer than a millionth is the same one.
            var setting = Math.Round(runs[i].Setting, 6);
            if (!group.Settings.TryGetValue(setting, out var list)) group.Settings.Add(setting, list = []);
            list.Add(run);
        }

        return [.. groups.Select(g => new SpeedRuns(
            g.Speed, [.. g.Settings.Select(s => new SettingDelivery(s.Key, RatioEstimate.Of(s.Value)))]))];
    }

    private static FindingValue Share(string name, double share) => FindingValue.Number(name, share, Dimension.Fraction);

    private static FindingValue Flow(string name, double flow) => FindingValue.Number(name, flow, Dimension.MassFlow);

    private static FindingValue Turns(string name, double speed) => double.IsNaN(speed)
        ? FindingValue.Said(name, "the other speed")
        : FindingValue.Number(name, speed, Dimension.RotationalSpeed);

    private sealed record SpeedRuns(double Speed, IReadOnlyList<SettingDelivery> Points);
}
