namespace Lanewright.Core.Quantities;

/// <summary>
/// A mass per time in kilograms per second, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct MassFlow : IScalable<MassFlow>
{
    private MassFlow(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.MassFlow;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kg/s.</summary>
    public double KilogramsPerSecond => Si;

    /// <summary>In kg/min.</summary>
    public double KilogramsPerMinute => Units.KilogramPerMinute.FromSi(Si);

    /// <summary>In kg/h.</summary>
    public double KilogramsPerHour => Units.KilogramPerHour.FromSi(Si);

    /// <summary>In g/s.</summary>
    public double GramsPerSecond => Units.GramPerSecond.FromSi(Si);

    /// <summary>In lb/s.</summary>
    public double PoundsPerSecond => Units.PoundPerSecond.FromSi(Si);

    /// <summary>In lb/min.</summary>
    public double PoundsPerMinute => Units.PoundPerMinute.FromSi(Si);

    /// <summary>In lb/h.</summary>
    public double PoundsPerHour => Units.PoundPerHour.FromSi(Si);

    /// <summary>In t/h.</summary>
    public double TonnesPerHour => Units.TonnePerHour.FromSi(Si);

    /// <summary>In short ton/h.</summary>
    public double ShortTonsPerHour => Units.ShortTonPerHour.FromSi(Si);

    /// <summary>In long ton/h.</summary>
    public double LongTonsPerHour => Units.LongTonPerHour.FromSi(Si);

    /// <inheritdoc/>
    public static MassFlow FromSi(double value) => new(value);

    /// <summary>From kg/s.</summary>
    public static MassFlow FromKilogramsPerSecond(double value) => new(value);

    /// <summary>From kg/min.</summary>
    public static MassFlow FromKilogramsPerMinute(double value) => new(Units.KilogramPerMinute.ToSi(value));

    /// <summary>From kg/h.</summary>
    public static MassFlow FromKilogramsPerHour(double value) => new(Units.KilogramPerHour.ToSi(value));

    /// <summary>From g/s.</summary>
    public static MassFlow FromGramsPerSecond(double value) => new(Units.GramPerSecond.ToSi(value));

    /// <summary>From lb/s.</summary>
    public static MassFlow FromPoundsPerSecond(double value) => new(Units.PoundPerSecond.ToSi(value));

    /// <summary>From lb/min.</summary>
    public static MassFlow FromPoundsPerMinute(double value) => new(Units.PoundPerMinute.ToSi(value));

    /// <summary>From lb/h.</summary>
    public static MassFlow FromPoundsPerHour(double value) => new(Units.PoundPerHour.ToSi(value));

    /// <summary>From t/h.</summary>
    public static MassFlow FromTonnesPerHour(double value) => new(Units.TonnePerHour.ToSi(value));

    /// <summary>From short ton/h.</summary>
    public static MassFlow FromShortTonsPerHour(double value) => new(Units.ShortTonPerHour.ToSi(value));

    /// <summary>From long ton/h.</summary>
    public static MassFlow FromLongTonsPerHour(double value) => new(Units.LongTonPerHour.ToSi(value));

    /// <summary>Mass delivered in a time.</summary>
    public static Mass operator *(MassFlow left, Duration right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Liquid flow that goes with the dry flow.</summary>
    public static VolumeFlow operator *(MassFlow left, LiquidPerMass right) => VolumeFlow.FromSi(left.Si * right.Si);

    /// <summary>Mass for each turn of the shaft.</summary>
    public static MassPerRevolution operator /(MassFlow left, RotationalSpeed right) =>
        MassPerRevolution.FromSi(left.Si / right.Si);
}
