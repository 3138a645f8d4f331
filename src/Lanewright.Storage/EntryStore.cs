using System.Collections.Concurrent;
using Lanewright.Core.Text;
using Lanewright.Storage.Database;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

/// <summary>How records are opened.</summary>
public enum Opening
{
    /// <summary>Made when there are none yet; refused when the end of their chain is not whole.</summary>
    Make,

    /// <summary>Refused when there are none, or when the end of their chain is not whole.</summary>
    Existing,

    /// <summary>Refused when there are none; a chain that is not whole is let through, to be looked at.</summary>
    Inspect,
}

/// <summary>
/// The records: entries that are only ever added, photos, and what is computed from them. Safe for use by many callers at
/// once; one writes at a time. Every method throws <see cref="RecordsException"/>, whose message is for people, when the
/// disk or the database fails; then nothing of that call was stored.
/// </summary>
public sealed partial class EntryStore
{
    // One writer at a time within the process, so that writers queue here instead of failing after the busy time.
    private static readonly ConcurrentDictionary<string, SemaphoreSlim> Writers = new(StringComparer.Ordinal);

    private readonly RecordsDatabase database;
    private readonly TimeProvider clock;
    private readonly SemaphoreSlim writer;

    private EntryStore(RecordsDatabase database, TimeProvider clock)
    {
        this.database = database;
        this.clock = clock;
        writer = Writers.GetOrAdd(database.Place.Name, _ => new(1, 1));
    }

    /// <summary>Where the records are.</summary>
    public RecordsPlace Place => database.Place;

    /// <summary>What was noticed at opening that somebody should know: for example a clock that was set back.</summary>
    public IReadOnlyList<Phrase> Notes { get; private set; } = [];

    /// <summary>
    /// Opens the records, making or updating the tables where needed. Damaged, foreign and newer records are refused and
    /// left exactly as they are.
    /// </summary>
    /// <param name="place">Where they are.</param>
    /// <param name="clock">The clock that dates what comes in; the machine's when null.</param>
    /// <param name="opening">Whether records may be made, and how closely they are looked at.</param>
    /// <param name="stop">Ends the wait.</param>
    public static async Task<EntryStore> OpenAsync(
        RecordsPlace place, TimeProvider? clock = null, Opening opening = Opening.Make, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        var database = new RecordsDatabase(place);
        var store = new EntryStore(database, clock ?? TimeProvider.System);
        try
        {
            await RecordsOpening.PrepareAsync(database, opening, stop);
        }
        catch (Exception wrong) when (Faults.Of(wrong, place.Name, place.RestoreCommand) is not null)
        {
            database.Release();
            throw Faults.Of(wrong, place.Name, place.RestoreCommand)!;
        }

        if (opening is not Opening.Inspect) await store.CheckTailAsync(stop);
        return store;
    }

    /// <summary>Closes the files, so that the folder may be moved. Calls afterwards open them again.</summary>
    public void Release() => database.Release();

    /// <summary>Runs something over a context and says in words what a database's error means.</summary>
    private async Task<T> WithAsync<T>(Func<RecordsContext, Task<T>> work)
    {
        try
        {
            var context = database.Context();
            await using (context) return await work(context);
        }
        catch (Exception wrong) when (Faults.Of(wrong, Place.Name, Place.RestoreCommand) is { } fault && fault != wrong)
        {
            throw Faults.Of(wrong, Place.Name, Place.RestoreCommand)!;
        }
    }

    /// <summary>Runs something as the only writer, all of it or nothing; returns after it is on the disk.</summary>
    private async Task<T> WriteAsync<T>(Func<RecordsContext, Task<T>> work, CancellationToken stop)
    {
        await writer.WaitAsync(stop);
        try
        {
            return await WithAsync(async context =>
            {
                await using var transaction = await RecordsDatabase.BeginWriteAsync(context, stop);
                var answer = await work(context);
                // From here on an impatient caller must not break off: it would not know what became of its entries.
                await transaction.CommitAsync(CancellationToken.None);
                return answer;
            });
        }
        finally
        {
            writer.Release();
        }
    }

    private DateTimeOffset Now() => clock.GetUtcNow();
}
