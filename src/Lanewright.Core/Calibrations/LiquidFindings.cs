using Lanewright.Core.Findings;

namespace Lanewright.Core.Calibrations;

/// <summary>Findings of the calibrations of liquids.</summary>
public static class LiquidFindings
{
    /// <summary>Nothing says how strong or how dense the liquid is.</summary>
    public static readonly FindingKind NotKnown = new(
        "liquid.not-known", Severity.Stop,
        "Nothing says how strong or how dense the liquid is.",
        "Enter one of strength, specificGravity, salometer or density, as it was measured.");

    /// <summary>More than one way was used.</summary>
    public static readonly FindingKind SeveralWays = new(
        "liquid.several-ways", Severity.Stop,
        "The liquid is described in {count:count} ways ({ways}).",
        "Keep the one that was measured.");

    /// <summary>A salometer in another salt than sodium chloride.</summary>
    public static readonly FindingKind SalometerOtherSalt = new(
        "liquid.salometer-other-salt", Severity.Stop,
        "A salometer's degrees are made for sodium chloride; this liquid holds another salt.",
        "Use a hydrometer in specific gravity, or state the strength.");

    /// <summary>The temperature is missing.</summary>
    public static readonly FindingKind NoTemperature = new(
        "liquid.no-temperature", Severity.Stop,
        "The liquid's temperature is not stated. Between {cold} and {warm} its density, and the answer with it, changes by {error:percent}.",
        "Measure the liquid's temperature when it is caught and enter it.");

    /// <summary>The reading fits no strength.</summary>
    public static readonly FindingKind OutOfRange = new(
        "liquid.out-of-range", Severity.Stop,
        "No strength of this salt fits the reading: between plain water and {most:percent} the density at {temperature} lies between {low} and {high}.",
        "Check the reading, which salt it is, the temperature, and at which temperature the instrument is marked.");

    /// <summary>The temperature is outside the model.</summary>
    public static readonly FindingKind TemperatureOutside = new(
        "liquid.temperature-outside", Severity.Stop,
        "Nothing reliable is known of this liquid at {temperature}.",
        "Check the temperature and its unit; catch and read the liquid between {cold} and {warm}.");

    /// <summary>Stronger than water can hold.</summary>
    public static readonly FindingKind AboveSolubility = new(
        "liquid.above-solubility", Severity.Warn,
        "A strength of {strength:percent} is more than water holds at this temperature ({most:percent}).",
        "Check reading and temperature; other salts or dirt in the brine raise a hydrometer too.");

    /// <summary>Accuracy of the reading assumed.</summary>
    public static readonly FindingKind ReadingAssumed = new(
        "liquid.reading-assumed", Severity.Note,
        "How far off {what} may be is not stated; ± {assumed} is assumed (common practice, no source).",
        "Enter {field} when it is known better.");

    /// <summary>Accuracy of the thermometer assumed.</summary>
    public static readonly FindingKind ThermometerAssumed = new(
        "liquid.thermometer-assumed", Severity.Note,
        "How far off the temperature may be is not stated; ± 1 °C (1.8 °F) is assumed (common practice, no source).",
        "Enter temperaturePlusMinus when it is known better.");

    /// <summary>Colder than the model's data.</summary>
    public static readonly FindingKind Extrapolated = new(
        "liquid.extrapolated", Severity.Note,
        "At {temperature} the density is continued beyond the temperatures it was measured at; ± {range} is counted for that.",
        "Catch and read the liquid warmer when a better answer is needed.");

    /// <summary>A run has no catch, or several.</summary>
    public static readonly FindingKind OneCatch = new(
        "liquid.one-catch", Severity.Stop,
        "Run {run} was caught in {count:count} ways; one is needed.",
        "Enter whole or containers when it was weighed, or volume when it was read in a vessel.");

    /// <summary>Weighed runs without a scale.</summary>
    public static readonly FindingKind NoScale = new(
        "liquid.no-scale", Severity.Stop,
        "Runs were weighed, but nothing is said of the scale.",
        "Enter the scale.");

    /// <summary>Weighed runs without a liquid.</summary>
    public static readonly FindingKind NoLiquid = new(
        "liquid.no-liquid", Severity.Stop,
        "Runs were weighed, but nothing is said of the liquid, so the weight gives no volume. Taking brine for water would be wrong by about 17 %.",
        "Enter the liquid: salt, strength or hydrometer reading, and temperature.");

    /// <summary>Accuracy of the vessel assumed.</summary>
    public static readonly FindingKind VesselAssumed = new(
        "liquid.vessel-assumed", Severity.Note,
        "How well the vessel's marks are known is not stated; ± {assumed} is assumed for them, and as much for reading the level (common practice, no source).",
        "Check the vessel by weighing water in it, and enter the vessel.");

    /// <summary>Neither pulses nor a display.</summary>
    public static readonly FindingKind NothingCounted = new(
        "liquid.nothing-counted", Severity.Stop,
        "Run {run} has neither counted pulses nor, together with the constant in use, a volume shown by the controller.",
        "Enter pulses, or shown with current.");

    /// <summary>Too few pulses.</summary>
    public static readonly FindingKind FewCounts = new(
        "liquid.few-counts", Severity.Warn,
        "In run {run} counting alone makes the answer uncertain by {cost:percent}.",
        "Catch more liquid in a run, or read the controller in finer steps.");

    /// <summary>Low and high flow give different constants.</summary>
    public static readonly FindingKind FlowsDiffer = new(
        "liquid.flows-differ", Severity.Warn,
        "At low flow the meter gives {difference:percent} more pulses than at high flow (fewer when negative); ± {range:percent} is what chance explains.",
        "Look for a worn or dirty meter, air in the line or a flow outside the meter's range; calibrate at the flow that is used most.");

    /// <summary>One flow only.</summary>
    public static readonly FindingKind OneFlow = new(
        "liquid.one-flow", Severity.Note,
        "The runs do not say that both low and high flow were tried, so the meter is known at one flow only.",
        "Mark runs with flow: low and flow: high and make at least two of each.");

    /// <summary>One run.</summary>
    public static readonly FindingKind OneRun = new(
        "liquid.one-run", Severity.Warn,
        "One run cannot show how much runs differ.",
        "Make at least two more.");

    /// <summary>The controller's step is not known.</summary>
    public static readonly FindingKind StepNotStated = new(
        "liquid.step-not-stated", Severity.Note,
        "The smallest step of the constant that the controller takes is not stated.",
        "Enter step, so that the value to key in can be shown.");

    /// <summary>The controller's step is coarse.</summary>
    public static readonly FindingKind CoarseStep = new(
        "liquid.coarse-step", Severity.Warn,
        "The controller's step of {step} rounds this constant by up to {cost:percent} either way.",
        "Enter the constant in a finer unit when the controller has one.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        NotKnown, SeveralWays, SalometerOtherSalt, NoTemperature, OutOfRange, TemperatureOutside, AboveSolubility, ReadingAssumed,
        ThermometerAssumed, Extrapolated, OneCatch, NoScale, NoLiquid, VesselAssumed, NothingCounted, FewCounts, FlowsDiffer, OneFlow,
        OneRun, StepNotStated, CoarseStep, .. LiquidUseFindings.All,
    ];
}
