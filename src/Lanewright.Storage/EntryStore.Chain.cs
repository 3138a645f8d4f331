using Lanewright.Core.Text;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

/// <summary>Something wrong with the chain of entries or with a photo.</summary>
/// <param name="Number">Number of the entry where it shows.</param>
/// <param name="What">What is wrong.</param>
public sealed record ChainProblem(long Number, Phrase What);

/// <summary>What came of checking the chain.</summary>
/// <param name="Entries">How many entries were checked.</param>
/// <param name="Photos">How many photos were checked.</param>
/// <param name="LastNumber">The highest number; 0 when the records are empty.</param>
/// <param name="LastHash">Its hash. Written down elsewhere, it proves later that nothing was taken off the end.</param>
/// <param name="Problems">What is wrong, at most <see cref="EntryStore.MostProblems"/>; empty when nothing is.</param>
public sealed record ChainReport(
    long Entries, long Photos, long LastNumber, string LastHash, IReadOnlyList<ChainProblem> Problems)
{
    /// <summary>Whether nothing is wrong.</summary>
    public bool IsWhole => Problems.Count == 0;
}

public sealed partial class EntryStore
{
    /// <summary>Most problems that one check lists.</summary>
    public const int MostProblems = 100;

    private const int TailLength = 1000;
    private const int Portion = 2000;

    /// <summary>Checks every entry's number, link and hash, and every photo against its entry.</summary>
    public Task<ChainReport> CheckChainAsync(CancellationToken stop = default) =>
        WithAsync(async context =>
        {
            await using var reading = await RecordsDatabase.BeginReadAsync(context, stop);
            var check = new ChainCheck();
            while (true)
            {
                var entries = await context.Entries.Where(entry => entry.Number > check.Number)
                    .OrderBy(entry => entry.Number).Take(Portion).ToListAsync(stop);
                if (entries.Count == 0) break;
                foreach (var entry in entries) check.Take(entry);
            }

            var photos = await CheckPhotosAsync(context, check, stop);
            return check.Report(photos);
        });

    private static async Task<long> CheckPhotosAsync(RecordsContext context, ChainCheck check, CancellationToken stop)
    {
        long count = 0;
        var ids = await context.Photos.Select(photo => photo.EntryId).OrderBy(id => id).ToListAsync(stop);
        foreach (var id in ids)
        {
            var photo = await context.Photos.FirstAsync(one => one.EntryId == id, stop);
            var entry = await context.Entries.FirstOrDefaultAsync(one => one.Id == id, stop);
            if (entry is null) check.Report(0, $"Photo {id} belongs to no entry.");
            else if (PhotoHash.Of(photo.Bytes) != Payload.Text(entry, "sha256"))
                check.Report(entry.Number, $"The photo of entry {entry.Number} is not the one that was taken: its hash differs.");
            count++;
        }

        return count;
    }

    /// <summary>At opening: a quick look at the end of the chain, and at the clock.</summary>
    private async Task CheckTailAsync(CancellationToken stop)
    {
        var (count, tail) = await WithAsync(async context =>
        {
            // Both from one moment: others may be writing.
            await using var reading = await RecordsDatabase.BeginReadAsync(context, stop);
            var count = await context.Entries.LongCountAsync(stop);
            return (count, await context.Entries.OrderByDescending(entry => entry.Number).Take(TailLength).ToListAsync(stop));
        });
        if (tail.Count == 0) return;
        tail.Reverse();
        var check = new ChainCheck(tail[0].Number - 1, tail[0].PreviousHash);
        foreach (var entry in tail) check.Take(entry);
        if (tail[^1].Number != count) check.Report(tail[^1].Number, $"{tail[^1].Number - count} entry is missing.|{tail[^1].Number - count} entries are missing.");
        if (check.Report(0).Problems is { Count: > 0 } problems)
        {
            database.Release();
            throw Faults.Damaged(
                Place.Name, $"{problems[0].What} ('check-records' lists everything)", Place.RestoreCommand);
        }

        var latest = tail.Max(entry => entry.Received);
        if (latest > Now() + TimeSpan.FromMinutes(5))
        {
            Notes =
            [
                $"This machine's clock says {Moments.Write(Now())}, but the last entry came in at {Moments.Write(latest)}."
                + $" Set the clock. Order and proof of the records do not depend on it.",
            ];
        }
    }
}
