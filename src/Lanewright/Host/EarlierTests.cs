using System.Text.Json;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;

namespace Lanewright.Host;

/// <summary>
/// What a diagnosis holds a test against: earlier drop tests of the spreader, the latest of its sisters, and what was done to it
/// since (docs/formats/diagnosis.md).
/// </summary>
internal static class EarlierTests
{
    private const int MostOwn = 8;
    private const int MostSisters = 24;
    private const int OfEachSister = 2;
    private const int Looked = 200;

    internal static void Map(WebApplication app, EntryStore store) =>
        app.MapGet("/api/earlier", async (string? spreader, string? before, string? not, CancellationToken stop) =>
        {
            if (string.IsNullOrWhiteSpace(spreader) || spreader.Length > 60)
                return Problems.Wrong(400, "spreader", spreader, "the spreader's name, 1 to 60 characters");
            var found = await FindAsync(store, spreader.Trim(), before ?? "", not ?? "", stop);
            return ApiJson.Written(json =>
            {
                json.WriteStartObject();
                found.Write(json);
                json.WriteEndObject();
            });
        });

    /// <summary>The tests, with fields as they stand.</summary>
    /// <param name="store">The records.</param>
    /// <param name="spreader">Name on the door.</param>
    /// <param name="before">Only own tests of an earlier day than this; empty for all.</param>
    /// <param name="not">The test in doubt.</param>
    /// <param name="stop">Ends the wait.</param>
    internal static async Task<Found> FindAsync(EntryStore store, string spreader, string before, string not, CancellationToken stop)
    {
        var item = (await store.TestsAsync(new() { Words = spreader, Most = Looked }, stop))
            .Select(one => one.Test).Where(row => row.SpreaderName == spreader).ToList();
        var register = item.Select(row => row.Spreader).FirstOrDefault(id => id is not null);
        var own = item.Where(row => Counts(row, not) && (before.Length == 0 || string.CompareOrdinal(row.Date, before) < 0)).Take(MostOwn).ToList();
        var sisters = (await store.TestsAsync(new() { Most = Looked }, stop)).Select(one => one.Test)
            .Where(row => row.SpreaderName != spreader && Counts(row, not))
            .GroupBy(row => row.SpreaderName).SelectMany(group => group.Take(OfEachSister)).Take(MostSisters);
        var history = new List<TestFold>();
        foreach (var row in own.Concat(sisters))
            if (await store.FoldAsync(row.Id, stop) is { } fold) history.Add(fold);
        var last = own.Count == 0 ? "" : own.Max(row => row.Date)!;
        var events = register is null ? null
            : (await store.EventsAsync(register, stop)).Where(one => string.CompareOrdinal(one.Date, last) >= 0).Select(one => one.Event).Distinct().ToList();
        return new(history, events);
    }

    // A test that was turned down says nothing of the spreader.
    private static bool Counts(TestRow row, string not) => row.Kind == "drop-test" && row.Id != not && row.Verdict != "reject" && row.Conflicts == 0;

    /// <summary>What was found.</summary>
    /// <param name="History">The tests.</param>
    /// <param name="Events">What was done to the spreader since its last test; null when the register does not know it.</param>
    internal sealed record Found(IReadOnlyList<TestFold> History, IReadOnlyList<string>? Events)
    {
        /// <summary>Writes <c>facts</c> and <c>history</c>.</summary>
        internal void Write(Utf8JsonWriter json)
        {
            json.WriteStartObject("facts");
            if (Events is not null)
            {
                json.WriteStartArray("events");
                foreach (var one in Events) json.WriteStringValue(one);
                json.WriteEndArray();
            }

            json.WriteEndObject();
            json.WriteStartArray("history");
            foreach (var test in History)
            {
                json.WriteStartObject();
                json.WriteString("test", test.Id);
                Fields(json, test);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
    }

    /// <summary>Writes the texts that stand in a test, by path.</summary>
    internal static void Fields(Utf8JsonWriter json, TestFold test)
    {
        json.WriteStartObject("fields");
        foreach (var field in test.Fields)
            if (field.Text is { Length: > 0 } text) json.WriteString(field.Path, text);
        json.WriteEndObject();
    }
}
