using Lanewright.Core.Register;
using Lanewright.Core.Text;

namespace Lanewright.Office;

/// <summary>What the fields of the register are called on forms.</summary>
internal static class FieldLabels
{
    private static readonly Dictionary<string, Phrase> Labels = new(StringComparer.Ordinal)
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
        ["event.note"] = "Note",
        ["rules.yard.address"] = "Address",
        ["rules.yard.country"] = "Country",
        ["rules.yard.accreditation"] = "Accreditation",
        ["any.retired"] = "No longer in use",
        ["any.body"] = "Body",
        ["any.capacity"] = "Capacity",
        ["any.depot"] = "Depot",
        ["any.division"] = "Division",
        ["any.drive"] = "Drive of the metering",
        ["any.gates"] = "Gates",
        ["any.kind"] = "Kind",
        ["any.name"] = "Name",
        ["any.note"] = "Note",
        ["any.role"] = "Role",
        ["any.sensor"] = "Sensor",
        ["any.supplier"] = "Supplier",
    };

    /// <summary>The name of a field on a form.</summary>
    internal static string Of(string kind, string path)
    {
        if (Labels.TryGetValue($"{kind}.{path}", out var label) || Labels.TryGetValue($"any.{path}", out label)) return OfficeText.Say(label);
        var last = path[(path.LastIndexOf('.') + 1)..];
        if (path.StartsWith("recalibrateAfter.", StringComparison.Ordinal)
            && RegisterReader.Changes.FirstOrDefault(change => change.Text == last) is { } known)
            return OfficeText.Say($"Calibrate after: {OfficeText.Word(known.Value)}");
        return char.ToUpperInvariant(last[0]) + last[1..];
    }
}
