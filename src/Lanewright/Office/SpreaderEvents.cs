using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>One spreader's page, as it is shown.</summary>
internal sealed record SpreaderDetail(
    OfficeSpreader Spreader, IReadOnlyList<ListedTest> Tests, int TestCount, IReadOnlyList<SpreaderEvent> Events)
{
    /// <summary>What stands in the form for something done to it.</summary>
    internal IReadOnlyDictionary<string, string> Texts { get; init; } = new Dictionary<string, string>();

    internal IReadOnlyList<Finding> Findings { get; init; } = [];

    internal string Entry { get; init; } = OfficeChange.NewId();

    internal string Why { get; init; } = "";

    internal string? Notice { get; init; }
}

/// <summary>One spreader, and writing down what was done to it.</summary>
internal sealed class SpreaderEvents(OfficeData data, OfficeWriter writer)
{
    private const int MostTests = 100;

    internal static IReadOnlyList<AskedField> Fields { get; } = AskedFields.Of(RegisterReader.Event);

    internal void Map(WebApplication app)
    {
        app.MapGet("/office/spreaders/{id}", (HttpContext context, string id) => Get(context, id));
        app.MapPost("/office/spreaders/{id}/events", (HttpContext context, string id) => Add(context, id));
        app.MapPost("/office/spreaders/{id}/events/take-back", (HttpContext context, string id) => TakeBack(context, id));
    }

    private async Task<IResult> Get(HttpContext context, string id)
    {
        if (await Detail(id, context.RequestAborted) is { } detail) return Page(detail);
        // A record that cannot be read as a spreader has its form.
        return await data.Store.RegisterItemAsync(id, context.RequestAborted) is { Kind: "spreader" }
            ? Results.LocalRedirect($"/office/spreaders/{Uri.EscapeDataString(id)}/edit")
            : Problems.Answer(404, "There is no spreader at this address.");
    }

    private async Task<IResult> Add(HttpContext context, string id)
    {
        if (await Detail(id, context.RequestAborted) is not { } detail) return Problems.Answer(404, "There is no spreader at this address.");
        return await OfficePost.TakeAsync(
            context, EntryKinds.SpreaderEvent, post => Task.FromResult<IResult>(Page(Typed(detail, post))),
            async (post, actor) =>
            {
                var typed = Typed(detail, post);
                var (reading, fields) = AskedFields.Read(typed.Texts, OfficeText.Culture, RegisterReader.Event);
                if (!reading.IsUsable)
                {
                    context.Response.StatusCode = 422;
                    return Page(typed with { Findings = reading.Findings });
                }

                if (await data.Store.FindAsync(typed.Entry, context.RequestAborted) is null)
                {
                    await writer.WriteAsync(
                        actor, [new(EntryKinds.SpreaderEvent, id, RegisterPayload.Write(fields)) { Id = typed.Entry }], context.RequestAborted);
                }

                return Back(id);
            });
    }

    private async Task<IResult> TakeBack(HttpContext context, string id)
    {
        if (await Detail(id, context.RequestAborted) is not { } detail) return Problems.Answer(404, "There is no spreader at this address.");
        return await OfficePost.TakeAsync(
            context, EntryKinds.SpreaderEvent,
            post => Task.FromResult<IResult>(Page(detail with { Notice = post.Notice, Why = post.Text(RegisterForm.WhyField) })),
            async (post, actor) =>
            {
                var why = post.Text(RegisterForm.WhyField);
                var one = detail.Events.FirstOrDefault(happened => happened.EntryId == post.Text("event"));
                if (one is null) return Back(id);
                if (why.Length == 0)
                {
                    context.Response.StatusCode = 422;
                    return Page(detail with { Notice = OfficeText.Say("Write why it is taken back, then press the button beside it once more.") });
                }

                var entry = (await data.Store.FindAsync(one.EntryId, context.RequestAborted))!;
                await writer.WriteAsync(
                    actor, [new(EntryKinds.SpreaderEvent, id, RegisterPayload.Retired(entry.Payload), entry.Id, why)], context.RequestAborted);
                return Back(id);
            });
    }

    private async Task<SpreaderDetail?> Detail(string id, CancellationToken stop)
    {
        if ((await data.SpreadersAsync(stop)).Find(id) is not { } spreader) return null;
        var (tests, count) = await data.Store.TestsAsync(new() { Spreader = id, Most = MostTests }, TestOrder.Touched, false, 0, stop);
        return new(spreader, tests, count, await data.Store.EventsAsync(id, stop));
    }

    private static SpreaderDetail Typed(SpreaderDetail detail, OfficePost post) => detail with
    {
        Texts = post.Fields.Where(text => Fields.Any(one => one.Path == text.Key)).ToDictionary(StringComparer.Ordinal),
        Entry = Guid.TryParseExact(post.Text("entry"), "D", out var entry) ? entry.ToString("D") : OfficeChange.NewId(),
        Notice = post.Notice,
    };

    private static RazorComponentResult<SpreaderPage> Page(SpreaderDetail detail) =>
        new(new Dictionary<string, object?> { ["Data"] = detail });

    private static RedirectHttpResult Back(string id) => TypedResults.Redirect($"/office/spreaders/{Uri.EscapeDataString(id)}#events");
}
