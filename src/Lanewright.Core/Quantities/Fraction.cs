namespace Lanewright.Core.Quantities;

/// <summary>
/// A share of a whole, any finite value; 1 is the whole. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Fraction : IScalable<Fraction>
{
    private Fraction(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Fraction;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In parts of the whole.</summary>
    public double Ratio => Si;

    /// <summary>In %.</summary>
    public double Percent => Units.Percent.FromSi(Si);

    /// <summary>In ‰.</summary>
    public double PerMille => Units.PerMille.FromSi(Si);

    /// <inheritdoc/>
    public static Fraction FromSi(double value) => new(value);

    /// <summary>From parts of the whole.</summary>
    public static Fraction FromRatio(double ratio) => new(ratio);

    /// <summary>From %.</summary>
    public static Fraction FromPercent(double percent) => new(Units.Percent.ToSi(percent));

    /// <summary>From ‰.</summary>
    public static Fraction FromPerMille(double perMille) => new(Units.PerMille.ToSi(perMille));
}
