using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Folding;

/// <summary>One text that stands for a field, and the entry it comes from.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Text">The text as typed; empty for a field that was cleared.</param>
public sealed record FieldHead(Entry Entry, string Text);

/// <summary>What stands for one field of a test's sheet.</summary>
/// <param name="Path">The field.</param>
/// <param name="Heads">The texts that no later entry replaces, in the order received; at least one.</param>
public sealed record FieldState(string Path, IReadOnlyList<FieldHead> Heads)
{
    /// <summary>Whether devices left different texts and nobody has settled which holds.</summary>
    public bool IsConflict => Heads.Any(head => head.Text != Heads[0].Text);

    /// <summary>The text that holds; null in a conflict.</summary>
    public string? Text => IsConflict ? null : Heads[0].Text;
}

/// <summary>
/// A test as its entries say it is: a pure function of the entries, and the same whatever the order they arrived in,
/// the order of lists apart.
/// </summary>
public sealed class TestFold
{
    private TestFold(string id, IReadOnlyList<Entry> entries)
    {
        Id = id;
        Entries = entries;
        Begins = Of(EntryKinds.TestBegin);
        Notes = Heads.Of(Of(EntryKinds.TestNote));
        Photos = Heads.Of(Of(EntryKinds.TestPhoto));
        Decisions = Heads.Of(Of(EntryKinds.TestDecision));
        Fields = FieldsOf(entries);
    }

    /// <summary>The test's identity.</summary>
    public string Id { get; }

    /// <summary>All its entries in the order received.</summary>
    public IReadOnlyList<Entry> Entries { get; }

    /// <summary>Entries that begin it: one, unless a page sent a second; none while the first is still on its way.</summary>
    public IReadOnlyList<Entry> Begins { get; }

    /// <summary>The fields of its sheet, in order of path.</summary>
    public IReadOnlyList<FieldState> Fields { get; }

    /// <summary>Remarks that stand.</summary>
    public IReadOnlyList<Entry> Notes { get; }

    /// <summary>Photos that stand.</summary>
    public IReadOnlyList<Entry> Photos { get; }

    /// <summary>Decisions that stand: none while it is open, several when two people decided without knowing.</summary>
    public IReadOnlyList<Entry> Decisions { get; }

    /// <summary>The decision that holds; null while it is open or several differ.</summary>
    public Entry? Decision => HasDecisionConflict ? null : Decisions.Count > 0 ? Decisions[^1] : null;

    /// <summary>Whether decisions stand that say different things.</summary>
    public bool HasDecisionConflict =>
        Decisions.Select(one => (Payload.Text(one, "verdict"), Payload.Text(one, "keyed"))).Distinct().Count() > 1;

    /// <summary>How many fields, and decisions, wait for somebody to settle them.</summary>
    public int Conflicts => Fields.Count(one => one.IsConflict) + (HasDecisionConflict ? 1 : 0);

    /// <summary>drop-test or verification; null while its beginning is still on its way.</summary>
    public string? Kind => Begins.Count > 0 ? Payload.Text(Begins[0], "kind") : null;

    /// <summary>The spreader's identity in the register; null when nobody said.</summary>
    public string? Spreader => Begins.Select(begin => Payload.Text(begin, "spreader")).FirstOrDefault(id => id is not null);

    /// <summary>The text that holds for a field; null when there is none, it was cleared, or it is in conflict.</summary>
    public string? Text(string path) =>
        Fields.FirstOrDefault(field => field.Path == path)?.Text is { Length: > 0 } text ? text : null;

    /// <summary>Folds a test's entries.</summary>
    /// <param name="entries">All entries of one subject, in order of number; at least one.</param>
    public static TestFold Of(IReadOnlyList<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentOutOfRangeException.ThrowIfZero(entries.Count, nameof(entries));
        return new(entries[0].Subject, entries);
    }

    private List<Entry> Of(string kind) => [.. Entries.Where(entry => entry.Kind == kind)];

    private static List<FieldState> FieldsOf(IReadOnlyList<Entry> entries)
    {
        var byPath = new SortedDictionary<string, List<FieldHead>>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            if (entry.Kind == EntryKinds.TestBegin)
            {
                foreach (var (path, text) in Payload.Texts(entry, "fields")) Add(path, entry, text);
            }
            else if (entry.Kind == EntryKinds.TestField && Payload.Text(entry, "path") is { } path)
            {
                Add(path, entry, Payload.Text(entry, "text") ?? "");
            }
        }

        return [.. byPath.Select(field => new FieldState(field.Key, Standing(field.Value)))];

        void Add(string path, Entry entry, string text)
        {
            if (!byPath.TryGetValue(path, out var heads)) byPath.Add(path, heads = []);
            heads.RemoveAll(head => head.Entry.Id == entry.Id);
            heads.Add(new(entry, text));
        }
    }

    private static List<FieldHead> Standing(List<FieldHead> all)
    {
        var standing = Heads.Of([.. all.Select(head => head.Entry)]).Select(entry => entry.Id).ToHashSet();
        return [.. all.Where(head => standing.Contains(head.Entry.Id))];
    }
}
