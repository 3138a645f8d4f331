using Lanewright.Storage.Database;

namespace Lanewright.Storage.Transfer;

/// <summary>
/// Held while a folder's records are being served or replaced, so that nobody replaces them under a running server. The
/// system lets go of it when the program ends, however it ends.
/// </summary>
public sealed class ServingLock : IDisposable
{
    private readonly FileStream file;

    private ServingLock(FileStream file) => this.file = file;

    /// <summary>Takes the lock of a folder; null for PostgreSQL, where the server guards itself.</summary>
    /// <exception cref="RecordsException">Another program holds it.</exception>
    public static ServingLock? Take(RecordsPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        if (place.DataFolder is not { } folder) return null;
        try
        {
            Directory.CreateDirectory(folder);
            return new(new FileStream(Path.Combine(folder, "in-use.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (UnauthorizedAccessException wrong)
        {
            throw Faults.Denied(place.Name, wrong);
        }
        catch (IOException wrong) when (Directory.Exists(folder))
        {
            throw new RecordsException(
                RecordsFault.Busy,
                $"Lanewright is already running with the records in {folder}. Stop it first (Ctrl+C in its window). Nothing was"
                + $" changed.", wrong);
        }
        catch (IOException wrong)
        {
            throw Faults.Denied(place.Name, wrong);
        }
    }

    /// <summary>Lets go.</summary>
    public void Dispose() => file.Dispose();
}
