using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Spread pattern: pans across the road, or mats swept block by block; how much lies in the lane, on the shoulders and beyond
/// (docs/method/pattern.md).
/// </summary>
public static class Pattern
{
    private static readonly Word<bool>[] Ways =
    [
        new("one-way", false, "Every pass is driven the same way."),
        new("back-and-forth", true, "Every second pass is driven the other way."),
    ];

    /// <summary>The kind.</summary>
    public static CalibrationKind Kind { get; } = new(
        "pattern", "Spread pattern", "Where does the material land: in the lane, on the shoulders, beyond?", Ask);

    private static Action<CalibrationReport>? Ask(Fields fields, CalibrationHead head)
    {
        var length = head.Units is UnitSystem.Si ? Units.Metre : head.Units is UnitSystem.UnitedStates ? Units.Foot : null;
        var lane = fields.Group("lane", "Edges of the lane.", f => EdgesOf(f, length));
        var shoulders = fields.Group("shoulders", "Outer edges of the shoulders.", f => EdgesOf(f, length), Need.Optional);
        var pan = fields.Quantity<Length>(
            "panWidth", "Width of a pan across the road, when pans are placed by their middle.", Need.Optional, length,
            Length.FromSi(0.05), Length.FromSi(5), true);
        var plusMinus = fields.Quantity<Mass>(
            "massPlusMinus", "How far off each mass may be, plus or minus; 1 g when left out.", Need.Optional, Units.Gram,
            Mass.FromSi(0), Mass.FromSi(10));
        var swaths = fields.Quantities<Length>(
            "swaths", "Distances between passes to work the overlap out for, where passes overlap.", 0, 20, length,
            Length.FromSi(0.5), Length.FromSi(60));
        var ways = fields.Choice("passesDriven", "How the passes follow each other, for the overlap; one way when left out.", Ways, Need.Optional);
        var pieces = fields.List("catches", "Pans or blocks, from left to right.", (f, _) => PieceOf(f, length), 3, 200);
        if (lane is null || pieces.Count < 3) return null;
        return report => new PatternWork(report, lane, shoulders, pan?.Si, plusMinus?.Si)
            .Do(pieces, [.. swaths.Where(s => s is not null).Select(s => s!.Value.Si)], ways ?? false);
    }

    private static RoadEdges? EdgesOf(Fields fields, Unit? length)
    {
        var left = Place(fields, "left", "Left edge from the truck's middle; negative to the left.", length, Need.Required);
        var right = Place(fields, "right", "Right edge from the truck's middle; negative to the left.", length, Need.Required);
        if (left is not { } l || right is not { } r) return null;
        if (l.Si < r.Si) return new(l.Si, r.Si);
        fields.Report(
            DeliveryFindings.EdgesTurned, "right", FindingValue.Number("left", l.Si, Dimension.Length),
            FindingValue.Number("right", r.Si, Dimension.Length));
        return null;
    }

    private static PatternPiece? PieceOf(Fields fields, Unit? length)
    {
        var at = Place(fields, "at", "Middle of the pan from the truck's middle; negative to the left.", length, Need.Optional);
        var from = Place(fields, "from", "Left edge of the block.", length, Need.Optional);
        var to = Place(fields, "to", "Right edge of the block.", length, Need.Optional);
        var masses = fields.Quantities<Mass>(
            "masses", "What it caught, one mass for each pass, empty pan taken off; grams when no unit is given.", 1, 50, Units.Gram,
            Mass.FromSi(0), Mass.FromSi(1000));
        if (masses.Count == 0 || masses.Any(m => m is null)) return null;
        var caught = masses.Select(m => m!.Value.Si).ToList();
        if (at is { } middle && from is null && to is null) return new(middle.Si, null, null, caught);
        if (at is null && from is { } f && to is { } t && f.Si < t.Si) return new((f.Si + t.Si) / 2, f.Si, t.Si, caught);
        fields.Report(DeliveryFindings.PieceNowhere, null);
        return null;
    }

    private static Length? Place(Fields fields, string name, string doc, Unit? length, Need need) => fields.Quantity<Length>(
        name, doc, need, length, Length.FromSi(-50), Length.FromSi(50), true);
}

/// <summary>Two edges across the road, m from the truck's middle.</summary>
internal sealed record RoadEdges(double Left, double Right);

/// <summary>A pan (by its middle) or a block (by its edges) and what each pass left in it.</summary>
internal sealed record PatternPiece(double Middle, double? From, double? To, IReadOnlyList<double> Masses);
