using System.Text.Json;
using Lanewright.Storage;
using Lanewright.Storage.Entries;

namespace Lanewright.Host;

/// <summary>Lists tests, and gives one with all its entries.</summary>
internal static class TestsApi
{
    internal static void Map(WebApplication app, EntryStore store)
    {
        app.MapGet("/api/tests", context => List(context.Request, store, context.RequestAborted).Send(context));
        app.MapGet("/api/tests/{id}/entries", async (string id, CancellationToken stop) => await One(id, store, stop));
    }

    private static async Task<IResult> List(HttpRequest request, EntryStore store, CancellationToken stop)
    {
        var state = (string?)request.Query["state"];
        if (state is not (null or "" or "open" or "all"))
            return Problems.Wrong(400, "state", state, "open or all");
        if (!WholeNumber.Read(request.Query["after"], out var after))
            return Problems.Wrong(400, "after", request.Query["after"], "the whole number that an answer gave as next");
        if (!WholeNumber.Read(request.Query["most"], out var most) || most is < 1 or > TestQuery.MostTests)
            return Problems.Wrong(400, "most", request.Query["most"], $"1 to {TestQuery.MostTests}");

        var query = new TestQuery
        {
            OpenOnly = state == "open",
            Spreader = (string?)request.Query["spreader"] is { Length: > 0 } spreader ? spreader : null,
            Words = request.Query["q"],
            Before = after,
            Most = (int)(most ?? 100),
        };
        var tests = await store.TestsAsync(query, stop);
        var last = await store.LastAsync(stop);
        long? next = tests.Count == query.Most ? tests[^1].Test.LastNumber : null;
        return ApiJson.Answer(
            new TestsAnswer([.. tests.Select(one => new ApiTest(one.Test, one.Results))], next, last.Number),
            HostJson.Default.TestsAnswer);
    }

    /// <summary>Answer about a test that the records do not have.</summary>
    internal static IResult None(string id) => Problems.Answer(404, $"The records have no test '{(id.Length <= 60 ? id : id[..60])}'.");

    private static async Task<IResult> One(string id, EntryStore store, CancellationToken stop)
    {
        var entries = await store.ReadAsync(subject: id, stop: stop);
        if (entries.Count == 0 || await store.TestAsync(id, stop) is not { } test)
            return None(id);
        return ApiJson.Written(json =>
        {
            json.WriteStartObject();
            json.WritePropertyName("test");
            JsonSerializer.Serialize(json, new ApiTest(test.Test, test.Results), HostJson.Default.ApiTest);
            json.WriteStartArray("entries");
            foreach (var entry in entries) EntryWriter.Write(json, entry);
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }
}
