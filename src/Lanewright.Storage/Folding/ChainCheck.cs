using Lanewright.Core.Text;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Folding;

/// <summary>Follows the chain entry by entry.</summary>
/// <param name="number">The number before the first.</param>
/// <param name="hash">The hash before the first; null for the very beginning.</param>
internal sealed class ChainCheck(long number = 0, string? hash = null)
{
    private readonly List<ChainProblem> problems = [];
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private string last = hash ?? EntryHash.First;
    private long entries;

    internal long Number { get; private set; } = number;

    internal void Take(Entry entry)
    {
        if (entry.Number != Number + 1)
        {
            Report(entry.Number, entry.Number == Number + 2
                ? (Phrase)$"Entry {Number + 1} is missing."
                : $"Entries {Number + 1} to {entry.Number - 1} are missing.");
        }
        else if (entry.PreviousHash != last)
        {
            Report(entry.Number, $"Entry {entry.Number} does not follow on the entry before it: one of the two was changed.");
        }

        if (EntryHash.Of(entry) != entry.Hash) Report(entry.Number, $"Entry {entry.Number} was changed: its hash differs.");
        if (!ids.Add(entry.Id)) Report(entry.Number, $"Entry {entry.Number} has the id of an earlier one.");
        (Number, last) = (entry.Number, entry.Hash);
        entries++;
    }

    internal void Report(long at, Phrase what)
    {
        if (problems.Count < EntryStore.MostProblems) problems.Add(new(at, what));
    }

    internal ChainReport Report(long photos) => new(entries, photos, Number, last, problems);
}
