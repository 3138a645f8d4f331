using System.Security.Cryptography;
using Lanewright.Network;
using Lanewright.Storage.Database;

namespace Lanewright.Proof;

/// <summary>
/// The yard's private key as a file of its own, for keeping beside backups and for bringing back. It is never part of a backup or an
/// export: those are handed on, and whoever has the key can seal in the yard's name.
/// </summary>
internal static class KeyCopies
{
    /// <summary>Whether <see cref="Save"/> can begin.</summary>
    /// <exception cref="RecordsException">There is no key, or the file is there already.</exception>
    internal static void Ready(string folder, string to)
    {
        using var key = Existing(folder);
        if (File.Exists(to)) throw new RecordsException(RecordsFault.Denied, $"{to} is there already and is not overwritten. Choose another name.");
    }

    /// <summary>Copies the key of a folder into a new file that only its owner may read.</summary>
    /// <returns>The fingerprint of the key.</returns>
    /// <exception cref="RecordsException">There is no key, or the file is there already or cannot be written.</exception>
    internal static string Save(string folder, string to)
    {
        Ready(folder, to);
        using var key = Existing(folder);
        Guarded(to, () => OwnerFiles.Write(to, key.PrivatePem, overwrite: false));
        return key.Fingerprint;
    }

    /// <summary>What <see cref="Bring"/> would find wrong, without doing it.</summary>
    /// <returns>The fingerprint of the key in the file.</returns>
    /// <exception cref="RecordsException">The file holds no key of a yard, or another key is in the folder and is not to be replaced.</exception>
    internal static string Look(string from, string folder, bool replace)
    {
        if (!File.Exists(from)) throw new RecordsException(RecordsFault.Denied, $"{from} was not found. Nothing was changed.");
        using var key = YardKey.Read(from);
        using var old = Old(folder, replace);
        if (old is not null && old.Public != key.Public && !replace)
        {
            throw new RecordsException(
                RecordsFault.Denied,
                $"Another key of the yard is in {folder} already ({old.Fingerprint}). Add --replace to use the one from {from} instead; the old one is set aside, not deleted. Nothing was changed.");
        }

        return key.Fingerprint;
    }

    /// <summary>Puts the key of a file into a folder; another key that is there is set aside.</summary>
    /// <returns>The file of the old key; null when there was none, or the same.</returns>
    /// <exception cref="RecordsException">As <see cref="Look"/>, or the folder cannot be written.</exception>
    internal static string? Bring(string from, string folder, bool replace)
    {
        Look(from, folder, replace);
        using var key = YardKey.Read(from);
        using var old = Old(folder, replace);
        if (old?.Public == key.Public) return null;
        var path = YardKey.PathIn(folder);
        string? aside = null;
        Guarded(folder, () =>
        {
            OwnerFiles.Folder(folder);
            if (File.Exists(path))
            {
                var name = old?.Fingerprint.Split(' ')[0] ?? $"damaged-{Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)))[..8]}";
                aside = Path.Combine(folder, $"set-aside-{name}.pem");
                File.Copy(path, aside, overwrite: true);
            }

            // At no moment is the folder without a key: the next seal would make a new one.
            OwnerFiles.Write(path, key.PrivatePem, overwrite: aside is not null);
        });
        return aside;
    }

    // What is damaged stands in the way only where it is not to be replaced.
    private static YardKey? Old(string folder, bool replace)
    {
        try
        {
            return YardKey.Find(folder);
        }
        catch (RecordsException wrong) when (replace && wrong.Fault is RecordsFault.Damaged)
        {
            return null;
        }
    }

    private static YardKey Existing(string folder) => YardKey.Find(folder)
        ?? throw new RecordsException(RecordsFault.Denied, $"There is no key of the yard in {folder} yet: the first seal makes it, or lanewright yard-key.");

    private static void Guarded(string place, Action work)
    {
        try
        {
            work();
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new RecordsException(RecordsFault.Denied, $"{place} could not be written: {wrong.Message}", wrong);
        }
    }
}
