using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>How units are written and which of several meanings is customary.</summary>
internal static class UnitWords
{
    /// <summary>The symbol as the culture writes it: "gal" and "ton" where they have one customary meaning.</summary>
    internal static string Symbol(Unit unit, TextCulture culture) => culture.CustomaryUnits switch
    {
        CustomaryUnits.UnitedStates => unit.Symbol
            .Replace("US ", "", StringComparison.Ordinal).Replace("short ton", "ton", StringComparison.Ordinal),
        CustomaryUnits.Imperial => unit.Symbol
            .Replace("imp ", "", StringComparison.Ordinal).Replace("long ton", "ton", StringComparison.Ordinal),
        _ => unit.Symbol,
    };

    /// <summary>
    /// The meanings that remain in the culture: where a dimension has a customary one, its other meanings are dropped.
    /// </summary>
    internal static IReadOnlyList<Unit> Narrow(IReadOnlyList<Unit> meanings, TextCulture culture)
    {
        if (culture.CustomaryUnits == CustomaryUnits.None || meanings.Count < 2)
            return meanings;
        var customary = meanings.Where(unit => SystemOf(unit) == culture.CustomaryUnits).ToList();
        return customary.Count == 0
            ? meanings
            : [.. meanings.Where(unit =>
                customary.Contains(unit) || customary.TrueForAll(other => other.Dimension != unit.Dimension))];
    }

    private static CustomaryUnits SystemOf(Unit unit) =>
        unit.Symbol.Contains("US ", StringComparison.Ordinal)
            || unit.Symbol.Contains("short ton", StringComparison.Ordinal)
            ? CustomaryUnits.UnitedStates
            : unit.Symbol.Contains("imp ", StringComparison.Ordinal)
                || unit.Symbol.Contains("long ton", StringComparison.Ordinal)
                    ? CustomaryUnits.Imperial
                    : CustomaryUnits.None;
}
