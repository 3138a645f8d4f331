namespace Lanewright.Core.Quantities;

/// <summary>The defined factors, and the units that occur only below a stroke.</summary>
internal static class UnitParts
{
    internal const decimal KilogramsPerPound = 0.45359237m;
    internal const decimal MetresPerFoot = 0.3048m;
    internal const decimal SquareMetresPerSquareFoot = MetresPerFoot * MetresPerFoot;
    internal const decimal CubicMetresPerCubicFoot = MetresPerFoot * MetresPerFoot * MetresPerFoot;
    internal const decimal LitresPerUsGallon = 3.785411784m;
    internal const decimal LitresPerImperialGallon = 4.54609m;

    private const decimal MetresPerMile = 5280 * MetresPerFoot;

    // "mile" and "km" are among the spellings of both roads, so lb/mile has two meanings and is asked about.
    internal static readonly Unit LaneMile = Lane(
        "lane-mile", MetresPerMile, "lane miles", "lane mi", "lanemile", "LM", "mile", "miles", "mi");

    internal static readonly Unit TwoLaneMile = Lane(
        "two-lane mile", 2 * MetresPerMile, "two lane miles", "two lane mi", "2 lane mile", "2 lane mi", "mile",
        "miles", "mi");

    internal static readonly Unit LaneKilometre = Lane(
        "lane-km", 1000, "lane kilometre", "lane kilometer", "lanekm", "km", "kilometre", "kilometer");

    internal static readonly Unit TwoLaneKilometre = Lane(
        "two-lane km", 2000, "two lane kilometre", "two lane kilometer", "2 lane km", "km", "kilometre", "kilometer");

    internal static readonly Unit ThousandSquareFeet = new(
        "1000 ft²", Dimension.Area, 1000 * SquareMetresPerSquareFoot, 1, 0, "1000ft2", "1 000 ft2", "1000 sq ft",
        "1000 sqft", "1000 square feet", "thousand square feet");

    private static Unit Lane(string symbol, decimal metres, params string[] spellings) =>
        new(symbol, Dimension.Length, metres, 1, 0, spellings);
}
