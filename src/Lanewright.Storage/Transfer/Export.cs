using System.Text;
using System.Text.Json;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Storage.Transfer;

/// <summary>What an import brought.</summary>
/// <param name="Entries">Entries in the file.</param>
/// <param name="Added">Of them, how many were new.</param>
/// <param name="Conflicts">How many have the id of an entry that says something else; they are in quarantine.</param>
/// <param name="Photos">Photos that were new.</param>
public sealed record ImportReport(long Entries, long Added, long Conflicts, long Photos);

/// <summary>
/// Everything in one open file: entries as lines of JSON, photos, quarantine. For moving between databases, for bringing
/// depots together, and for reading with other programs. See docs/formats/entries.md.
/// </summary>
public static class Export
{
    private const string EntriesFile = "entries.jsonl";
    private const string QuarantineFile = "quarantine.jsonl";
    private const string PhotosFolder = "photos/";

    /// <summary>Writes the export. The same records always give the same bytes.</summary>
    /// <param name="store">The records.</param>
    /// <param name="to">The file to write.</param>
    /// <param name="stop">Ends the work.</param>
    public static Task<long> WriteAsync(EntryStore store, string to, CancellationToken stop = default) => WriteAsync(store, to, null, stop);

    /// <summary>Writes the export and does something to it.</summary>
    /// <param name="store">The records.</param>
    /// <param name="to">The file to write.</param>
    /// <param name="finish">Does something to the finished file before it gets its name, such as sealing it; null for nothing.</param>
    /// <param name="stop">Ends the work.</param>
    public static async Task<long> WriteAsync(EntryStore store, string to, Action<string>? finish, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentException.ThrowIfNullOrWhiteSpace(to);
        long count = 0;
        await Backup.GuardedAsync(to, () => Package.WriteAsync(
            to,
            async package =>
            {
                var beside = $"{to}.{Guid.NewGuid():N}.lines";
                try
                {
                    // What is added while this runs stands after the last entry, and waits for the next export.
                    var (last, hash) = await store.LastAsync(stop);
                    await using (var lines = new StreamWriter(beside, append: false, new UTF8Encoding(false)) { NewLine = "\n" })
                    {
                        while (count < last)
                        {
                            foreach (var entry in await store.ReadAsync(count, most: (int)Math.Min(2000, last - count), stop: stop))
                            {
                                await lines.WriteLineAsync(EntryWriter.Text(entry));
                                count = entry.Number;
                            }
                        }
                    }

                    await package.AddAsync(EntriesFile, File.OpenRead(beside));
                    var aside = string.Concat((await store.QuarantineAsync(stop)).Select(one => JsonLine(one.Raw)));
                    await package.AddAsync(QuarantineFile, new MemoryStream(Encoding.UTF8.GetBytes(aside)));
                    foreach (var id in await store.PhotoIdsAsync(stop))
                        await package.AddAsync(PhotosFolder + id, new MemoryStream((await store.PhotoAsync(id, stop))!.Bytes));
                    return new(Manifest.Export, last, hash, [.. package.Files]);
                }
                finally
                {
                    File.Delete(beside);
                }
            },
            finish,
            stop));
        return count;
    }

    /// <summary>Checks an export: every file against the list of contents, and the chain of its entries.</summary>
    /// <param name="from">The file.</param>
    /// <param name="each">Gets each entry; null for nobody.</param>
    /// <param name="most">Most bytes that are unpacked; null for no limit.</param>
    /// <exception cref="RecordsException">It is no export, damaged, or larger than is unpacked.</exception>
    public static ChainReport Check(string from, Action<Entry>? each = null, long? most = null)
    {
        using var package = Package.Open(from, Manifest.Export, most);
        var check = new ChainCheck();
        foreach (var (_, entry) in Lines(package, from))
        {
            check.Take(entry);
            each?.Invoke(entry);
        }

        var found = check.Report(0);
        if (found.Entries != package.Manifest.Entries || found.LastHash != package.Manifest.LastHash)
            throw Package.Damaged(from, "it does not hold the entries it should");
        return found;
    }

    /// <summary>
    /// Brings an export into records, empty or not. What is there already is left alone, so the same file twice does no
    /// more than once. A damaged file is refused before anything is written.
    /// </summary>
    public static async Task<ImportReport> ReadAsync(EntryStore store, string from, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        using var package = Package.Open(from, Manifest.Export);
        var check = new ChainCheck();
        foreach (var (_, entry) in Lines(package, from)) check.Take(entry!);
        var found = check.Report(0);
        if (!found.IsWhole) throw Package.Damaged(from, found.Problems[0].What);
        if (found.Entries != package.Manifest.Entries || found.LastHash != package.Manifest.LastHash)
            throw Package.Damaged(from, "it does not hold the entries it should");

        long added = 0, conflicts = 0, photos = 0;
        foreach (var batch in Lines(package, from).Select(line => line.Reading).Concat(Quarantined(package)).Chunk(EntryStore.MostEntries))
        {
            var answer = await store.AppendAsync(batch, stop);
            added += answer.Results.Count(one => one.Status is AppendStatus.Accepted);
            conflicts += answer.Results.Count(one => one.Status is AppendStatus.Conflict);
        }

        foreach (var file in package.Manifest.Files.Where(f => f.Name.StartsWith(PhotosFolder, StringComparison.Ordinal)))
        {
            if (file.Bytes > EntryStore.MostPhotoBytes) throw Package.Damaged(from, $"{file.Name} is too large");
            var bytes = new byte[file.Bytes];
            await using var source = package.Read(file.Name);
            await source.ReadExactlyAsync(bytes, stop);
            if (await store.PutPhotoAsync(file.Name[PhotosFolder.Length..], bytes, stop) is PhotoStatus.Accepted) photos++;
        }

        return new(found.Entries, added, conflicts, photos);
    }

    private static IEnumerable<(EntryReading Reading, Entry Entry)> Lines(Package package, string from)
    {
        using var reader = new StreamReader(package.Read(EntriesFile), new UTF8Encoding(false));
        for (var number = 1; reader.ReadLine() is { } line; number++)
            yield return Parse(line) ?? throw Package.Damaged(from, $"line {number} of {EntriesFile} is not an entry");
    }

    private static (EntryReading, Entry)? Parse(string line)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            var reading = EntryReader.Read(json.RootElement);
            if (reading.Draft is not { } draft) return null;
            var received = Moments.Read(json.RootElement.GetProperty("received").GetString() ?? "");
            if (received is null) return null;
            return (reading, EntryStore.Chained(
                draft, json.RootElement.GetProperty("number").GetInt64(), received.Value,
                json.RootElement.GetProperty("previousHash").GetString() ?? "", json.RootElement.GetProperty("hash").GetString() ?? ""));
        }
        catch (Exception wrong) when (wrong is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    // A raw text may hold anything, so it travels as a JSON text; a newer version may understand it.
    private static IEnumerable<EntryReading> Quarantined(Package package)
    {
        using var reader = new StreamReader(package.Read(QuarantineFile), new UTF8Encoding(false));
        while (reader.ReadLine() is { } line)
        {
            using var text = JsonDocument.Parse(line);
            using var json = JsonDocument.Parse(text.RootElement.GetString()!, EntryReader.AsItCame);
            yield return EntryReader.Read(json.RootElement);
        }
    }

    private static string JsonLine(string text) => $"\"{JsonEncodedText.Encode(text)}\"\n";
}
