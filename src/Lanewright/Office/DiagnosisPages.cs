using System.Text;
using System.Text.Json;
using Lanewright.Core.Diagnosis;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>
/// What may be wrong with a truck, as a supervisor sees it on another screen than the technician: the same diagnosis, with room
/// for an answer and for what it turned out to be; and how often each cause turned out to be it.
/// </summary>
internal sealed class DiagnosisPages(EntryStore store, OfficeWriter writer)
{
    private const int LongestNote = 2000;

    internal void Map(WebApplication app)
    {
        app.MapGet("/office/tests/{id}/diagnosis", (string id, CancellationToken stop) => Show(id, null, null, stop));
        app.MapPost("/office/tests/{id}/diagnosis", (HttpContext context, string id) => Note(context, id));
        app.MapGet("/office/causes", (CancellationToken stop) => Counts(stop));
    }

    private async Task<IResult> Show(string id, OfficePost? post, string? wrong, CancellationToken stop)
    {
        if (await store.TestAsync(id, stop) is not { } listed || await store.FoldAsync(id, stop) is not { } fold)
            return Problems.Answer(404, "There is no test at this address.");
        using var answer = JsonDocument.Parse(LiveDiagnosis.Answer(await QuestionAsync(fold, listed.Test.SpreaderName, listed.Test.Date, stop)));
        return new RazorComponentResult<DiagnosisPage>(new Dictionary<string, object?>
        {
            ["Row"] = listed.Test,
            ["Fold"] = fold,
            ["Answer"] = answer.RootElement.Clone(),
            ["Typed"] = post?.Text("text") ?? "",
            ["Cause"] = post?.Text("cause") ?? "",
            ["Entry"] = post?.Text("entry") is { Length: > 0 } entry ? entry : OfficeChange.NewId(),
            ["Wrong"] = wrong ?? post?.Notice,
        });
    }

    private async Task<IResult> Note(HttpContext context, string id)
    {
        var stop = context.RequestAborted;
        if (await store.TestAsync(id, stop) is null) return Problems.Answer(404, "There is no test at this address.");
        return await OfficePost.TakeAsync(
            context, EntryKinds.TestNote, post => Show(id, post, null, stop),
            async (post, actor) =>
            {
                var cause = CauseNotes.Name(post.Text("cause"));
                var text = post.Text("text");
                if (text.Length == 0 && cause is not null) text = CauseNotes.Text(cause);
                if (text.Length is 0 or > LongestNote)
                {
                    context.Response.StatusCode = 422;
                    return await Show(id, post, OfficeText.Say($"The answer has {text.Length} characters; expected 1 to {LongestNote}. Type it, or choose what it turned out to be."), stop);
                }

                if (await store.FindAsync(post.Text("entry"), stop) is null)
                {
                    var payload = cause is null
                        ? JsonSerializer.Serialize(new { text })
                        : JsonSerializer.Serialize(new { text, cause = post.Text("cause") });
                    await writer.WriteAsync(actor, [new(EntryKinds.TestNote, id, payload) { Id = post.Text("entry") }], stop);
                }

                return Results.LocalRedirect($"/office/tests/{Uri.EscapeDataString(id)}/diagnosis#notes");
            });
    }

    private async Task<IResult> Counts(CancellationToken stop)
    {
        var found = (await store.ReadAsync(kinds: [EntryKinds.TestNote], stop: stop))
            .Select(entry => (entry.Subject, Cause: CauseNotes.Of(entry))).Where(one => one.Cause is not null)
            // What was said last of a test holds.
            .GroupBy(one => one.Subject).Select(group => group.Last())
            .GroupBy(one => one.Cause!).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => new CauseCount(CauseNotes.Name(group.Key) ?? group.Key, [.. group.Select(one => one.Subject)])).ToList();
        return new RazorComponentResult<CausesPage>(new Dictionary<string, object?> { ["Counts"] = found });
    }

    private async Task<string> QuestionAsync(TestFold fold, string spreader, string date, CancellationToken stop)
    {
        var earlier = await EarlierTests.FindAsync(store, spreader, date, fold.Id, stop);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteString("culture", "en-US");
            json.WriteString("language", OfficeText.Culture.Language.Code);
            json.WriteString("units", "us");
            json.WriteString("kind", fold.Kind);
            EarlierTests.Fields(json, fold);
            earlier.Write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}

/// <summary>How often something turned out to be the cause.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Tests">Where.</param>
public sealed record CauseCount(string Name, IReadOnlyList<string> Tests);

/// <summary>Notes that say what it turned out to be.</summary>
internal static class CauseNotes
{
    private static readonly Dictionary<string, string> Names =
        CauseTable.All.ToDictionary(cause => cause.Code, cause => cause.Name, StringComparer.Ordinal);

    /// <summary>The causes to choose from.</summary>
    internal static IReadOnlyDictionary<string, string> All => Names;

    /// <summary>The name of a cause's code; null for none.</summary>
    internal static string? Name(string code) => Names.GetValueOrDefault(code);

    /// <summary>What the note says when nobody typed anything.</summary>
    internal static string Text(string name) => $"It turned out to be: {name}.";

    /// <summary>The code in a note; null for none.</summary>
    internal static string? Of(Entry entry)
    {
        using var json = JsonDocument.Parse(entry.Payload);
        return json.RootElement.TryGetProperty("cause", out var code) && code.ValueKind is JsonValueKind.String && code.GetString() is { Length: > 0 } text
            ? text : null;
    }
}
