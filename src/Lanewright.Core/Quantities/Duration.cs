namespace Lanewright.Core.Quantities;

/// <summary>
/// An elapsed time in seconds, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Duration : IScalable<Duration>
{
    private Duration(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Time;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In s.</summary>
    public double Seconds => Si;

    /// <summary>In min.</summary>
    public double Minutes => Units.Minute.FromSi(Si);

    /// <summary>In h.</summary>
    public double Hours => Units.Hour.FromSi(Si);

    /// <inheritdoc/>
    public static Duration FromSi(double value) => new(value);

    /// <summary>From s.</summary>
    public static Duration FromSeconds(double seconds) => new(seconds);

    /// <summary>From min.</summary>
    public static Duration FromMinutes(double minutes) => new(Units.Minute.ToSi(minutes));

    /// <summary>From h.</summary>
    public static Duration FromHours(double hours) => new(Units.Hour.ToSi(hours));

    /// <summary>Mass that a flow delivers in the time.</summary>
    public static Mass operator *(Duration left, MassFlow right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Volume that a flow delivers in the time.</summary>
    public static Volume operator *(Duration left, VolumeFlow right) => Volume.FromSi(left.Si * right.Si);

    /// <summary>Distance covered in the time.</summary>
    public static Length operator *(Duration left, Speed right) => Length.FromSi(left.Si * right.Si);

    /// <summary>Turns made in the time.</summary>
    public static RevolutionCount operator *(Duration left, RotationalSpeed right) =>
        RevolutionCount.FromSi(left.Si * right.Si);
}
