using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Works a static check out.</summary>
internal sealed class StaticCheckWork(CalibrationReport report, Catches catches, double? tolerance, CheckBrine? brine)
{
    // Brine is caught in a bucket or read at a flow meter; 1 % unless somebody says better (common practice, no source).
    private const double DefaultBrine = 0.01;

    // Closer than this to the ratio of a known mistake counts as that mistake (ours).
    private const double Like = 0.03;

    private readonly List<IReadOnlyList<ReportCell>> rows = [];
    private bool brineReported;

    internal void Do(IReadOnlyList<CheckRun> runs)
    {
        var built = catches.Build(report, ConstantForm.MassFlow, [.. runs.Select(r => r.Run)]);
        if (tolerance is null) report.Add(DeliveryFindings.NoTolerance.At("tolerance"));
        if (brine is { DoseIsDry: null }) report.Add(DeliveryFindings.DoseBasisAssumed.At("brine.doseIs"));
        var points = new List<List<int>>();
        for (var i = 0; i < runs.Count; i++)
        {
            if (built[i] is null) continue;
            var point = points.Find(p => Same(runs[p[0]], runs[i]));
            if (point is null) points.Add(point = []);
            point.Add(i);
        }

        for (var p = 0; p < points.Count; p++) Point(p + 1, points[p], runs, built);
        if (points.Count == 1) report.Add(DeliveryFindings.OnePoint.At("runs"));
        report.Add(new ReportTable(
            "What was asked and what came",
            [
                new("Point"), new("Dose", null, null, 3), new("Width", Dimension.Length, null, 3), new("Lanes", null, null, 3), new("Speed", Dimension.Speed, null, 3),
                new("What"), new("Asked", Dimension.MassFlow), new("Came", Dimension.MassFlow), new("Off by", Dimension.Fraction, null, 2),
                new("±", Dimension.Fraction, null, 2), new("Verdict"),
            ],
            rows));
    }

    private void Point(int number, List<int> places, IReadOnlyList<CheckRun> runs, IReadOnlyList<RatioRun?> built)
    {
        var first = runs[places[0]];
        var asked = Split(first);
        var salt = places.Select(i => Against(built[i]!, built[i]!.Top, asked.Salt)).ToList();
        var off = Off(number, "salt", first, asked.Salt, salt, out var half);
        if (brine is null) return;
        if (asked.Total is var total && total > 0 && Math.Abs(off) > half
            && Math.Abs(((1 + off) * (brine.DoseIsDry is true ? 1 / (1 - brine.Share) : 1 - brine.Share)) - 1) < Like)
        {
            report.Add(DeliveryFindings.DoseBasis.At(
                "brine.doseIs", FindingValue.Text("point", CalibrationText.Number(number)), Number("off", off),
                FindingValue.Said("basis", brine.DoseIsDry is true ? "salt and brine together" : "dry salt alone")));
        }

        if (brine.Concentration is { } c)
        {
            report.Say(
                "Point {point}: with the salt in the brine, {active:percent} of the dose set is salt.",
                FindingValue.Text("point", CalibrationText.Number(number)), Number("active", asked.SaltAltogether(c) / asked.Total));
        }

        var wet = places.Where(i => runs[i].Brine is not null).ToList();
        var liquid = wet.Select(i => (Place: i, Mass: Liquid(runs[i], i))).Where(l => l.Mass is not null).ToList();
        if (liquid.Count == 0)
        {
            report.Add(DeliveryFindings.NoBrine.At(
                $"runs[{CalibrationText.Number(places[0])}].brine", FindingValue.Text("point", CalibrationText.Number(number))));
            return;
        }

        Off(number, "brine", first, asked.Brine, [.. liquid.Select(l => Against(built[l.Place]!, l.Mass!.Value, asked.Brine))], out _);
        var share = RatioEstimate.Of([.. liquid.Select(l => new RatioRun(
            built[l.Place]!.Id, built[l.Place]!.Field, l.Mass!.Value, l.Mass.Value + built[l.Place]!.Top))]);
        report.Add(
            $"brine by mass of both, point {CalibrationText.Number(number)}", share.Total("brine:share"), Dimension.Fraction, Units.Percent,
            false, share.Error());
    }

    private double Off(int number, string what, CheckRun first, double asked, List<RatioRun> runs, out double half)
    {
        var estimate = RatioEstimate.Of(runs);
        var error = estimate.Error();
        var id = CalibrationText.Number(number);
        var off = estimate.Known.Value - 1;
        half = error.Coverage(report.Head.Probability);
        report.Add($"{(Phrase)what} off by, point {id}", estimate.Total($"point:{id}:{what}:scatter") - 1, Dimension.Fraction, Units.Percent, true, error);
        if (runs.Count == 1) report.Add(DeliveryFindings.OneRunPoint.At(runs[0].Field, FindingValue.Text("point", id)));
        CalibrationText.Spread(report, estimate, "runs");
        var verdict = "";
        if (tolerance is { } limit)
        {
            verdict = Math.Abs(off) + half <= limit * (1 + 1e-9) ? "within" : Math.Abs(off) - half > limit ? "outside" : "cannot tell";
            FindingValue[] values = [FindingValue.Text("point", id), FindingValue.Said("what", what), Number("off", off), Number("half", half), Number("tolerance", limit)];
            if (verdict == "outside") report.Add(DeliveryFindings.CheckOutside.At("runs", values));
            else if (verdict == "cannot tell") report.Add(DeliveryFindings.CheckCannotTell.At("runs", values));
        }

        var byArea = first.Dose.Unit.Dimension is Dimension.AreaRate;
        rows.Add(
        [
            id, new ReportCell(null, first.Dose.Si, first.Dose.Unit), byArea ? first.Across : double.NaN, byArea ? double.NaN : first.Across,
            first.Speed, ReportCell.Said(what), asked, asked * estimate.Known.Value, off, half, ReportCell.Said(verdict),
        ]);
        return off;
    }

    // Dose in mass by area or length, times width or lanes, times speed: mass by time.
    private PrewetDose Split(CheckRun run)
    {
        var flow = run.Dose.Si * run.Across * run.Speed;
        return brine is null ? new(flow, 0)
            : brine.DoseIsDry is true ? PrewetDose.OfDry(flow, brine.Share)
            : PrewetDose.OfTotal(flow, brine.Share);
    }

    private static RatioRun Against(RatioRun run, Measured mass, double flow) => run with { Top = mass, Bottom = run.Bottom * flow };

    private Measured? Liquid(CheckRun run, int place)
    {
        var caught = run.Brine!;
        var field = $"runs[{CalibrationText.Number(place)}].brine";
        if (caught.ByVolume && brine!.Density is null)
        {
            report.Add(DeliveryFindings.BrineDensity.At("brine.density", FindingValue.Text("run", run.Run.Id)));
            return null;
        }

        if (caught.PlusMinus is null && !brineReported)
        {
            brineReported = true;
            report.Add(DeliveryFindings.BrineAssumed.At(field + ".plusMinus", Number("assumed", DefaultBrine)));
        }

        var mass = caught.Amount * (caught.ByVolume ? brine!.Density!.Value : 1);
        return Measured.Of(
            mass, (caught.PlusMinus ?? DefaultBrine) * mass / Math.Sqrt(3),
            ErrorSource.Rectangular($"run:{run.Run.Id}:brine", "catching and measuring of brine"));
    }

    private static bool Same(CheckRun a, CheckRun b) =>
        a.Dose.Unit.Dimension == b.Dose.Unit.Dimension && Near(a.Dose.Si, b.Dose.Si) && Near(a.Across, b.Across) && Near(a.Speed, b.Speed);

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-6 * Math.Abs(a);

    private static FindingValue Number(string name, double share) => FindingValue.Number(name, share, Dimension.Fraction);
}
