namespace Lanewright.Core.Quantities;

/// <summary>
/// Liquid volume per length of one lane in cubic metres per metre of lane, any finite value. Equal when the SI values
/// are the same bits.
/// </summary>
public readonly record struct LiquidLaneRate : IScalable<LiquidLaneRate>
{
    private LiquidLaneRate(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.LiquidLaneRate;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In US gal/lane-mile.</summary>
    public double UsGallonsPerLaneMile => Units.UsGallonPerLaneMile.FromSi(Si);

    /// <summary>In imp gal/lane-mile.</summary>
    public double ImperialGallonsPerLaneMile => Units.ImperialGallonPerLaneMile.FromSi(Si);

    /// <summary>In L/lane-km.</summary>
    public double LitresPerLaneKilometre => Units.LitrePerLaneKilometre.FromSi(Si);

    /// <summary>In US gal per mile of a two-lane road.</summary>
    public double UsGallonsPerTwoLaneMile => Units.UsGallonPerTwoLaneMile.FromSi(Si);

    /// <summary>In imp gal per mile of a two-lane road.</summary>
    public double ImperialGallonsPerTwoLaneMile => Units.ImperialGallonPerTwoLaneMile.FromSi(Si);

    /// <summary>In L per kilometre of a two-lane road.</summary>
    public double LitresPerTwoLaneKilometre => Units.LitrePerTwoLaneKilometre.FromSi(Si);

    /// <inheritdoc/>
    public static LiquidLaneRate FromSi(double value) => new(value);

    /// <summary>From US gal/lane-mile.</summary>
    public static LiquidLaneRate FromUsGallonsPerLaneMile(double value) => new(Units.UsGallonPerLaneMile.ToSi(value));

    /// <summary>From imp gal/lane-mile.</summary>
    public static LiquidLaneRate FromImperialGallonsPerLaneMile(double value) =>
        new(Units.ImperialGallonPerLaneMile.ToSi(value));

    /// <summary>From L/lane-km.</summary>
    public static LiquidLaneRate FromLitresPerLaneKilometre(double value) =>
        new(Units.LitrePerLaneKilometre.ToSi(value));

    /// <summary>From US gal per mile of a two-lane road.</summary>
    public static LiquidLaneRate FromUsGallonsPerTwoLaneMile(double value) =>
        new(Units.UsGallonPerTwoLaneMile.ToSi(value));

    /// <summary>From imp gal per mile of a two-lane road.</summary>
    public static LiquidLaneRate FromImperialGallonsPerTwoLaneMile(double value) =>
        new(Units.ImperialGallonPerTwoLaneMile.ToSi(value));

    /// <summary>From L per kilometre of a two-lane road.</summary>
    public static LiquidLaneRate FromLitresPerTwoLaneKilometre(double value) =>
        new(Units.LitrePerTwoLaneKilometre.ToSi(value));

    /// <summary>The rate that spreads <paramref name="volume"/> along <paramref name="laneLength"/> of one lane.
    /// </summary>
    public static LiquidLaneRate Along(Volume volume, Length laneLength) => new(volume.Si / laneLength.Si);

    /// <summary>The volume that the rate puts on <paramref name="laneLength"/> of one lane.</summary>
    public Volume VolumeOn(Length laneLength) => Volume.FromSi(Si * laneLength.Si);

    /// <summary>The same rate per area: it depends on the width of the lane, which is never assumed.</summary>
    public LiquidAreaRate ToAreaRate(Length laneWidth) => LiquidAreaRate.FromSi(Si / LaneWidth.Check(laneWidth));
}
