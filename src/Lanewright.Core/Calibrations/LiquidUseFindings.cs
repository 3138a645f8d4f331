using Lanewright.Core.Findings;

namespace Lanewright.Core.Calibrations;

/// <summary>Findings of pre-wet, direct liquid, nozzles and brine.</summary>
public static class LiquidUseFindings
{
    /// <summary>Neither a flow nor a wish.</summary>
    public static readonly FindingKind NothingAsked = new(
        "liquid.nothing-asked", Severity.Stop,
        "Neither a flow nor what is wanted is stated.",
        "Enter flow, or runs with their time, or wanted.");

    /// <summary>Stated and measured flow together.</summary>
    public static readonly FindingKind FlowTwice = new(
        "liquid.flow-twice", Severity.Stop,
        "The flow is stated and also measured by runs.",
        "Keep one of the two.");

    /// <summary>Share by mass without a liquid.</summary>
    public static readonly FindingKind NeedsLiquid = new(
        "liquid.needs-liquid", Severity.Stop,
        "What is wanted is a mass, but nothing is said of the liquid, so its volume cannot be worked out.",
        "Enter the liquid: salt, strength or hydrometer reading, and temperature.");

    /// <summary>A wanted value that cannot be.</summary>
    public static readonly FindingKind WantedImpossible = new(
        "liquid.wanted-impossible", Severity.Stop,
        "{wanted} is wanted; it must be above 0, and a share below 100 %.",
        "Check the number and its unit; FS 30 is written 30 %.");

    /// <summary>No dry delivery.</summary>
    public static readonly FindingKind NoDry = new(
        "prewet.no-dry", Severity.Stop,
        "Nothing says how much dry material is delivered meanwhile.",
        "Enter delivery, or rate with speed.");

    /// <summary>Flow is not what was wanted.</summary>
    public static readonly FindingKind FlowUnlikeWanted = new(
        "liquid.flow-unlike-wanted", Severity.Warn,
        "The flow is {off:percent} off what is wanted (less when negative).",
        "Change the controller's setting, or the flow meter's constant, and catch again.");

    /// <summary>An unusual lane width.</summary>
    public static readonly FindingKind LaneWidthUnusual = new(
        "direct.lane-width", Severity.Warn,
        "A lane {width} wide is unusual; 12 ft, 3.5 m or 3.75 m are common.",
        "Check the width of one lane and its unit; amounts by area follow from it.");

    /// <summary>Amounts of different kinds.</summary>
    public static readonly FindingKind NozzlesMixed = new(
        "nozzle.mixed", Severity.Stop,
        "Some nozzles were measured by volume and some by weight.",
        "Measure all in the same way.");

    /// <summary>A negative amount.</summary>
    public static readonly FindingKind NozzleNegative = new(
        "nozzle.negative", Severity.Stop,
        "Nozzle {nozzle} has an amount below zero.",
        "Enter 0 for a nozzle that gave nothing.");

    /// <summary>Two nozzles of one name.</summary>
    public static readonly FindingKind NozzleTwice = new(
        "nozzle.twice", Severity.Stop,
        "Nozzle {nozzle} is there twice.",
        "Give every nozzle its own name.");

    /// <summary>No nozzle gave anything.</summary>
    public static readonly FindingKind NothingFlowed = new(
        "nozzle.nothing-flowed", Severity.Stop,
        "No nozzle gave anything.",
        "Check pump, valves and the amounts.");

    /// <summary>A nozzle beyond the limit.</summary>
    public static readonly FindingKind NozzleOff = new(
        "nozzle.off", Severity.Warn,
        "Nozzle {nozzle} gives {off:percent} against the mean (less when negative); the limit is {limit:percent}.",
        "Clean or replace it, look at its strainer and hose, and catch again.");

    /// <summary>Left and right differ.</summary>
    public static readonly FindingKind SidesDiffer = new(
        "nozzle.sides-differ", Severity.Warn,
        "A nozzle on the left gives on average {off:percent} against one on the right (less when negative); the limit is {limit:percent}.",
        "Look at the lines, valves and strainers of the weaker side.");

    /// <summary>The reading is too coarse.</summary>
    public static readonly FindingKind NozzleReadingCoarse = new(
        "nozzle.reading-coarse", Severity.Warn,
        "Each amount is only good to ± {coarse:percent} of the mean, too coarse for a limit of {limit:percent}.",
        "Catch longer or read finer.");

    /// <summary>The limit was not stated.</summary>
    public static readonly FindingKind NozzleLimitAssumed = new(
        "nozzle.limit-assumed", Severity.Note,
        "The yard's limit is not stated; {limit:percent} from the mean is used (common practice, no source).",
        "Enter limit.");

    /// <summary>Nothing to work out.</summary>
    public static readonly FindingKind BrineNothing = new(
        "brine.nothing", Severity.Stop,
        "Neither a liquid nor a batch is stated.",
        "Enter the liquid that was read, or batch and target.");

    /// <summary>No freezing point.</summary>
    public static readonly FindingKind FreezingNotKnown = new(
        "brine.freezing-not-known", Severity.Note,
        "No freezing point is given for this strength: the sources give none or lie too far apart.",
        "Ask the supplier of the liquid, and keep a margin.");

    /// <summary>Past the lowest point.</summary>
    public static readonly FindingKind PastLowest = new(
        "brine.past-lowest", Severity.Warn,
        "This liquid is stronger than {strength:percent}, where it freezes last; stronger it freezes earlier.",
        "Thin it before cold weather, or keep the tank warm.");

    /// <summary>A target above saturation.</summary>
    public static readonly FindingKind TargetTooStrong = new(
        "brine.target-too-strong", Severity.Stop,
        "The target of {target:percent} is more than can be dissolved or worked out ({most:percent}).",
        "Choose a lower target.");

    /// <summary>The difference is within the reading.</summary>
    public static readonly FindingKind AsGoodAsTarget = new(
        "brine.as-good-as-target", Severity.Note,
        "Strength and target are {difference:percent} apart, within what the reading can tell (± {range:percent}).",
        "Leave it, or read it again with a better instrument.");

    /// <summary>Salt too poor for the target.</summary>
    public static readonly FindingKind SaltTooPoor = new(
        "brine.salt-too-poor", Severity.Stop,
        "With so much water in the salt the target cannot be reached.",
        "Check purity and moisture of the salt.");

    /// <summary>Purity not stated.</summary>
    public static readonly FindingKind PureAssumed = new(
        "brine.pure-assumed", Severity.Note,
        "Nothing is said of the salt that is added; pure and dry salt is taken.",
        "Enter addedSalt with purity and moisture; road salt is often specified as 95 % or more.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        NothingAsked, FlowTwice, NeedsLiquid, WantedImpossible, NoDry, FlowUnlikeWanted, LaneWidthUnusual, NozzlesMixed, NozzleNegative,
        NozzleTwice, NothingFlowed, NozzleOff, SidesDiffer, NozzleReadingCoarse, NozzleLimitAssumed, BrineNothing, FreezingNotKnown, PastLowest,
        TargetTooStrong, AsGoodAsTarget, SaltTooPoor, PureAssumed,
    ];
}
