namespace Lanewright.Core.Quantities;

/// <summary>
/// Mass per area of road in kilograms per square metre, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct AreaRate : IScalable<AreaRate>
{
    private AreaRate(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.AreaRate;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg/m².</summary>
    public double KilogramsPerSquareMetre => Si;

    /// <summary>In g/m².</summary>
    public double GramsPerSquareMetre => Units.GramPerSquareMetre.FromSi(Si);

    /// <summary>In lb/1000 ft².</summary>
    public double PoundsPerThousandSquareFeet => Units.PoundPerThousandSquareFeet.FromSi(Si);

    /// <inheritdoc/>
    public static AreaRate FromSi(double value) => new(value);

    /// <summary>From kg/m².</summary>
    public static AreaRate FromKilogramsPerSquareMetre(double value) => new(value);

    /// <summary>From g/m².</summary>
    public static AreaRate FromGramsPerSquareMetre(double value) => new(Units.GramPerSquareMetre.ToSi(value));

    /// <summary>From lb/1000 ft².</summary>
    public static AreaRate FromPoundsPerThousandSquareFeet(double value) =>
        new(Units.PoundPerThousandSquareFeet.ToSi(value));

    /// <summary>Mass on an area.</summary>
    public static Mass operator *(AreaRate left, Area right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>The same rate per length of a lane of the given width.</summary>
    public LaneRate ToLaneRate(Length laneWidth) => LaneRate.FromSi(Si * LaneWidth.Check(laneWidth));
}
