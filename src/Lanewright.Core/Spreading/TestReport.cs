using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>What was computed from a sheet. A pure function of it: the same sheet gives the same report anywhere.</summary>
public sealed record TestReport
{
    /// <summary>The sheet.</summary>
    public required TestSheet Sheet { get; init; }

    /// <summary>One result; for an open loop one for each drive setting. Empty when nothing could be computed.</summary>
    public required IReadOnlyList<TestResult> Results { get; init; }

    /// <summary>Everything the technician must know, gravest first.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Whether there is an answer and nothing says stop.</summary>
    public bool Usable => Results.Count > 0 && Findings.All(f => f.Severity is not Severity.Stop);
}

/// <summary>A constant, or in a verification the share delivered, with how good it is.</summary>
public sealed record TestResult
{
    /// <summary>The drive setting it belongs to, or empty.</summary>
    public required string Setting { get; init; }

    /// <summary>What the value measures.</summary>
    public required Dimension Dimension { get; init; }

    /// <summary>The unit it is keyed in or shown in.</summary>
    public required Unit Unit { get; init; }

    /// <summary>
    /// The value with all its error sources, the scatter included; SI. A scale's sources have one identity everywhere;
    /// those of runs are named within this test only, and get their identity among all tests when the report is
    /// written. So compare results of two tests as read back from their reports.
    /// </summary>
    public required Measured Value { get; init; }

    /// <summary>Coverage probability of the interval.</summary>
    public required double Probability { get; init; }

    /// <summary>Expanded uncertainty: half the width of the interval, SI.</summary>
    public required double Expanded { get; init; }

    /// <summary>The distribution of the value's error.</summary>
    public required ErrorDistribution Error { get; init; }

    /// <summary>The classical expanded uncertainty (GUM annex G), for comparison.</summary>
    public required WelchSatterthwaite Classical { get; init; }

    /// <summary>How the runs were drawn together.</summary>
    public required RatioEstimate Estimate { get; init; }

    /// <summary>Where the uncertainty comes from, largest first.</summary>
    public required IReadOnlyList<BudgetLine> Budget { get; init; }

    /// <summary>The runs behind it.</summary>
    public required IReadOnlyList<RunRow> Runs { get; init; }

    /// <summary>What to key in; null in a verification, or when the controller's step is not stated.</summary>
    public KeyIn? KeyIn { get; init; }

    /// <summary>What the spreader has been putting down; null when the constant in use is not stated.</summary>
    public Delivery? Delivery { get; init; }

    /// <summary>How much more to drop for the wanted uncertainty; null when it is reached.</summary>
    public MoreToDrop? More { get; init; }

    /// <summary>The random trials; null when none were asked for.</summary>
    public MonteCarlo? Trials { get; init; }

    /// <summary>Whether the trials agree with the formula; null without trials.</summary>
    public bool? TrialsAgree { get; init; }

    /// <summary>Lower end of the interval, SI.</summary>
    public double Low => Value.Value - Expanded;

    /// <summary>Upper end of the interval, SI.</summary>
    public double High => Value.Value + Expanded;

    /// <summary>Expanded uncertainty as a share of the value.</summary>
    public double RelativeExpanded => Expanded / Math.Abs(Value.Value);
}

/// <summary>One run of a result.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Net">Mass weighed, as it enters the ratio, kg.</param>
/// <param name="Ratio">Its ratio, SI.</param>
/// <param name="Deviation">How far the ratio lies from the result, as a share.</param>
/// <param name="OwnUncertainty">Standard uncertainty of the ratio from weighing, counting and timing, as a share.</param>
public sealed record RunRow(string Id, Measured Net, double Ratio, double Deviation, double OwnUncertainty);

/// <summary>What to key in; there is none without a stated step.</summary>
/// <param name="Value">The nearest value the controller takes, SI.</param>
/// <param name="Step">Its step, SI.</param>
/// <param name="Cost">Error made by the rounding, as a share, with its sign.</param>
/// <param name="WorstCost">The most that rounding to this step can cost, as a share.</param>
public sealed record KeyIn(double Value, double Step, double Cost, double WorstCost);

/// <summary>Delivered by asked, as a share, and whether that is within the yard's tolerance.</summary>
/// <param name="Share">1 is exactly what was asked.</param>
/// <param name="Expanded">Expanded uncertainty of the share.</param>
/// <param name="Tolerance">The tolerance, plus or minus.</param>
/// <param name="Conformity">Verdict with a guard band of the expanded uncertainty.</param>
/// <param name="ChanceWithin">Chance that the true share lies within tolerance.</param>
public sealed record Delivery(
    Measured Share, double Expanded, double Tolerance, Conformity Conformity, double ChanceWithin);

/// <summary>Verdict against a tolerance with a guard band (JCGM 106: the guard band is the expanded uncertainty).</summary>
public enum Conformity
{
    /// <summary>Within tolerance even with the uncertainty against it.</summary>
    Pass,

    /// <summary>Outside even with the uncertainty in its favour.</summary>
    Fail,

    /// <summary>The interval reaches across the limit.</summary>
    CannotTell,
}

/// <summary>How much more to drop.</summary>
/// <param name="Runs">Further runs like these; 0 when no number of them is enough.</param>
/// <param name="Mass">Mass of those runs together, kg.</param>
/// <param name="Floor">The relative expanded uncertainty that no number of runs like these goes below.</param>
public sealed record MoreToDrop(int Runs, double Mass, double Floor);

/// <summary>How to analyse.</summary>
/// <param name="Trials">Random trials beside the formula, at least 1,000; 0 for none.</param>
/// <param name="Seed">Seed of the trials.</param>
public sealed record AnalysisOptions(int Trials = 0, ulong Seed = 20260901);
