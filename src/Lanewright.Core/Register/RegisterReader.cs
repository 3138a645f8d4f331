using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Register;

/// <summary>Reads the records of the register; the same questions over a CSV row, a form or an entry's payload.</summary>
public static class RegisterReader
{
    /// <summary>The words of the roles.</summary>
    public static IReadOnlyList<Word<PersonRole>> Roles { get; } =
    [
        new("viewer", PersonRole.Viewer, "Looks, changes nothing."),
        new("operator", PersonRole.Operator, "Drives and takes part in tests."),
        new("technician", PersonRole.Technician, "Does tests and keeps the register."),
        new("supervisor", PersonRole.Supervisor, "Decides, keeps people and rules."),
    ];

    /// <summary>The words of changes made to a spreader.</summary>
    public static IReadOnlyList<Word<SpreaderChange>> Changes { get; } =
    [
        new("hydraulics", SpreaderChange.Hydraulics, "Pump, valve, motor or oil."),
        new("metering", SpreaderChange.Metering, "Auger, chain or belt."),
        new("gate", SpreaderChange.Gate, "Gate or its opening."),
        new("sensor", SpreaderChange.Sensor, "Sensor or its wheel."),
        new("tyres", SpreaderChange.Tyres, "Tyres, axle or ground-speed sensor."),
        new("battery", SpreaderChange.Battery, "Battery changed or power lost."),
        new("material", SpreaderChange.Material, "Another material."),
        new("supplier", SpreaderChange.Supplier, "The same material from another supplier or pile."),
        new("other", SpreaderChange.Other, "Anything else."),
    ];

    /// <summary>A spreader; null when its number, loop, form or unit is missing or wrong.</summary>
    public static RegisterSpreader? Spreader(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var spreader = SpreaderReader.Read(fields);
        var depot = Words(fields, "depot", "Depot it belongs to.");
        var body = Words(fields, "body", "Body or hopper, such as V-box hopper.");
        var gates = Words(fields, "gates", "Gates and their openings.");
        var sensor = Words(fields, "sensor", "Sensor on the metering device.");
        var drive = Words(fields, "drive", "Drive of the metering device.");
        var liquid = Words(fields, "liquid", "Liquid system.");
        var material = Words(fields, "material", "Material it usually carries.");
        var season = fields.Quantity<Mass>(
            "seasonMass", "Mass it puts down in a season.", Need.Optional, null, Mass.FromSi(1), Mass.FromSi(1e8));
        var note = fields.Notes("note", "Anything else.");
        var retired = fields.YesNo("retired", "Yes when it is no longer in use.", Need.Optional);
        return spreader is null
            ? null
            : new()
            {
                Spreader = spreader,
                Depot = depot,
                Body = body,
                Gates = gates,
                Sensor = sensor,
                Drive = drive,
                Liquid = liquid,
                Material = material,
                SeasonMass = season,
                Note = note ?? "",
                Retired = retired ?? false,
            };
    }

    /// <summary>A material; null when its name is missing.</summary>
    public static RegisterMaterial? Material(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var material = MaterialReader.Read(fields, BareUnits.Of(null));
        var supplier = Words(fields, "supplier", "Who supplies it.");
        var price = fields.Number(
            "pricePerTonne", "Price of one metric ton (1,000 kg) in the yard's currency.", Need.Optional, 0, 1e6);
        var retired = fields.YesNo("retired", "Yes when it is no longer used.", Need.Optional);
        return material is null
            ? null
            : new() { Material = material, Supplier = supplier, PricePerTonne = price, Retired = retired ?? false };
    }

    /// <summary>A scale; null when its name is missing.</summary>
    public static RegisterScale? Scale(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var scale = ScaleReader.Read(fields, BareUnits.Of(null));
        var depot = Words(fields, "depot", "Where it stands.");
        var retired = fields.YesNo("retired", "Yes when it is no longer used.", Need.Optional);
        return scale is null ? null : new(scale, depot, retired ?? false);
    }

    /// <summary>A person; null when name or role is missing.</summary>
    public static RegisterPerson? Person(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var name = fields.Text("name", "Initials or name.", maxLength: 60);
        var role = fields.Choice("role", "What the person may do.", Roles);
        var retired = fields.YesNo("retired", "Yes when no longer with the yard.", Need.Optional);
        return name is not null && role is { } r ? new(name, r, retired ?? false) : null;
    }

    /// <summary>A depot; null when its name is missing.</summary>
    public static RegisterDepot? Depot(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var name = fields.Text("name", "Name of the depot.", maxLength: 60);
        var retired = fields.YesNo("retired", "Yes when no longer in use.", Need.Optional);
        return name is null ? null : new(name, retired ?? false);
    }

    /// <summary>The yard's rules; what is left out is as <see cref="YardRules"/> has it. Null when something is wrong.</summary>
    public static YardRules? Rules(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var usual = new YardRules();
        var tolerance = SheetReader.Share(
            fields, "tolerance", "Tolerance for delivered against weighed; 5 % when left out.", 0.001, 0.5);
        var month = fields.Count("seasonMonth", "Month in which the season starts, 1 to 12; 9 when left out.", Need.Optional, 1, 12);
        var day = fields.Count("seasonDay", "Day of that month; 1 when left out.", Need.Optional, 1, 31);
        var after = fields.Group(
            "recalibrateAfter", "Changes after which a spreader is calibrated again.", group => ChangesOf(group, usual), Need.Optional);
        var yard = fields.Group("yard", "Who the yard is, for its certificates.", YardOf, Need.Optional);
        var (m, d) = ((int)(month ?? usual.SeasonMonth), (int)(day ?? usual.SeasonDay));
        // A year without a 29 February: the season starts in every year.
        if (d > DateTime.DaysInMonth(2025, m))
        {
            fields.Report(RegisterFindings.NoSuchDay, "seasonDay", Place.Count("month", m), Place.Count("day", d));
            return null;
        }

        return new()
        {
            Yard = yard ?? usual.Yard,
            Tolerance = tolerance?.Si ?? usual.Tolerance,
            SeasonMonth = m,
            SeasonDay = d,
            RecalibrateAfter = after?.Changes ?? usual.RecalibrateAfter,
        };
    }

    /// <summary>Something done to a spreader; null when what or when is missing.</summary>
    public static RegisterEvent? Event(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var change = fields.Choice("event", "What was done.", Changes);
        var date = fields.Date("date", "The day it was done.");
        var note = fields.Text("note", "Anything else.", Need.Optional, 500);
        return change is { } c && date is { } d ? new(c, d, note ?? "") : null;
    }

    private static YardFacts YardOf(Fields fields)
    {
        var name = Words(fields, "name", "Name of the yard or agency, as certificates give it.");
        var address = fields.Text("address", "Its address, on one line.", Need.Optional, 200);
        var country = fields.Text("country", "Its country, two letters of ISO 3166-1, such as US.", Need.Optional, 60);
        if (country is not null && !(country.Length == 2 && country.All(char.IsAsciiLetter)))
            fields.Report(RegisterFindings.NotACountry, "country", FindingValue.Text("read", country));
        var customer = Words(fields, "customer", "For whom it calibrates; itself when left out.");
        var accreditation = Words(
            fields, "accreditation", "Accreditation, body and number. Leave empty without one: certificates then say in-house record.");
        return new()
        {
            Name = name, Address = address ?? "", Country = (country ?? "").ToUpperInvariant(), Customer = customer, Accreditation = accreditation,
        };
    }

    private static ChosenChanges ChangesOf(Fields fields, YardRules usual)
    {
        var chosen = new List<SpreaderChange>();
        foreach (var word in Changes)
        {
            if (fields.YesNo(word.Text, word.Doc, Need.Optional) ?? usual.RecalibrateAfter.Contains(word.Value)) chosen.Add(word.Value);
        }

        return new(chosen);
    }

    private sealed record ChosenChanges(IReadOnlyList<SpreaderChange> Changes);

    private static string Words(Fields fields, string name, string doc) =>
        fields.Text(name, doc, Need.Optional, 120) ?? "";
}
