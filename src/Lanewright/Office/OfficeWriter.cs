using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Entries;

namespace Lanewright.Office;

/// <summary>Something the office writes down.</summary>
/// <param name="Kind">Kind of entry.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Payload">What it says, JSON.</param>
/// <param name="Parent">The entry it replaces; null for none.</param>
/// <param name="Why">Why an earlier entry is corrected; null for nothing to say.</param>
internal sealed record OfficeChange(string Kind, string Subject, string Payload, string? Parent = null, string? Why = null)
{
    /// <summary>The entry's identity; a form keeps it, so that sending it twice keeps one entry.</summary>
    internal string Id { get; init; } = NewId();

    internal static string NewId() => Guid.CreateVersion7().ToString("D");
}

/// <summary>Writes what the office does as entries, all of one form or none of it.</summary>
internal sealed class OfficeWriter(EntryStore store, TimeProvider clock)
{
    private const string Device = "office";

    /// <summary>Keeps changes; returns after they are on the disk.</summary>
    internal async Task<AppendAnswer> WriteAsync(Actor actor, IReadOnlyList<OfficeChange> changes, CancellationToken stop)
    {
        // Counting on from the records' own number keeps the device's count rising over restarts.
        var (seq, _) = await store.LastAsync(stop);
        var now = clock.GetUtcNow();
        var drafts = changes.Select(change => new EntryDraft
        {
            Id = change.Id,
            Kind = change.Kind,
            Subject = change.Subject,
            Person = actor.Person,
            Device = Device,
            Seq = seq++,
            At = now,
            Zone = "",
            Parent = change.Parent,
            Why = change.Why,
            Payload = change.Payload,
        }).ToList();
        var answer = await store.AppendAllAsync(drafts, stop);
        if (answer.Results.FirstOrDefault(one => one.Status is AppendStatus.Rejected) is { } refused)
            throw new InvalidOperationException($"The office wrote an entry that the records do not take: {refused.Reason}");
        return answer;
    }
}
