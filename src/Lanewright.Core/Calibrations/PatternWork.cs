using Lanewright.Core.Charts;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>Works a spread pattern out.</summary>
internal sealed class PatternWork(
    CalibrationReport report, RoadEdges lane, RoadEdges? shoulders, double? panWidth, double? massPlusMinus)
{
    // A kitchen or post scale in a yard (common practice, no source).
    private const double DefaultMass = 0.001;

    // More than this share of the greatest height in the outermost piece means that some fell beyond it (ours).
    private const double Edge = 0.05;
    private const double Touching = 1e-6;

    private IReadOnlyList<PatternStrip> shape = [];
    private Measured[] masses = [];
    private IReadOnlyList<IReadOnlyList<double>> passes = [];

    internal void Do(IReadOnlyList<PatternPiece> typed, IReadOnlyList<double> swaths, bool backAndForth)
    {
        var pieces = typed.OrderBy(p => p.Middle).ToList();
        report.Add(DeliveryFindings.NotARate.At("catches"));
        if (!Placed(pieces)) return;
        if (passes.Count == 1) report.Add(DeliveryFindings.OnePatternPass.At("catches"));
        if (massPlusMinus is null)
            report.Add(DeliveryFindings.PanMassAssumed.At("massPlusMinus", FindingValue.Number("assumed", DefaultMass, Dimension.Mass)));
        var profile = Profile([.. masses.Select(m => m.Value)]);
        if (!(SpreadPattern.MassWithin(profile, double.NegativeInfinity, double.PositiveInfinity) > 0))
        {
            report.Add(DeliveryFindings.NothingLanded.At("catches"));
            return;
        }

        Shares();
        Ends(profile);
        report.Add("width at half the greatest catch", SpreadPattern.WidthAtHalf(profile), Dimension.Length, null, false);
        if (swaths.Count > 0) Overlaps(profile, swaths, backAndForth);
        Table(profile);
        Draw(profile);
    }

    // The strip that each piece stands for, and what each pass caught; false, with a finding, when the pieces contradict each other.
    private bool Placed(List<PatternPiece> pieces)
    {
        var count = pieces[0].Masses.Count;
        if (pieces.Exists(p => p.Masses.Count != count))
        {
            report.Add(DeliveryFindings.PassesDiffer.At("catches"));
            return false;
        }

        if (panWidth is null && pieces.Exists(p => p.From is null))
        {
            report.Add(DeliveryFindings.NoPanWidth.At("panWidth"));
            return false;
        }

        var strips = new List<PatternStrip>();
        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            var (before, after) = (i > 0 ? pieces[i - 1] : null, i + 1 < pieces.Count ? pieces[i + 1] : null);
            // A pan stands for the road up to halfway to its neighbours; an outer one reaches as far out as in.
            var left = piece.From ?? (before is null ? null : before.To ?? ((before.Middle + piece.Middle) / 2));
            var right = piece.To ?? (after is null ? null : after.From ?? ((piece.Middle + after.Middle) / 2));
            left ??= (2 * piece.Middle) - right;
            right ??= (2 * piece.Middle) - left;
            strips.Add(new(left!.Value, right!.Value, 0));
        }

        if (strips.Zip(strips.Skip(1)).Any(pair => pair.Second.From < pair.First.To - Touching) || strips.Exists(s => !(s.To > s.From)))
        {
            report.Add(DeliveryFindings.PiecesOverlap.At("catches"));
            return false;
        }

        shape = strips;
        // Mass by width: a pan's own width, or the whole block.
        var heights = pieces.Select((p, i) => 1 / (p.From is null ? panWidth!.Value : strips[i].To - strips[i].From)).ToList();
        passes = [.. Enumerable.Range(0, count).Select(j => (IReadOnlyList<double>)[.. pieces.Select((p, i) => p.Masses[j] * heights[i])])];
        // Like catches are read alike in each pass: more passes do not lessen what the scale is off.
        var reading = (massPlusMinus ?? DefaultMass) / Math.Sqrt(3);
        masses =
        [
            .. pieces.Select((p, i) => Measured.Of(p.Masses.Sum() / count * heights[i], reading * heights[i],
                ErrorSource.Normal($"piece:{CalibrationText.Number(i)}:mass", "weighing of pans"))),
        ];
        return true;
    }

    private void Shares()
    {
        Share("in the lane", lane.Left, lane.Right, true);
        if (shoulders is { } s)
        {
            Share("left shoulder", s.Left, lane.Left, false);
            Share("right shoulder", lane.Right, s.Right, false);
        }

        Share("beyond, left", double.NegativeInfinity, Math.Min(lane.Left, shoulders?.Left ?? lane.Left), false);
        Share("beyond, right", Math.Max(lane.Right, shoulders?.Right ?? lane.Right), double.PositiveInfinity, false);
        Share("left of the truck's middle", double.NegativeInfinity, 0, false);
        Share("right of the truck's middle", 0, double.PositiveInfinity, false);
    }

    private void Share(Phrase name, double left, double right, bool main)
    {
        var widths = shape.Select(s => s.To - s.From).ToArray();
        var within = shape.Select(s => s.Within(left, right)).ToArray();
        var share = Measured.Linear(masses, within) / Measured.Linear(masses, widths);
        ErrorDistribution? error = null;
        if (passes.Count > 1)
        {
            var each = passes.Select(p => p.Zip(within, (h, w) => h * w).Sum() / p.Zip(widths, (h, w) => h * w).Sum())
                .Where(double.IsFinite).ToList();
            if (each.Count > 1)
            {
                var mean = each.Average();
                var variance = each.Sum(e => (e - mean) * (e - mean)) / (each.Count - 1) / each.Count;
                if (variance > 0) error = ErrorDistribution.OfEstimate(share, Math.Sqrt(variance), each.Count - 1);
                share = share.With(ErrorSource.Normal("passes", "from pass to pass", each.Count - 1), Math.Sqrt(variance));
            }
        }

        report.Add(name, share, Dimension.Fraction, Units.Percent, main, error);
    }

    private void Ends(PatternStrip[] profile)
    {
        var most = profile.Max(s => s.Height);
        var outer = Math.Max(profile[0].Height, profile[^1].Height) / most;
        if (outer > Edge) report.Add(DeliveryFindings.CatchEndsEarly.At("catches", FindingValue.Number("share", outer, Dimension.Fraction)));
        if (profile[0].From > lane.Left + Touching || profile[^1].To < lane.Right - Touching)
            report.Add(DeliveryFindings.LaneNotCovered.At("lane"));
    }

    private void Overlaps(PatternStrip[] profile, IReadOnlyList<double> swaths, bool backAndForth)
    {
        report.Add(DeliveryFindings.OverlapOfSwaths.At("swaths"));
        report.Add(new ReportTable(
            backAndForth ? "Overlap of passes driven back and forth" : "Overlap of passes driven one way",
            [
                new("Between passes", Dimension.Length, null, 3), new("Variation, divisor n − 1", Dimension.Fraction, null, 3),
                new("Variation, divisor n", Dimension.Fraction, null, 3),
            ],
            [
                .. swaths.Select(s => (Swath: s, Overlap: SpreadPattern.Overlap(profile, s, backAndForth)))
                    .Select(o => (IReadOnlyList<ReportCell>)[o.Swath, o.Overlap.VariationSample, o.Overlap.VariationWhole]),
            ]));
    }

    private void Table(PatternStrip[] profile)
    {
        var total = SpreadPattern.MassWithin(profile, double.NegativeInfinity, double.PositiveInfinity);
        report.Add(new ReportTable(
            "Across the road",
            [
                new("From", Dimension.Length, null, 3), new("To", Dimension.Length, null, 3),
                new("Share of the catch", Dimension.Fraction, null, 3),
            ],
            [.. profile.Select(s => (IReadOnlyList<ReportCell>)[s.From, s.To, s.Height * (s.To - s.From) / total])]));
    }

    private void Draw(PatternStrip[] profile)
    {
        List<(double, Phrase)> edges = [(lane.Left, "lane"), (lane.Right, "lane")];
        if (shoulders is { } s) edges.AddRange([(s.Left, "shoulder"), (s.Right, "shoulder")]);
        var picture = new ProfilePicture(profile, edges);
        report.Add(new ReportPicture(ProfilePicture.Title, picture.Svg));
    }

    private PatternStrip[] Profile(IReadOnlyList<double> heights) => [.. shape.Select((s, i) => s with { Height = heights[i] })];
}
