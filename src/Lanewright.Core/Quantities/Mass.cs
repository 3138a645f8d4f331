namespace Lanewright.Core.Quantities;

/// <summary>
/// A mass in kilograms, any finite value: a difference of two weighings may be negative. Equal when the kilograms are
/// the same bits.
/// </summary>
public readonly record struct Mass : IQuantity<Mass>
{
    private Mass(double kilograms) => Si = Finite.Check(kilograms);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Mass;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In kilograms.</summary>
    public double Kilograms => Si;

    /// <summary>In pounds (avoirdupois).</summary>
    public double Pounds => Units.Pound.FromSi(Si);

    /// <inheritdoc/>
    public static Mass FromSi(double value) => new(value);

    /// <summary>From kilograms.</summary>
    public static Mass FromKilograms(double kilograms) => new(kilograms);

    /// <summary>From pounds (avoirdupois), 0.453 592 37 kg exactly (international yard and pound agreement, 1959).</summary>
    public static Mass FromPounds(double pounds) => new(Units.Pound.ToSi(pounds));

    /// <summary>Sum.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Si + right.Si);

    /// <summary>Difference.</summary>
    public static Mass operator -(Mass left, Mass right) => new(left.Si - right.Si);
}
