namespace Lanewright.Core.Quantities;

/// <summary>
/// A mass in kilograms, any finite value: a difference of two weighings may be negative. Equal when the SI values are
/// the same bits.
/// </summary>
public readonly record struct Mass : IScalable<Mass>
{
    private Mass(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Mass;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg.</summary>
    public double Kilograms => Si;

    /// <summary>In g.</summary>
    public double Grams => Units.Gram.FromSi(Si);

    /// <summary>In mg.</summary>
    public double Milligrams => Units.Milligram.FromSi(Si);

    /// <summary>In t.</summary>
    public double Tonnes => Units.Tonne.FromSi(Si);

    /// <summary>In lb.</summary>
    public double Pounds => Units.Pound.FromSi(Si);

    /// <summary>In oz.</summary>
    public double Ounces => Units.Ounce.FromSi(Si);

    /// <summary>In short ton.</summary>
    public double ShortTons => Units.ShortTon.FromSi(Si);

    /// <summary>In long ton.</summary>
    public double LongTons => Units.LongTon.FromSi(Si);

    /// <inheritdoc/>
    public static Mass FromSi(double value) => new(value);

    /// <summary>From kg.</summary>
    public static Mass FromKilograms(double kilograms) => new(kilograms);

    /// <summary>From g.</summary>
    public static Mass FromGrams(double grams) => new(Units.Gram.ToSi(grams));

    /// <summary>From mg.</summary>
    public static Mass FromMilligrams(double milligrams) => new(Units.Milligram.ToSi(milligrams));

    /// <summary>From t.</summary>
    public static Mass FromTonnes(double tonnes) => new(Units.Tonne.ToSi(tonnes));

    /// <summary>From lb.</summary>
    public static Mass FromPounds(double pounds) => new(Units.Pound.ToSi(pounds));

    /// <summary>From oz.</summary>
    public static Mass FromOunces(double ounces) => new(Units.Ounce.ToSi(ounces));

    /// <summary>From short ton.</summary>
    public static Mass FromShortTons(double shortTons) => new(Units.ShortTon.ToSi(shortTons));

    /// <summary>From long ton.</summary>
    public static Mass FromLongTons(double longTons) => new(Units.LongTon.ToSi(longTons));

    /// <summary>Mean mass flow over a time.</summary>
    public static MassFlow operator /(Mass left, Duration right) => MassFlow.FromSi(left.Si / right.Si);

    /// <summary>Time in which a flow delivers the mass.</summary>
    public static Duration operator /(Mass left, MassFlow right) => Duration.FromSi(left.Si / right.Si);

    /// <summary>Density of what fills a volume.</summary>
    public static Density operator /(Mass left, Volume right) => Density.FromSi(left.Si / right.Si);

    /// <summary>Volume of the mass at a density.</summary>
    public static Volume operator /(Mass left, Density right) => Volume.FromSi(left.Si / right.Si);

    /// <summary>Mean rate on an area.</summary>
    public static AreaRate operator /(Mass left, Area right) => AreaRate.FromSi(left.Si / right.Si);

    /// <summary>Mass for each pulse counted.</summary>
    public static MassPerPulse operator /(Mass left, PulseCount right) => MassPerPulse.FromSi(left.Si / right.Si);

    /// <summary>Mass for each turn counted.</summary>
    public static MassPerRevolution operator /(Mass left, RevolutionCount right) =>
        MassPerRevolution.FromSi(left.Si / right.Si);

    /// <summary>Pulses that the mass should give.</summary>
    public static PulseCount operator *(Mass left, PulsesPerMass right) => PulseCount.FromSi(left.Si * right.Si);

    /// <summary>Liquid that goes with the dry mass.</summary>
    public static Volume operator *(Mass left, LiquidPerMass right) => Volume.FromSi(left.Si * right.Si);
}
