using System.Text.Json;
using Lanewright.Core.Register;
using Lanewright.Storage;
using Lanewright.Storage.Entries;

namespace Lanewright.Host;

/// <summary>Takes in entries; shows what could not be taken in.</summary>
internal static class EntriesApi
{
    internal static void Map(WebApplication app, EntryStore store)
    {
        app.MapPost("/api/entries", request => Post(request.Request, store, request.RequestAborted).Send(request));
        app.MapGet("/api/entries", context => Read(context, store).Send(context));
        app.MapGet("/api/quarantine", async (CancellationToken stop) =>
            ApiJson.Answer(
                new QuarantineAnswer([.. (await store.QuarantineAsync(stop)).Select(one => one with { Reason = Office.OfficeText.Say(AppendWords.ReasonOf(one)) })]),
                HostJson.Default.QuarantineAnswer));
    }

    private static async Task<IResult> Read(HttpContext context, EntryStore store)
    {
        // Who typed what and when, of everybody: as the audit page, for technicians and supervisors.
        if (Actors.Mode(context) is AccountsMode.Accounts && Actors.Of(context) is not { Role: >= PersonRole.Technician })
            return Problems.Answer(403, $"This needs the role {Office.OfficeText.Role(Rights.Word(PersonRole.Technician))}.");
        if (!WholeNumber.Read(context.Request.Query["after"], out var after) || after is < 0)
            return Problems.Wrong(400, "after", context.Request.Query["after"], "the number of the last entry that is known, from 0");
        if (!WholeNumber.Read(context.Request.Query["most"], out var most) || most is < 1 or > EntryStore.MostEntries)
            return Problems.Wrong(400, "most", context.Request.Query["most"], $"1 to {EntryStore.MostEntries}");
        var entries = await store.ReadAsync(after ?? 0, most: (int)(most ?? EntryStore.MostEntries), stop: context.RequestAborted);
        var last = await store.LastAsync(context.RequestAborted);
        return ApiJson.Written(json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("entries");
            foreach (var entry in entries) EntryWriter.Write(json, entry);
            json.WriteEndArray();
            json.WriteNumber("last", last.Number);
            json.WriteEndObject();
        });
    }

    private static async Task<IResult> Post(HttpRequest request, EntryStore store, CancellationToken stop)
    {
        using var body = await ApiBody.JsonAsync(request);
        if (body is null)
            return Problems.Wrong(400, "body", null, "JSON in UTF-8, {\"entries\": [...]}");
        if (body.RootElement.ValueKind is not JsonValueKind.Object
            || !body.RootElement.TryGetProperty("entries", out var entries) || entries.ValueKind is not JsonValueKind.Array)
            return Problems.Wrong(400, "entries", null, "a list of entries");
        var count = entries.GetArrayLength();
        if (count > EntryStore.MostEntries)
        {
            return Problems.Wrong(
                413, "entries", count.ToString(System.Globalization.CultureInfo.InvariantCulture), $"at most {EntryStore.MostEntries} in one sending");
        }

        var sent = entries.EnumerateArray().Select(EntryReader.Read).ToList();
        var turnedAway = await TurnedAway.OfAsync(request.HttpContext, store, sent, stop);
        var answer = await store.AppendAsync([.. sent.Where((_, i) => turnedAway[i] is null)], stop);
        var kept = new Queue<AppendResult>(answer.Results);
        var results = turnedAway.Select(away => away ?? Result(kept.Dequeue()));
        return ApiJson.Answer(new PostAnswer([.. results], answer.Last, Server.Version), HostJson.Default.PostAnswer);
    }

    private static PostResult Result(AppendResult result) =>
        new(result.Id, AppendWords.Of(result.Status), result.Number, result.Reason is { } reason ? Office.OfficeText.Say(reason) : null);

    /// <summary>Sends the answer of a handler that is not described to the framework.</summary>
    internal static async Task Send(this Task<IResult> answer, HttpContext context) =>
        await (await answer).ExecuteAsync(context);
}
