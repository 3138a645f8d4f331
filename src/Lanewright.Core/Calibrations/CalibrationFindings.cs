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

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } = [RunsApart, CourseAssumed, OnePass, SpeedUnlikeTyre];
}
