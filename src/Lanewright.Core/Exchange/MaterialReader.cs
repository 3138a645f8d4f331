using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Exchange;

/// <summary>Reads a material.</summary>
internal static class MaterialReader
{
    internal static Material? Read(Fields fields, BareUnits bare)
    {
        var name = fields.Text("name", "Name of the material.");
        var density = fields.Quantity<Density>(
            "bulkDensity", "Bulk density.", Need.Optional, bare.Density, Density.FromSi(100), Density.FromSi(5000),
            true);
        var moisture = fields.Group(
            "moisture", "Water in it; when stated, the constant is given for dry material.", MoistureOf, Need.Optional);
        return name is null ? null : new() { Name = name, BulkDensity = density, Moisture = moisture };
    }

    private static Moisture? MoistureOf(Fields fields)
    {
        var share = SheetReader.Share(
            fields, "share", "Share of water by mass.", 0, 0.5, Need.Required);
        var dry = fields.Choice("of", "Share of which mass.", SheetWords.MoistureBases);
        var plusMinus = SheetReader.Share(fields, "plusMinus", "Half the range the share may lie in; taken as exact when left out.", 0, 0.2);
        return share is { } s && dry is { } d ? new(s.Si, d, plusMinus?.Si) : null;
    }
}
