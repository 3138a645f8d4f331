namespace Lanewright.Core.Quantities;

/// <summary>
/// A density, bulk density included, in kilograms per cubic metre; greater than zero. Equal when the SI values are the
/// same bits.
/// </summary>
public readonly record struct Density : IScalable<Density>
{
    private Density(double si) => Si = Allows(si)
        ? si
        : throw new ArgumentOutOfRangeException(nameof(si), si, "A density must be finite and greater than zero.");

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Density;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg/m³.</summary>
    public double KilogramsPerCubicMetre => Si;

    /// <summary>In lb/ft³.</summary>
    public double PoundsPerCubicFoot => Units.PoundPerCubicFoot.FromSi(Si);

    /// <summary>In g/mL.</summary>
    public double GramsPerMillilitre => Units.GramPerMillilitre.FromSi(Si);

    /// <summary>In kg/L.</summary>
    public double KilogramsPerLitre => Units.KilogramPerLitre.FromSi(Si);

    /// <summary>In lb/US gal.</summary>
    public double PoundsPerUsGallon => Units.PoundPerUsGallon.FromSi(Si);

    /// <summary>In lb/imp gal.</summary>
    public double PoundsPerImperialGallon => Units.PoundPerImperialGallon.FromSi(Si);

    /// <summary>In lb/yd³.</summary>
    public double PoundsPerCubicYard => Units.PoundPerCubicYard.FromSi(Si);

    /// <inheritdoc/>
    public static bool Allows(double si) => double.IsFinite(si) && si > 0;

    /// <inheritdoc/>
    public static Density FromSi(double value) => new(value);

    /// <summary>From kg/m³.</summary>
    public static Density FromKilogramsPerCubicMetre(double value) => new(value);

    /// <summary>From lb/ft³.</summary>
    public static Density FromPoundsPerCubicFoot(double value) => new(Units.PoundPerCubicFoot.ToSi(value));

    /// <summary>From g/mL.</summary>
    public static Density FromGramsPerMillilitre(double value) => new(Units.GramPerMillilitre.ToSi(value));

    /// <summary>From kg/L.</summary>
    public static Density FromKilogramsPerLitre(double value) => new(Units.KilogramPerLitre.ToSi(value));

    /// <summary>From lb/US gal.</summary>
    public static Density FromPoundsPerUsGallon(double value) => new(Units.PoundPerUsGallon.ToSi(value));

    /// <summary>From lb/imp gal.</summary>
    public static Density FromPoundsPerImperialGallon(double value) => new(Units.PoundPerImperialGallon.ToSi(value));

    /// <summary>From lb/yd³.</summary>
    public static Density FromPoundsPerCubicYard(double value) => new(Units.PoundPerCubicYard.ToSi(value));

    /// <summary>Mass of a volume.</summary>
    public static Mass operator *(Density left, Volume right) => Mass.FromSi(left.Si * right.Si);
}
