using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>Where a look at a spreader's constant came from.</summary>
public enum DriftLookKind
{
    /// <summary>The drop test whose constant was keyed in.</summary>
    Calibration,

    /// <summary>A check: delivered against weighed.</summary>
    Check,

    /// <summary>Load tickets against the logged mass of the same loads.</summary>
    Tickets,

    /// <summary>Against the spreaders that worked the same routes.</summary>
    Sisters,
}

/// <summary>One look at what a spreader really puts down.</summary>
/// <param name="Day">Day of it.</param>
/// <param name="Kind">Where it came from.</param>
/// <param name="Name">What people call it: the test, the ticket, the storm.</param>
/// <param name="LogShare">
/// Natural logarithm of delivered by what the controller says; 0 when it says what is so. Sources that two looks share, such
/// as one scale's gain, tie them together and do not average out.
/// </param>
public sealed record DriftLook(DateOnly Day, DriftLookKind Kind, string Name, Measured LogShare)
{
    /// <summary>Whether it is a look at what the calibration set: a check from its day on; loads of a storm that ended on a later day, since
    /// those of its own day may be of before it.</summary>
    public bool IsAfter(DriftLook calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return Kind is DriftLookKind.Tickets or DriftLookKind.Sisters ? Day > calibration.Day : Day >= calibration.Day;
    }
}

/// <summary>How a yard watches for drift. All but the tolerance are ours (common practice, no source).</summary>
public sealed record DriftRules
{
    /// <summary>The lasting change to find, as a share.</summary>
    public double Change { get; init; } = 0.05;

    /// <summary>Chance of a false alarm in a season of looks at one spreader.</summary>
    public double FalseAlarm { get; init; } = 0.05;

    /// <summary>Looks in a season that the limit is set for; more when there were more.</summary>
    public int Looks { get; init; } = 10;

    /// <summary>What a healthy spreader differs by from day to day (standard deviation, a share), beyond what a look's own
    /// uncertainty says.</summary>
    public double DayToDay { get; init; } = 0.005;

    /// <summary>How far the logarithm of a constant wanders in a year (standard deviation).</summary>
    public double WanderInYear { get; init; } = 0.01;

    /// <summary>How fast wear may change it (standard deviation of the change in a year, before any look).</summary>
    public double WearInYear { get; init; } = 0.15;

    /// <summary>Tolerance of delivered by said, plus or minus, as a share.</summary>
    public double Tolerance { get; init; } = 0.04;
}
