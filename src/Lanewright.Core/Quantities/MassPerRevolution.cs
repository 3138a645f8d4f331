namespace Lanewright.Core.Quantities;

/// <summary>
/// Mass delivered per turn of the metering shaft in kilograms per revolution, any finite value. Equal when the SI
/// values are the same bits.
/// </summary>
public readonly record struct MassPerRevolution : IScalable<MassPerRevolution>
{
    private MassPerRevolution(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassPerRevolution;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg/rev.</summary>
    public double KilogramsPerRevolution => Si;

    /// <summary>In g/rev.</summary>
    public double GramsPerRevolution => Units.GramPerRevolution.FromSi(Si);

    /// <summary>In lb/rev.</summary>
    public double PoundsPerRevolution => Units.PoundPerRevolution.FromSi(Si);

    /// <inheritdoc/>
    public static MassPerRevolution FromSi(double value) => new(value);

    /// <summary>From kg/rev.</summary>
    public static MassPerRevolution FromKilogramsPerRevolution(double value) => new(value);

    /// <summary>From g/rev.</summary>
    public static MassPerRevolution FromGramsPerRevolution(double value) => new(Units.GramPerRevolution.ToSi(value));

    /// <summary>From lb/rev.</summary>
    public static MassPerRevolution FromPoundsPerRevolution(double value) => new(Units.PoundPerRevolution.ToSi(value));

    /// <summary>Mass that the turns deliver.</summary>
    public static Mass operator *(MassPerRevolution left, RevolutionCount right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Mass flow at a speed of the shaft.</summary>
    public static MassFlow operator *(MassPerRevolution left, RotationalSpeed right) =>
        MassFlow.FromSi(left.Si * right.Si);

    /// <summary>Mass for each pulse.</summary>
    public static MassPerPulse operator /(MassPerRevolution left, PulsesPerRevolution right) =>
        MassPerPulse.FromSi(left.Si / right.Si);
}
