namespace Lanewright.Logs.Store;

/// <summary>What packing came to.</summary>
/// <param name="Folders">Folders of a season and spreader that were packed.</param>
/// <param name="Before">Files in them before.</param>
public sealed record PackedLogs(int Folders, int Before);

/// <summary>
/// Makes one Parquet file of the many small ones of a season and spreader. The new file is whole and on the disk before one renamed
/// file says that it stands for the others; only then are those removed. So every row is there once for whoever reads by the journal,
/// wherever the program is stopped.
/// </summary>
public static class LogPacking
{
    /// <summary>From how many files on a folder is packed.</summary>
    public const int UsualLeast = 8;

    /// <summary>Packs every folder with at least so many files.</summary>
    /// <exception cref="LogException">Another import is running, or something cannot be read or written.</exception>
    public static PackedLogs Pack(LogFolder folder, int least = UsualLeast, CancellationToken stop = default) => Pack(folder, least, _ => { }, stop);

    /// <summary>The same; <paramref name="step"/> is told each step, and may stop it as a kill would.</summary>
    internal static PackedLogs Pack(LogFolder folder, int least, Action<string> step, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentOutOfRangeException.ThrowIfLessThan(least, 2);
        using var locked = folder.Lock();
        folder.Tidy();
        var packs = folder.AllPacks().ToDictionary(pack => LogFolder.FolderOf(pack.File), StringComparer.Ordinal);
        var (folders, before) = (0, 0);
        foreach (var place in folder.Named().ToList().GroupBy(LogFolder.FolderOf, StringComparer.Ordinal))
        {
            stop.ThrowIfCancellationRequested();
            var old = packs.GetValueOrDefault(place.Key);
            var inside = (old?.Replaces ?? []).Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
            var loose = place.Where(file => !inside.Contains(file.Path)).ToList();
            var count = loose.Count + (old is null ? 0 : 1);
            if (count < least) continue;
            Replace(folder, old, [.. loose.Concat(old is null ? [] : [old.File]).Select(folder.Full)], "", [.. place], step);
            step("packed");
            folder.Tidy();
            (folders, before) = (folders + 1, before + count);
        }

        return new(folders, before);
    }

    /// <summary>Takes the rows of one import out of the packs that hold some.</summary>
    internal static void TakeOut(LogFolder folder, string key)
    {
        var file = LogFolder.Short(key);
        foreach (var pack in folder.AllPacks().ToList())
        {
            List<RowFile> rest = [.. pack.Replaces.Where(one => !one.Path.EndsWith($"/{file}-{one.Path[^13..]}", StringComparison.Ordinal))];
            if (rest.Count == pack.Replaces.Count) continue;
            if (rest.Count == 0) folder.Remove(pack);
            else Replace(folder, pack, [folder.Full(pack.File)], $"WHERE file <> {Engine.Text(file)}", rest, _ => { });
        }
    }

    private static void Replace(LogFolder folder, RowPack? old, List<string> files, string where, List<RowFile> replaces, Action<string> step)
    {
        Directory.CreateDirectory(folder.Work);
        var work = Path.Combine(folder.Work, "pack.parquet");
        using (var engine = Engine.Open(Path.Combine(folder.Work, "spill")))
        {
            engine.Run(
                $"COPY (SELECT * FROM read_parquet({Engine.List(files)}, hive_partitioning = false) {where} ORDER BY moment, file, line) TO {Engine.Text(work)} (FORMAT parquet, COMPRESSION zstd)");
            if (Rows(engine, files, where) is var wanted && Rows(engine, [work], "") is var written && wanted != written)
                throw new LogException($"{written} rows were written where {wanted} were expected; nothing was packed.");
        }

        step("written");
        // On the disk before anything counts on it.
        using (var whole = new FileStream(work, FileMode.Open, FileAccess.ReadWrite)) whole.Flush(flushToDisk: true);
        var number = old is null ? 1 : int.Parse(old.File.Path[^13..^8], System.Globalization.CultureInfo.InvariantCulture) + 1;
        var file = new RowFile($"{LogFolder.FolderOf(replaces[0])}/pack-{number:00000}.parquet", new FileInfo(work).Length);
        File.Move(work, folder.Full(file), overwrite: true);
        step("moved");
        folder.Write(new RowPack(file, replaces));
        step("named");
    }

    private static long Rows(Engine engine, List<string> files, string where)
    {
        var rows = 0L;
        engine.Ask($"SELECT count(*) FROM read_parquet({Engine.List(files)}, hive_partitioning = false) {where}", row => rows = row.GetInt64(0));
        return rows;
    }
}
