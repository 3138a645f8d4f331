using Lanewright.Core.Findings;

namespace Lanewright.Core.Spreading;

/// <summary>What can stand in the way of a plan.</summary>
public static class PlanFindings
{
    /// <summary>Nothing reaches what is wanted.</summary>
    public static readonly FindingKind OutOfReach = new(
        "plan.out-of-reach", Severity.Warn,
        "With scale {scale} no number of runs up to {runs} and no drop up to {mass} reaches {wanted:percent}; the best is "
        + "{best:percent}.",
        "Use a scale with a finer division or closer tolerance, or accept a wider answer.");

    /// <summary>Nobody can say whether the scale's error is common.</summary>
    public static readonly FindingKind CommonErrorUnknown = new(
        "plan.common-error-unknown", Severity.Note,
        "Whether scale {scale} will have the same error at both readings is not stated; the plan takes the worse case.",
        "Weigh in the same place on the scale, within minutes, without adjusting it, and say so.");

    /// <summary>No constant expected.</summary>
    public static readonly FindingKind ConstantUnknown = new(
        "plan.constant-unknown", Severity.Note,
        "No constant is expected, so the plan leaves out what counting adds.",
        "Enter the constant in use if there is one.");

    /// <summary>No delivery known.</summary>
    public static readonly FindingKind DeliveryUnknown = new(
        "plan.delivery-unknown", Severity.Note,
        "How much the spreader delivers in a minute is not known, so the plan cannot say how long a run takes.",
        "Time the first run, or enter the delivery.");

    /// <summary>Fill heavier than a person should lift.</summary>
    public static readonly FindingKind HeavyContainer = new(
        "plan.heavy-container", Severity.Warn,
        "A filled container of {mass} is more than the 51 lb (23 kg) that the NIOSH lifting equation starts from in ideal "
        + "posture.",
        "Fill less, lift with two people or with a machine.");

    /// <summary>Request that makes no sense.</summary>
    public static readonly FindingKind Impossible = new(
        "plan.impossible", Severity.Stop,
        "{what} must be more than {least}.",
        "Correct it.");

    /// <summary>The scale cannot carry it.</summary>
    public static readonly FindingKind Overload = new(
        "plan.overload", Severity.Stop,
        "A load of {load} is more than the capacity {capacity} of scale {scale}.",
        "Fill less, or use a larger scale.");

    /// <summary>Not even the smallest drop fits.</summary>
    public static readonly FindingKind NothingFits = new(
        "plan.nothing-fits", Severity.Stop,
        "Only {room} can be caught in a run, less than the smallest drop considered, {least}.",
        "Use a larger scale or a larger container.");

    /// <summary>Everything above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
        [OutOfReach, CommonErrorUnknown, ConstantUnknown, DeliveryUnknown, HeavyContainer, Impossible, Overload, NothingFits];
}
