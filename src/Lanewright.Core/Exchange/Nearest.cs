namespace Lanewright.Core.Exchange;

/// <summary>Finds the known name that a mistyped one was probably meant to be.</summary>
public static class Nearest
{
    private const int LongestCompared = 40;
    private const int MostListed = 12;

    /// <summary>
    /// The known names within a distance of a third of the typed name's length, nearest first and joined by commas;
    /// when there are none, all known names (the first dozen), or "none".
    /// </summary>
    public static string Names(string typed, IReadOnlyList<string> known)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(known);
        if (known.Count == 0) return "none";

        var near = Close(typed, known).Take(2).ToList();
        if (near.Count > 0) return string.Join(", ", near);

        var listed = string.Join(", ", known.Take(MostListed));
        return known.Count > MostListed ? listed + ", …" : listed;
    }

    /// <summary>The known names within a distance of a third of the typed name's length, nearest first.</summary>
    public static IEnumerable<string> Close(string typed, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var allowed = Math.Max(1, typed.Length / 3);
        return known
            .Select(name => (name, distance: Distance(typed, name)))
            .Where(pair => pair.distance <= allowed)
            .OrderBy(pair => pair.distance)
            .Select(pair => pair.name);
    }

    /// <summary>
    /// How many letters must be changed, added, left out or swapped with their neighbour to make one name of the
    /// other (optimal string alignment distance); case, hyphens and underscores do not count.
    /// </summary>
    public static int Distance(string left, string right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        var (a, b) = (Plain(left), Plain(right));
        if (a.Length > LongestCompared || b.Length > LongestCompared) return int.MaxValue;

        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) cost[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) cost[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                var best = Math.Min(change, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    best = Math.Min(best, cost[i - 2, j - 2] + 1);
                cost[i, j] = best;
            }
        }

        return cost[a.Length, b.Length];
    }

    private static string Plain(string name) =>
        new([.. name.Where(one => one is not ('-' or '_' or ' ')).Take(LongestCompared + 1).Select(char.ToLowerInvariant)]);
}
