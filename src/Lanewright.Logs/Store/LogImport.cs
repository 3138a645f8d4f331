using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>How far an import is.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Bytes">Bytes that are taken in.</param>
/// <param name="Of">Bytes of the file.</param>
/// <param name="Rows">Rows that are taken in.</param>
public readonly record struct LogProgress(string File, long Bytes, long Of, long Rows);

/// <summary>What a file came to.</summary>
/// <param name="File">Its path as given.</param>
/// <param name="Problem">Why nothing, or nothing more, of it is taken in; null when it is taken in whole.</param>
/// <param name="WasThere">Whether all of it was there before.</param>
/// <param name="Accepted">Rows taken in.</param>
/// <param name="Refused">Rows refused.</param>
/// <param name="Blank">Lines with nothing in them.</param>
/// <param name="Reasons">Refused rows by reason.</param>
/// <param name="RefusedFiles">Where refused rows are kept.</param>
public sealed record ImportedFile(
    string File, Phrase? Problem, bool WasThere, long Accepted, long Refused, long Blank, IReadOnlyDictionary<string, long> Reasons,
    IReadOnlyList<string> RefusedFiles);

/// <summary>
/// Takes files of logs into a folder. A file is read in parts; a part counts once its journal entry is written, after its rows
/// are in place under their final names. Stopped at any point, it goes on with the next part.
/// </summary>
public sealed class LogImport : IDisposable
{
    /// <summary>Bytes of a file that are taken in at once.</summary>
    public const int UsualPart = 32 * 1024 * 1024;

    private readonly LogFolder folder;
    private readonly LogProfile profile;
    private readonly string? season;
    private readonly int partBytes;
    private readonly FileStream locked;
    private readonly Engine engine;
    private readonly RowFeed[] feeds;
    private readonly LogNameBook book = new();
    private readonly StoredRows stored;
    private readonly Settling settling;
    private LogRows rows = new(0);
    private byte[] buffer = [];

    private LogImport(LogFolder folder, LogProfile profile, string? season, int partBytes, FileStream locked)
    {
        this.folder = folder;
        this.profile = profile;
        this.season = season;
        this.partBytes = partBytes;
        this.locked = locked;
        settling = new(profile);
        folder.Tidy();
        Directory.CreateDirectory(folder.Work);
        engine = Engine.Open(Path.Combine(folder.Work, "spill"));
        feeds = [new(engine, 0), new(engine, 1)];
        stored = new(engine, book, folder.Files());
    }

    /// <summary>Begins. What a stopped import left unfinished is removed.</summary>
    /// <param name="folder">Where logs are kept.</param>
    /// <param name="profile">How the files are read.</param>
    /// <param name="season">Rows of other seasons are refused; null: of every season.</param>
    /// <param name="partBytes">Bytes of a file that are taken in at once.</param>
    /// <exception cref="LogException">Another import is running.</exception>
    public static LogImport Begin(LogFolder folder, LogProfile profile, string? season = null, int partBytes = UsualPart)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentOutOfRangeException.ThrowIfLessThan(partBytes, 2 * RowReader.LongestLine);
        if (season is not null) LogSeason.Year(season);
        var locked = folder.Lock();
        try
        {
            return new(folder, profile, season, partBytes, locked);
        }
        catch
        {
            locked.Dispose();
            throw;
        }
    }

    /// <summary>Removes the rows of a file that was taken in, so that it can be taken in again in another way.</summary>
    /// <returns>Rows removed.</returns>
    /// <exception cref="LogException">It is not there, or was not taken in.</exception>
    public static long Forget(LogFolder folder, string path, string? season = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(folder);
        if (!File.Exists(path)) throw new LogException($"There is no file {Excerpt.Of(path, 200)}; it is needed to know which rows are its own.");
        var key = SourceFile.Hash(path, stop) + (season is null ? "" : "-" + season);
        using var locked = folder.Lock();
        if (folder.Head(key) is null) throw new LogException(season is null ? (Phrase)$"Nothing of {Excerpt.Of(path, 200)} is taken in." : $"Nothing of {Excerpt.Of(path, 200)} is taken in for the season {season}.");
        var rows = folder.Parts(key).Sum(part => part.Accepted);
        LogPacking.TakeOut(folder, key);
        // Without its journal the rows belong to nothing, and are removed as what a stopped import left.
        Directory.Delete(folder.ImportOf(key), recursive: true);
        folder.Tidy();
        return rows;
    }

    /// <summary>Takes in one file.</summary>
    public ImportedFile Take(string path, IProgress<LogProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(path);
        var parts = new List<JournalPart>();
        var before = 0;
        var key = "";
        Phrase? problem = null;
        try
        {
            if (!File.Exists(path)) throw new LogException("There is no such file.");
            key = SourceFile.Hash(path, stop) + (season is null ? "" : "-" + season);
            parts = folder.Parts(key);
            before = parts.Count;
            if (parts is not [.., { Last: true }]) TakeParts(path, key, parts, progress, stop);
        }
        catch (LogException wrong)
        {
            problem = wrong.Said;
        }
        catch (AggregateException wrong) when (wrong.Flatten().InnerExceptions.All(one => one is LogException or IOException or UnauthorizedAccessException))
        {
            // Two threads write; either of them may have failed.
            problem = $"It could not be stored: {(wrong.Flatten().InnerExceptions[0] is LogException known ? known.Said : wrong.Flatten().InnerExceptions[0].Message)}";
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            problem = $"It could not be read or stored: {wrong.Message}";
        }

        var reasons = parts.SelectMany(p => p.Reasons).GroupBy(r => r.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(r => r.Value), StringComparer.Ordinal);
        return new(
            path, problem, problem is null && parts.Count == before, parts.Sum(p => p.Accepted), parts.Sum(p => p.Refused), parts.Sum(p => p.Blank), reasons,
            [.. parts.Where(p => p.Refused > 0).Select(p => folder.RefusedFile(key, p.Part))]);
    }

    /// <summary>What a reason of <see cref="ImportedFile.Reasons"/> means, for a reader of any language.</summary>
    public static Phrase Reason(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return RefusedFile.Said(word);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var feed in feeds) feed.Dispose();
        engine.Dispose();
        if (Directory.Exists(folder.Work)) Directory.Delete(folder.Work, recursive: true);
        locked.Dispose();
    }

    private void TakeParts(string path, string key, List<JournalPart> parts, IProgress<LogProgress>? progress, CancellationToken stop)
    {
        var name = Path.GetFileName(path);
        var head = folder.Head(key) ?? new JournalHead(name, new FileInfo(path).Length, key, profile.Hash, partBytes);
        if (head.ProfileHash != profile.Hash)
        {
            if (parts.Count > 0)
                throw new LogException("A part of it is taken in with another profile. Use that one, or 'lanewright logs forget' first.");
            head = head with { ProfileHash = profile.Hash, PartBytes = partBytes };
        }

        var kind = SourceFile.KindOf(path, profile);
        var lines = kind is LogFileKind.Csv ? path : Path.Combine(folder.Work, "source.csv");
        if (kind is LogFileKind.Gpx) SourceFile.WriteGpx(path, profile, lines);
        if (kind is LogFileKind.Parquet) SourceFile.WriteParquet(engine, path, profile, lines);
        var reading = kind is LogFileKind.Csv ? profile : SourceFile.OfLines(profile);
        using var file = new PartFile(lines, (int)head.PartBytes);
        var layout = file.Begin(reading);
        folder.Write(head);
        if (parts is [.., var last]) file.GoTo(last.ToByte, last.ToLine);
        var readers = new[] { new RowReader(reading, layout, book), new RowReader(reading, layout, book) };
        if (season is not null)
            foreach (var reader in readers)
                reader.Span = (LogSeason.Begin(LogSeason.Year(season), profile.SeasonBegins), LogSeason.Begin(LogSeason.Year(season) + 1, profile.SeasonBegins));
        do
        {
            stop.ThrowIfCancellationRequested();
            var part = TakePart(file, readers, key, parts.Count, name);
            parts.Add(part);
            progress?.Report(new(name, part.ToByte, file.Bytes, parts.Sum(p => p.Accepted)));
        }
        while (!parts[^1].Last);
    }

    private JournalPart TakePart(PartFile file, RowReader[] readers, string key, int number, string name)
    {
        file.Read(ref buffer, out var text);
        var middle = text.Length < 100_000 ? text.Length : text.Length / 2;
        middle = middle == text.Length || buffer.AsSpan(middle, text.Length - middle).IndexOf((byte)'\n') is not (>= 0 and var end) ? text.Length : middle + end + 1;
        var firstLines = buffer.AsSpan(0, middle).Count((byte)'\n');
        var lines = firstLines + buffer.AsSpan(middle, text.Length - middle).Count((byte)'\n');
        if (rows.Capacity < lines + 2) rows = new(lines + 2);
        var second = firstLines + 1;
        Parallel.Invoke(
            () => readers[0].Read(buffer.AsSpan(0, text.Length), 0, middle, text.Line, rows, 0),
            () => readers[1].Read(buffer.AsSpan(0, text.Length), middle, text.Length, text.Line + firstLines, rows, second));
        var starts = settling.Sort(rows, [(0, readers[0].Rows), (second, readers[1].Rows)], book.Units.Count);
        stored.Prepare(rows, settling.Order, starts);
        settling.Settle(rows, starts, stored.Of);
        var refused = readers[0].Refused.Concat(readers[1].Refused).Concat(settling.Refused).OrderBy(r => r.Line).ToList();
        var files = Write(key, number);
        RefusedFile.Write(folder.RefusedFile(key, number), name, refused, buffer);
        var part = new JournalPart
        {
            Part = number, FromByte = text.From, ToByte = text.To, FromLine = text.Line, ToLine = text.Line + text.Lines, Accepted = settling.Count,
            Refused = refused.Count, Blank = readers[0].Blank + readers[1].Blank, Files = files, Last = text.Last,
            Reasons = refused.GroupBy(r => RefusedFile.Word(r)).ToDictionary(g => g.Key, g => (long)g.Count(), StringComparer.Ordinal),
        };
        folder.Write(key, part);
        stored.Add(rows, settling.Order.AsSpan(0, settling.Count), files.Select(folder.Full));
        return part;
    }

    // Rows go to a folder of work first and then, file by file, to where they belong. Two threads write, each its own files.
    private List<RowFile> Write(string key, int number)
    {
        var groups = Groups();
        var files = new RowFile[groups.Count];
        var taken = -1;
        Parallel.ForEach(feeds, feed =>
        {
            for (int at; (at = Interlocked.Increment(ref taken)) < groups.Count;)
            {
                var (from, to, season, unit) = groups[at];
                var names = book.Units[unit];
                var place = RowTable.Folder(LogSeason.Name(season), book.Names.All[names.Depot], book.Names.All[names.Spreader]);
                var work = Path.Combine(folder.Work, $"part-{at}.parquet");
                feed.Run(rows, settling.Order, from, to, book, RowTable.Copy(feed.Function, work, profile.Zone.Id, LogFolder.Short(key)));
                files[at] = new($"{place}/{LogFolder.Short(key)}-{number:00000}.parquet", new FileInfo(work).Length);
                var path = folder.Full(files[at]);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.Move(work, path, overwrite: true);
            }
        });
        return [.. files];
    }

    // Rows of one season and spreader stand together, since they are in order of spreader and time.
    private List<(int From, int To, int Season, int Unit)> Groups()
    {
        var groups = new List<(int, int, int, int)>();
        for (int from = 0, to; from < settling.Count; from = to)
        {
            var unit = rows.Unit[settling.Order[from]];
            var season = LogSeason.YearOf(rows.At[settling.Order[from]], profile.SeasonBegins);
            var behind = LogSeason.Begin(season + 1, profile.SeasonBegins);
            for (to = from + 1; to < settling.Count && rows.Unit[settling.Order[to]] == unit && rows.At[settling.Order[to]] < behind;) to++;
            groups.Add((from, to, season, unit));
        }

        return groups;
    }
}
