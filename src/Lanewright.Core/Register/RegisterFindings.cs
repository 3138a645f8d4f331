using Lanewright.Core.Findings;

namespace Lanewright.Core.Register;

/// <summary>What can be wrong with a record of the register beyond its single fields.</summary>
public static class RegisterFindings
{
    /// <summary>Two records of one kind with one name.</summary>
    public static readonly FindingKind Taken = new(
        "register.taken", Severity.Stop,
        "The register has \"{read}\" already.",
        "Change the record that is there, or give this one another name.");

    /// <summary>A day that its month does not have.</summary>
    public static readonly FindingKind NoSuchDay = new(
        "register.no-such-day", Severity.Stop,
        "Month {month:count} has no day {day:count} in every year.",
        "Choose a day that the month has in every year.");

    /// <summary>A change without a reason.</summary>
    public static readonly FindingKind WhyMissing = new(
        "register.why-missing", Severity.Stop,
        "The record is changed, and nothing says why.",
        "Write in a few words why: for example \"new number on the door\".");

    /// <summary>All of them, in the order above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } = [Taken, NoSuchDay, WhyMissing];
}
