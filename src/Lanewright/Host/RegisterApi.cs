using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Host;

/// <summary>The register: spreaders, scales, materials, people, depots and the yard's rules, as they are now.</summary>
internal static class RegisterApi
{
    // The lists that a page always finds, and the kinds in them.
    private static readonly (string List, string Kind)[] Lists =
    [
        ("spreaders", "spreader"), ("scales", "scale"), ("materials", "material"), ("people", "person"), ("depots", "depot"),
        ("rules", "rules"),
    ];

    internal static void Map(WebApplication app, EntryStore store)
    {
        app.MapGet("/api/register", async (CancellationToken stop) => Answer(await store.RegisterAsync(stop)));
        app.MapGet("/api/spreaders/{id}/events", async (string id, CancellationToken stop) =>
        {
            var events = await store.EventsAsync(id, stop);
            return ApiJson.Written(json =>
            {
                json.WriteStartObject();
                json.WriteStartArray("events");
                foreach (var one in events)
                {
                    json.WriteStartObject();
                    json.WriteString("entry", one.EntryId);
                    json.WriteString("event", one.Event);
                    json.WriteString("note", one.Note);
                    json.WriteString("date", one.Date);
                    json.WriteString("person", one.Person);
                    json.WriteString("at", Lanewright.Storage.Entries.Moments.Write(one.At));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            });
        });
    }

    private static IResult Answer(IReadOnlyList<RegisterItem> items) => ApiJson.Written(json =>
    {
        json.WriteStartObject();
        var others = items.Select(item => item.Kind).Distinct().Where(kind => !Lists.Any(list => list.Kind == kind));
        foreach (var (list, kind) in Lists.Concat(others.Select(kind => (kind, kind))))
        {
            json.WriteStartArray(list);
            foreach (var item in items.Where(item => item.Kind == kind))
            {
                json.WriteStartObject();
                json.WriteString("id", item.Id);
                json.WriteString("entry", item.EntryId);
                json.WriteNumber("number", item.Number);
                json.WriteBoolean("retired", item.Retired);
                json.WriteStartArray("others");
                foreach (var other in item.Others.Split(' ', StringSplitOptions.RemoveEmptyEntries)) json.WriteStringValue(other);
                json.WriteEndArray();
                json.WritePropertyName("record");
                json.WriteRawValue(item.Payload, skipInputValidation: true);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    });
}
