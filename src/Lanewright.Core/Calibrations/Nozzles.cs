using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Calibrations;

/// <summary>Whether the nozzles of a bar give the same: a catch of each in one time (docs/method/nozzles.md).</summary>
public static class Nozzles
{
    private const double DefaultLimit = 0.1;

    private static readonly Word<Side>[] Sides =
    [
        new("left", Side.Left, "Left of the truck."),
        new("middle", Side.Middle, "In the middle."),
        new("right", Side.Right, "Right of the truck."),
    ];

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new("nozzles", "Nozzles", "Do all nozzles give the same?", Ask);

    private enum Side
    {
        Left,
        Middle,
        Right,
    }

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var unit = fields.Unit("unit", "Unit of the amounts.", [Dimension.Volume, Dimension.Mass], Need.Optional);
        var time = fields.Quantity<Duration>(
            "time", "How long each nozzle was caught.", Need.Optional, Units.Second, Duration.FromSi(0.5), Duration.FromSi(86_400));
        var limit = SheetReader.Share(fields, "limit", "The yard's limit for a nozzle against the mean; 10 % when left out.", 0.005, 0.5);
        var range = fields.Amount("plusMinus", "How far off a reading may be, plus or minus.", [Dimension.Volume, Dimension.Mass], unit, Need.Optional);
        var nozzles = fields.List("nozzles", "The nozzles, in their order on the bar.", (f, i) => Read(f, i, unit), 2, 100);
        if (nozzles.Count < 2) return null;
        var good = true;
        for (var i = 0; i < nozzles.Count; i++)
        {
            if (nozzles[i].Amount < 0) Refuse(LiquidUseFindings.NozzleNegative, nozzles[i]);
            if (nozzles.Take(i).Any(n => n.Id == nozzles[i].Id)) Refuse(LiquidUseFindings.NozzleTwice, nozzles[i]);
        }

        var dimension = nozzles[0].Dimension;
        if (nozzles.Any(n => n.Dimension != dimension) || (range is { } r && r.Unit.Dimension != dimension))
        {
            fields.Report(LiquidUseFindings.NozzlesMixed, "nozzles");
            good = false;
        }

        if (good && nozzles.All(n => n.Amount == 0))
        {
            fields.Report(LiquidUseFindings.NothingFlowed, "nozzles");
            good = false;
        }

        return good ? report => Work(report, nozzles, dimension, limit?.Si, range?.Si, time?.Si) : null;

        void Refuse(FindingKind kind, Nozzle nozzle)
        {
            fields.Report(kind.At(nozzle.Field, FindingValue.Text("nozzle", nozzle.Id)));
            good = false;
        }
    }

    private static Nozzle? Read(Fields fields, int index, Unit? unit)
    {
        var id = fields.Text("id", "Its name; its place in the list when left out.", Need.Optional, 40) ?? CalibrationText.Number(index + 1);
        var side = fields.Choice("side", "Where it sits.", Sides, Need.Optional);
        var amount = fields.Amount("amount", "What it gave in the time, by volume or weight.", [Dimension.Volume, Dimension.Mass], unit);
        return amount is { } a ? new(id, fields.Path, side, a.Si, a.Unit.Dimension) : null;
    }

    private static void Work(
        CalibrationReport report, IReadOnlyList<Nozzle> nozzles, Dimension dimension, double? statedLimit, double? range, double? seconds)
    {
        var n = nozzles.Count;
        var total = nozzles.Sum(nozzle => nozzle.Amount);
        var mean = total / n;
        var squares = nozzles.Sum(nozzle => (nozzle.Amount - mean) * (nozzle.Amount - mean));
        var deviation = Math.Sqrt(squares / (n - 1));
        var limit = statedLimit ?? DefaultLimit;
        report.Add("coefficient of variation", deviation / mean, Dimension.Fraction);
        report.Add("mean of a nozzle", mean, dimension);
        report.Add("largest less smallest, by the mean", (nozzles.Max(x => x.Amount) - nozzles.Min(x => x.Amount)) / mean, Dimension.Fraction, null, false);
        if (seconds is { } s && dimension is Dimension.Volume) report.Add("flow of all nozzles", total / s, Dimension.VolumeFlow, null, false);
        if (seconds is { } t && dimension is Dimension.Mass) report.Add("flow of all nozzles", total / t, Dimension.MassFlow, null, false);
        report.Say(
            "The coefficient of variation is the standard deviation of {count:count} nozzles, with {less:count} as divisor, by their mean.",
            FindingValue.Number("count", n, Dimension.Fraction), FindingValue.Number("less", n - 1, Dimension.Fraction));
        if (statedLimit is null) report.Add(LiquidUseFindings.NozzleLimitAssumed.At("limit", Share("limit", limit)));
        if (range is { } r && r / mean > limit / 2)
            report.Add(LiquidUseFindings.NozzleReadingCoarse.At("plusMinus", Share("coarse", r / mean), Share("limit", limit)));
        foreach (var nozzle in nozzles)
        {
            var off = (nozzle.Amount / mean) - 1;
            // Room for rounding where a nozzle lies exactly on the limit.
            if (Math.Abs(off) > limit + 1e-9)
                report.Add(LiquidUseFindings.NozzleOff.At(
                    nozzle.Field, FindingValue.Text("nozzle", nozzle.Id), Share("off", off), Share("limit", limit)));
        }

        Compare(report, nozzles, limit);
        report.Add(new ReportTable(
            "The nozzles",
            [new("Nozzle"), new("Side"), new("Amount", dimension), new("Against the mean", Dimension.Fraction, null, 3)],
            [
                .. nozzles.Select(x => (IReadOnlyList<ReportCell>)
                    [x.Id, ReportCell.Said(Array.Find(Sides, w => w.Value == x.Side)?.Text ?? ""), x.Amount, (x.Amount / mean) - 1]),
            ]));
    }

    private static void Compare(CalibrationReport report, IReadOnlyList<Nozzle> nozzles, double limit)
    {
        var left = nozzles.Where(x => x.Side is Side.Left).ToList();
        var right = nozzles.Where(x => x.Side is Side.Right).ToList();
        if (left.Count == 0 || right.Count == 0) return;
        var a = left.Average(x => x.Amount);
        var b = right.Average(x => x.Amount);
        if (b == 0) return;
        report.Add("left against right", (a / b) - 1, Dimension.Fraction, null, false);
        if (Math.Abs((a / b) - 1) > limit + 1e-9)
            report.Add(LiquidUseFindings.SidesDiffer.At("nozzles", Share("off", (a / b) - 1), Share("limit", limit)));
    }

    private static FindingValue Share(string name, double share) => FindingValue.Number(name, share, Dimension.Fraction);

    private sealed record Nozzle(string Id, string Field, Side? Side, double Amount, Dimension Dimension);
}
