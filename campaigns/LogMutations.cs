using System.Text;
using Lanewright.Core.Practice;
using Lanewright.Core.Statistics;
using Lanewright.Logs;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Store;

namespace Lanewright.Campaigns;

/// <summary>What damaged logs came to.</summary>
/// <param name="Files">How many were taken in.</param>
/// <param name="Refused">Files refused whole, with a message.</param>
/// <param name="Rows">Rows accepted.</param>
/// <param name="RefusedRows">Rows refused, each with a reason.</param>
/// <param name="Why">Why files were refused whole: begin of the message, and how often.</param>
/// <param name="Wrong">Files of which a row is unaccounted for, or that were refused without a message; first few.</param>
internal sealed record LogMutationTally(int Files, int Refused, long Rows, long RefusedRows, IReadOnlyDictionary<string, int> Why, IReadOnlyList<string> Wrong);

/// <summary>Takes damaged logs in: bytes changed, cut, doubled, foreign bytes in between. Every line must be a row that is stored, a
/// refused row that is kept with its reason, or blank.</summary>
internal static class LogMutations
{
    private const int FilesOfFolder = 40;

    internal static LogMutationTally Run(int files, int seed)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-mutations-").FullName;
        try
        {
            var sources = Sources(root, seed);
            var random = new RandomSource((ulong)seed, 77);
            var wrong = new List<string>();
            var why = new SortedDictionary<string, int>(StringComparer.Ordinal);
            int done = 0, refused = 0;
            long rows = 0, refusedRows = 0;
            while (done < files)
            {
                var source = sources[random.NextInt(sources.Count)];
                var folder = new LogFolder(Path.Combine(root, "data"));
                var accepted = 0L;
                using (var import = LogImport.Begin(folder, source.Profile))
                    for (var i = 0; i < FilesOfFolder && done < files; i++, done++)
                    {
                        var path = Path.Combine(root, "mutated" + source.Ending);
                        // Spreaders of its own, so that the files of a folder are not each other's duplicates.
                        var text = source.Text.Replace("HR-", $"H{done}-", StringComparison.Ordinal);
                        var bytes = Mutate(source.Ending == ".parquet" ? Parquet(root, text) : Encoding.UTF8.GetBytes(text), random);
                        File.WriteAllBytes(path, bytes);
                        var taken = import.Take(path);
                        if (taken.Problem?.ToString() is { } problem)
                        {
                            refused++;
                            var begin = problem[..Math.Min(problem.Length, 32)];
                            why[begin] = why.GetValueOrDefault(begin) + 1;
                        }

                        if (taken.Problem?.ToString() is { Length: 0 }) wrong.Add($"{done}: refused without a message");
                        if (taken.Problem is null && source.Ending == ".csv" && Lines(bytes) - 1 != taken.Accepted + taken.Refused + taken.Blank)
                            wrong.Add($"{done}: {Lines(bytes) - 1} lines, {taken.Accepted} accepted, {taken.Refused} refused, {taken.Blank} blank");
                        if (taken.Problem is null && source.Ending == ".parquet" && ParquetRows(path) is var held && held != taken.Accepted + taken.Refused + taken.Blank)
                            wrong.Add($"{done}: {held} rows, {taken.Accepted} accepted, {taken.Refused} refused, {taken.Blank} blank");
                        if (taken.Refused != taken.RefusedFiles.Sum(f => Lines(File.ReadAllBytes(f)) - 1)) wrong.Add($"{done}: refused rows are not all kept");
                        if (!taken.WasThere) accepted += taken.Accepted;
                        rows += taken.Accepted;
                        refusedRows += taken.Refused;
                    }

                if (Stored(folder) is var stored && stored != accepted) wrong.Add($"up to {done}: {accepted} rows accepted, {stored} stored");
                Directory.Delete(folder.Root, recursive: true);
            }

            return new(done, refused, rows, refusedRows, why, wrong);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static List<(string Text, LogProfile Profile, string Ending)> Sources(string root, int seed)
    {
        var season = Path.Combine(root, "season");
        SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 4, Storms = 1, Interval = 60, Seed = (ulong)seed }), season);
        var sources = new List<(string, LogProfile, string)>();
        foreach (var kind in Enum.GetValues<SeasonLogKind>())
        {
            var lines = File.ReadLines(Path.Combine(season, "logs", SeasonWriter.Word(kind) + "-001.csv")).Take(60);
            sources.Add((string.Join("\r\n", lines) + "\r\n", LogProfileReader.Read(SeasonLogs.Profile(kind)), ".csv"));
        }

        sources.Add((Gpx, LogProfileReader.Read(GpxProfile), ".gpx"));
        // The same counts as a running log in CSV, as a table of columns.
        sources.Add((sources[0].Item1, LogProfileReader.Read(SeasonLogs.Profile(SeasonLogKind.Running)), ".parquet"));
        return sources;
    }

    private static byte[] Parquet(string root, string csv)
    {
        var (from, to) = (Path.Combine(root, "whole.csv"), Path.Combine(root, "whole.parquet"));
        File.WriteAllText(from, csv);
        using var engine = Engine.Open(Path.Combine(root, "spill"));
        engine.Run($"COPY (SELECT * FROM read_csv({Engine.Text(from)}, all_varchar = true)) TO {Engine.Text(to)} (FORMAT parquet, COMPRESSION uncompressed)");
        return File.ReadAllBytes(to);
    }

    // How many rows the file says it holds; null where it cannot even say that, though its columns could be read.
    private static long? ParquetRows(string path)
    {
        using var engine = Engine.Open(path + ".spill");
        var count = 0L;
        try
        {
            engine.Ask($"SELECT count(*) FROM read_parquet({Engine.List([path])}, hive_partitioning = false)", row => count = row.GetInt64(0));
            return count;
        }
        catch (LogException)
        {
            return null;
        }
    }

    private static byte[] Mutate(byte[] source, RandomSource random)
    {
        var bytes = new List<byte>(source);
        for (var n = 1 + random.NextInt(6); n > 0 && bytes.Count > 0; n--)
        {
            var at = random.NextInt(bytes.Count);
            var length = Math.Min(random.NextInt(40), bytes.Count - at);
            switch (random.NextInt(9))
            {
                case 0: bytes[at] = (byte)random.NextInt(256); break;
                case 1: bytes[at] ^= (byte)(1 << random.NextInt(8)); break;
                case 2: bytes.RemoveRange(at, length); break;
                case 3: bytes.InsertRange(at, bytes.GetRange(random.NextInt(bytes.Count - length + 1), length)); break;
                case 4: bytes.RemoveRange(at, bytes.Count - at); break;
                case 5: bytes.InsertRange(at, Foreign[random.NextInt(Foreign.Length)]); break;
                case 6: bytes.InsertRange(at, Encoding.UTF8.GetBytes(Values[random.NextInt(Values.Length)])); break;
                case 7: bytes.RemoveAt(at); break;
                default: bytes.InsertRange(at, new byte[length]); break;
            }
        }

        return [.. bytes];
    }

    private static readonly byte[][] Foreign =
        [[0xFF, 0xFE], [0xC3, 0x28], [0xEF, 0xBB, 0xBF], [0], "\n"u8.ToArray(), "\r"u8.ToArray(), "\""u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), [0xF0, 0x9F, 0x9A, 0x9C], new byte[70_000]];

    private static readonly string[] Values =
    [
        "1e308", "-1", "NaN", "inf", "1_000", "0x1F", "99999999999999999999", "1,250", "1.250,5", "½", "2026-02-30T00:00:00Z", "9999-99-99", "../../x", "__HIVE_DEFAULT_PARTITION__",
        "=1+1", "'; DROP TABLE part; --", "1e-400", "\u202E", "a\"b",
    ];

    // As a person would count them.
    private static long Lines(byte[] bytes) => bytes.Count(b => b == '\n') + (bytes.Length > 0 && bytes[^1] != '\n' ? 1 : 0);

    private static long Stored(LogFolder folder)
    {
        if (!Directory.Exists(folder.Rows)) return 0;
        var files = Directory.EnumerateFiles(folder.Rows, "*.parquet", SearchOption.AllDirectories).ToList();
        if (files.Count == 0) return 0;
        using var engine = Engine.Open(Path.Combine(folder.Root, "spill"));
        var count = 0L;
        engine.Ask($"SELECT count(*) FROM {RowTable.Read(files)}", row => count = row.GetInt64(0));
        return count;
    }

    internal const string GpxProfile =
        """
        { "format": "lanewright-log-profile/1", "zone": "UTC", "columns": {
          "time": { "column": "time" }, "spreader": { "column": "track" }, "depot": { "fixed": "Quarry Road" },
          "counts": { "column": "pulses", "unit": "pulse", "kind": "running" },
          "latitude": { "column": "lat" }, "longitude": { "column": "lon" } } }
        """;

    internal const string Gpx =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1" xmlns:s="urn:invented:spreader">
          <trk><name>HR-101</name><trkseg>
            <trkpt lat="44.80000" lon="-93.20000"><time>2026-11-03T04:00:00Z</time><extensions><s:pulses>100</s:pulses></extensions></trkpt>
            <trkpt lat="44.80100" lon="-93.20000"><time>2026-11-03T04:00:10Z</time><extensions><s:pulses>220</s:pulses></extensions></trkpt>
            <trkpt lat="44.80200" lon="-93.20000"><time>2026-11-03T04:00:20Z</time><extensions><s:pulses>345</s:pulses></extensions></trkpt>
          </trkseg></trk>
        </gpx>
        """;
}
