using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Lanewright.Core.Exchange;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Browser.Tests;

/// <summary>What a page computes is what the server computes.</summary>
public sealed class SameRulesTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    [Fact]
    public async Task Core_in_the_browser_gives_bit_for_bit_the_answers_of_Core_on_the_server()
    {
        var questions = SheetCorpus.Questions(306, 20261125);
        await using var phone = await Phone.OpenAsync(chrome, server);
        var given = await phone.Page.EvaluateAsync<string[]>("""
            async questions => {
              const { dotnet } = await import('/core/dotnet.js');
              const { getAssemblyExports, getConfig } = await dotnet.create();
              const program = (await getAssemblyExports(getConfig().mainAssemblyName)).Lanewright.Browser.Program;
              return questions.map(question => program.Live(question));
            }
            """, questions);
        var answers = questions.Select(LiveSheet.Answer).ToList();
        Assert.True(answers.Count(answer => answer.Contains("\"keyIn\"", StringComparison.Ordinal)) > 50);
        for (var i = 0; i < questions.Count; i++)
        {
            Assert.Equal(answers[i], given[i]);
            Assert.Equal(SHA256.HashData(Encoding.UTF8.GetBytes(answers[i])), SHA256.HashData(Encoding.UTF8.GetBytes(given[i])));
        }
    }

    [Fact]
    public async Task Entries_fold_on_the_page_as_on_the_server()
    {
        var random = new Random(20261125);
        var cases = Enumerable.Range(0, 500).Select(_ => Entries(random)).ToList();
        await using var phone = await Phone.OpenAsync(chrome, server);
        var folded = await phone.Page.EvaluateAsync<string[]>("""
            async cases => {
              const { foldTest } = await import('/yard/fold.js');
              const ids = list => list.map(one => one.id).sort().join(',');
              return cases.map(text => {
                const fold = foldTest('t', JSON.parse(text).map((entry, i) => ({ entry, state: 'sent', number: i + 1 })));
                const fields = [...fold.fields.values()].sort((a, b) => a.path < b.path ? -1 : 1).map(field =>
                  `${field.path}=${field.conflict ? '!' : field.text}<${field.heads.map(head => head.entry.id + head.text).sort().join(',')}>`);
                const decision = fold.decision ? `${fold.decision.payload.verdict} ${fold.decision.payload.keyed ?? ''}` : '';
                return [...fields, ids(fold.notes), ids(fold.photos), ids(fold.decisions), decision, fold.conflicts, fold.kind, fold.spreader ?? ''].join(';');
              });
            }
            """, cases);
        for (var i = 0; i < cases.Count; i++) Assert.Equal(Shape(Fold(cases[i])), folded[i]);
        Assert.Contains(folded, text => text.Contains("=!", StringComparison.Ordinal));
    }

    // Devices that saw some of each other's entries, or none, in the order the server received them.
    private static string Entries(Random random)
    {
        var all = new JsonArray
        {
            Entry(random, "test.begin", null, new JsonObject
            {
                ["kind"] = "verification", ["spreader"] = random.Next(2) == 0 ? "sp-1" : null,
                ["fields"] = new JsonObject { ["title"] = "one", ["runs[0].pulses"] = "1" },
            }),
        };
        for (var i = 0; i < random.Next(1, 14); i++)
        {
            var (kind, payload) = random.Next(8) switch
            {
                0 => ("test.note", new JsonObject { ["text"] = "a note" }),
                1 => ("test.photo", new JsonObject { ["slot"] = "runs[0].ticket", ["name"] = "p", ["mime"] = "image/png", ["bytes"] = 1, ["sha256"] = new string('a', 64) }),
                2 => ("test.decision", new JsonObject { ["verdict"] = random.Next(2) == 0 ? "adopt" : "repeat", ["keyed"] = random.Next(3) == 0 ? null : "12.6", ["why"] = "so" }),
                _ => ("test.field", new JsonObject { ["path"] = random.Next(3) switch { 0 => "title", 1 => "runs[0].pulses", _ => "runs[1].time" }, ["text"] = $"{random.Next(3)}" }),
            };
            var before = all.Select(one => one!["id"]!.GetValue<string>()).ToList();
            var parent = random.Next(3) == 0 ? null : before[random.Next(before.Count)];
            if (random.Next(4) == 0) payload["over"] = new JsonArray([.. before.Where(_ => random.Next(3) == 0).Select(id => JsonValue.Create(id))]);
            all.Add(Entry(random, kind, parent, payload));
        }

        return all.ToJsonString();
    }

    private static JsonObject Entry(Random random, string kind, string? parent, JsonObject payload)
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x70);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new()
        {
            ["id"] = new Guid(bytes, bigEndian: true).ToString("D", CultureInfo.InvariantCulture), ["kind"] = kind, ["subject"] = "t", ["person"] = "M.O.",
            ["device"] = "d", ["seq"] = 0, ["at"] = "2026-11-25T12:00:00.000Z", ["zone"] = null, ["parent"] = parent, ["why"] = null, ["payload"] = payload,
        };
    }

    private static TestFold Fold(string entries)
    {
        using var json = JsonDocument.Parse(entries);
        return TestFold.Of([.. json.RootElement.EnumerateArray().Select((one, i) => EntryStore.Chained(
            EntryReader.Read(one).Draft!, i + 1, DateTimeOffset.UnixEpoch, EntryHash.First, EntryHash.First))]);
    }

    private static string Shape(TestFold fold)
    {
        static string Ids(IReadOnlyList<Entry> list) => string.Join(',', list.Select(one => one.Id).Order(StringComparer.Ordinal));
        var fields = fold.Fields.Select(field =>
            $"{field.Path}={(field.IsConflict ? "!" : field.Text)}<{string.Join(',', field.Heads.Select(head => head.Entry.Id + head.Text).Order(StringComparer.Ordinal))}>");
        var decision = "";
        if (fold.Decision is { } one)
        {
            using var payload = JsonDocument.Parse(one.Payload);
            decision = $"{payload.RootElement.GetProperty("verdict").GetString()} {payload.RootElement.GetProperty("keyed").GetString()}";
        }

        return string.Join(';', [.. fields, Ids(fold.Notes), Ids(fold.Photos), Ids(fold.Decisions), decision, $"{fold.Conflicts}", fold.Kind, fold.Spreader]);
    }
}
