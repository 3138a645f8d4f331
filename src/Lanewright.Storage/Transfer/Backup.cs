using Lanewright.Storage.Database;
using Microsoft.Data.Sqlite;

namespace Lanewright.Storage.Transfer;

/// <summary>A whole copy of the records in one file, and the way back. For records in a folder (SQLite).</summary>
public static class Backup
{
    /// <summary>
    /// Writes a backup while the program may be running, and proves it by opening the copy and following its whole chain.
    /// </summary>
    /// <returns>What the copy holds.</returns>
    /// <exception cref="RecordsException">It could not be written or proved; then there is no file of that name.</exception>
    public static async Task<ChainReport> WriteAsync(EntryStore store, string to, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentException.ThrowIfNullOrWhiteSpace(to);
        if (store.Place.File is not { } file)
            throw new RecordsException(RecordsFault.Denied, "A PostgreSQL database is saved with 'export', or with PostgreSQL's own tools.");
        ChainReport? report = null;
        await GuardedAsync(to, () => Package.WriteAsync(
            to,
            async package =>
            {
                var beside = Directory.CreateDirectory($"{to}.{Guid.NewGuid():N}.copy");
                try
                {
                    var copy = RecordsPlace.InFolder(beside.FullName);
                    CopyDatabase(file, copy.File!);
                    report = await ProveAsync(copy, stop);
                    await package.AddAsync(RecordsPlace.FileName, File.OpenRead(copy.File!));
                    return new(Manifest.Backup, report.Entries, report.LastHash, [.. package.Files]);
                }
                finally
                {
                    beside.Delete(recursive: true);
                }
            },
            null,
            stop));
        return report!;
    }

    /// <summary>
    /// Puts a backup into a folder. A damaged backup is refused before anything is touched. Records that are there already
    /// stay unless <paramref name="replace"/> says otherwise, and then they are set aside in a folder of their own.
    /// </summary>
    /// <returns>What was restored, and where the old records are now (null when there were none).</returns>
    public static async Task<(ChainReport Report, string? SetAside)> RestoreAsync(
        string from, RecordsPlace place, bool replace, TimeProvider? clock = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        if (place.DataFolder is not { } folder)
            throw new RecordsException(RecordsFault.Denied, "A backup is restored into a folder; for PostgreSQL use 'import' with an export.");
        using var package = Package.Open(from, Manifest.Backup);
        (ChainReport, string?) answer = default;
        await GuardedAsync(folder, async () =>
        {
            using var held = ServingLock.Take(place);
            var old = Leftovers(place).Where(File.Exists).ToList();
            if (old.Count > 0 && !replace)
            {
                throw new RecordsException(
                    RecordsFault.Denied,
                    $"There are records in {folder} already. Add --replace to use the backup instead; the old ones are set aside,"
                    + $" not deleted. Nothing was changed.");
            }

            var beside = Directory.CreateDirectory(Path.Combine(folder, $"restoring-{Guid.NewGuid():N}"));
            try
            {
                var copy = RecordsPlace.InFolder(beside.FullName);
                await using (var target = new FileStream(copy.File!, FileMode.CreateNew))
                await using (var source = package.Read(RecordsPlace.FileName))
                {
                    await source.CopyToAsync(target, stop);
                    target.Flush(flushToDisk: true);
                }

                var report = await ProveAsync(copy, stop);
                if (report.Entries != package.Manifest.Entries || report.LastHash != package.Manifest.LastHash)
                    throw Package.Damaged(from, "it does not hold the entries it should");
                var aside = old.Count == 0 ? null : SetAside(folder, old, (clock ?? TimeProvider.System).GetUtcNow());
                File.Move(copy.File!, place.File!);
                answer = (report, aside);
            }
            finally
            {
                beside.Delete(recursive: true);
            }
        });
        return answer;
    }

    private static string SetAside(string folder, List<string> files, DateTimeOffset now)
    {
        var name = FormattableString.Invariant($"set-aside-{now.UtcDateTime:yyyyMMdd-HHmmss}");
        var aside = Path.Combine(folder, name);
        for (var i = 2; Directory.Exists(aside); i++) aside = Path.Combine(folder, FormattableString.Invariant($"{name}-{i}"));
        Directory.CreateDirectory(aside);
        foreach (var file in files) File.Move(file, Path.Combine(aside, Path.GetFileName(file)));
        return aside;
    }

    private static string[] Leftovers(RecordsPlace place) => [place.File!, place.File + "-wal", place.File + "-shm"];

    // VACUUM INTO reads one state of the records, changes that are still in the log included; copying the file would not.
    private static void CopyDatabase(string from, string to)
    {
        using var connection = new SqliteConnection($"Data Source={from};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "VACUUM INTO $to";
        command.Parameters.AddWithValue("$to", to);
        command.ExecuteNonQuery();
    }

    private static async Task<ChainReport> ProveAsync(RecordsPlace copy, CancellationToken stop)
    {
        var store = await EntryStore.OpenAsync(copy, stop: stop);
        var report = await store.CheckChainAsync(stop);
        store.Release();
        return report.IsWhole
            ? report
            : throw new RecordsException(RecordsFault.Damaged, $"The copy did not prove whole: {report.Problems[0].What}");
    }

    internal static async Task GuardedAsync(string place, Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception wrong) when (wrong is not RecordsException
            && (Faults.Of(wrong, place, "lanewright restore BACKUP --data FOLDER --replace") is not null || wrong is IOException))
        {
            throw Faults.Of(wrong, place, "lanewright restore BACKUP --data FOLDER --replace")
                ?? new RecordsException(RecordsFault.Full, $"{place} could not be written: {wrong.Message}", wrong);
        }
    }
}
