using Lanewright.Core.Findings;

namespace Lanewright.Core.Calibrations;

/// <summary>Findings of the calibrations besides the drop test.</summary>
public static class CalibrationFindings
{
    /// <summary>Runs of one quantity differ much.</summary>
    public static readonly FindingKind RunsApart = new(
        "calibration.runs-apart", Severity.Warn,
        "The runs of one quantity lie {spread:percent} apart.",
        "Look for what changed between them; repeat the one that differs.");

    /// <summary>The accuracy of the course was assumed.</summary>
    public static readonly FindingKind CourseAssumed = new(
        "speed.course-assumed", Severity.Note,
        "How well the course is known is not stated; ± {assumed} is assumed for its length, start and stop together.",
        "State coursePlusMinus when it is known better, or use a longer course.");

    /// <summary>One pass only.</summary>
    public static readonly FindingKind OnePass = new(
        "speed.one-pass", Severity.Warn,
        "One pass cannot show how much passes differ.",
        "Drive the course again, once the other way.");

    /// <summary>The measured figure disagrees with tyre, axle and teeth.</summary>
    public static readonly FindingKind SpeedUnlikeTyre = new(
        "speed.unlike-tyre", Severity.Warn,
        "The passes give {off:percent} more than tyre, axle and teeth lead to expect (less when negative).",
        "Check the length of the course, the counted teeth, the axle's ratio and the tyre's data.");

    /// <summary>A rate card without rates.</summary>
    public static readonly FindingKind NoRates = new(
        "card.no-rates", Severity.Stop,
        "No rate is stated, neither for a lane nor by area.",
        "List the rates the card is for under rates or areaRates.");

    /// <summary>The limit of the spreader is not known.</summary>
    public static readonly FindingKind NoLimit = new(
        "card.no-limit", Severity.Warn,
        "The most it delivers is not stated, so the card cannot say at which speed it runs out.",
        "Measure the delivery at full drive with this gate and state mostDelivery.");

    /// <summary>Too few tested settings for an open loop.</summary>
    public static readonly FindingKind FewSettings = new(
        "card.few-settings", Severity.Stop,
        "An open loop needs two tested settings or more.",
        "Take the settings and deliveries from the delivery curve.");

    /// <summary>Settings or deliveries do not rise.</summary>
    public static readonly FindingKind SettingsNotRising = new(
        "card.settings-not-rising", Severity.Stop,
        "Tested setting {which} does not rise above the one before it, or delivers less.",
        "Put the settings in rising order; leave out those above which nothing is gained.");

    /// <summary>No day of the next calibration.</summary>
    public static readonly FindingKind NoNextDue = new(
        "card.no-next-due", Severity.Note,
        "The card does not say when the spreader is due again.",
        "State nextDue.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        RunsApart, CourseAssumed, OnePass, SpeedUnlikeTyre,
        NoRates, NoLimit, FewSettings, SettingsNotRising, NoNextDue,
    ];
}
