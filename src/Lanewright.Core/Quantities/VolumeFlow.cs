namespace Lanewright.Core.Quantities;

/// <summary>
/// A volume per time in cubic metres per second, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct VolumeFlow : IScalable<VolumeFlow>
{
    private VolumeFlow(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.VolumeFlow;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In m³/s.</summary>
    public double CubicMetresPerSecond => Si;

    /// <summary>In L/min.</summary>
    public double LitresPerMinute => Units.LitrePerMinute.FromSi(Si);

    /// <summary>In US gal/min.</summary>
    public double UsGallonsPerMinute => Units.UsGallonPerMinute.FromSi(Si);

    /// <summary>In imp gal/min.</summary>
    public double ImperialGallonsPerMinute => Units.ImperialGallonPerMinute.FromSi(Si);

    /// <summary>In m³/h.</summary>
    public double CubicMetresPerHour => Units.CubicMetrePerHour.FromSi(Si);

    /// <inheritdoc/>
    public static VolumeFlow FromSi(double value) => new(value);

    /// <summary>From m³/s.</summary>
    public static VolumeFlow FromCubicMetresPerSecond(double value) => new(value);

    /// <summary>From L/min.</summary>
    public static VolumeFlow FromLitresPerMinute(double value) => new(Units.LitrePerMinute.ToSi(value));

    /// <summary>From US gal/min.</summary>
    public static VolumeFlow FromUsGallonsPerMinute(double value) => new(Units.UsGallonPerMinute.ToSi(value));

    /// <summary>From imp gal/min.</summary>
    public static VolumeFlow FromImperialGallonsPerMinute(double value) =>
        new(Units.ImperialGallonPerMinute.ToSi(value));

    /// <summary>From m³/h.</summary>
    public static VolumeFlow FromCubicMetresPerHour(double value) => new(Units.CubicMetrePerHour.ToSi(value));

    /// <summary>Volume delivered in a time.</summary>
    public static Volume operator *(VolumeFlow left, Duration right) => Volume.FromSi(left.Si * right.Si);

    /// <summary>Mass flow at a density.</summary>
    public static MassFlow operator *(VolumeFlow left, Density right) => MassFlow.FromSi(left.Si * right.Si);

    /// <summary>Liquid for each unit of dry mass.</summary>
    public static LiquidPerMass operator /(VolumeFlow left, MassFlow right) => LiquidPerMass.FromSi(left.Si / right.Si);
}
