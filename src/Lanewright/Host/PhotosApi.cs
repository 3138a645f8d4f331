using Lanewright.Storage;
using Lanewright.Storage.Entries;

namespace Lanewright.Host;

/// <summary>Takes in the bytes of photos, once each, and gives them back.</summary>
internal static class PhotosApi
{
    private static readonly string[] Shown = ["image/jpeg", "image/png", "image/webp", "image/heic", "image/avif", "image/gif"];

    internal static void Map(WebApplication app, EntryStore store)
    {
        app.MapPut("/api/photos/{id}", context => Put(context, store).Send(context));
        app.MapGet("/api/photos/{id}", context => Get(context, store).Send(context));
    }

    private static async Task<IResult> Put(HttpContext context, EntryStore store)
    {
        var id = (string)context.Request.RouteValues["id"]!;
        if (await Refusal(context, store, id) is { } refusal) return refusal;
        var bytes = await ApiBody.BytesAsync(context.Request, EntryStore.MostPhotoBytes);
        return await store.PutPhotoAsync(id, bytes, context.RequestAborted) switch
        {
            PhotoStatus.Accepted => ApiJson.Answer(new PhotoAnswer(id, "accepted"), HostJson.Default.PhotoAnswer),
            PhotoStatus.Have => ApiJson.Answer(new PhotoAnswer(id, "have"), HostJson.Default.PhotoAnswer),
            PhotoStatus.NoEntry => Problems.Answer(404, "There is no photo entry of this id; send the entry first."),
            _ => Problems.Wrong(422, "body", $"{bytes.Length} B", "the bytes whose SHA-256 the entry holds"),
        };
    }

    // Where people have accounts, a photo comes from the person whose entry it belongs to.
    private static async Task<IResult?> Refusal(HttpContext context, EntryStore store, string id)
    {
        if (Actors.Mode(context) is not AccountsMode.Accounts) return null;
        var actor = Actors.Of(context);
        if (actor is null || !Rights.Allows(actor.Role, EntryKinds.TestPhoto))
            return Problems.Answer(403, "This role sends no photos.");
        var entry = await store.FindAsync(id, context.RequestAborted);
        return entry is null || entry.Person == actor.Person
            ? null
            : Problems.Answer(403, $"The photo was made by {entry.Person}.", $"Sign in as {entry.Person} to send it.");
    }

    private static async Task<IResult> Get(HttpContext context, EntryStore store)
    {
        var id = (string)context.Request.RouteValues["id"]!;
        if (await store.PhotoAsync(id, context.RequestAborted) is not { } photo)
            return Problems.Answer(404, "The photo has not come yet, or there is none of this id.");
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(
            photo.Bytes, Shown.Contains(photo.Mime) ? photo.Mime : "application/octet-stream",
            entityTag: new($"\"{photo.Sha256}\""));
    }
}
