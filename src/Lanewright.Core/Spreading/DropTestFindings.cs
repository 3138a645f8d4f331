using Lanewright.Core.Findings;

namespace Lanewright.Core.Spreading;

/// <summary>What can be said of the runs and the answer of a drop test or a verification.</summary>
public static class DropTestFindings
{
    /// <summary>A run lacks what the constant is a ratio of.</summary>
    public static readonly FindingKind NoCount = new(
        "run.no-count", Severity.Stop,
        "Run {run} has no {what}, which this constant needs.",
        "Enter it, leave the run out, or choose the form of the constant that fits what was counted.");

    /// <summary>A count or a time is not positive.</summary>
    public static readonly FindingKind CountNotPositive = new(
        "run.count-not-positive", Severity.Stop,
        "Run {run} has {what} of zero, less, or next to nothing.",
        "Check the counter and the typing.");

    /// <summary>No run can be used.</summary>
    public static readonly FindingKind NoRuns = new(
        "run.none", Severity.Stop,
        "There is no run to compute from.",
        "Enter at least three runs with a count and a weighing each.");

    /// <summary>One run only, nothing known of the scatter.</summary>
    public static readonly FindingKind SingleRun = new(
        "run.single", Severity.Stop,
        "One run cannot show how much the spreader scatters; the interval rests on what spreaders do in general.",
        "Do two more runs, or state the scatter known from earlier tests of this spreader.");

    /// <summary>One run only, with the scatter known from earlier tests.</summary>
    public static readonly FindingKind SingleRunKnown = new(
        "run.single-known", Severity.Note,
        "One run does not show how much the spreader scatters; the scatter is taken from the earlier tests.",
        "Do two more runs when anything has changed since.");

    /// <summary>Two runs only.</summary>
    public static readonly FindingKind TwoRuns = new(
        "run.two", Severity.Note,
        "Two runs show little of the scatter, and if they disagree nothing says which is wrong.",
        "Do a third run.");

    /// <summary>The runs disagree.</summary>
    public static readonly FindingKind Scatter = new(
        "run.scatter", Severity.Warn,
        "The runs differ by {range:percent} from lowest to highest; 10 % is what samples are commonly asked to agree "
        + "within.",
        "Look for bridging, an unprimed auger, spill or changing engine speed, then do the runs again.");

    /// <summary>One run stands apart.</summary>
    public static readonly FindingKind Outlier = new(
        "run.outlier", Severity.Warn,
        "Run {run} stands apart from the others by {deviation:percent} (Grubbs G {statistic}, critical {critical} at 5 %).",
        "Find out what happened in it before leaving it out, and write that down; do another run.");

    /// <summary>Too few runs for the outlier test.</summary>
    public static readonly FindingKind OutlierNoPower = new(
        "run.outlier-no-power", Severity.Note,
        "With only {count} runs, Grubbs' test can hardly tell whether one of them is an outlier, however far off it lies "
        + "(its G reaches at most {largest}; {critical} is needed).",
        "Six or more runs let a bad one show itself.");

    /// <summary>Line misses the origin.</summary>
    public static readonly FindingKind StartStop = new(
        "run.start-stop", Severity.Warn,
        "Small and large drops do not lie on a line through zero: each run seems to carry {amount} that the count does "
        + "not explain (t {statistic}; up to {critical} would be chance).",
        "Look for tare left in, spill, an unprimed start, or run-on after stop; then do the runs again.");

    /// <summary>All drops alike, so a start-stop effect stays hidden.</summary>
    public static readonly FindingKind OneSize = new(
        "run.one-size", Severity.Note,
        "All drops are of nearly one size, so an error made at every start or stop would not show.",
        "Make one drop half as large or twice as large as the others.");

    /// <summary>The constant depends on the setting.</summary>
    public static readonly FindingKind SettingMatters = new(
        "run.setting-matters", Severity.Warn,
        "The constant changes with the drive setting, by {effect:percent} between the settings used (chance of that "
        + "without a cause: {chance:percent}).",
        "Use the constant only near the settings it was taken at; check feed, slip and sensor at high and low speed.");

    /// <summary>Too few pulses or turns.</summary>
    public static readonly FindingKind FewCounts = new(
        "run.few-counts", Severity.Warn,
        "Run {run} counts only {count} {what}: where it started and stopped within one alone makes {cost:percent}.",
        "Drop longer.");

    /// <summary>The drop is too small for the scale.</summary>
    public static readonly FindingKind SmallDrop = new(
        "run.small-drop", Severity.Warn,
        "Run {run} weighed {net}; the weighing alone makes it uncertain by {cost:percent}, more than the {wanted:percent} "
        + "wanted for the answer.",
        "Drop more in a run or use a scale with a finer division.");

    /// <summary>How certain the moisture is was not said.</summary>
    public static readonly FindingKind MoistureTakenAsExact = new(
        "material.moisture-exact", Severity.Note,
        "How far off the moisture of {share:percent} may be is not stated; it is taken as exact.",
        "Enter plusMinus; half a percent of moisture is half a percent of the answer.");

    /// <summary>Longer than any drop, as when a timer was left running.</summary>
    public static readonly FindingKind LongRun = new(
        "run.long", Severity.Warn,
        "Run {run} lasted {lasted}; a drop lasts seconds to minutes (common practice, no source).",
        "If the timer was forgotten, type the seconds that the drop took in its place, or drop again.");

    /// <summary>Timing uncertainty assumed.</summary>
    public static readonly FindingKind TimingAssumed = new(
        "run.timing-assumed", Severity.Note,
        "How well the runs were timed is not stated; {assumed} standard uncertainty is assumed (common practice, no "
        + "source).",
        "Enter timingUncertainty, or drop longer so that it does not matter.");

    /// <summary>Engine slow.</summary>
    public static readonly FindingKind LowEngineSpeed = new(
        "run.low-engine-speed", Severity.Warn,
        "Run {run} was made at {speed}. The Minnesota field handbook (2012) asks for 1,500 rpm or more, common practice "
        + "for 1,200 to 1,400 rpm; below that the pump may not supply the drive.",
        "Repeat at working engine speed.");

    /// <summary>Engine speeds differ.</summary>
    public static readonly FindingKind EngineSpeedDiffers = new(
        "run.engine-speed-differs", Severity.Warn,
        "Engine speed ranges from {low} to {high} between runs.",
        "Hold one engine speed through the test.");

    /// <summary>Oil cold.</summary>
    public static readonly FindingKind ColdOil = new(
        "run.cold-oil", Severity.Warn,
        "Run {run} was made with cold oil.",
        "Warm the hydraulics up and repeat.");

    /// <summary>Gate moved between runs.</summary>
    public static readonly FindingKind GateDiffers = new(
        "run.gate-differs", Severity.Stop,
        "The gate opening ranges from {low} to {high} between runs.",
        "A constant belongs to one gate opening: test each opening on its own.");

    /// <summary>Pulses per turn disagree between runs.</summary>
    public static readonly FindingKind PulsesPerTurn = new(
        "run.pulses-per-turn", Severity.Warn,
        "Run {run} counts {here} pulses for each turn, the middle one of the runs {middle}; counting whole pulses and turns "
        + "does not explain that.",
        "Count the turns again; look for missed or doubled pulses at the sensor.");

    /// <summary>Answer less certain than wanted.</summary>
    public static readonly FindingKind Wide = new(
        "answer.wide", Severity.Warn,
        "The answer is certain to {got:percent}; {wanted:percent} was wanted.",
        "Do {runs} more run like these, about {mass} more in all.|Do {runs} more runs like these, about {mass} more in all.");

    /// <summary>Answer less certain than wanted and more of the same will not help.</summary>
    public static readonly FindingKind WideForGood = new(
        "answer.wide-for-good", Severity.Warn,
        "The answer is certain to {got:percent}; {wanted:percent} was wanted, and more runs like these cannot reach it.",
        "Use a better scale or larger drops; the largest part of the uncertainty is: {cause}.");

    /// <summary>Answer useless against the tolerance.</summary>
    public static readonly FindingKind TooWide = new(
        "answer.too-wide", Severity.Stop,
        "The answer is certain only to {got:percent}, more than the tolerance of {tolerance:percent} it has to meet.",
        "Do not key it in. Drop more, do more runs, or use a better scale.");

    /// <summary>First-order result disagrees with trials.</summary>
    public static readonly FindingKind FirstOrderFails = new(
        "answer.first-order-fails", Severity.Warn,
        "Random trials give {low} to {high}, the formula another interval: the errors are too large for it.",
        "Believe the trials; better, make the errors smaller.");

    /// <summary>Resolution not stated.</summary>
    public static readonly FindingKind ResolutionNotStated = new(
        "key.resolution-not-stated", Severity.Note,
        "The smallest step of the constant that the controller accepts is not stated.",
        "Enter it, so that the value to key in and the cost of rounding can be shown.");

    /// <summary>The controller's step is coarse.</summary>
    public static readonly FindingKind CoarseResolution = new(
        "key.coarse", Severity.Warn,
        "The controller's step of {step} rounds this constant by up to {cost:percent} either way.",
        "Use the unit or the range in which the controller takes more digits, if it has one.");

    /// <summary>The value is outside what the controller accepts.</summary>
    public static readonly FindingKind OutOfRange = new(
        "key.out-of-range", Severity.Stop,
        "The value is {value}, beyond the {which} that the controller accepts, {limit}.",
        "Check unit, counts and weights; a value out of range has usually a cause in them.");

    /// <summary>Large change against the constant in use.</summary>
    public static readonly FindingKind LargeChange = new(
        "old.large-change", Severity.Warn,
        "With the constant in use the spreader has been putting down {delivered:percent} of what was asked.",
        "A change this large has a cause: check units, gate, sensor and scale before keying the new value in.");

    /// <summary>One constant in use, several settings tested.</summary>
    public static readonly FindingKind CurrentOfManySettings = new(
        "old.many-settings", Severity.Note,
        "The delivery in use is one number, but {count} drive settings were tested; it is compared with none of them.",
        "Leave it out, or make a sheet for the setting that it belongs to.");

    /// <summary>A verification lacks what the controller said.</summary>
    public static readonly FindingKind NoDelivered = new(
        "verify.no-delivered", Severity.Stop,
        "Run {run} has no mass that the controller says it delivered.",
        "Read it from the controller and enter it as delivered.");

    /// <summary>The verification failed.</summary>
    public static readonly FindingKind Fails = new(
        "verify.fails", Severity.Stop,
        "The spreader delivers {share:percent} of what its controller says, known to {uncertainty:percent}: outside the "
        + "tolerance of {tolerance:percent} even with the uncertainty in its favour.",
        "Do a drop test and key the new constant in, or find what changed.");

    /// <summary>The verification cannot tell.</summary>
    public static readonly FindingKind CannotTell = new(
        "verify.cannot-tell", Severity.Warn,
        "The spreader delivers {share:percent} of what its controller says, known to {uncertainty:percent}: that can be "
        + "inside or outside the tolerance of {tolerance:percent}.",
        "Drop more or do more runs until the interval lies on one side.");

    /// <summary>Adopted against a stop.</summary>
    public static readonly FindingKind AdoptedAgainstStop = new(
        "decision.against-stop", Severity.Stop,
        "{by} adopted a result that should not be used.",
        "Clear the findings that say stop, or change the decision.");

    /// <summary>Decision without a reason.</summary>
    public static readonly FindingKind DecisionWithoutReason = new(
        "decision.no-reason", Severity.Warn,
        "The decision names no person or no reason.",
        "Enter who decided and why.");

    /// <summary>Everything above.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        NoCount, CountNotPositive, NoRuns, SingleRun, SingleRunKnown, TwoRuns, Scatter, Outlier, OutlierNoPower, StartStop, OneSize,
        SettingMatters, FewCounts, SmallDrop, MoistureTakenAsExact, LongRun, TimingAssumed, LowEngineSpeed,
        EngineSpeedDiffers, ColdOil, GateDiffers, PulsesPerTurn, Wide, WideForGood, TooWide, FirstOrderFails, ResolutionNotStated,
        CoarseResolution, OutOfRange, LargeChange, CurrentOfManySettings, NoDelivered, Fails, CannotTell,
        AdoptedAgainstStop, DecisionWithoutReason,
    ];
}
