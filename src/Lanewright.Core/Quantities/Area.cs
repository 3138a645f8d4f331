namespace Lanewright.Core.Quantities;

/// <summary>
/// An area in square metres, any finite value. Equal when the SI values are the same bits.
/// </summary>
public readonly record struct Area : IScalable<Area>
{
    private Area(double si) => Si = Finite.Check(si);

    /// <inheritdoc/>
    public static Dimension Dimension => Dimension.Area;

    /// <inheritdoc/>
    public double Si { get; }

    /// <summary>In m².</summary>
    public double SquareMetres => Si;

    /// <summary>In ft².</summary>
    public double SquareFeet => Units.SquareFoot.FromSi(Si);

    /// <inheritdoc/>
    public static Area FromSi(double value) => new(value);

    /// <summary>From m².</summary>
    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);

    /// <summary>From ft².</summary>
    public static Area FromSquareFeet(double squareFeet) => new(Units.SquareFoot.ToSi(squareFeet));

    /// <summary>Side of a rectangle with the other side.</summary>
    public static Length operator /(Area left, Length right) => Length.FromSi(left.Si / right.Si);

    /// <summary>Volume under a depth.</summary>
    public static Volume operator *(Area left, Length right) => Volume.FromSi(left.Si * right.Si);

    /// <summary>Mass that a rate puts on the area.</summary>
    public static Mass operator *(Area left, AreaRate right) => Mass.FromSi(left.Si * right.Si);

    /// <summary>Liquid that a rate puts on the area.</summary>
    public static Volume operator *(Area left, LiquidAreaRate right) => Volume.FromSi(left.Si * right.Si);
}
