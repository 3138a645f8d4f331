namespace Lanewright.Core.Quantities;

/// <summary>
/// A volume in cubic metres, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Volume : IScalable<Volume>
{
    private Volume(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Volume;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In m³.</summary>
    public double CubicMetres => Si;

    /// <summary>In L.</summary>
    public double Litres => Units.Litre.FromSi(Si);

    /// <summary>In mL.</summary>
    public double Millilitres => Units.Millilitre.FromSi(Si);

    /// <summary>In ft³.</summary>
    public double CubicFeet => Units.CubicFoot.FromSi(Si);

    /// <summary>In yd³.</summary>
    public double CubicYards => Units.CubicYard.FromSi(Si);

    /// <summary>In US gal.</summary>
    public double UsGallons => Units.UsGallon.FromSi(Si);

    /// <summary>In imp gal.</summary>
    public double ImperialGallons => Units.ImperialGallon.FromSi(Si);

    /// <summary>In US fl oz.</summary>
    public double UsFluidOunces => Units.UsFluidOunce.FromSi(Si);

    /// <summary>In imp fl oz.</summary>
    public double ImperialFluidOunces => Units.ImperialFluidOunce.FromSi(Si);

    /// <inheritdoc/>
    public static Volume FromSi(double value) => new(value);

    /// <summary>From m³.</summary>
    public static Volume FromCubicMetres(double cubicMetres) => new(cubicMetres);

    /// <summary>From L.</summary>
    public static Volume FromLitres(double litres) => new(Units.Litre.ToSi(litres));

    /// <summary>From mL.</summary>
    public static Volume FromMillilitres(double millilitres) => new(Units.Millilitre.ToSi(millilitres));

    /// <summary>From ft³.</summary>
    public static Volume FromCubicFeet(double cubicFeet) => new(Units.CubicFoot.ToSi(cubicFeet));

    /// <summary>From yd³.</summary>
    public static Volume FromCubicYards(double cubicYards) => new(Units.CubicYard.ToSi(cubicYards));

    /// <summary>From US gal.</summary>
    public static Volume FromUsGallons(double usGallons) => new(Units.UsGallon.ToSi(usGallons));

    /// <summary>From imp gal.</summary>
    public static Volume FromImperialGallons(double imperialGallons) => new(Units.ImperialGallon.ToSi(imperialGallons));

    /// <summary>From US fl oz.</summary>
    public static Volume FromUsFluidOunces(double usFluidOunces) => new(Units.UsFluidOunce.ToSi(usFluidOunces));

    /// <summary>From imp fl oz.</summary>
    public static Volume FromImperialFluidOunces(double imperialFluidOunces) =>
        new(Units.ImperialFluidOunce.ToSi(imperialFluidOunces));

    /// <summary>Mean volume flow.</summary>
    public static VolumeFlow operator /(Volume left, Duration right) => VolumeFlow.FromSi(left.Si / right.Si);

    /// <summary>Time in which a flow delivers the volume.</summary>
    public static Duration operator /(Volume left, VolumeFlow right) => Duration.FromSi(left.Si / right.Si);

    /// <summary>Mass of the volume at a density.</summary>
    public static Mass operator *(Volume left, Density right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Liquid for each unit of dry mass.</summary>
    public static LiquidPerMass operator /(Volume left, Mass right) => LiquidPerMass.FromSi(left.Si / right.Si);

    /// <summary>Mean liquid rate on an area.</summary>
    public static LiquidAreaRate operator /(Volume left, Area right) => LiquidAreaRate.FromSi(left.Si / right.Si);

    /// <summary>Pulses that the volume should give.</summary>
    public static PulseCount operator *(Volume left, PulsesPerVolume right) => PulseCount.FromSi(left.Si * right.Si);
}
