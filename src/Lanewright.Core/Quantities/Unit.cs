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

    // Decimals keep products such as 1000 x 907.18474 exact; each factor is rounded to a double once, here.
    internal Unit(
        string symbol, Dimension dimension, decimal numerator, decimal denominator = 1, decimal offset = 0,
        params string[] spellings)
    {
        Symbol = symbol;
        Dimension = dimension;
        Numerator = numerator;
        Denominator = denominator;
        Spellings = spellings;
        this.numerator = (double)numerator;
        this.denominator = (double)denominator;
        this.offset = (double)offset;
    }

    internal Unit(string symbol, Dimension dimension, Unit top, Unit bottom, params string[] spellings)
        : this(
            symbol, dimension, top.Numerator * bottom.Denominator, top.Denominator * bottom.Numerator, 0, spellings)
    {
        Top = top;
        Bottom = bottom;
    }

    /// <summary>How the unit is written, e.g. <c>lb/min</c>; no other unit has this symbol.</summary>
    public string Symbol { get; }

    /// <summary>What the unit measures.</summary>
    public Dimension Dimension { get; }

    /// <summary>
    /// Other spellings that are read as this unit. A spelling may belong to several units ("ton"); a quotient is also
    /// read from any spelling of its two parts.
    /// </summary>
    public IReadOnlyList<string> Spellings { get; }

    internal decimal Numerator { get; }

    internal decimal Denominator { get; }

    /// <summary>The part above the stroke of a quotient, otherwise null.</summary>
    internal Unit? Top { get; }

    /// <summary>The part below the stroke of a quotient, otherwise null.</summary>
    internal Unit? Bottom { get; }

    /// <summary>The value in SI of <paramref name="value"/> of this unit.</summary>
    public double ToSi(double value) => (value + offset) * numerator / denominator;

    /// <summary>The value in this unit of <paramref name="si"/>: divides, so no rounded reciprocal is involved.
    /// </summary>
    public double FromSi(double si) => (si * denominator / numerator) - offset;

    /// <summary>The size in SI of a difference in this unit: as <see cref="ToSi"/> without the zero point of °C and °F.
    /// </summary>
    public double DifferenceToSi(double difference) => difference * numerator / denominator;

    /// <summary>The size in this unit of a difference in SI, such as an uncertainty.</summary>
    public double DifferenceFromSi(double difference) => difference * denominator / numerator;

    /// <inheritdoc/>
    public override string ToString() => Symbol;
}
