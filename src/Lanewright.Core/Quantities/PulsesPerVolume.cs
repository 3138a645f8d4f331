namespace Lanewright.Core.Quantities;

/// <summary>
/// Sensor pulses per liquid volume in pulses per cubic metre, any finite value. Equal when the SI values are the same
/// bits.
/// </summary>
public readonly record struct PulsesPerVolume : IScalable<PulsesPerVolume>
{
    private PulsesPerVolume(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.PulsesPerVolume;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In pulse/L.</summary>
    public double PulsesPerLitre => Units.PulsePerLitre.FromSi(Si);

    /// <summary>In pulse/US gal.</summary>
    public double PulsesPerUsGallon => Units.PulsePerUsGallon.FromSi(Si);

    /// <summary>In pulse/imp gal.</summary>
    public double PulsesPerImperialGallon => Units.PulsePerImperialGallon.FromSi(Si);

    /// <inheritdoc/>
    public static PulsesPerVolume FromSi(double value) => new(value);

    /// <summary>From pulse/L.</summary>
    public static PulsesPerVolume FromPulsesPerLitre(double value) => new(Units.PulsePerLitre.ToSi(value));

    /// <summary>From pulse/US gal.</summary>
    public static PulsesPerVolume FromPulsesPerUsGallon(double value) => new(Units.PulsePerUsGallon.ToSi(value));

    /// <summary>From pulse/imp gal.</summary>
    public static PulsesPerVolume FromPulsesPerImperialGallon(double value) =>
        new(Units.PulsePerImperialGallon.ToSi(value));

    /// <summary>Pulses that a volume should give.</summary>
    public static PulseCount operator *(PulsesPerVolume left, Volume right) => PulseCount.FromSi(left.Si * right.Si);
}
