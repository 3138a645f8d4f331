using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Text;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

public sealed partial class EntryStore
{
    /// <summary>Most entries of one call.</summary>
    public const int MostEntries = 500;

    /// <summary>Takes in drafts, read as if a device had sent them; see <see cref="AppendAsync(IReadOnlyList{EntryReading}, CancellationToken)"/>.</summary>
    /// <exception cref="ArgumentException">A payload is not JSON.</exception>
    public Task<AppendAnswer> AppendAsync(IReadOnlyList<EntryDraft> drafts, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(drafts);
        return AppendAsync([.. drafts.Select(Reading)], stop);
    }

    /// <summary>
    /// Takes in what was sent, in the order sent. An entry is taken in once however often it is sent; one that cannot be
    /// taken in goes to quarantine and does not hold up the others. Returns after everything is on the disk.
    /// </summary>
    /// <param name="sent">At most <see cref="MostEntries"/> entries.</param>
    /// <param name="stop">Ends the wait, not a commit that has begun.</param>
    public Task<AppendAnswer> AppendAsync(IReadOnlyList<EntryReading> sent, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(sent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(sent.Count, MostEntries, nameof(sent));
        return WriteAsync(context => AppendAsync(context, sent, stop), stop);
    }

    /// <summary>
    /// Takes in any number of drafts, all of them or none: when one cannot be taken in, nothing is kept and the answer says
    /// which and why.
    /// </summary>
    public Task<AppendAnswer> AppendAllAsync(IReadOnlyList<EntryDraft> drafts, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(drafts);
        var sent = drafts.Select(Reading).ToList();
        return sent.Find(one => one.Draft is null) is { } wrong
            ? Task.FromResult(new AppendAnswer([new(wrong.Id, AppendStatus.Rejected, null, wrong.Problem!.Said)], 0))
            : WriteAsync(
                async context =>
                {
                    var results = new List<AppendResult>(sent.Count);
                    var last = 0L;
                    foreach (var batch in sent.Chunk(MostEntries))
                    {
                        var answer = await AppendAsync(context, batch, stop);
                        results.AddRange(answer.Results);
                        last = answer.Last;
                    }

                    return new AppendAnswer(results, last);
                },
                stop);
    }

    private async Task<AppendAnswer> AppendAsync(
        RecordsContext context, IReadOnlyList<EntryReading> sent, CancellationToken stop)
    {
        var ids = sent.Where(one => one.Draft is not null).Select(one => one.Draft!.Id).Distinct().ToList();
        var known = await context.Entries.Where(entry => ids.Contains(entry.Id)).ToDictionaryAsync(entry => entry.Id, stop);
        var tail = await context.Entries.OrderByDescending(entry => entry.Number)
            .Select(entry => new { entry.Number, entry.Hash }).FirstOrDefaultAsync(stop);
        var (number, hash) = tail is null ? (0L, EntryHash.First) : (tail.Number, tail.Hash);

        var now = Now();
        var results = new List<AppendResult>(sent.Count);
        var added = new List<Entry>();
        var aside = new Dictionary<string, QuarantinedEntry>(StringComparer.Ordinal);
        foreach (var one in sent)
        {
            if (one.Draft is not { } draft)
            {
                results.Add(SetAside(one, AppendStatus.Rejected, null, one.Problem!.Said));
            }
            else if (known.TryGetValue(draft.Id, out var there))
            {
                results.Add(there.SameContent(draft)
                    ? new(draft.Id, AppendStatus.Have, there.Number, null)
                    : SetAside(one, AppendStatus.Conflict, there.Number, AppendWords.TakenBy(there.Number)));
            }
            else
            {
                var entry = Chain(draft, ++number, now, hash);
                hash = entry.Hash;
                known.Add(entry.Id, entry);
                added.Add(entry);
                results.Add(new(entry.Id, AppendStatus.Accepted, number, null));
            }
        }

        await SetAsideAsync(context, aside, stop);
        context.AddRange(added);
        await context.SaveChangesAsync(stop);
        context.ChangeTracker.Clear();
        await Projector.UpdateAsync(context, [.. added.Select(entry => entry.Subject).Distinct()], stop);
        return new(results, number);

        AppendResult SetAside(EntryReading one, AppendStatus status, long? taken, Phrase reason)
        {
            var key = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(one.Raw)));
            aside.TryAdd(key, new()
            {
                Hash = key,
                EntryId = one.Id,
                Received = now,
                Status = AppendWords.Of(status),
                Reason = reason.ToString(),
                // PostgreSQL keeps no zero character, and half characters cannot be written as UTF-8.
                Raw = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(one.Raw.Replace("\0", "\\u0000", StringComparison.Ordinal))),
            });
            return new(one.Id, status, taken, reason);
        }
    }

    private static async Task SetAsideAsync(
        RecordsContext context, Dictionary<string, QuarantinedEntry> aside, CancellationToken stop)
    {
        if (aside.Count == 0) return;
        var keys = aside.Keys.ToList();
        var there = await context.Quarantine.Where(one => keys.Contains(one.Hash)).Select(one => one.Hash).ToListAsync(stop);
        context.AddRange(aside.Values.Where(one => !there.Contains(one.Hash)));
    }

    private static Entry Chain(EntryDraft draft, long number, DateTimeOffset received, string previous) =>
        Chained(draft, number, received, previous, EntryHash.Of(number, received, previous, draft));

    /// <summary>A draft with what the records add.</summary>
    internal static Entry Chained(EntryDraft draft, long number, DateTimeOffset received, string previous, string hash) => new()
    {
        Number = number,
        Received = received,
        PreviousHash = previous,
        Hash = hash,
        Id = draft.Id,
        Kind = draft.Kind,
        Subject = draft.Subject,
        Person = draft.Person,
        Device = draft.Device,
        Seq = draft.Seq,
        At = draft.At,
        Zone = draft.Zone,
        Parent = draft.Parent,
        Why = draft.Why,
        Payload = draft.Payload,
    };

    private static EntryReading Reading(EntryDraft draft)
    {
        try
        {
            using var json = JsonDocument.Parse(EntryWriter.Text(draft));
            return EntryReader.Read(json.RootElement);
        }
        catch (JsonException wrong)
        {
            throw new ArgumentException("The payload of a draft is a JSON object.", nameof(draft), wrong);
        }
    }
}
