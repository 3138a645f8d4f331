using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Folding;

/// <summary>
/// Finds what stands among entries about one thing: those that no other of them replaces. An entry replaces its parent
/// and whatever its payload lists in <c>over</c>. The answer does not depend on the order in which entries arrived.
/// </summary>
internal static class Heads
{
    /// <summary>
    /// The entries that stand, in order of number. Entries that replace one another in a circle, which no honest device
    /// makes, all stand: nothing is lost.
    /// </summary>
    internal static IReadOnlyList<Entry> Of(IReadOnlyList<Entry> entries)
    {
        if (entries.Count < 2) return entries;
        var replaced = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            foreach (var id in Payload.Over(entry).Prepend(entry.Parent))
                if (id is not null && id != entry.Id) replaced.Add(id);
        }

        var standing = entries.Where(entry => !replaced.Contains(entry.Id)).OrderBy(entry => entry.Number).ToList();
        return standing.Count > 0 ? standing : entries;
    }
}
