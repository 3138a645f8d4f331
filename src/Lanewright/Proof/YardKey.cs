using System.Security.Cryptography;
using Lanewright.Network;

namespace Lanewright.Proof;

/// <summary>
/// The yard's own key for sealing what leaves the records: ECDSA on the curve P-256 (FIPS 186-5), by the framework. It is made when it
/// is first needed and lies beside the records, readable by its owner only.
/// </summary>
internal sealed class YardKey : IDisposable
{
    private const string FileName = "yard-seal.pem";

    private readonly ECDsa key;

    private YardKey(ECDsa key)
    {
        this.key = key;
        Public = Convert.ToHexStringLower(key.ExportSubjectPublicKeyInfo());
    }

    /// <summary>The public key: its SubjectPublicKeyInfo (RFC 5480) in lower-case hexadecimal digits.</summary>
    internal string Public { get; }

    /// <summary>By which people compare it.</summary>
    internal string Fingerprint => FingerprintOf(Public);

    /// <summary>The public key as a file for others.</summary>
    internal string PublicPem => key.ExportSubjectPublicKeyInfoPem() + "\n";

    /// <summary>The folder of the keys of records in a folder.</summary>
    internal static string FolderOf(string dataFolder) => Path.Combine(dataFolder, "keys");

    /// <summary>Opens the key in a folder of keys, or makes it.</summary>
    internal static YardKey Open(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (Find(folder) is { } known) return known;
        OwnerFiles.Folder(folder);
        using var made = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        try
        {
            OwnerFiles.Write(path, made.ExportPkcs8PrivateKeyPem() + "\n", overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another program made it in the same moment: that one holds.
        }

        return Find(folder)!;
    }

    /// <summary>The key in a folder of keys; null when none was made yet.</summary>
    internal static YardKey? Find(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path)) return null;
        var key = ECDsa.Create();
        key.ImportFromPem(File.ReadAllText(path));
        return new(key);
    }

    /// <summary>The SHA-256 of a public key, in eight groups.</summary>
    internal static string FingerprintOf(string publicKey)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(Convert.FromHexString(publicKey)));
        return string.Join(' ', hash.Chunk(8).Select(group => new string(group)));
    }

    /// <summary>Signs a hash: 64 bytes, r and s.</summary>
    internal byte[] Sign(byte[] hash) => key.SignHash(hash, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);

    /// <summary>Whether a signature of a hash is by the holder of a public key.</summary>
    internal static bool Verify(string publicKey, byte[] hash, byte[] signature)
    {
        try
        {
            var bytes = Convert.FromHexString(publicKey);
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(bytes, out var read);
            // One key has one text: what reads as the same key but is written otherwise was changed.
            return read == bytes.Length && key.ExportSubjectPublicKeyInfo().AsSpan().SequenceEqual(bytes)
                && key.VerifyHash(hash, signature, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    public void Dispose() => key.Dispose();
}
