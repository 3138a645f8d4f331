namespace Lanewright.Core.Quantities;

/// <summary>
/// Sensor pulses per turn of the shaft in pulses per revolution, any finite value. Equal when the SI values are the
/// same bits.
/// </summary>
public readonly record struct PulsesPerRevolution : IScalable<PulsesPerRevolution>
{
    private PulsesPerRevolution(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.PulsesPerRevolution;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In pulse/rev.</summary>
    public double PerRevolution => Si;

    /// <inheritdoc/>
    public static PulsesPerRevolution FromSi(double value) => new(value);

    /// <summary>From pulse/rev.</summary>
    public static PulsesPerRevolution FromPulsesPerRevolution(double value) => new(value);

    /// <summary>Pulses that the turns should give.</summary>
    public static PulseCount operator *(PulsesPerRevolution left, RevolutionCount right) =>
        PulseCount.FromSi(left.Si * right.Si);

    /// <summary>Pulses for each unit of mass.</summary>
    public static PulsesPerMass operator /(PulsesPerRevolution left, MassPerRevolution right) =>
        PulsesPerMass.FromSi(left.Si / right.Si);
}
