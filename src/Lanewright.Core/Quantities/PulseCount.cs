namespace Lanewright.Core.Quantities;

/// <summary>
/// Pulses counted by a sensor, any finite value: a mean of several counts need not be whole. Equal when the SI values
/// are the same bits.
/// </summary>
public readonly record struct PulseCount : IScalable<PulseCount>
{
    private PulseCount(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Pulses;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In pulse.</summary>
    public double Pulses => Si;

    /// <inheritdoc/>
    public static PulseCount FromSi(double value) => new(value);

    /// <summary>From pulse.</summary>
    public static PulseCount FromPulses(double pulses) => new(pulses);

    /// <summary>Pulses for each unit of mass.</summary>
    public static PulsesPerMass operator /(PulseCount left, Mass right) => PulsesPerMass.FromSi(left.Si / right.Si);

    /// <summary>Pulses for each unit of volume.</summary>
    public static PulsesPerVolume operator /(PulseCount left, Volume right) =>
        PulsesPerVolume.FromSi(left.Si / right.Si);

    /// <summary>Pulses for each unit of distance.</summary>
    public static PulsesPerLength operator /(PulseCount left, Length right) =>
        PulsesPerLength.FromSi(left.Si / right.Si);

    /// <summary>Pulses for each turn.</summary>
    public static PulsesPerRevolution operator /(PulseCount left, RevolutionCount right) =>
        PulsesPerRevolution.FromSi(left.Si / right.Si);

    /// <summary>Mass that the pulses stand for.</summary>
    public static Mass operator /(PulseCount left, PulsesPerMass right) => Mass.FromSi(left.Si / right.Si);

    /// <summary>Volume that the pulses stand for.</summary>
    public static Volume operator /(PulseCount left, PulsesPerVolume right) => Volume.FromSi(left.Si / right.Si);

    /// <summary>Distance that the pulses stand for.</summary>
    public static Length operator /(PulseCount left, PulsesPerLength right) => Length.FromSi(left.Si / right.Si);

    /// <summary>Turns that the pulses stand for.</summary>
    public static RevolutionCount operator /(PulseCount left, PulsesPerRevolution right) =>
        RevolutionCount.FromSi(left.Si / right.Si);

    /// <summary>Mass that the pulses stand for.</summary>
    public static Mass operator *(PulseCount left, MassPerPulse right) => Mass.FromSi(left.Si * right.Si);
}
