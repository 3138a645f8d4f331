namespace Lanewright.Office;

/// <summary>What the fields of the register are called on forms.</summary>
internal static class FieldLabels
{
    private static readonly Dictionary<string, string> Labels = new(StringComparer.Ordinal)
    {
        ["spreader.id"] = "Number",
        ["spreader.loop"] = "Control",
        ["spreader.constant"] = "Kind of constant",
        ["spreader.unit"] = "Unit of the constant",
        ["spreader.resolution"] = "Step of the constant",
        ["spreader.lowest"] = "Lowest constant",
        ["spreader.highest"] = "Highest constant",
        ["spreader.current"] = "Constant now",
        ["spreader.metering"] = "Metering device",
        ["spreader.liquid"] = "Liquid system",
        ["spreader.material"] = "Usual material",
        ["spreader.seasonMass"] = "Mass in a season",
        ["scale.id"] = "Name",
        ["scale.class"] = "Accuracy class",
        ["scale.rules"] = "Rules of the class",
        ["scale.tolerance"] = "Own tolerance",
        ["scale.relativeTolerance"] = "Own tolerance, share of the load",
        ["scale.verified"] = "Last verified",
        ["material.bulkDensity"] = "Bulk density",
        ["material.moisture.share"] = "Moisture",
        ["material.moisture.of"] = "Moisture is a share of",
        ["material.moisture.plusMinus"] = "Moisture, plus or minus",
        ["material.pricePerTonne"] = "Price of a metric ton",
        ["rules.tolerance"] = "Tolerance",
        ["rules.seasonMonth"] = "Season starts in month",
        ["rules.seasonDay"] = "Season starts on day",
        ["rules.yard.name"] = "Name of the yard or agency",
        ["rules.yard.customer"] = "Calibrates for",
        ["event.event"] = "What was done",
        ["event.date"] = "Day",
    };

    /// <summary>The name of a field on a form.</summary>
    internal static string Of(string kind, string path)
    {
        if (Labels.TryGetValue($"{kind}.{path}", out var label)) return label;
        if (path == "retired") return "No longer in use";
        var last = path[(path.LastIndexOf('.') + 1)..];
        var word = path.StartsWith("recalibrateAfter.", StringComparison.Ordinal) ? $"Calibrate after: {last}" : last;
        return char.ToUpperInvariant(word[0]) + word[1..];
    }
}
