using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Storage.Records;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Adding, changing and settling the records of the register.</summary>
internal sealed class RegisterForms(OfficeData data, OfficeWriter writer)
{
    internal void Map(WebApplication app)
    {
        foreach (var kind in RegisterKind.All.Where(kind => kind.Key.Length > 0))
        {
            app.MapGet($"/office/{kind.List}/new", context => New(context, kind).Send(context));
            app.MapPost($"/office/{kind.List}/new", context => Post(context, kind, null).Send(context));
        }

        foreach (var kind in RegisterKind.All)
        {
            app.MapGet($"/office/{kind.List}/{{id}}/edit", (HttpContext context, string id) => Edit(context, kind, id));
            app.MapPost($"/office/{kind.List}/{{id}}/edit", (HttpContext context, string id) => Post(context, kind, id));
            app.MapPost($"/office/{kind.List}/{{id}}/settle", (HttpContext context, string id) => Settle(context, kind, id));
        }
    }

    private async Task<IResult> New(HttpContext context, RegisterKind kind) =>
        OfficeActor.Refusal(context, kind.Entry) ?? await Show(context, new() { Kind = kind, Texts = new Dictionary<string, string>() });

    private async Task<IResult> Edit(HttpContext context, RegisterKind kind, string id)
    {
        if (OfficeActor.Refusal(context, kind.Entry) is { } refusal) return refusal;
        var item = await Item(kind, id, context.RequestAborted);
        if (item is null && kind != RegisterKind.Rules) return Problems.Answer(404, "There is no such record at this address.");
        return await Show(context, FormOf(kind, id, item));
    }

    private async Task<IResult> Post(HttpContext context, RegisterKind kind, string? id)
    {
        var item = id is null ? null : await Item(kind, id, context.RequestAborted);
        if (id is not null && item is null && kind != RegisterKind.Rules)
            return Problems.Answer(404, "There is no such record at this address.");
        return await OfficePost.TakeAsync(
            context, kind.Entry, post => Show(context, Typed(kind, id, item, post)), (post, actor) => Save(context, kind, id, item, post, actor));
    }

    private async Task<IResult> Save(
        HttpContext context, RegisterKind kind, string? id, RegisterItem? item, OfficePost post, Actor actor)
    {
        var stop = context.RequestAborted;
        var form = Typed(kind, id, item, post);
        // The same form sent twice, by an impatient finger or by going back: it is kept already.
        if (await data.Store.FindAsync(form.Entry, stop) is { } kept && kept.Subject == form.Subject) return Saved(kind, form.Subject);
        if (item is not null && post.Text("parent") != item.EntryId)
        {
            return await Show(context, form with
            {
                Notice = OfficeText.Say("Somebody else changed this record meanwhile. What stands now is listed below the form; yours was not"
                    + " saved yet. Look at both and send yours again, or leave the page."),
                Versions = await Versions(item, stop),
                Entry = OfficeChange.NewId(),
            });
        }

        var texts = kind.Take(form.Texts, form.Numbers);
        List<Finding> findings = [.. texts.Findings];
        if (item is not null && form.Why.Length == 0) findings.Add(RegisterFindings.WhyMissing.At(RegisterForm.WhyField));
        if (kind.Key.Length > 0 && texts.Fields.FirstOrDefault(field => field.Path == kind.Key)?.Text is { } name
            && await data.TakenAsync(kind, name, form.Subject, stop))
            findings.Add(RegisterFindings.Taken.At(kind.Key, FindingValue.Text("read", Excerpt.Of(name))));
        if (!texts.IsUsable || findings.Any(finding => finding.Severity == Severity.Stop))
        {
            context.Response.StatusCode = 422;
            return await Show(context, form with { Findings = findings });
        }

        var payload = RegisterPayload.Write(texts.Fields, item?.Payload, Others(item));
        await writer.WriteAsync(
            actor, [new(kind.Entry, form.Subject, payload, item?.EntryId, form.Why.Length > 0 ? form.Why : null) { Id = form.Entry }], stop);
        return Saved(kind, form.Subject);
    }

    private async Task<IResult> Settle(HttpContext context, RegisterKind kind, string id)
    {
        var stop = context.RequestAborted;
        if (await Item(kind, id, stop) is not { } item) return Problems.Answer(404, "There is no such record at this address.");
        return await OfficePost.TakeAsync(
            context, kind.Entry, post => Show(context, FormOf(kind, id, item) with { Notice = post.Notice, Why = post.Text(RegisterForm.WhyField) }),
            async (post, actor) =>
            {
                var versions = await Versions(item, stop);
                var chosen = versions.FirstOrDefault(version => version.Entry.Id == post.Text("keep"));
                var why = post.Text(RegisterForm.WhyField);
                if (chosen is null || why.Length == 0)
                {
                    context.Response.StatusCode = 422;
                    return await Show(context, FormOf(kind, id, item) with
                    {
                        Why = why,
                        Notice = chosen is null
                            ? OfficeText.Say("The versions changed meanwhile, or none was chosen. Choose one of these.")
                            : OfficeText.Say("Write why you choose this version: it is kept with your choice."),
                    });
                }

                var over = versions.Select(version => version.Entry.Id).Where(entry => entry != item.EntryId).ToList();
                await writer.WriteAsync(
                    actor, [new(kind.Entry, id, RegisterPayload.Settling(chosen.Entry.Payload, over), item.EntryId, why)], stop);
                return Saved(kind, id);
            });
    }

    private async Task<IResult> Show(HttpContext context, RegisterForm form)
    {
        var versions = form.Versions.Count > 0 || form.Item?.Others.Length is null or 0
            ? form.Versions
            : await Versions(form.Item, context.RequestAborted);
        return new RazorComponentResult<RegisterPage>(new Dictionary<string, object?>
        {
            ["Model"] = form with { Suggestions = await data.SuggestionsAsync(form.Kind, context.RequestAborted), Versions = versions },
        });
    }

    private static RegisterForm FormOf(RegisterKind kind, string id, RegisterItem? item) => new()
    {
        Kind = kind,
        Item = item,
        Subject = id,
        Texts = item is null ? new Dictionary<string, string>() : Shown(kind, item.Payload),
        // A record that another program wrote, and that cannot be read here, shows at once what is wrong.
        Findings = item is null ? [] : kind.Take(Known(kind, RegisterPayload.Texts(item.Payload)), TextCulture.Invariant).Findings,
    };

    private static RegisterForm Typed(RegisterKind kind, string? id, RegisterItem? item, OfficePost post) => new()
    {
        Kind = kind,
        Item = item,
        Subject = id ?? Identity(post.Text("subject")),
        Texts = Known(kind, post.Fields),
        Numbers = post.Numbers,
        Why = post.Text(RegisterForm.WhyField),
        Entry = Identity(post.Text("entry")),
        Notice = post.Notice,
    };

    // What is kept, as the reader writes numbers.
    private static Dictionary<string, string> Shown(RegisterKind kind, string payload)
    {
        var texts = RegisterPayload.Texts(payload);
        foreach (var field in kind.Fields)
            if (texts.TryGetValue(field.Path, out var kept)) texts[field.Path] = OfficeText.Shown(field, kept);
        return texts;
    }

    private static Dictionary<string, string> Known(RegisterKind kind, IReadOnlyDictionary<string, string> texts) =>
        texts.Where(text => kind.Fields.Any(field => field.Path == text.Key)).ToDictionary(StringComparer.Ordinal);

    private static string Identity(string text) =>
        Guid.TryParseExact(text, "D", out var id) ? id.ToString("D") : OfficeChange.NewId();

    private async Task<IReadOnlyList<RegisterVersion>> Versions(RegisterItem item, CancellationToken stop)
    {
        var versions = new List<RegisterVersion>();
        foreach (var id in Others(item).Prepend(item.EntryId))
        {
            if (await data.Store.FindAsync(id, stop) is { } entry) versions.Add(new(entry, Shown(RegisterKind.All.First(kind => kind.Word == item.Kind), entry.Payload)));
        }

        return versions;
    }

    private static string[] Others(RegisterItem? item) => item?.Others.Split(' ', StringSplitOptions.RemoveEmptyEntries) ?? [];

    private async Task<RegisterItem?> Item(RegisterKind kind, string id, CancellationToken stop)
    {
        if (kind == RegisterKind.Rules && id != "rules") return null;
        return await data.Store.RegisterItemAsync(id, stop) is { } item && item.Kind == kind.Word ? item : null;
    }

    private static RedirectHttpResult Saved(RegisterKind kind, string subject) => TypedResults.Redirect(
        kind == RegisterKind.Spreader ? $"/office/spreaders/{subject}" : $"/office/{kind.List}#r-{subject}");
}
