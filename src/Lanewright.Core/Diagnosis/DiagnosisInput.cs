using Lanewright.Core.Spreading;

namespace Lanewright.Core.Diagnosis;

/// <summary>What a diagnosis looks at.</summary>
public sealed record DiagnosisInput
{
    /// <summary>What was computed from the sheet, with the sheet.</summary>
    public required TestReport Report { get; init; }

    /// <summary>Earlier constants of this spreader, in any order; for a drop test by time those of all settings.</summary>
    public IReadOnlyList<EarlierConstant> Earlier { get; init; } = [];

    /// <summary>How sister spreaders changed since their own last test.</summary>
    public IReadOnlyList<SisterChange> Sisters { get; init; } = [];

    /// <summary>What the register and earlier sheets say of the spreader.</summary>
    public SpreaderFacts Facts { get; init; } = new();
}

/// <summary>A constant found before.</summary>
/// <param name="Day">Day of the test.</param>
/// <param name="Value">The constant in the form of the spreader, SI; above 0.</param>
/// <param name="Uncertainty">Standard uncertainty as a share.</param>
/// <param name="Setting">The drive setting it belongs to, or empty.</param>
public sealed record EarlierConstant(DateOnly Day, double Value, double Uncertainty, string Setting = "");

/// <summary>What a sister spreader did since its last test.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Change">Logarithm of mass for each count now by then.</param>
/// <param name="Uncertainty">Standard uncertainty of the change.</param>
/// <param name="SameMaterial">Whether it was tested with the material of this sheet.</param>
/// <param name="SameScale">Whether it was weighed on the scale of this sheet.</param>
public sealed record SisterChange(string Id, double Change, double Uncertainty, bool SameMaterial, bool SameScale);

/// <summary>How fast the shaft turned at a setting.</summary>
/// <param name="Setting">Drive setting as a share, 0 to 1.</param>
/// <param name="Turns">Turns by second; or pulses by second where turns are not counted.</param>
public sealed record ShaftSpeed(double Setting, double Turns);

/// <summary>What register and earlier sheets say; all of it may be missing.</summary>
public sealed record SpreaderFacts
{
    /// <summary>Pulses for one turn of the shaft.</summary>
    public double? Teeth { get; init; }

    /// <summary>Openings that the gate has marks for, m; empty where there is no gate.</summary>
    public IReadOnlyList<double> Gates { get; init; } = [];

    /// <summary>The opening at which the constant was found, m.</summary>
    public double? Gate { get; init; }

    /// <summary>Number of feeders on the shaft or shafts.</summary>
    public int? Feeders { get; init; }

    /// <summary>Usual weight of an empty container, kg.</summary>
    public double? Tare { get; init; }

    /// <summary>Engine speed at earlier tests, turns by second.</summary>
    public double? EngineSpeed { get; init; }

    /// <summary>Speeds of the shaft at earlier tests, in turns by second.</summary>
    public IReadOnlyList<ShaftSpeed> Shaft { get; init; } = [];

    /// <summary>What was done to the spreader since its last test: the words of the register's events.</summary>
    public IReadOnlyList<string> Events { get; init; } = [];

    /// <summary>Whether <see cref="Events"/> is complete, so that an event that is not in it did not happen.</summary>
    public bool EventsKnown { get; init; }

    /// <summary>Whether the delivered mass of a check is rate times distance asked for on the road, not the controller's count.</summary>
    public bool OnTheRoad { get; init; }
}
