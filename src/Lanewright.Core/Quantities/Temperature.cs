namespace Lanewright.Core.Quantities;

/// <summary>
/// A temperature in kelvins, 0 K or more. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    private Temperature(double si) => Si = Allows(si)
        ? si
        : throw new ArgumentOutOfRangeException(nameof(si), si, "A temperature must be finite and 0 K or more.");

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Temperature;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In K.</summary>
    public double Kelvins => Si;

    /// <summary>In °C.</summary>
    public double DegreesCelsius => Units.DegreeCelsius.FromSi(Si);

    /// <summary>In °F.</summary>
    public double DegreesFahrenheit => Units.DegreeFahrenheit.FromSi(Si);

    /// <inheritdoc/>
    public static bool Allows(double si) => double.IsFinite(si) && si >= 0;

    /// <inheritdoc/>
    public static Temperature FromSi(double value) => new(value);

    /// <summary>From K.</summary>
    public static Temperature FromKelvins(double kelvins) => new(kelvins);

    /// <summary>From °C.</summary>
    public static Temperature FromDegreesCelsius(double degreesCelsius) =>
        new(Units.DegreeCelsius.ToSi(degreesCelsius));

    /// <summary>From °F.</summary>
    public static Temperature FromDegreesFahrenheit(double degreesFahrenheit) =>
        new(Units.DegreeFahrenheit.ToSi(degreesFahrenheit));
}
