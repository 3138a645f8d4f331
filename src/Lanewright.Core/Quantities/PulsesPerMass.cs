namespace Lanewright.Core.Quantities;

/// <summary>
/// Sensor pulses per mass delivered in pulses per kilogram, any finite value. Equal when the SI values are the same
/// bits.
/// </summary>
public readonly record struct PulsesPerMass : IScalable<PulsesPerMass>
{
    private PulsesPerMass(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.PulsesPerMass;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In pulse/kg.</summary>
    public double PulsesPerKilogram => Si;

    /// <summary>In pulse/lb.</summary>
    public double PulsesPerPound => Units.PulsePerPound.FromSi(Si);

    /// <summary>In pulse/g.</summary>
    public double PulsesPerGram => Units.PulsePerGram.FromSi(Si);

    /// <inheritdoc/>
    public static PulsesPerMass FromSi(double value) => new(value);

    /// <summary>From pulse/kg.</summary>
    public static PulsesPerMass FromPulsesPerKilogram(double value) => new(value);

    /// <summary>From pulse/lb.</summary>
    public static PulsesPerMass FromPulsesPerPound(double value) => new(Units.PulsePerPound.ToSi(value));

    /// <summary>From pulse/g.</summary>
    public static PulsesPerMass FromPulsesPerGram(double value) => new(Units.PulsePerGram.ToSi(value));

    /// <summary>Pulses that a mass should give.</summary>
    public static PulseCount operator *(PulsesPerMass left, Mass right) => PulseCount.FromSi(left.Si * right.Si);

    /// <summary>The same constant turned over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">This is zero.</exception>
    public MassPerPulse ToMassPerPulse() => MassPerPulse.FromSi(1 / Si);
}
