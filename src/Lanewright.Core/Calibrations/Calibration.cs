using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Calibrations;

/// <summary>All kinds of calibration besides the drop test and its check, and the one road from their sheets to reports.</summary>
public static class Calibration
{
    /// <summary>Every kind.</summary>
    public static IReadOnlyList<CalibrationKind> Kinds { get; } =
    [
        GroundSpeed.Kind,
        RateCard.Kind,
        DeliveryCurve.Kind,
        GateTable.Kind,
        Pattern.Kind,
        StaticCheck.Kind,
        LiquidMeter.Kind,
        PreWet.Kind,
        DirectLiquid.Kind,
        Nozzles.Kind,
        BrineTank.Kind,
        Film.Kind,
    ];

    /// <summary>The kind of a word; null when it is none of these.</summary>
    public static CalibrationKind? Find(string? word) =>
        Kinds.FirstOrDefault(kind => kind.Word.Equals(word?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>The kind that a sheet names; null when it names none of these.</summary>
    public static CalibrationKind? KindOf(SheetTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        return tree.Root is { Kind: NodeKind.Map } root && root.Find("kind") is { Kind: NodeKind.Text } node ? Find(node.Literal) : null;
    }

    /// <summary>Reads a sheet of a kind.</summary>
    public static SheetReading<CalibrationSheet> Read(SheetTree tree, CalibrationKind kind)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ArgumentNullException.ThrowIfNull(kind);
        return TreeFields.Read(tree, SheetCulture.Of(tree), kind.Read);
    }

    /// <summary>The JSON Schema of a kind's sheet.</summary>
    public static string Schema(CalibrationKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return SchemaFields.Describe($"urn:lanewright:sheet:{kind.Word}:1", kind.Name, kind.Read);
    }

    /// <summary>Every finding that a kind of its own may give.</summary>
    public static IReadOnlyList<FindingKind> Findings { get; } =
    [
        .. CalibrationFindings.All,
        .. LiquidFindings.All,
        .. DeliveryFindings.All,
    ];
}
