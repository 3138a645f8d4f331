using System.Security.Cryptography;
using Lanewright.Network;
using Lanewright.Storage.Database;

namespace Lanewright.Proof;

/// <summary>
/// The yard's own key for sealing what leaves the records: ECDSA on the curve P-256 (FIPS 186-5), by the framework. It is made when it
/// is first needed and lies beside the records, readable by its owner only.
/// </summary>
internal sealed class YardKey : IDisposable
{
    private const string FileName = "yard-seal.pem";
    private const int MostBytes = 65536;

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

    /// <summary>The private key as a file, for the yard alone.</summary>
    internal string PrivatePem => key.ExportPkcs8PrivateKeyPem() + "\n";

    /// <summary>The file of the key in a folder of keys.</summary>
    internal static string PathIn(string folder) => Path.Combine(folder, FileName);

    /// <summary>The folder of the keys of records in a folder.</summary>
    internal static string FolderOf(string dataFolder) => Path.Combine(dataFolder, "keys");

    /// <summary>Opens the key in a folder of keys, or makes it.</summary>
    internal static YardKey Open(string folder)
    {
        var path = PathIn(folder);
        if (Find(folder) is { } known) return known;
        using var made = new YardKey(ECDsa.Create(ECCurve.NamedCurves.nistP256));
        try
        {
            OwnerFiles.Folder(folder);
            OwnerFiles.Write(path, made.PrivatePem, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another program made it in the same moment: that one holds.
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new RecordsException(RecordsFault.Denied, $"{folder} could not be written: {wrong.Message}", wrong);
        }

        return Find(folder)!;
    }

    /// <summary>The key in a folder of keys; null when none was made yet.</summary>
    /// <exception cref="RecordsException">What is there is no key.</exception>
    internal static YardKey? Find(string folder)
    {
        var path = PathIn(folder);
        return File.Exists(path) ? Read(path) : null;
    }

    /// <summary>The private key in a file.</summary>
    /// <exception cref="RecordsException">The file cannot be read, or holds no private key on P-256.</exception>
    internal static YardKey Read(string path)
    {
        var key = ECDsa.Create();
        try
        {
            // No key is that long, whatever else the file may be.
            if (new FileInfo(path).Length > MostBytes) throw new CryptographicException();
            key.ImportFromPem(File.ReadAllText(path));
            // A public key alone, or one on another curve, seals nothing of ours.
            if (key.ExportParameters(includePrivateParameters: true).Curve.Oid.Value != ECCurve.NamedCurves.nistP256.Oid.Value) throw new CryptographicException();
            return new(key);
        }
        catch (Exception wrong) when (wrong is CryptographicException or ArgumentException)
        {
            key.Dispose();
            throw new RecordsException(RecordsFault.Damaged, $"{path} holds no key of a yard, or is damaged. Nothing was changed. Bring back its copy: lanewright yard-key --from FILE --replace", wrong);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            key.Dispose();
            throw new RecordsException(RecordsFault.Denied, $"{path} cannot be read: {wrong.Message}", wrong);
        }
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
