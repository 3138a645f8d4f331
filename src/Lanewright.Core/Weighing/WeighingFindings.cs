using Lanewright.Core.Findings;

namespace Lanewright.Core.Weighing;

/// <summary>What can be said of the scale and the weighing.</summary>
public static class WeighingFindings
{
    /// <summary>A reading is negative.</summary>
    public static readonly FindingKind NegativeReading = new(
        "weigh.negative-reading", Severity.Stop,
        "The reading {reading} is below zero.",
        "Zero the scale and weigh again, or correct the typing.");

    /// <summary>A reading lies above capacity.</summary>
    public static readonly FindingKind Overload = new(
        "weigh.overload", Severity.Stop,
        "The reading {reading} is more than the capacity {capacity} of scale {scale}.",
        "Use a larger scale or weigh in parts; check the capacity on the plate.");

    /// <summary>What was caught weighs nothing or less.</summary>
    public static readonly FindingKind NothingCaught = new(
        "weigh.nothing-caught", Severity.Stop,
        "Run {run} comes to a net of {net}: nothing was caught.",
        "Check whether tare and gross, or before and after, are swapped.");

    /// <summary>A container is lighter full than empty.</summary>
    public static readonly FindingKind LighterWhenFull = new(
        "weigh.lighter-when-full", Severity.Stop,
        "A container of run {run} weighs {gross} full and {tare} empty.",
        "Check whether tare and gross are swapped, and the typing.");

    /// <summary>The net is below the smallest load the scale is meant for.</summary>
    public static readonly FindingKind BelowLeastLoad = new(
        "weigh.below-least-load", Severity.Warn,
        "Run {run} weighed {net} net in one weighing; scale {scale} is meant for {least} or more.",
        "Drop more for each weighing or use a scale with a finer division.");

    /// <summary>Readings do not fall on the division.</summary>
    public static readonly FindingKind OffDivision = new(
        "weigh.off-division", Severity.Warn,
        "{count} reading of run {run}, {reading}, does not fall on the division {division} of scale {scale}."
        + "|{count} readings of run {run}, the first {reading}, do not fall on the division {division} of scale {scale}.",
        "Check the division on the plate, the unit and the typing.");

    /// <summary>No division stated.</summary>
    public static readonly FindingKind NoDivision = new(
        "scale.no-division", Severity.Warn,
        "The division of scale {scale} is not stated, so the rounding of its readings is not counted.",
        "Read the division d from the plate or the display and enter it.");

    /// <summary>No tolerance known.</summary>
    public static readonly FindingKind NoTolerance = new(
        "scale.no-tolerance", Severity.Stop,
        "Nothing says how wrong scale {scale} may be: no accuracy class with a division, and no tolerance of its own.",
        "Enter the class from the plate, or a tolerance from its last check against weights.");

    /// <summary>Class without table.</summary>
    public static readonly FindingKind ClassUnderRules = new(
        "scale.class-rules", Severity.Stop,
        "The rules chosen for scale {scale} have no class like the one entered.",
        "Class III L belongs to Handbook 44; choose those rules or another class.");

    /// <summary>More divisions than the class allows.</summary>
    public static readonly FindingKind TooManyDivisions = new(
        "scale.too-many-divisions", Severity.Warn,
        "Scale {scale} would have {divisions} divisions; its class allows {most}.",
        "Check capacity, division and class on the plate.");

    /// <summary>No verification date.</summary>
    public static readonly FindingKind NotVerified = new(
        "scale.not-verified", Severity.Warn,
        "No date of a verification is known for scale {scale}; its tolerance is taken on trust.",
        "Check it with known weights near the load used, and enter the date.");

    /// <summary>Verified too long ago.</summary>
    public static readonly FindingKind VerifiedLongAgo = new(
        "scale.verified-long-ago", Severity.Warn,
        "Scale {scale} was last verified {days} days before the test.",
        "Check it with known weights before relying on it (a year is common practice, no source; local rules may differ).");

    /// <summary>Verified after the test.</summary>
    public static readonly FindingKind VerifiedLater = new(
        "scale.verified-later", Severity.Warn,
        "Scale {scale} was verified after the test; what it was like on the day is not known.",
        "State the verification before the test, or say that it needed no adjustment.");

    /// <summary>Whether the scale's error is common to both readings was not said.</summary>
    public static readonly FindingKind CommonErrorNotStated = new(
        "weigh.common-error-not-stated", Severity.Warn,
        "Is the error of scale {scale} the same in both readings of a difference? Nobody said. If it is, the "
        + "uncertainty is {common:percent}; if not, {separate:percent}. The wider one is used.",
        "Answer commonError: yes when both readings were taken on the same scale, in the same place on it, within "
        + "minutes and without adjustment in between; otherwise no.");

    /// <summary>The short cut was used.</summary>
    public static readonly FindingKind CountedContainers = new(
        "weigh.counted-containers", Severity.Warn,
        "Run {run} counts {count} containers as equals of the one that was weighed. Unequal filling alone makes that "
        + "uncertain by {cost:percent} (standard uncertainty).",
        "Weigh every container, or several to know how their filling scatters.");

    /// <summary>Spread of the fill was assumed.</summary>
    public static readonly FindingKind FillSpreadAssumed = new(
        "weigh.fill-spread-assumed", Severity.Note,
        "How much the filling of run {run} scatters is not stated; {spread:percent} is assumed (common practice, no source).",
        "Weigh a few containers and enter the standard deviation as fillSpread.");

    /// <summary>Fuel not stated.</summary>
    public static readonly FindingKind FuelNotStated = new(
        "weigh.fuel-not-stated", Severity.Warn,
        "Run {run} weighs the truck before and after, but nothing is said of the fuel burnt in between; 0 is used.",
        "Enter fuelBurnt, 0 lb if the engine stood still.");

    /// <summary>People not stated.</summary>
    public static readonly FindingKind PeopleNotStated = new(
        "weigh.people-not-stated", Severity.Warn,
        "Run {run} weighs the truck before and after, but nothing is said of people: a driver in one reading and not "
        + "in the other shifts the result by a whole person.",
        "Enter samePeople: yes, or state who got in or out with their weight.");

    /// <summary>Range of an allowance assumed.</summary>
    public static readonly FindingKind AllowanceAssumed = new(
        "weigh.allowance-assumed", Severity.Note,
        "How far off {what} of run {run} may be is not stated; a quarter of it, {range}, is assumed either way "
        + "(common practice, no source).",
        "Enter plusMinus.");

    /// <summary>An allowance, a range or a spread is negative.</summary>
    public static readonly FindingKind NegativeAmount = new(
        "weigh.negative-amount", Severity.Stop,
        "{what} of run {run} is {amount}, below zero.",
        "Enter 0 or more; whether something joined or left the truck is said by the direction of the change.");

    /// <summary>Everything above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        NegativeReading, Overload, NothingCaught, LighterWhenFull, BelowLeastLoad, OffDivision, NoDivision, NoTolerance,
        ClassUnderRules, TooManyDivisions, NotVerified, VerifiedLongAgo, VerifiedLater, CommonErrorNotStated,
        CountedContainers, FillSpreadAssumed, FuelNotStated, PeopleNotStated, AllowanceAssumed,
        NegativeAmount,
    ];
}
