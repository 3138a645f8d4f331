using System.Text;

namespace Lanewright.Network;

/// <summary>Files that only the owner may read: keys. On Windows the folder's own rights hold.</summary>
internal static class OwnerFiles
{
    private const UnixFileMode OwnerFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>A folder for the owner alone, made or narrowed.</summary>
    internal static DirectoryInfo Folder(string path)
    {
        if (OperatingSystem.IsWindows()) return Directory.CreateDirectory(path);
        var folder = Directory.CreateDirectory(path, OwnerFolder);
        File.SetUnixFileMode(path, OwnerFolder);
        return folder;
    }

    /// <summary>Writes a file for the owner alone: all of it, or the old one stays.</summary>
    /// <exception cref="IOException">A file is there already and must not be replaced.</exception>
    internal static void Write(string path, string text, bool overwrite = true)
    {
        var part = $"{path}.{Guid.NewGuid():N}.part";
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerFile;
        using (var file = new FileStream(part, options))
        {
            file.Write(Encoding.UTF8.GetBytes(text));
            file.Flush(flushToDisk: true);
        }

        try
        {
            File.Move(part, path, overwrite);
        }
        finally
        {
            File.Delete(part);
        }
    }
}
