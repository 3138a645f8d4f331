namespace Lanewright.Core.Quantities;

/// <summary>
/// Turns per time in revolutions per second, any finite value; the sign is the direction. Equal when the SI values are
/// the same bits.
/// </summary>
public readonly record struct RotationalSpeed : IScalable<RotationalSpeed>
{
    private RotationalSpeed(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.RotationalSpeed;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In rev/s.</summary>
    public double RevolutionsPerSecond => Si;

    /// <summary>In rev/min.</summary>
    public double RevolutionsPerMinute => Units.RevolutionPerMinute.FromSi(Si);

    /// <inheritdoc/>
    public static RotationalSpeed FromSi(double value) => new(value);

    /// <summary>From rev/s.</summary>
    public static RotationalSpeed FromRevolutionsPerSecond(double value) => new(value);

    /// <summary>From rev/min.</summary>
    public static RotationalSpeed FromRevolutionsPerMinute(double value) => new(Units.RevolutionPerMinute.ToSi(value));

    /// <summary>Mass flow of a metering shaft.</summary>
    public static MassFlow operator *(RotationalSpeed left, MassPerRevolution right) =>
        MassFlow.FromSi(left.Si * right.Si);

    /// <summary>Turns made in a time.</summary>
    public static RevolutionCount operator *(RotationalSpeed left, Duration right) =>
        RevolutionCount.FromSi(left.Si * right.Si);
}
