using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Register;

/// <summary>A material the yard uses.</summary>
public sealed record RegisterMaterial
{
    /// <summary>What a test needs of it.</summary>
    public required Material Material { get; init; }

    /// <summary>Who supplies it.</summary>
    public string Supplier { get; init; } = "";

    /// <summary>Price of one metric ton (1,000 kg) in the yard's currency; null when nobody said.</summary>
    public double? PricePerTonne { get; init; }

    /// <summary>True when it is no longer used.</summary>
    public bool Retired { get; init; }
}

/// <summary>A scale the yard uses.</summary>
/// <param name="Scale">What a test needs of it.</param>
/// <param name="Depot">Where it stands, by name of the depot.</param>
/// <param name="Retired">True when it is no longer used.</param>
public sealed record RegisterScale(Scale Scale, string Depot, bool Retired);

/// <summary>What a person may do.</summary>
public enum PersonRole
{
    /// <summary>Looks, changes nothing.</summary>
    Viewer,

    /// <summary>Drives and takes part in tests.</summary>
    Operator,

    /// <summary>Does tests and keeps the register.</summary>
    Technician,

    /// <summary>Decides, keeps people and rules.</summary>
    Supervisor,
}

/// <summary>A person, by initials or name.</summary>
/// <param name="Name">Initials or name.</param>
/// <param name="Role">What the person may do.</param>
/// <param name="Retired">True when no longer with the yard.</param>
public sealed record RegisterPerson(string Name, PersonRole Role, bool Retired);

/// <summary>A depot.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Retired">True when no longer in use.</param>
public sealed record RegisterDepot(string Name, bool Retired);

/// <summary>Something done to a spreader that may change what it delivers.</summary>
public enum SpreaderChange
{
    /// <summary>Work on pump, valve, motor or oil.</summary>
    Hydraulics,

    /// <summary>Auger, chain or belt.</summary>
    Metering,

    /// <summary>Gate or its opening.</summary>
    Gate,

    /// <summary>Sensor or its wheel.</summary>
    Sensor,

    /// <summary>Tyres, axle or ground-speed sensor.</summary>
    Tyres,

    /// <summary>Battery changed or power lost.</summary>
    Battery,

    /// <summary>Another material.</summary>
    Material,

    /// <summary>The same material from another supplier or pile.</summary>
    Supplier,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Something done to a spreader.</summary>
/// <param name="Change">What.</param>
/// <param name="Date">When.</param>
/// <param name="Note">Anything else.</param>
public sealed record RegisterEvent(SpreaderChange Change, DateOnly Date, string Note);

/// <summary>Who the yard is: what its certificates say of it. Empty where nobody said.</summary>
public sealed record YardFacts
{
    /// <summary>Name of the yard or agency.</summary>
    public string Name { get; init; } = "";

    /// <summary>Its address, on one line.</summary>
    public string Address { get; init; } = "";

    /// <summary>Its country: two capital letters of ISO 3166-1.</summary>
    public string Country { get; init; } = "";

    /// <summary>For whom it calibrates; itself when empty.</summary>
    public string Customer { get; init; } = "";

    /// <summary>Its accreditation: the body and the number. Without one every certificate is an in-house record.</summary>
    public string Accreditation { get; init; } = "";
}

/// <summary>The yard's rules.</summary>
public sealed record YardRules
{
    /// <summary>Who the yard is.</summary>
    public YardFacts Yard { get; init; } = new();

    /// <summary>Tolerance for delivered against weighed, as a share.</summary>
    public double Tolerance { get; init; } = TestSheet.DefaultTolerance;

    /// <summary>Month in which a season starts.</summary>
    public int SeasonMonth { get; init; } = 9;

    /// <summary>Day of that month.</summary>
    public int SeasonDay { get; init; } = 1;

    /// <summary>Changes after which a spreader is calibrated again.</summary>
    public IReadOnlyList<SpreaderChange> RecalibrateAfter { get; init; } =
    [
        SpreaderChange.Hydraulics, SpreaderChange.Metering, SpreaderChange.Gate, SpreaderChange.Sensor,
        SpreaderChange.Tyres, SpreaderChange.Battery, SpreaderChange.Material, SpreaderChange.Supplier,
    ];

    /// <summary>The last start of a season on or before a day.</summary>
    public DateOnly SeasonStart(DateOnly day)
    {
        var start = new DateOnly(day.Year, SeasonMonth, SeasonDay);
        return start <= day ? start : new DateOnly(day.Year - 1, SeasonMonth, SeasonDay);
    }
}
