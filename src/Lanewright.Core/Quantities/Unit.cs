namespace Lanewright.Core.Quantities;

/// <summary>
/// One unit of measurement: exact factors to SI, the symbol it is written with and the spellings it is read by.
/// Two units are equal when they are the same object of <see cref="Units"/>.
/// </summary>
public sealed class Unit
{
    private readonly double numerator;
    private readonly double denominator;
    private readonly double offset;

    internal Unit(
        string symbol, Dimension dimension, double numerator, double denominator = 1, double offset = 0,
        params string[] spellings)
    {
        Symbol = symbol;
        Dimension = dimension;
        this.numerator = numerator;
        this.denominator = denominator;
        this.offset = offset;
        Spellings = spellings;
    }

    /// <summary>How the unit is written, e.g. <c>lb/min</c>.</summary>
    public string Symbol { get; }

    /// <summary>What the unit measures.</summary>
    public Dimension Dimension { get; }

    /// <summary>Other spellings that are read as this unit.</summary>
    public IReadOnlyList<string> Spellings { get; }

    /// <summary>The value in SI of <paramref name="value"/> of this unit.</summary>
    public double ToSi(double value) => (value * numerator / denominator) + offset;

    /// <summary>The value in this unit of <paramref name="si"/>: divides, so no rounded reciprocal is involved.</summary>
    public double FromSi(double si) => (si - offset) * denominator / numerator;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}
