using Lanewright.Core.Exchange;

namespace Lanewright.Storage.Folding;

/// <summary>
/// Makes the tree of a sheet from fields by path. A place left out of a list (a run that was cleared) is closed up, since
/// a sheet's lists have no gaps.
/// </summary>
internal static class FieldSheet
{
    /// <summary>The tree, as if the texts had been written into a sheet by hand.</summary>
    internal static SheetTree Tree(IEnumerable<KeyValuePair<string, string>> fields)
    {
        var all = new List<(string Path, PathStep[] Steps, string Text)>();
        foreach (var (path, text) in fields)
            if (FieldPath.Read(path) is { } steps) all.Add((path, [.. steps], text));
        CloseUp([.. all.Select(field => field.Steps)]);

        var places = new FieldPlaces();
        foreach (var (path, steps, text) in all.OrderBy(field => field.Steps, Comparer<PathStep[]>.Create(Compare)))
            places.Put(path, steps, new FieldPlaces.Spot(NodeKind.Text, 0, text));
        return places.Build();
    }

    // Level by level, since the places within a list are known only once the list's own place is.
    private static void CloseUp(PathStep[][] paths)
    {
        var deepest = paths.Length == 0 ? 0 : paths.Max(steps => steps.Length);
        for (var level = 0; level < deepest; level++)
        {
            var lists = paths.Where(steps => steps.Length > level && steps[level].Name is null)
                .GroupBy(steps => string.Join('/', steps.Take(level).Select(step => step.Name ?? $"{step.Index}")));
            foreach (var list in lists.Select(list => list.ToList()).ToList())
            {
                var ranks = list.Select(steps => steps[level].Index).Distinct().Order().Select((index, rank) => (index, rank))
                    .ToDictionary(one => one.index, one => one.rank);
                foreach (var steps in list) steps[level] = steps[level] with { Index = ranks[steps[level].Index] };
            }
        }
    }

    private static int Compare(PathStep[]? a, PathStep[]? b)
    {
        for (var i = 0; i < Math.Min(a!.Length, b!.Length); i++)
        {
            var order = string.CompareOrdinal(a[i].Name, b[i].Name);
            if (order == 0) order = a[i].Index.CompareTo(b[i].Index);
            if (order != 0) return order;
        }

        return a!.Length.CompareTo(b!.Length);
    }
}
