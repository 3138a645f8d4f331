namespace Lanewright.Core.Quantities;

/// <summary>
/// Liquid volume per mass of dry material in cubic metres per kilogram, any finite value. Equal when the SI values are
/// the same bits.
/// </summary>
public readonly record struct LiquidPerMass : IScalable<LiquidPerMass>
{
    private LiquidPerMass(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LiquidPerMass;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In US gal/short ton.</summary>
    public double UsGallonsPerShortTon => Units.UsGallonPerShortTon.FromSi(Si);

    /// <summary>In imp gal/long ton.</summary>
    public double ImperialGallonsPerLongTon => Units.ImperialGallonPerLongTon.FromSi(Si);

    /// <summary>In L/t.</summary>
    public double LitresPerTonne => Units.LitrePerTonne.FromSi(Si);

    /// <summary>In L/short ton.</summary>
    public double LitresPerShortTon => Units.LitrePerShortTon.FromSi(Si);

    /// <summary>In L/long ton.</summary>
    public double LitresPerLongTon => Units.LitrePerLongTon.FromSi(Si);

    /// <summary>In US gal/t.</summary>
    public double UsGallonsPerTonne => Units.UsGallonPerTonne.FromSi(Si);

    /// <summary>In imp gal/t.</summary>
    public double ImperialGallonsPerTonne => Units.ImperialGallonPerTonne.FromSi(Si);

    /// <summary>In L/kg.</summary>
    public double LitresPerKilogram => Units.LitrePerKilogram.FromSi(Si);

    /// <inheritdoc/>
    public static LiquidPerMass FromSi(double value) => new(value);

    /// <summary>From US gal/short ton.</summary>
    public static LiquidPerMass FromUsGallonsPerShortTon(double value) => new(Units.UsGallonPerShortTon.ToSi(value));

    /// <summary>From imp gal/long ton.</summary>
    public static LiquidPerMass FromImperialGallonsPerLongTon(double value) =>
        new(Units.ImperialGallonPerLongTon.ToSi(value));

    /// <summary>From L/t.</summary>
    public static LiquidPerMass FromLitresPerTonne(double value) => new(Units.LitrePerTonne.ToSi(value));

    /// <summary>From L/short ton.</summary>
    public static LiquidPerMass FromLitresPerShortTon(double value) => new(Units.LitrePerShortTon.ToSi(value));

    /// <summary>From L/long ton.</summary>
    public static LiquidPerMass FromLitresPerLongTon(double value) => new(Units.LitrePerLongTon.ToSi(value));

    /// <summary>From US gal/t.</summary>
    public static LiquidPerMass FromUsGallonsPerTonne(double value) => new(Units.UsGallonPerTonne.ToSi(value));

    /// <summary>From imp gal/t.</summary>
    public static LiquidPerMass FromImperialGallonsPerTonne(double value) =>
        new(Units.ImperialGallonPerTonne.ToSi(value));

    /// <summary>From L/kg.</summary>
    public static LiquidPerMass FromLitresPerKilogram(double value) => new(Units.LitrePerKilogram.ToSi(value));

    /// <summary>Liquid that goes with a dry mass.</summary>
    public static Volume operator *(LiquidPerMass left, Mass right) => Volume.FromSi(left.Si * right.Si);

    /// <summary>Liquid flow that goes with a dry flow.</summary>
    public static VolumeFlow operator *(LiquidPerMass left, MassFlow right) => VolumeFlow.FromSi(left.Si * right.Si);
}
