using System.IO.Compression;
using System.Security.Cryptography;
using Lanewright.Core.Text;
using Lanewright.Storage.Database;

namespace Lanewright.Storage.Transfer;

/// <summary>A zip file whose manifest holds the hash of every other file in it.</summary>
internal sealed class Package : IDisposable
{
    // Zip files carry times; ours carry one and the same, so that the same records give the same bytes.
    private static readonly DateTimeOffset ZipTime = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly ZipArchive zip;

    private readonly string path;

    private Package(ZipArchive zip, Manifest manifest, string path) => (this.zip, Manifest, this.path) = (zip, manifest, path);

    internal Manifest Manifest { get; }

    /// <summary>
    /// Writes a package: beside its place first, proved by reading it back, and only then under its name. Never overwrites.
    /// </summary>
    /// <param name="to">The file to write.</param>
    /// <param name="fill">Puts the files in.</param>
    /// <param name="finish">Does something to the finished file before it is proved; null for nothing.</param>
    /// <param name="stop">Ends the work.</param>
    internal static async Task WriteAsync(string to, Func<PackageWriter, Task<Manifest>> fill, Action<string>? finish, CancellationToken stop)
    {
        RefuseExisting(to);
        var part = $"{to}.{Guid.NewGuid():N}.part";
        try
        {
            await using (var file = new FileStream(part, FileMode.CreateNew, FileAccess.ReadWrite))
            {
                using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
                {
                    var writer = new PackageWriter(zip, ZipTime, stop);
                    var manifest = await fill(writer);
                    await writer.AddAsync(Manifest.FileName, new MemoryStream(manifest.ToJson()));
                }

                file.Flush(flushToDisk: true);
            }

            finish?.Invoke(part);
            using (Open(part, null)) RefuseExisting(to);
            File.Move(part, to, overwrite: false);
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>Opens a package after proving that every file in it is the one that was put in.</summary>
    /// <exception cref="RecordsException">It is missing, damaged, or not a package.</exception>
    internal static Package Open(string path, string? format, long? most = null)
    {
        ZipArchive? zip = null;
        try
        {
            zip = new ZipArchive(new FileStream(path, FileMode.Open, FileAccess.Read), ZipArchiveMode.Read);
            using var json = zip.GetEntry(Manifest.FileName)?.Open();
            var manifest = json is null ? null : Manifest.Read(json);
            if (manifest is null) throw Damaged(path, "its list of contents is missing or cannot be read");
            if (format is not null && manifest.Format != format)
                throw new RecordsException(RecordsFault.Damaged, $"{path} is {manifest.Format}; {format} was expected. Nothing was changed.");
            if (most is { } limit && manifest.Files.Sum(file => (decimal)Math.Max(0, file.Bytes)) > limit)
                throw new RecordsException(RecordsFault.Denied, $"{path} unpacks to more than {most} bytes and was not looked at.");
            foreach (var file in manifest.Files) Prove(path, zip, file);
            return new(zip, manifest, path);
        }
        catch (Exception wrong)
        {
            zip?.Dispose();
            throw wrong switch
            {
                InvalidDataException => Damaged(path, wrong.Message, wrong),
                FileNotFoundException or DirectoryNotFoundException => new RecordsException(
                    RecordsFault.Denied, $"{path} was not found. Nothing was changed.", wrong),
                UnauthorizedAccessException => new RecordsException(RecordsFault.Denied, $"{path} may not be read by this user.", wrong),
                RecordsException => wrong,
                _ => Damaged(path, wrong.Message, wrong),
            };
        }
    }

    /// <summary>A file of the package; it has been proved.</summary>
    internal Stream Read(string name) =>
        zip.GetEntry(name)?.Open() ?? throw Damaged(path, $"{name} is missing from it");

    internal static RecordsException Damaged(string path, Phrase what, Exception? wrong = null) => new(
        RecordsFault.Damaged, $"{path} is damaged and was not used: {what}. Nothing was changed. Take another backup.", wrong);

    public void Dispose() => zip.Dispose();

    private static void Prove(string path, ZipArchive zip, ManifestFile file)
    {
        if (zip.GetEntry(file.Name) is not { } entry) throw Damaged(path, $"{file.Name} is missing from it");
        // The stated length bounds what is unpacked, so a zip made to swell does no harm.
        if (entry.Length != file.Bytes) throw Damaged(path, $"{file.Name} has another length than it should");
        using var stream = entry.Open();
        if (Convert.ToHexStringLower(SHA256.HashData(stream)) != file.Sha256)
            throw Damaged(path, $"{file.Name} is not what was put in (its hash differs)");
    }

    private static void RefuseExisting(string to)
    {
        if (File.Exists(to)) throw new RecordsException(RecordsFault.Denied, $"{to} is there already and is not overwritten. Choose another name.");
        if (Path.GetDirectoryName(Path.GetFullPath(to)) is { } folder && !Directory.Exists(folder))
            throw new RecordsException(RecordsFault.Denied, $"The folder {folder} is not there. Make it first, or choose another.");
    }
}

/// <summary>Puts files into a package and keeps their hashes.</summary>
internal sealed class PackageWriter(ZipArchive zip, DateTimeOffset time, CancellationToken stop)
{
    private readonly List<ManifestFile> files = [];

    internal IReadOnlyList<ManifestFile> Files => files;

    internal async Task AddAsync(string name, Stream content)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = time;
        long length = 0;
        await using (content)
        await using (var target = entry.Open())
        {
            var buffer = new byte[81920];
            for (var read = 1; read > 0;)
            {
                read = await content.ReadAsync(buffer, stop);
                hash.AppendData(buffer, 0, read);
                await target.WriteAsync(buffer.AsMemory(0, read), stop);
                length += read;
            }
        }

        files.Add(new(name, length, Convert.ToHexStringLower(hash.GetHashAndReset())));
    }
}
