using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>How the catch will be weighed.</summary>
public enum CatchMethod
{
    /// <summary>Many containers, each with its own tare and gross.</summary>
    Containers,

    /// <summary>The whole catch in one weighing.</summary>
    Whole,

    /// <summary>The truck before and after.</summary>
    Truck,
}

/// <summary>What is known before the test.</summary>
public sealed record PlanRequest
{
    /// <summary>The scale.</summary>
    public required Scale Scale { get; init; }

    /// <summary>How the catch will be weighed.</summary>
    public CatchMethod Method { get; init; }

    /// <summary>Whether the scale's error will be the same at both readings; null when nobody can say.</summary>
    public bool? CommonError { get; init; }

    /// <summary>The form of the constant.</summary>
    public ConstantForm Form { get; init; }

    /// <summary>The constant expected, SI; null when nothing is known.</summary>
    public double? ExpectedConstant { get; init; }

    /// <summary>Bulk density of the material.</summary>
    public Density BulkDensity { get; init; } = Density.FromPoundsPerCubicFoot(80);

    /// <summary>Mass per time at the drive setting of the test; null when not known.</summary>
    public MassFlow? Delivery { get; init; }

    /// <summary>Scatter of one long run to expect, as a share.</summary>
    public double ExpectedScatter { get; init; } = DefaultScatter;

    /// <summary>
    /// Mass by which starting and stopping the flow scatters in each run, whatever its size; standard deviation. It is
    /// what makes small drops poor.
    /// </summary>
    public Mass StartStop { get; init; } = Mass.FromPounds(DefaultStartStopPounds);

    /// <summary>Net fill of one container.</summary>
    public Mass ContainerFill { get; init; } = Mass.FromPounds(DefaultFillPounds);

    /// <summary>Weight of the empty container, bin or tarpaulin.</summary>
    public Mass ContainerTare { get; init; } = Mass.FromPounds(2.5);

    /// <summary>Weight of the loaded truck.</summary>
    public Mass TruckGross { get; init; } = Mass.FromPounds(45_000);

    /// <summary>Relative expanded uncertainty wanted.</summary>
    public double Wanted { get; init; } = TestSheet.DefaultWantedUncertainty;

    /// <summary>Coverage probability.</summary>
    public double Probability { get; init; } = 0.95;

    /// <summary>Units in which masses are chosen, round numbers in them.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>Most runs that anybody would do.</summary>
    public int MostRuns { get; init; } = 8;

    /// <summary>1 % (common practice, no source).</summary>
    public const double DefaultScatter = 0.01;

    /// <summary>1 lb (common practice, no source).</summary>
    public const double DefaultStartStopPounds = 1;

    /// <summary>Two thirds of a 5 US gal pail of salt at 80 lb/ft3: 35.6 lb.</summary>
    public const double DefaultFillPounds = 35.6;
}

/// <summary>One way to do the test, and what it buys.</summary>
/// <param name="Runs">How many runs.</param>
/// <param name="MassPerRun">How much to drop in each.</param>
/// <param name="Expected">Relative expanded uncertainty to expect.</param>
/// <param name="Containers">Containers a run takes; 0 when none are used.</param>
/// <param name="TimePerRun">How long a run takes; null when the delivery is not known.</param>
/// <param name="Enough">Whether it reaches what is wanted.</param>
public sealed record PlanChoice(
    int Runs, Mass MassPerRun, double Expected, int Containers, Duration? TimePerRun, bool Enough)
{
    /// <summary>Everything dropped.</summary>
    public Mass Total => Mass.FromSi(Runs * MassPerRun.Si);
}

/// <summary>What common practice asks for, and what it buys here.</summary>
/// <param name="Practice">In words, with its source.</param>
/// <param name="Choice">What it would give; null for advice that has no number.</param>
public sealed record PracticeCheck(string Practice, PlanChoice? Choice);

/// <summary>How to do the test.</summary>
/// <param name="Request">What was known.</param>
/// <param name="Cautions">To be read first.</param>
/// <param name="Best">The fewest runs, three or more, that reach what is wanted, and of these the least mass; null when
/// none does.</param>
/// <param name="Choices">All choices worked out, by runs and mass.</param>
/// <param name="Practices">Common practice beside it.</param>
/// <param name="Findings">What stands in the way.</param>
public sealed record TestPlan(
    PlanRequest Request, IReadOnlyList<Caution> Cautions, PlanChoice? Best, IReadOnlyList<PlanChoice> Choices,
    IReadOnlyList<PracticeCheck> Practices, IReadOnlyList<Finding> Findings);
