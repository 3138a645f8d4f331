using Lanewright.Core.Findings;

namespace Lanewright.Core.Calibrations;

/// <summary>Findings of delivery curve, gate table, spread pattern and static check.</summary>
public static class DeliveryFindings
{
    /// <summary>Too few drive settings for a curve.</summary>
    public static readonly FindingKind FewSettings = new(
        "curve.few-settings", Severity.Warn,
        "The runs cover {count:count} drive settings; of the shape between them little is known.",
        "Run five or more settings, from the lowest that delivers to full.");

    /// <summary>One setting only, so there is no curve.</summary>
    public static readonly FindingKind NoCurve = new(
        "curve.none", Severity.Stop,
        "There are not two drive settings with a usable run at one engine speed, so there is no curve.",
        "Run at least two settings; five or more are better.");

    /// <summary>A setting delivered less than a lower one.</summary>
    public static readonly FindingKind NotRising = new(
        "curve.not-rising", Severity.Warn,
        "Some settings delivered no more than a lower one; the fit takes their common mean.",
        "Look for bridging, a setting written down wrongly or the pump's limit; repeat those settings.");

    /// <summary>One run at a setting.</summary>
    public static readonly FindingKind OneRunSettings = new(
        "curve.one-run", Severity.Note,
        "{count:count} settings have one run only, which does not show their scatter; the interval rests on what spreaders do in general.",
        "Do two or three runs at each setting.");

    /// <summary>A wanted delivery is not reached.</summary>
    public static readonly FindingKind WantedOutside = new(
        "curve.wanted-outside", Severity.Warn,
        "{name} needs {flow}; the tested settings deliver {low} to {high}.",
        "Drive at another speed, open the gate, or test further settings; the curve is not carried on beyond what was tested.");

    /// <summary>A wanted delivery lies where the curve is flat.</summary>
    public static readonly FindingKind WantedFlat = new(
        "curve.wanted-flat", Severity.Warn,
        "{name} needs {flow}, which lies where the curve is flat; no setting can be named.",
        "Use a setting below the flat part, or another gate opening.");

    /// <summary>A wanted rate lacks what it needs.</summary>
    public static readonly FindingKind WantedNeeds = new(
        "curve.wanted-needs", Severity.Stop,
        "A rate needs {what} before it is a delivery.",
        "Enter {what}, or enter the delivery itself.");

    /// <summary>Nothing gained above a setting.</summary>
    public static readonly FindingKind NothingGained = new(
        "curve.nothing-gained", Severity.Warn,
        "From about {setting:percent} up nothing is gained: a limit of pump, valve or drive.",
        "Do not count on rates that need more; look at engine speed, oil flow and the valve's highest trim.");

    /// <summary>Delivery depends on engine speed.</summary>
    public static readonly FindingKind EngineMatters = new(
        "curve.engine-matters", Severity.Warn,
        "At {setting:percent} the delivery at {other} is {off:percent} more than at {main} (less when negative), beyond the interval.",
        "Hold the engine speed of the calibration on the road, or find why the pump does not supply the drive.");

    /// <summary>The trims contradict each other.</summary>
    public static readonly FindingKind TrimOrder = new(
        "curve.trim-order", Severity.Stop,
        "The lowest setting that just turns ({low:percent}) is not below the highest that still gains ({high:percent}).",
        "Check the two; repeat the trim before the drops.");

    /// <summary>Trim and curve disagree on where delivery begins.</summary>
    public static readonly FindingKind TrimUnlike = new(
        "curve.trim-unlike", Severity.Warn,
        "The shaft is said to turn from {trim:percent} on, but the runs point to {curve:percent}.",
        "Trim the lowest setting again; repeat the lowest runs with warm oil.");

    /// <summary>Runs above the trim's end.</summary>
    public static readonly FindingKind AboveTrim = new(
        "curve.above-trim", Severity.Note,
        "Runs were made at {setting:percent}, above {trim:percent}, where the trim found no further gain.",
        "Leave the settings above the trim out, or trim again.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        FewSettings, NoCurve, NotRising, OneRunSettings, WantedOutside, WantedFlat, WantedNeeds, NothingGained, EngineMatters,
        TrimOrder, TrimUnlike, AboveTrim,
    ];
}
