namespace Lanewright.Core.Quantities;

/// <summary>
/// Liquid volume per area of road in cubic metres per square metre, any finite value. Equal when the SI values are the
/// same bits.
/// </summary>
public readonly record struct LiquidAreaRate : IScalable<LiquidAreaRate>
{
    private LiquidAreaRate(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LiquidAreaRate;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In mL/m².</summary>
    public double MillilitresPerSquareMetre => Units.MillilitrePerSquareMetre.FromSi(Si);

    /// <summary>In L/m².</summary>
    public double LitresPerSquareMetre => Units.LitrePerSquareMetre.FromSi(Si);

    /// <summary>In US gal/1000 ft².</summary>
    public double UsGallonsPerThousandSquareFeet => Units.UsGallonPerThousandSquareFeet.FromSi(Si);

    /// <summary>In imp gal/1000 ft².</summary>
    public double ImperialGallonsPerThousandSquareFeet => Units.ImperialGallonPerThousandSquareFeet.FromSi(Si);

    /// <inheritdoc/>
    public static LiquidAreaRate FromSi(double value) => new(value);

    /// <summary>From mL/m².</summary>
    public static LiquidAreaRate FromMillilitresPerSquareMetre(double value) =>
        new(Units.MillilitrePerSquareMetre.ToSi(value));

    /// <summary>From L/m².</summary>
    public static LiquidAreaRate FromLitresPerSquareMetre(double value) => new(Units.LitrePerSquareMetre.ToSi(value));

    /// <summary>From US gal/1000 ft².</summary>
    public static LiquidAreaRate FromUsGallonsPerThousandSquareFeet(double value) =>
        new(Units.UsGallonPerThousandSquareFeet.ToSi(value));

    /// <summary>From imp gal/1000 ft².</summary>
    public static LiquidAreaRate FromImperialGallonsPerThousandSquareFeet(double value) =>
        new(Units.ImperialGallonPerThousandSquareFeet.ToSi(value));

    /// <summary>Liquid on an area.</summary>
    public static Volume operator *(LiquidAreaRate left, Area right) => Volume.FromSi(left.Si * right.Si);

    /// <summary>The same rate per length of a lane of the given width.</summary>
    public LiquidLaneRate ToLaneRate(Length laneWidth) => LiquidLaneRate.FromSi(Si * LaneWidth.Check(laneWidth));
}
