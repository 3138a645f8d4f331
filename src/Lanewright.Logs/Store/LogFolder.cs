using System.Text.Json;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Store;

/// <summary>A Parquet file of rows.</summary>
/// <param name="Path">Its path below the folder of rows, with / between.</param>
/// <param name="Bytes">Its length.</param>
internal sealed record RowFile(string Path, long Bytes);

/// <summary>What one part of a source file came to: one small file of the journal, written after everything it names is in
/// place. Without it the part counts as not taken in.</summary>
internal sealed record JournalPart
{
    public required int Part { get; init; }

    /// <summary>Bytes of the source: from (included) to (not included).</summary>
    public required long FromByte { get; init; }

    public required long ToByte { get; init; }

    public required int FromLine { get; init; }

    public required int ToLine { get; init; }

    public required long Accepted { get; init; }

    public required long Refused { get; init; }

    public required long Blank { get; init; }

    /// <summary>Refused rows by reason.</summary>
    public required IReadOnlyDictionary<string, long> Reasons { get; init; }

    public required IReadOnlyList<RowFile> Files { get; init; }

    /// <summary>Whether the source ends here.</summary>
    public required bool Last { get; init; }
}

/// <summary>Rows of many files of one folder in one: it stands for the files that it names.</summary>
internal sealed record RowPack(RowFile File, IReadOnlyList<RowFile> Replaces);

/// <summary>The source file of an import: written first.</summary>
internal sealed record JournalHead(string Name, long Bytes, string Hash, string ProfileHash, long PartBytes);

/// <summary>
/// The folder of logs: <c>rows</c> with Parquet files, <c>segments</c> with the road segments of rows, <c>refused</c> with what was
/// not taken in, <c>imports</c> with the journal, <c>work</c> with what is not finished.
/// </summary>
public sealed class LogFolder
{
    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true };

    /// <summary>The logs within a data folder.</summary>
    public LogFolder(string dataFolder)
    {
        Root = Path.Combine(dataFolder, "logs");
    }

    /// <summary>The folder itself.</summary>
    public string Root { get; }

    /// <summary>Parquet files, by season, depot and spreader.</summary>
    public string Rows => Path.Combine(Root, "rows");

    internal string Segments => Path.Combine(Root, "segments");

    internal string Refused => Path.Combine(Root, "refused");

    internal string Imports => Path.Combine(Root, "imports");

    internal string Packs => Path.Combine(Root, "packs");

    internal string Work => Path.Combine(Root, "work");

    /// <summary>Takes the lock of the folder for one import at a time; the system lets go of it however the program ends.</summary>
    /// <exception cref="LogException">Another program holds it, or nothing can be written there.</exception>
    internal FileStream Lock()
    {
        try
        {
            Directory.CreateDirectory(Root);
            return new(Path.Combine(Root, "import.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException(
                $"The logs in {Excerpt.Of(Root, 200)} cannot be written: another import is running there, or you may not write. ({wrong.Message})", wrong);
        }
    }

    internal string ImportOf(string hash) => Path.Combine(Imports, hash);

    internal JournalHead? Head(string hash) => Read<JournalHead>(Path.Combine(ImportOf(hash), "head.json"));

    internal void Write(JournalHead head) => Save(Path.Combine(ImportOf(head.Hash), "head.json"), head);

    internal void Write(string hash, JournalPart part) => Save(Path.Combine(ImportOf(hash), PartName(part.Part)), part);

    /// <summary>The parts of an import that are taken in, in order, as far as nothing is missing.</summary>
    internal List<JournalPart> Parts(string hash) => Parts(hash, Packed());

    private List<JournalPart> Parts(string hash, Dictionary<string, RowFile> packed)
    {
        var parts = new List<JournalPart>();
        while (Read<JournalPart>(Path.Combine(ImportOf(hash), PartName(parts.Count))) is { } part && part.Files.All(file => packed.ContainsKey(file.Path) || IsThere(file))) parts.Add(part);
        return parts;
    }

    /// <summary>The packs that count: those whose file is there. One for each folder of rows at most.</summary>
    internal IEnumerable<RowPack> AllPacks() =>
        Directory.Exists(Packs)
            ? Directory.EnumerateFiles(Packs, "*.json").Order(StringComparer.Ordinal).Select(Read<RowPack>).OfType<RowPack>().Where(pack => IsThere(pack.File))
            : [];

    /// <summary>Puts a pack in place of that of the same folder, at once.</summary>
    internal void Write(RowPack pack) => Save(PackFile(pack), pack);

    /// <summary>The files of a pack stand for themselves again, or for nothing when they are gone.</summary>
    internal void Remove(RowPack pack) => File.Delete(PackFile(pack));

    private string PackFile(RowPack pack) =>
        Path.Combine(Packs, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(FolderOf(pack.File))))[..32] + ".json");

    /// <summary>The folder of a file below the folder of rows.</summary>
    internal static string FolderOf(RowFile file) => file.Path[..file.Path.LastIndexOf('/')];

    // What a packed file's path is read from now.
    private Dictionary<string, RowFile> Packed() =>
        AllPacks().SelectMany(pack => pack.Replaces.Select(file => (file.Path, pack.File))).ToDictionary(one => one.Path, one => one.File, StringComparer.Ordinal);

    /// <summary>Every file that the journal names, packed or not, by import.</summary>
    internal IEnumerable<RowFile> Named()
    {
        var packed = Packed();
        return Hashes().SelectMany(hash => Parts(hash, packed)).SelectMany(part => part.Files);
    }

    /// <summary>Every Parquet file that holds rows which the journal names, by full path.</summary>
    public IReadOnlyList<string> Files()
    {
        var packed = Packed();
        return [.. Hashes().SelectMany(hash => Parts(hash, packed)).SelectMany(part => part.Files).Select(file => Full(packed.GetValueOrDefault(file.Path, file))).Distinct()];
    }

    internal IEnumerable<string> Hashes() =>
        Directory.Exists(Imports) ? Directory.EnumerateDirectories(Imports).Select(Path.GetFileName).Order(StringComparer.Ordinal)! : [];

    /// <summary>Removes what an import that was stopped has left: rows, refused rows and journal that no whole part names.</summary>
    internal void Tidy()
    {
        if (Directory.Exists(Work)) Directory.Delete(Work, recursive: true);
        if (!Directory.Exists(Imports)) return;
        var named = new HashSet<string>(StringComparer.Ordinal);
        var packed = Packed();
        foreach (var hash in Hashes())
        {
            var parts = Parts(hash, packed);
            foreach (var part in parts)
            {
                foreach (var file in part.Files) named.Add(Full(packed.GetValueOrDefault(file.Path, file)));
                named.Add(RefusedFile(hash, part.Part));
                named.Add(Path.Combine(ImportOf(hash), PartName(part.Part)));
            }

            foreach (var file in Directory.EnumerateFiles(ImportOf(hash), "part-*"))
                if (!named.Contains(file)) File.Delete(file);
        }

        foreach (var folder in new[] { Rows, Refused })
        {
            if (!Directory.Exists(folder)) continue;
            foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
                if (!named.Contains(file)) File.Delete(file);
        }
    }

    internal string RefusedFile(string hash, int part) => Path.Combine(Refused, $"{Short(hash)}-{part:00000}.csv");

    /// <summary>Enough of an import's name for the names of its files.</summary>
    internal static string Short(string hash) => hash[..16] + hash[64..];

    internal string Full(RowFile file) => Path.Combine(Rows, file.Path.Replace('/', Path.DirectorySeparatorChar));

    private bool IsThere(RowFile file) => new FileInfo(Full(file)) is { Exists: true } info && info.Length == file.Bytes;

    private static string PartName(int part) => $"part-{part:00000}.json";

    // Either the old file or the new one is there, whole, whatever happens meanwhile.
    private static void Save<T>(string path, T value)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var draft = path + ".draft";
        using (var file = new FileStream(draft, FileMode.Create))
        {
            JsonSerializer.Serialize(file, value, Json);
            file.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }

    private static T? Read<T>(string path)
        where T : class
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), Json) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
