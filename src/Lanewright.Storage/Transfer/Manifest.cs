using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lanewright.Storage.Transfer;

/// <summary>What a backup or an export holds, written into it as manifest.json.</summary>
/// <param name="Format">lanewright-backup/1 or lanewright-export/1.</param>
/// <param name="Entries">How many entries.</param>
/// <param name="LastHash">Hash of the last entry.</param>
/// <param name="Files">The other files, in order.</param>
internal sealed record Manifest(string Format, long Entries, string LastHash, IReadOnlyList<ManifestFile> Files)
{
    internal const string FileName = "manifest.json";
    internal const string Backup = "lanewright-backup/1";
    internal const string Export = "lanewright-export/1";

    internal byte[] ToJson() => JsonSerializer.SerializeToUtf8Bytes(this, ManifestJson.Default.Manifest);

    internal static Manifest? Read(Stream json)
    {
        try
        {
            var manifest = JsonSerializer.Deserialize(json, ManifestJson.Default.Manifest);
            return manifest is { Format: not null, LastHash: not null, Files: not null }
                && manifest.Files.All(file => file is { Name: not null, Sha256: not null }) ? manifest : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>One file of a backup or an export.</summary>
internal sealed record ManifestFile(string Name, long Bytes, string Sha256);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(Manifest))]
internal sealed partial class ManifestJson : JsonSerializerContext;
