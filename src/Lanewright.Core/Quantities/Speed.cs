namespace Lanewright.Core.Quantities;

/// <summary>
/// A speed in metres per second, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Speed : IScalable<Speed>
{
    private Speed(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Speed;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In m/s.</summary>
    public double MetresPerSecond => Si;

    /// <summary>In km/h.</summary>
    public double KilometresPerHour => Units.KilometrePerHour.FromSi(Si);

    /// <summary>In mph.</summary>
    public double MilesPerHour => Units.MilePerHour.FromSi(Si);

    /// <summary>In ft/min.</summary>
    public double FeetPerMinute => Units.FootPerMinute.FromSi(Si);

    /// <summary>In ft/s.</summary>
    public double FeetPerSecond => Units.FootPerSecond.FromSi(Si);

    /// <inheritdoc/>
    public static Speed FromSi(double value) => new(value);

    /// <summary>From m/s.</summary>
    public static Speed FromMetresPerSecond(double value) => new(value);

    /// <summary>From km/h.</summary>
    public static Speed FromKilometresPerHour(double value) => new(Units.KilometrePerHour.ToSi(value));

    /// <summary>From mph.</summary>
    public static Speed FromMilesPerHour(double value) => new(Units.MilePerHour.ToSi(value));

    /// <summary>From ft/min.</summary>
    public static Speed FromFeetPerMinute(double value) => new(Units.FootPerMinute.ToSi(value));

    /// <summary>From ft/s.</summary>
    public static Speed FromFeetPerSecond(double value) => new(Units.FootPerSecond.ToSi(value));

    /// <summary>Distance covered in a time.</summary>
    public static Length operator *(Speed left, Duration right) => Length.FromSi(left.Si * right.Si);
}
