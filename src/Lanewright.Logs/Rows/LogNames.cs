using System.Collections.Concurrent;

namespace Lanewright.Logs.Rows;

/// <summary>Numbers for names, so that rows hold numbers. May be used by several threads.</summary>
internal sealed class LogNames
{
    private readonly ConcurrentDictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly List<string> names = [];

    internal IReadOnlyList<string> All => names;

    internal int Of(string name)
    {
        if (numbers.TryGetValue(name, out var known)) return known;
        lock (names)
        {
            if (numbers.TryGetValue(name, out known)) return known;
            names.Add(name);
            numbers[name] = names.Count - 1;
            return names.Count - 1;
        }
    }
}

/// <summary>A spreader of a depot, by the numbers of their names.</summary>
internal readonly record struct LogUnit(int Depot, int Spreader);

/// <summary>Every name that rows point to.</summary>
internal sealed class LogNameBook
{
    private readonly ConcurrentDictionary<LogUnit, int> numbers = new();
    private readonly List<LogUnit> units = [];

    internal LogNames Names { get; } = new();

    internal IReadOnlyList<LogUnit> Units => units;

    internal int UnitOf(int depot, int spreader)
    {
        var unit = new LogUnit(depot, spreader);
        if (numbers.TryGetValue(unit, out var known)) return known;
        lock (units)
        {
            if (numbers.TryGetValue(unit, out known)) return known;
            units.Add(unit);
            numbers[unit] = units.Count - 1;
            return units.Count - 1;
        }
    }
}
