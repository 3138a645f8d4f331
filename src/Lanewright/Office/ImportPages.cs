using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Lists;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Taking in lists of the register: sent, looked at, confirmed.</summary>
internal sealed class ImportPages(OfficeData data, OfficeWriter writer, TimeProvider clock)
{
    private const string Address = "/office/import";
    // The file, and what a browser writes around it.
    private const int MostBody = ListFile.MostBytes + (64 * 1024);
    private readonly ImportShelf shelf = new(clock);

    internal void Map(WebApplication app)
    {
        app.MapGet(Address, IResult (HttpContext context, string? kind) => Refusal(context) ?? Ask(RegisterKind.Find(kind ?? ""), null));
        app.MapPost(Address, context => Take(context).Send(context));
        app.MapGet(Address + "/{token}", (HttpContext context, string token) => Preview(context, token, null));
        app.MapPost(Address + "/{token}", (HttpContext context, string token) => Confirm(context, token));
        app.MapGet(Address + "/{token}/refused.csv", (string token, CancellationToken stop) => Report(token, stop));
        foreach (var kind in RegisterKind.All.Where(kind => kind != RegisterKind.Rules))
        {
            app.MapGet($"/office/register/{kind.List}.csv", async (CancellationToken stop) =>
                OfficeCsv.Answer($"{kind.List}.csv", ListExport.Rows(kind, await data.RowsAsync(kind, stop))));
        }
    }

    /// <summary>The lists that may be taken in from who asks.</summary>
    internal static IEnumerable<RegisterKind> Kinds(HttpContext context) =>
        RegisterKind.InFiles.Where(kind => OfficeActor.May(context, kind.Entry));

    private static IResult? Refusal(HttpContext context) =>
        Kinds(context).Any() ? null : OfficeActor.Refusal(context, RegisterKind.InFiles.MinBy(kind => Rights.Least(kind.Entry))!.Entry);

    private static RazorComponentResult<ImportPage> Ask(RegisterKind? kind, Phrase? problem) =>
        new(new Dictionary<string, object?> { ["Chosen"] = kind, ["Problem"] = problem is null ? null : OfficeText.Say(problem) });

    private async Task<IResult> Take(HttpContext context)
    {
        var (form, status, wrong) = await PostedFile.ReadAsync(context, MostBody, bytes =>
            $"The file is {(bytes / 1048576.0).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)} MB long; a list may have at most 5 MB. Split it; every part begins with the headings.");
        if (Refusal(context) is { } refusal) return refusal;
        if (form is null) return Again(status, wrong);
        var kind = RegisterKind.InFiles.FirstOrDefault(one => one.List == form["kind"]);
        if (kind is null) return Again(400, "What the file lists was not read. Choose spreaders, scales, materials or people.");
        if (OfficeActor.Refusal(context, kind.Entry) is { } notThese) return notThese;
        if (!TextCulture.TryFind(form["culture"], out var culture)) return Again(400, "How numbers are written was not read. Choose one of the two.", kind);
        if (form.Files.GetFile("file") is not { Length: > 0 } file) return Again(400, "No file was chosen, or it is empty. Choose a file in CSV.", kind);
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, context.RequestAborted);
        var list = shelf.Put(kind, Excerpt.Of(Path.GetFileName(file.FileName)), bytes.ToArray(), culture);
        return Results.LocalRedirect($"{Address}/{list.Token}");

        IResult Again(int code, Phrase problem, RegisterKind? chosen = null)
        {
            context.Response.StatusCode = code;
            return Ask(chosen, problem);
        }
    }

    private async Task<IResult> Preview(HttpContext context, string token, string? notice)
    {
        if (shelf.Find(token) is not { } list) return Gone(context);
        // A form that was refused as it was sent comes back with its notice.
        if (notice is null && OfficeActor.Refusal(context, list.Kind.Entry) is { } refusal) return refusal;
        return Show(list, list.Done ?? await PlanAsync(list, context.RequestAborted), notice, null);
    }

    private async Task<IResult> Confirm(HttpContext context, string token)
    {
        if (shelf.Find(token) is not { } list) return Gone(context);
        return await OfficePost.TakeAsync(
            context, list.Kind.Entry, post => Preview(context, token, post.Notice),
            async (post, actor) =>
            {
                // Sent twice: it is done already.
                if (list.Done is not null) return Results.LocalRedirect($"{Address}/{token}");
                var plan = await PlanAsync(list, context.RequestAborted);
                var why = post.Text(RegisterForm.WhyField);
                if (plan.Mark != post.Text("mark"))
                    return Show(list, plan, OfficeText.Say("The register changed meanwhile. Nothing was written yet: look at the rows once more, then confirm."), why);
                if (why.Length == 0 && plan.Count(RowFate.Changed) > 0)
                {
                    context.Response.StatusCode = 422;
                    return Show(list, plan, OfficeText.Say("Records are changed, and nothing says why. Write why, then confirm."), why);
                }

                await writer.WriteAsync(actor, plan.ChangesOf(why), context.RequestAborted);
                shelf.Finish(list, plan);
                return Results.LocalRedirect($"{Address}/{token}");
            });
    }

    private async Task<IResult> Report(string token, CancellationToken stop)
    {
        if (shelf.Find(token) is not { } list) return Problems.Answer(404, "The file is no longer here: it is kept for 30 minutes. Send it once more.");
        return OfficeCsv.Answer("refused.csv", (list.Done ?? await PlanAsync(list, stop)).Refused());
    }

    private async Task<ListPlan> PlanAsync(WaitingList list, CancellationToken stop) =>
        ListPlan.Of(list.Bytes, list.Kind, await data.RowsAsync(list.Kind, stop), list.Culture);

    private static RazorComponentResult<ImportPreview> Show(WaitingList list, ListPlan plan, string? notice, string? why) =>
        new(new Dictionary<string, object?>
        {
            ["List"] = list, ["Plan"] = plan, ["Notice"] = notice, ["Why"] = why ?? OfficeText.Say($"Imported from {list.Name}"),
        });

    private static RazorComponentResult<ImportPage> Gone(HttpContext context)
    {
        context.Response.StatusCode = 404;
        return Ask(null, "The file is no longer here: it is kept for 30 minutes after it was sent. Nothing of it was written. Send it once more.");
    }
}
