using Lanewright.Core.Charts;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Works a gate table out.</summary>
internal sealed class GateTableWork(CalibrationReport report, Catches catches, GateGeometry geometry)
{
    // Bulk density alone differs by a sixth between loose and compacted salt; beyond a quarter something else is off (ours).
    private const double MostUnlike = 0.25;

    private Dimension Dimension => geometry.PerPulse ? Dimension.MassPerPulse : Dimension.MassPerRevolution;

    private double Probability => report.Head.Probability;

    internal void Do(IReadOnlyList<GateRun> runs, IReadOnlyList<WantedOpening> wanted)
    {
        var built = catches.Build(
            report, geometry.PerPulse ? ConstantForm.MassPerPulse : ConstantForm.MassPerRevolution, [.. runs.Select(r => r.Run)]);
        var points = Points(runs, built);
        foreach (var (gate, point) in points)
            report.Add($"at {Name(gate)}", point.Estimate.Total("runs:scatter"), Dimension, null, true, point.Estimate.Error());
        foreach (var (_, point) in points) CalibrationText.Spread(report, point.Estimate, "runs");
        if (points.Count < 2)
        {
            report.Add(DeliveryFindings.OneOpening.At("runs"));
            return;
        }

        var fit = GateFit.Of([.. points.Select(p => p.Point)]);
        Say(fit, points.Count, points[0].Gate.Unit);
        foreach (var (opening, i) in wanted.Select((w, i) => (w.Gate, i))) Wanted(fit, points, opening, i);
        Expect(points);
        Table(fit, points);
        Draw(fit, points);
    }

    private void Say(GateFit fit, int count, Unit unit)
    {
        if (!fit.IsLine)
        {
            report.Add(DeliveryFindings.NotALine.At("runs", FindingValue.Number("chance", fit.ChanceOfLine, Dimension.Fraction)));
            return;
        }

        if (!fit.UsesLine) report.Say("Between openings the rising curve through them is used: a line is possible, but doubtful.");
        if (count == 2) report.Add(DeliveryFindings.TwoOpenings.At("runs"));
        var nothing = -fit.Line.Intercept / fit.Line.Slope;
        report.Say(
            "The line through the openings gives {slope} more for each {step} of opening and reaches nothing at {nothing}.",
            FindingValue.Number("slope", fit.Line.Slope * Units.Inch.ToSi(1), Dimension), FindingValue.Said("step", "inch (25.4 mm)"),
            FindingValue.Text("nothing", Name(new(unit.FromSi(nothing), unit))));
    }

    private void Wanted(GateFit fit, List<(Amount Gate, SettingDelivery Point)> points, Amount opening, int place)
    {
        var outside = opening.Si < points[0].Point.Setting * (1 - 1e-9) || opening.Si > points[^1].Point.Setting * (1 + 1e-9);
        var at = $"wanted[{CalibrationText.Number(place)}]";
        if (outside)
        {
            report.Add(DeliveryFindings.OpeningOutside.At(
                at, FindingValue.Text("gate", Name(opening)), FindingValue.Text("low", Name(points[0].Gate)),
                FindingValue.Text("high", Name(points[^1].Gate))));
            if (!fit.IsLine) return;
        }

        var value = fit.At(opening.Si);
        report.Add($"read off at {Name(opening)}", value.Value, Dimension, null, !outside, value.Error);
    }

    private void Expect(List<(Amount Gate, SettingDelivery Point)> points)
    {
        if (geometry is { Auger: null, Chain: null }) return;
        if (geometry.At(1, catches.Material?.BulkDensity) is null)
        {
            report.Add(DeliveryFindings.GeometryNeeds.At(catches.Material?.BulkDensity is null ? "material.bulkDensity" : "pulsesPerTurn"));
            return;
        }

        foreach (var (gate, point) in points)
        {
            var ratio = point.Estimate.Known.Value / geometry.At(gate.Si, catches.Material!.BulkDensity)!.Value;
            if (Math.Abs(ratio - 1) <= MostUnlike) continue;
            report.Add(DeliveryFindings.UnlikeGeometry.At(
                "runs", FindingValue.Text("gate", Name(gate)), FindingValue.Number("ratio", ratio, Dimension.Fraction)));
        }
    }

    private void Table(GateFit fit, List<(Amount Gate, SettingDelivery Point)> points)
    {
        var rows = new List<IReadOnlyList<ReportCell>>();
        for (var i = 0; i < points.Count; i++)
        {
            var (gate, point) = points[i];
            Add(gate, CalibrationText.Number(point.Estimate.Runs.Count), point.Estimate.Known.Value, Half(point));
            if (i + 1 == points.Count) break;
            var middle = new Amount((gate.Value + points[i + 1].Gate.Value) / 2, gate.Unit);
            var at = fit.At(middle.Si);
            Add(middle, ReportCell.Said("read off"), at.Value.Value, at.Error.Coverage(Probability));
        }

        report.Add(new ReportTable(
            "By gate opening", [new("Opening"), new("Runs"), new("Delivery", Dimension), new("±", Dimension, null, 2), new("Expected", Dimension, null, 3)],
            rows));

        void Add(Amount gate, ReportCell runs, double value, double half) => rows.Add(
            [Name(gate), runs, value, half, geometry.At(gate.Si, catches.Material?.BulkDensity) ?? double.NaN]);
    }

    private void Draw(GateFit fit, List<(Amount Gate, SettingDelivery Point)> points)
    {
        const int Pieces = 32;
        double first = points[0].Point.Setting, last = points[^1].Point.Setting;
        var curve = Enumerable.Range(0, Pieces + 1).Select(i => first + ((last - first) * i / Pieces)).Select(x => (x, At: fit.At(x)))
            .Select(p => new CurvePlace(p.x, p.At.Value.Value, p.At.Error.Coverage(Probability))).ToList();
        var picture = new CurvePicture(
            "Delivery by gate opening", "gate opening", Dimension.Length,
            geometry.PerPulse ? "delivery for each pulse" : "delivery for each turn", Dimension,
            [.. points.Select(p => new CurvePoint(p.Point.Setting, p.Point.Estimate.Known.Value, Half(p.Point)))], curve, points[0].Gate.Unit);
        report.Add(new ReportPicture(picture.Title, picture.Svg));
    }

    private double Half(SettingDelivery point) => point.Estimate.Error().Coverage(Probability);

    private static List<(Amount Gate, SettingDelivery Point)> Points(IReadOnlyList<GateRun> runs, IReadOnlyList<RatioRun?> built)
    {
        var byGate = new SortedDictionary<double, (Amount Gate, List<RatioRun> Runs)>();
        for (var i = 0; i < runs.Count; i++)
        {
            if (built[i] is not { } run) continue;
            // A gate is set to no better than a tenth of a millimetre.
            var key = Math.Round(runs[i].Gate.Si, 4);
            if (!byGate.TryGetValue(key, out var group)) byGate.Add(key, group = (runs[i].Gate, []));
            group.Runs.Add(run);
        }

        return [.. byGate.Select(g => (g.Value.Gate, new SettingDelivery(g.Value.Gate.Si, RatioEstimate.Of(g.Value.Runs))))];
    }

    private static string Name(Amount gate) => QuantityText.WriteNumber(
        Math.Round(gate.Value, 3), TextCulture.UnitedStates) + " " + gate.Unit.Symbol;
}
