namespace Lanewright.Core.Quantities;

/// <summary>
/// Turns of a shaft, any finite value: part of a turn counts. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct RevolutionCount : IScalable<RevolutionCount>
{
    private RevolutionCount(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Revolutions;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In rev.</summary>
    public double Revolutions => Si;

    /// <inheritdoc/>
    public static RevolutionCount FromSi(double value) => new(value);

    /// <summary>From rev.</summary>
    public static RevolutionCount FromRevolutions(double revolutions) => new(revolutions);

    /// <summary>Mean speed of the shaft.</summary>
    public static RotationalSpeed operator /(RevolutionCount left, Duration right) =>
        RotationalSpeed.FromSi(left.Si / right.Si);

    /// <summary>Mass that the turns deliver.</summary>
    public static Mass operator *(RevolutionCount left, MassPerRevolution right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Pulses that the turns should give.</summary>
    public static PulseCount operator *(RevolutionCount left, PulsesPerRevolution right) =>
        PulseCount.FromSi(left.Si * right.Si);
}
