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

    /// <summary>One opening only.</summary>
    public static readonly FindingKind OneOpening = new(
        "gate.one-opening", Severity.Stop,
        "There are not two gate openings with a usable run, so there is no table.",
        "Run at least two openings; three or more show whether they lie on a line.");

    /// <summary>Two openings show no shape.</summary>
    public static readonly FindingKind TwoOpenings = new(
        "gate.two-openings", Severity.Warn,
        "Two openings always lie on a line; whether others do is not known.",
        "Run a third opening between them.");

    /// <summary>The openings do not lie on a line.</summary>
    public static readonly FindingKind NotALine = new(
        "gate.not-a-line", Severity.Warn,
        "The openings do not lie on a line (chance of missing it by as much without a cause: {chance:percent}); between them a rising curve is used.",
        "Check the openings as measured; a gate meters only while material keeps up with it. Test the opening you will use.");

    /// <summary>An opening outside the tested ones.</summary>
    public static readonly FindingKind OpeningOutside = new(
        "gate.outside", Severity.Warn,
        "{gate} lies outside the openings tested, {low} to {high}; what is read off there is a guess.",
        "Test that opening.");

    /// <summary>The geometry needs more.</summary>
    public static readonly FindingKind GeometryNeeds = new(
        "gate.geometry-needs", Severity.Note,
        "Sizes of auger or chain are stated, but not the bulk density of the material (and for pulses, the pulses for one turn).",
        "State them to see what the sizes lead to expect.");

    /// <summary>Result and geometry disagree.</summary>
    public static readonly FindingKind UnlikeGeometry = new(
        "gate.unlike-geometry", Severity.Warn,
        "At {gate} the drops gave {ratio:percent} of what the sizes lead to expect. Bulk density alone differs by a sixth between loose and compacted salt.",
        "Check counted turns, fill, wear of flight or chain, and the sizes.");

    /// <summary>No tolerance of the yard.</summary>
    public static readonly FindingKind NoTolerance = new(
        "check.no-tolerance", Severity.Note,
        "The yard's tolerance is not stated, so there is no verdict.",
        "State tolerance when the yard has one; none is assumed.");

    /// <summary>What the dose counts was assumed.</summary>
    public static readonly FindingKind DoseBasisAssumed = new(
        "check.dose-basis-assumed", Severity.Warn,
        "Whether the dose counts salt and brine together or the dry salt alone is not stated; together is assumed.",
        "Answer doseIs: total or dry.");

    /// <summary>The deviation looks like the other meaning of the dose.</summary>
    public static readonly FindingKind DoseBasis = new(
        "check.dose-basis", Severity.Warn,
        "At point {point} the salt is off by {off:percent}: what would come if the spreader took the dose as {basis}.",
        "Find out what its dose counts before changing anything.");

    /// <summary>One point only.</summary>
    public static readonly FindingKind OnePoint = new(
        "check.one-point", Severity.Note,
        "One point of dose, width and speed says nothing of the others.",
        "Check a low and a high dose, a narrow and a wide width, a low and a high speed; low doses are the sensitive ones.");

    /// <summary>One run at a point.</summary>
    public static readonly FindingKind OneRunPoint = new(
        "check.one-run", Severity.Note,
        "Point {point} has one run; its interval rests on what spreaders do in general.",
        "Do two or three runs at each point.");

    /// <summary>Outside the yard's tolerance.</summary>
    public static readonly FindingKind CheckOutside = new(
        "check.outside", Severity.Warn,
        "Point {point}: {what} is off by {off:percent} ± {half:percent}, outside ± {tolerance:percent}.",
        "Check what was set, then calibrate.");

    /// <summary>The interval reaches over the tolerance.</summary>
    public static readonly FindingKind CheckCannotTell = new(
        "check.cannot-tell", Severity.Note,
        "Point {point}: {what} is off by {off:percent} ± {half:percent}; that does not decide on ± {tolerance:percent}.",
        "Run longer, repeat, or use a scale with a finer division.");

    /// <summary>Brine set, but none caught.</summary>
    public static readonly FindingKind NoBrine = new(
        "check.no-brine", Severity.Warn,
        "Point {point} has no brine that can be used, although the spreader pre-wets.",
        "Catch the brine of the same time and enter it.");

    /// <summary>Brine by volume without its density.</summary>
    public static readonly FindingKind BrineDensity = new(
        "check.brine-density", Severity.Warn,
        "The brine of run {run} is a volume; without its density it is no mass.",
        "Enter brine.density, or weigh the brine.");

    /// <summary>Accuracy of the caught brine assumed.</summary>
    public static readonly FindingKind BrineAssumed = new(
        "check.brine-assumed", Severity.Note,
        "How well the brine was caught and measured is not stated; ± {assumed:percent} is assumed (common practice, no source).",
        "Enter plusMinus.");

    /// <summary>A catch in pans is not a test of the rate.</summary>
    public static readonly FindingKind NotARate = new(
        "pattern.not-a-rate", Severity.Note,
        "What pans or mats catch tells where material lands, not how much is spread: part of it bounces out or off.",
        "Take the rate from a drop test.");

    /// <summary>One pass.</summary>
    public static readonly FindingKind OnePatternPass = new(
        "pattern.one-pass", Severity.Warn,
        "One pass does not show how much passes differ; the intervals hold the weighing only.",
        "Drive two more passes and enter each on its own.");

    /// <summary>Passes per piece differ.</summary>
    public static readonly FindingKind PassesDiffer = new(
        "pattern.passes-differ", Severity.Stop,
        "The pans or blocks do not all have the same number of masses.",
        "Enter one mass for each pass in every one of them, 0 where nothing lay.");

    /// <summary>Pans without a width.</summary>
    public static readonly FindingKind NoPanWidth = new(
        "pattern.no-pan-width", Severity.Stop,
        "Pans are placed by their middle, but the width of a pan is not stated.",
        "Enter panWidth.");

    /// <summary>Pieces lie over each other.</summary>
    public static readonly FindingKind PiecesOverlap = new(
        "pattern.overlap", Severity.Stop,
        "Two pans or blocks lie over each other, or one has no width.",
        "Check their places.");

    /// <summary>A piece without a place.</summary>
    public static readonly FindingKind PieceNowhere = new(
        "pattern.nowhere", Severity.Stop,
        "A pan needs its middle, a block both edges with the left one first; not both ways at once.",
        "Enter at, or from and to.");

    /// <summary>Edges the wrong way round.</summary>
    public static readonly FindingKind EdgesTurned = new(
        "pattern.edges-turned", Severity.Stop,
        "The left edge ({left}) is not left of the right one ({right}).",
        "Places to the left of the truck's middle are negative.");

    /// <summary>Nothing caught.</summary>
    public static readonly FindingKind NothingLanded = new(
        "pattern.nothing", Severity.Stop,
        "Nothing was caught.",
        "Check the masses.");

    /// <summary>The outermost pieces still caught something.</summary>
    public static readonly FindingKind CatchEndsEarly = new(
        "pattern.ends-early", Severity.Warn,
        "An outermost piece still caught {share:percent} of the greatest catch: some fell beyond and is in none of the shares.",
        "Lay pans or mats farther out.");

    /// <summary>The lane reaches beyond the catch.</summary>
    public static readonly FindingKind LaneNotCovered = new(
        "pattern.lane-not-covered", Severity.Warn,
        "Pans or mats do not reach to both edges of the lane.",
        "Lay them beyond both edges.");

    /// <summary>Accuracy of the masses assumed.</summary>
    public static readonly FindingKind PanMassAssumed = new(
        "pattern.mass-assumed", Severity.Note,
        "How well the masses were weighed is not stated; ± {assumed} each is assumed (common practice, no source).",
        "Enter massPlusMinus.");

    /// <summary>Overlap is for passes side by side.</summary>
    public static readonly FindingKind OverlapOfSwaths = new(
        "pattern.swaths", Severity.Note,
        "Overlap matters where passes lie side by side, such as on lots. On a road, spread in one pass, look at the shares.",
        "Compare variations only when they use the same divisor; both are printed.");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
    [
        FewSettings, NoCurve, NotRising, OneRunSettings, WantedOutside, WantedFlat, WantedNeeds, NothingGained, EngineMatters,
        TrimOrder, TrimUnlike, AboveTrim,
        OneOpening, TwoOpenings, NotALine, OpeningOutside, GeometryNeeds, UnlikeGeometry, NoTolerance, DoseBasisAssumed,
        DoseBasis, OnePoint, OneRunPoint, CheckOutside, CheckCannotTell, NoBrine, BrineDensity, BrineAssumed, NotARate,
        OnePatternPass, PassesDiffer, NoPanWidth, PiecesOverlap, PieceNowhere, EdgesTurned, NothingLanded, CatchEndsEarly,
        LaneNotCovered, PanMassAssumed, OverlapOfSwaths,
    ];
}
