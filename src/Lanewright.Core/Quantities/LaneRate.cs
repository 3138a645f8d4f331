namespace Lanewright.Core.Quantities;

/// <summary>
/// Mass per length of one lane in kilograms per metre of lane, any finite value. Equal when the SI values are the same
/// bits.
/// </summary>
public readonly record struct LaneRate : IScalable<LaneRate>
{
    private LaneRate(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LaneRate;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In lb/lane-mile.</summary>
    public double PoundsPerLaneMile => Units.PoundPerLaneMile.FromSi(Si);

    /// <summary>In kg/lane-km.</summary>
    public double KilogramsPerLaneKilometre => Units.KilogramPerLaneKilometre.FromSi(Si);

    /// <summary>In lb per mile of a two-lane road.</summary>
    public double PoundsPerTwoLaneMile => Units.PoundPerTwoLaneMile.FromSi(Si);

    /// <summary>In kg per kilometre of a two-lane road.</summary>
    public double KilogramsPerTwoLaneKilometre => Units.KilogramPerTwoLaneKilometre.FromSi(Si);

    /// <inheritdoc/>
    public static LaneRate FromSi(double value) => new(value);

    /// <summary>From lb/lane-mile.</summary>
    public static LaneRate FromPoundsPerLaneMile(double value) => new(Units.PoundPerLaneMile.ToSi(value));

    /// <summary>From kg/lane-km.</summary>
    public static LaneRate FromKilogramsPerLaneKilometre(double value) =>
        new(Units.KilogramPerLaneKilometre.ToSi(value));

    /// <summary>From lb per mile of a two-lane road.</summary>
    public static LaneRate FromPoundsPerTwoLaneMile(double value) => new(Units.PoundPerTwoLaneMile.ToSi(value));

    /// <summary>From kg per kilometre of a two-lane road.</summary>
    public static LaneRate FromKilogramsPerTwoLaneKilometre(double value) =>
        new(Units.KilogramPerTwoLaneKilometre.ToSi(value));

    /// <summary>The rate that spreads <paramref name="mass"/> along <paramref name="laneLength"/> of one lane; where
    /// one pass covers two lanes that is twice the distance driven.</summary>
    public static LaneRate Along(Mass mass, Length laneLength) => new(mass.Si / laneLength.Si);

    /// <summary>The mass that the rate puts on <paramref name="laneLength"/> of one lane.</summary>
    public Mass MassOn(Length laneLength) => Mass.FromSi(Si * laneLength.Si);

    /// <summary>The same rate per area: it depends on the width of the lane, which is never assumed.</summary>
    public AreaRate ToAreaRate(Length laneWidth) => AreaRate.FromSi(Si / LaneWidth.Check(laneWidth));
}
