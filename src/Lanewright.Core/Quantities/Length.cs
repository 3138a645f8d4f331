namespace Lanewright.Core.Quantities;

/// <summary>
/// A length in metres, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Length : IScalable<Length>
{
    private Length(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Length;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In m.</summary>
    public double Metres => Si;

    /// <summary>In mm.</summary>
    public double Millimetres => Units.Millimetre.FromSi(Si);

    /// <summary>In cm.</summary>
    public double Centimetres => Units.Centimetre.FromSi(Si);

    /// <summary>In km.</summary>
    public double Kilometres => Units.Kilometre.FromSi(Si);

    /// <summary>In in.</summary>
    public double Inches => Units.Inch.FromSi(Si);

    /// <summary>In ft.</summary>
    public double Feet => Units.Foot.FromSi(Si);

    /// <summary>In yd.</summary>
    public double Yards => Units.Yard.FromSi(Si);

    /// <summary>In mile.</summary>
    public double Miles => Units.Mile.FromSi(Si);

    /// <inheritdoc/>
    public static Length FromSi(double value) => new(value);

    /// <summary>From m.</summary>
    public static Length FromMetres(double metres) => new(metres);

    /// <summary>From mm.</summary>
    public static Length FromMillimetres(double millimetres) => new(Units.Millimetre.ToSi(millimetres));

    /// <summary>From cm.</summary>
    public static Length FromCentimetres(double centimetres) => new(Units.Centimetre.ToSi(centimetres));

    /// <summary>From km.</summary>
    public static Length FromKilometres(double kilometres) => new(Units.Kilometre.ToSi(kilometres));

    /// <summary>From in.</summary>
    public static Length FromInches(double inches) => new(Units.Inch.ToSi(inches));

    /// <summary>From ft.</summary>
    public static Length FromFeet(double feet) => new(Units.Foot.ToSi(feet));

    /// <summary>From yd.</summary>
    public static Length FromYards(double yards) => new(Units.Yard.ToSi(yards));

    /// <summary>From mile.</summary>
    public static Length FromMiles(double miles) => new(Units.Mile.ToSi(miles));

    /// <summary>Area of a rectangle.</summary>
    public static Area operator *(Length left, Length right) => Area.FromSi(left.Si * right.Si);

    /// <summary>Mean speed.</summary>
    public static Speed operator /(Length left, Duration right) => Speed.FromSi(left.Si / right.Si);

    /// <summary>Time to cover the length at a speed.</summary>
    public static Duration operator /(Length left, Speed right) => Duration.FromSi(left.Si / right.Si);

    /// <summary>Pulses that the distance should give.</summary>
    public static PulseCount operator *(Length left, PulsesPerLength right) => PulseCount.FromSi(left.Si * right.Si);
}
