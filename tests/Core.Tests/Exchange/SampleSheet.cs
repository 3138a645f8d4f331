using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>A small sheet of our own invention that uses every kind of field once.</summary>
public sealed record SampleSheet(
    string Spreader, SampleMethod Method, DateOnly Day, DateTimeOffset? Begun, bool Moist, double? Factor, string? Notes,
    SampleScale Scale, IReadOnlyList<Mass?> Checks, IReadOnlyList<SampleRun> Runs)
{
    public const string SchemaId = "urn:lanewright:sample:1";

    public static readonly FindingKind GrossBelowTare = new(
        "sample.gross-below-tare", Severity.Warn, "Gross {gross} is below tare {tare}.", "Swap the two.");

    private static readonly Word<SampleMethod>[] Methods =
    [
        new("containers", SampleMethod.Containers, "Each drop is caught in a container."),
        new("whole-truck", SampleMethod.WholeTruck, "The truck is weighed before and after."),
    ];

    private static readonly Mass Nothing = Mass.FromKilograms(0);

    public static SampleSheet? Read(Fields fields)
    {
        var spreader = fields.Text("spreader", "Number of the spreader.", maxLength: 20);
        var method = fields.Choice("method", "How the material is weighed.", Methods);
        var day = fields.Date("day", "Day of the test.");
        var begun = fields.Moment("begun", "When the test began.", Need.Optional);
        var moist = fields.YesNo("moist", "Whether the material is moist.", Need.Optional);
        var factor = fields.Number("factor", "A factor.", Need.Optional, 0, 10);
        var notes = fields.Notes("notes", "Anything worth knowing.");
        var scale = fields.Group("scale", "The scale.", SampleScale.Read);
        var checks = fields.Quantities<Mass>("checks", "Readings of the check mass.", maxItems: 3, least: Nothing);
        var runs = fields.List("runs", "The drops.", SampleRun.Read, minItems: 1, maxItems: 50);
        return spreader is not null && method is { } m && day is { } d && scale is not null && runs.Count > 0
            ? new SampleSheet(spreader, m, d, begun, moist ?? false, factor, notes, scale, checks, runs)
            : null;
    }
}

public enum SampleMethod
{
    Containers,
    WholeTruck,
}

public sealed record SampleScale(Mass Division)
{
    public static SampleScale? Read(Fields fields) =>
        fields.Quantity<Mass>("division", "The scale's division.", unitWhenNone: Units.Pound, least: Mass.FromKilograms(0.0001))
            is { } division ? new SampleScale(division) : null;
}

public sealed record SampleRun(int Place, long Pulses, Mass Gross, Mass Tare)
{
    public static SampleRun? Read(Fields fields, int place)
    {
        var pulses = fields.Count("pulses", "Pulses counted during the drop.", most: 10_000_000);
        var gross = fields.Quantity<Mass>("gross", "Mass of the full container.", most: Mass.FromKilograms(1000));
        var tare = fields.Quantity<Mass>("tare", "Mass of the empty container.", Need.Optional) ?? Mass.FromKilograms(0);
        if (gross is { } full && full.Si < tare.Si)
        {
            fields.Report(
                SampleSheet.GrossBelowTare, "gross",
                FindingValue.Number("gross", full.Si, Dimension.Mass), FindingValue.Number("tare", tare.Si, Dimension.Mass));
        }

        return pulses is { } p && gross is { } g ? new SampleRun(place, p, g, tare) : null;
    }
}
