namespace Lanewright.Core.Quantities;

/// <summary>
/// Ground-speed sensor pulses per distance in pulses per metre, any finite value. Equal when the SI values are the same
/// bits.
/// </summary>
public readonly record struct PulsesPerLength : IScalable<PulsesPerLength>
{
    private PulsesPerLength(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.PulsesPerLength;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In pulse/m.</summary>
    public double PulsesPerMetre => Si;

    /// <summary>In pulse/km.</summary>
    public double PulsesPerKilometre => Units.PulsePerKilometre.FromSi(Si);

    /// <summary>In pulse/ft.</summary>
    public double PulsesPerFoot => Units.PulsePerFoot.FromSi(Si);

    /// <summary>In pulse/mile.</summary>
    public double PulsesPerMile => Units.PulsePerMile.FromSi(Si);

    /// <inheritdoc/>
    public static PulsesPerLength FromSi(double value) => new(value);

    /// <summary>From pulse/m.</summary>
    public static PulsesPerLength FromPulsesPerMetre(double value) => new(value);

    /// <summary>From pulse/km.</summary>
    public static PulsesPerLength FromPulsesPerKilometre(double value) => new(Units.PulsePerKilometre.ToSi(value));

    /// <summary>From pulse/ft.</summary>
    public static PulsesPerLength FromPulsesPerFoot(double value) => new(Units.PulsePerFoot.ToSi(value));

    /// <summary>From pulse/mile.</summary>
    public static PulsesPerLength FromPulsesPerMile(double value) => new(Units.PulsePerMile.ToSi(value));

    /// <summary>Pulses that a distance should give.</summary>
    public static PulseCount operator *(PulsesPerLength left, Length right) => PulseCount.FromSi(left.Si * right.Si);
}
