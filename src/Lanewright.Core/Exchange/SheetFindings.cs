using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>What can be wrong with a sheet as a whole, each field being readable.</summary>
public static class SheetFindings
{
    /// <summary>Unit and form disagree.</summary>
    public static readonly FindingKind UnitOfOtherForm = new(
        "sheet.unit-of-other-form", Severity.Stop,
        "The unit {unit} does not belong to a constant of the form {form}.",
        "Choose the unit that the controller shows, or the form that fits it.");

    /// <summary>Lowest above highest.</summary>
    public static readonly FindingKind RangeReversed = new(
        "sheet.range-reversed", Severity.Stop,
        "The lowest value the controller accepts is above the highest.",
        "Swap or correct them.");

    /// <summary>A value must be positive.</summary>
    public static readonly FindingKind NotPositive = new(
        "sheet.not-positive", Severity.Stop,
        "The value must be more than zero.",
        "Correct it or leave it out.");

    /// <summary>Two runs of one name.</summary>
    public static readonly FindingKind RunTwice = new(
        "sheet.run-twice", Severity.Stop,
        "Two runs are called {run}.",
        "Give every run a name of its own.");

    /// <summary>Unknown culture.</summary>
    public static readonly FindingKind UnknownCulture = new(
        "sheet.unknown-culture", Severity.Stop,
        "The culture {read} is not known.",
        "Choose one of {known}, or leave it out and write a point as the decimal mark.");

    /// <summary>No weighing in a run.</summary>
    public static readonly FindingKind NoWeighing = new(
        "sheet.no-weighing", Severity.Stop,
        "Run {run} has no weighing.",
        "Enter containers, counted, whole or truck.");

    /// <summary>More than one weighing in a run.</summary>
    public static readonly FindingKind SeveralWeighings = new(
        "sheet.several-weighings", Severity.Stop,
        "Run {run} has more than one way of weighing.",
        "Keep the one that counts.");

    /// <summary>The sheet answers another question than the one asked.</summary>
    public static readonly FindingKind OtherKind = new(
        "sheet.other-kind", Severity.Stop,
        "The sheet is a {kind}; a {wanted} was expected.",
        "Use {command} for it, or correct the kind in the sheet.");

    /// <summary>Not all that was filled is weighed, or more.</summary>
    public static readonly FindingKind ContainersDiffer = new(
        "sheet.containers-differ", Severity.Stop,
        "Run {run} filled {filled:count} containers, and {weighed:count} are weighed completely.",
        "Weigh every container of the run, or correct how many it filled.");

    /// <summary>Everything above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        UnitOfOtherForm, RangeReversed, NotPositive, RunTwice, UnknownCulture, NoWeighing, SeveralWeighings, OtherKind,
        ContainersDiffer,
    ];
}
