namespace Lanewright.Core.Quantities;

/// <summary>
/// Mass delivered per sensor pulse in kilograms per pulse, any finite value. Equal when the SI values are the same
/// bits.
/// </summary>
public readonly record struct MassPerPulse : IScalable<MassPerPulse>
{
    private MassPerPulse(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassPerPulse;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg/pulse.</summary>
    public double KilogramsPerPulse => Si;

    /// <summary>In g/pulse.</summary>
    public double GramsPerPulse => Units.GramPerPulse.FromSi(Si);

    /// <summary>In lb/pulse.</summary>
    public double PoundsPerPulse => Units.PoundPerPulse.FromSi(Si);

    /// <inheritdoc/>
    public static MassPerPulse FromSi(double value) => new(value);

    /// <summary>From kg/pulse.</summary>
    public static MassPerPulse FromKilogramsPerPulse(double value) => new(value);

    /// <summary>From g/pulse.</summary>
    public static MassPerPulse FromGramsPerPulse(double value) => new(Units.GramPerPulse.ToSi(value));

    /// <summary>From lb/pulse.</summary>
    public static MassPerPulse FromPoundsPerPulse(double value) => new(Units.PoundPerPulse.ToSi(value));

    /// <summary>Mass that the pulses stand for.</summary>
    public static Mass operator *(MassPerPulse left, PulseCount right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Mass for each turn of the shaft.</summary>
    public static MassPerRevolution operator *(MassPerPulse left, PulsesPerRevolution right) =>
        MassPerRevolution.FromSi(left.Si * right.Si);

    /// <summary>The same constant turned over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">This is zero.</exception>
    public PulsesPerMass ToPulsesPerMass() => PulsesPerMass.FromSi(1 / Si);
}
