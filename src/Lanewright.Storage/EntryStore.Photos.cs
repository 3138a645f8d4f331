using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

/// <summary>What became of a photo that was sent.</summary>
public enum PhotoStatus
{
    /// <summary>Kept now.</summary>
    Accepted,

    /// <summary>It was there already.</summary>
    Have,

    /// <summary>The records have no photo entry of that id; send the entry first.</summary>
    NoEntry,

    /// <summary>The bytes are not those that the entry promised.</summary>
    OtherBytes,
}

public sealed partial class EntryStore
{
    /// <summary>Most bytes of one photo.</summary>
    public const int MostPhotoBytes = 8 * 1024 * 1024;

    /// <summary>Keeps the bytes of a photo, once, when they are the ones its entry promised.</summary>
    public Task<PhotoStatus> PutPhotoAsync(string entryId, byte[] bytes, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(entryId);
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bytes.Length, MostPhotoBytes, nameof(bytes));
        var hash = PhotoHash.Of(bytes);
        return WriteAsync(async context =>
        {
            var entry = await context.Entries.FirstOrDefaultAsync(
                one => one.Id == entryId && one.Kind == EntryKinds.TestPhoto, stop);
            if (entry is null) return PhotoStatus.NoEntry;
            if (Payload.Text(entry, "sha256") != hash) return PhotoStatus.OtherBytes;
            if (await context.Photos.AnyAsync(photo => photo.EntryId == entryId, stop)) return PhotoStatus.Have;
            context.Add(new Photo
            {
                EntryId = entryId,
                Sha256 = hash,
                Mime = Payload.Text(entry, "mime") is { Length: > 0 and <= 100 } mime ? mime : "application/octet-stream",
                Received = Now(),
                Bytes = bytes,
            });
            await context.SaveChangesAsync(stop);
            return PhotoStatus.Accepted;
        }, stop);
    }

    /// <summary>A photo; null when its bytes have not come yet.</summary>
    public Task<Photo?> PhotoAsync(string entryId, CancellationToken stop = default) =>
        WithAsync(context => context.Photos.FirstOrDefaultAsync(photo => photo.EntryId == entryId, stop));

    /// <summary>Ids of the entries whose photos are here, in order.</summary>
    public Task<IReadOnlyList<string>> PhotoIdsAsync(CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<string>>(async context =>
            await context.Photos.Select(photo => photo.EntryId).OrderBy(id => id).ToListAsync(stop));
}
