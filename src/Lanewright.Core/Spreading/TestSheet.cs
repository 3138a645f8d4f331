using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>
/// The observations of one drop test or of one verification: what people saw, never what was computed. Everything in
/// SI inside.
/// </summary>
public sealed record TestSheet
{
    /// <summary>Which question the test answers.</summary>
    public required TestKind Kind { get; init; }

    /// <summary>A line that names the test.</summary>
    public string Title { get; init; } = "";

    /// <summary>True for data made up for demonstration or practice.</summary>
    public bool Invented { get; init; }

    /// <summary>Day of the test.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Where it was done.</summary>
    public string Place { get; init; } = "";

    /// <summary>Who did it, as initials or a name.</summary>
    public IReadOnlyList<string> People { get; init; } = [];

    /// <summary>Units of numbers written without one, and units to answer in; null when nobody said.</summary>
    public UnitSystem? Units { get; init; }

    /// <summary>The spreader under test.</summary>
    public required Spreader Spreader { get; init; }

    /// <summary>What was dropped.</summary>
    public required Material Material { get; init; }

    /// <summary>The scale that weighed the catch.</summary>
    public required Scale Scale { get; init; }

    /// <summary>
    /// Whether the scale's own error is the same in both readings of a difference; null when nobody said.
    /// </summary>
    public bool? CommonError { get; init; }

    /// <summary>Standard uncertainty of a timed run, start and stop together; null when nobody said.</summary>
    public Duration? TimingUncertainty { get; init; }

    /// <summary>Smallest step in which turns were counted, e.g. a quarter turn; one turn when not stated.</summary>
    public RevolutionCount? RevolutionStep { get; init; }

    /// <summary>What earlier tests of this spreader say of its run-to-run scatter.</summary>
    public EarlierScatter? EarlierScatter { get; init; }

    /// <summary>The uncertainty wanted, relative, at <see cref="Probability"/>.</summary>
    public double WantedUncertainty { get; init; } = DefaultWantedUncertainty;

    /// <summary>Coverage probability of every interval of the report.</summary>
    public double Probability { get; init; } = 0.95;

    /// <summary>The yard's tolerance for delivered against weighed, relative.</summary>
    public double Tolerance { get; init; } = DefaultTolerance;

    /// <summary>The runs, in the order they were done.</summary>
    public required IReadOnlyList<Run> Runs { get; init; }

    /// <summary>What was decided, once it was.</summary>
    public Decision? Decision { get; init; }

    /// <summary>The units to answer in: those stated, else those of the constant.</summary>
    public UnitPreferences Preferences =>
        (Units ?? (Spreader.Unit.Symbol.Contains("lb", StringComparison.Ordinal) ? UnitSystem.UnitedStates : UnitSystem.Si))
            is UnitSystem.UnitedStates
            ? UnitPreferences.UnitedStates
            : UnitPreferences.Metric;

    /// <summary>Whether the weighed mass stands on top of the ratio that is sought.</summary>
    public bool MassOnTop => Kind is TestKind.Verification || Spreader.Form is not ConstantForm.PulsesPerMass;

    /// <summary>2 %: what a careful test reaches (common practice, no source).</summary>
    public const double DefaultWantedUncertainty = 0.02;

    /// <summary>5 % of what was asked: the acceptance for turf spreaders (University of Massachusetts Extension, rotary
    /// spreader calibration), taken over here for want of a published one for roads.</summary>
    public const double DefaultTolerance = 0.05;
}

/// <summary>A family of units.</summary>
public enum UnitSystem
{
    /// <summary>Pounds, inches, miles.</summary>
    UnitedStates,

    /// <summary>Kilograms, millimetres, kilometres.</summary>
    Si,
}

/// <summary>Which question a test answers.</summary>
public enum TestKind
{
    /// <summary>What is the calibration constant?</summary>
    DropTest,

    /// <summary>Does the spreader deliver what its controller says, with the constant now in it?</summary>
    Verification,
}

/// <summary>The spreader as far as a test needs it.</summary>
public sealed record Spreader
{
    /// <summary>Its number or name.</summary>
    public required string Id { get; init; }

    /// <summary>Auger, drag chain, belt, in words.</summary>
    public string Metering { get; init; } = "";

    /// <summary>How the controller regulates.</summary>
    public ControlLoop Loop { get; init; }

    /// <summary>The form in which the controller takes the constant.</summary>
    public ConstantForm Form { get; init; }

    /// <summary>The unit in which it is keyed in; of the form's dimension.</summary>
    public required Unit Unit { get; init; }

    /// <summary>Smallest step the controller accepts, in <see cref="Unit"/>, as a value in SI; null when not stated.</summary>
    public double? Resolution { get; init; }

    /// <summary>Smallest value accepted, SI.</summary>
    public double? Lowest { get; init; }

    /// <summary>Largest value accepted, SI.</summary>
    public double? Highest { get; init; }

    /// <summary>The constant in the controller before the test, SI.</summary>
    public double? Current { get; init; }
}

/// <summary>How the controller regulates.</summary>
public enum ControlLoop
{
    /// <summary>With feedback from a sensor on the metering device.</summary>
    Closed,

    /// <summary>Without feedback: a drive setting stands for a delivery.</summary>
    Open,
}

/// <summary>What the calibration constant is a ratio of.</summary>
public enum ConstantForm
{
    /// <summary>Sensor pulses per mass.</summary>
    PulsesPerMass,

    /// <summary>Mass per sensor pulse.</summary>
    MassPerPulse,

    /// <summary>Mass per turn of the metering shaft.</summary>
    MassPerRevolution,

    /// <summary>Mass per time at a stated drive setting.</summary>
    MassFlow,
}

/// <summary>What was dropped.</summary>
public sealed record Material
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Bulk density.</summary>
    public Density? BulkDensity { get; init; }

    /// <summary>Water in it; the constant is then given for dry material.</summary>
    public Moisture? Moisture { get; init; }
}

/// <summary>Water in a material.</summary>
/// <param name="Share">Mass of water by mass of wet material, or of dry material.</param>
/// <param name="OfDry">True when the share is of the dry mass.</param>
/// <param name="PlusMinus">Half the range the share may lie in; null when nobody said.</param>
public sealed record Moisture(double Share, bool OfDry, double? PlusMinus);

/// <summary>Scatter from run to run known from earlier tests.</summary>
/// <param name="Relative">Standard deviation of one run, as a share.</param>
/// <param name="Runs">How many runs it came from.</param>
public sealed record EarlierScatter(double Relative, long Runs);

/// <summary>One drop.</summary>
public sealed record Run
{
    /// <summary>Its name in the sheet.</summary>
    public required string Id { get; init; }

    /// <summary>Counted sensor pulses.</summary>
    public PulseCount? Pulses { get; init; }

    /// <summary>Counted turns of the metering shaft.</summary>
    public RevolutionCount? Revolutions { get; init; }

    /// <summary>How long it ran.</summary>
    public Duration? Time { get; init; }

    /// <summary>What the controller said it delivered; for a verification.</summary>
    public Mass? Delivered { get; init; }

    /// <summary>Drive setting as written, e.g. <c>50 %</c> or a step number.</summary>
    public string Setting { get; init; } = "";

    /// <summary>Engine speed.</summary>
    public RotationalSpeed? EngineSpeed { get; init; }

    /// <summary>Gate opening.</summary>
    public Length? Gate { get; init; }

    /// <summary>State of the hydraulic oil.</summary>
    public OilState Oil { get; init; }

    /// <summary>How many containers it filled, all of which must be weighed; null when nobody said.</summary>
    public long? Filled { get; init; }

    /// <summary>What was weighed.</summary>
    public required Catch Catch { get; init; }

    /// <summary>Anything else.</summary>
    public string Note { get; init; } = "";
}

/// <summary>State of the hydraulic oil.</summary>
public enum OilState
{
    /// <summary>Nobody said.</summary>
    NotStated,

    /// <summary>Not yet at working temperature.</summary>
    Cold,

    /// <summary>At working temperature.</summary>
    Warm,
}

/// <summary>What was decided on the report, by whom and why.</summary>
/// <param name="Verdict">What.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why.</param>
public sealed record Decision(Verdict Verdict, string By, string Why);

/// <summary>What can be decided on a report.</summary>
public enum Verdict
{
    /// <summary>Key the new value in.</summary>
    Adopt,

    /// <summary>Keep the old value.</summary>
    Reject,

    /// <summary>Do the test again.</summary>
    Repeat,
}
