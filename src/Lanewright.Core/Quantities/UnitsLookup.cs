namespace Lanewright.Core.Quantities;

/// <content>Finding a unit.</content>
public static partial class Units
{
    /// <summary>Every unit, grouped by dimension only as far as the table above is.</summary>
    public static IReadOnlyList<Unit> All => Registered;

    /// <summary>The units of one dimension; the first is the one offered first when a person is asked.</summary>
    public static IReadOnlyList<Unit> Of(Dimension dimension) =>
        [.. Registered.Where(unit => unit.Dimension == dimension)];

    /// <summary>
    /// The unit with exactly this symbol, or else with this spelling in any letter case; null when there is none or
    /// when there are several ("ton", "gal", "lb/mile").
    /// </summary>
    public static Unit? Find(string? symbolOrSpelling)
    {
        var meanings = UnitSpelling.Meanings(symbolOrSpelling ?? "", all => all);
        return meanings.Count == 1
            ? meanings[0]
            : meanings.FirstOrDefault(unit => unit.Symbol.Equals(symbolOrSpelling, StringComparison.Ordinal));
    }

    private static Unit Add(Unit unit)
    {
        Registered.Add(unit);
        return unit;
    }

    private static Unit Per(Unit top, Unit bottom, Dimension dimension, params string[] spellings) =>
        Add(new Unit($"{top.Symbol}/{bottom.Symbol}", dimension, top, bottom, spellings));

    private static Unit Per(string symbol, Unit top, Unit bottom, Dimension dimension, params string[] spellings) =>
        Add(new Unit(symbol, dimension, top, bottom, spellings));
}
