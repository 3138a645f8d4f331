using Lanewright.Core.Text;
using Lanewright.Host;
using Microsoft.AspNetCore.Antiforgery;

namespace Lanewright.Office;

/// <summary>A form that was sent, with who sent it.</summary>
/// <param name="Form">Its fields as typed.</param>
internal sealed record OfficePost(IFormCollection Form)
{
    /// <summary>The beginning of the names of a record's fields.</summary>
    internal const string FieldPrefix = "f.";

    /// <summary>Name of the field that says how the numbers of a form are written: as they were when its page was made.</summary>
    internal const string NumbersField = "numbers";

    private const string Who = "who";

    /// <summary>What the page says above the form when it comes back; null for nothing.</summary>
    internal string? Notice { get; private init; }

    /// <summary>A record's fields, by their paths.</summary>
    internal IReadOnlyDictionary<string, string> Fields =>
        Form.Where(one => one.Key.StartsWith(FieldPrefix, StringComparison.Ordinal))
            .ToDictionary(one => one.Key[FieldPrefix.Length..], one => one.Value.ToString(), StringComparer.Ordinal);

    /// <summary>How the numbers of the form are written, also when another language was chosen since its page was made.</summary>
    internal TextCulture Numbers =>
        TextCulture.All.FirstOrDefault(culture => culture.Name == Text(NumbersField))?.In(OfficeText.Culture.Language) ?? OfficeText.Culture;

    /// <summary>A field by its name; empty when it was not sent.</summary>
    internal string Text(string name) => Form[name].ToString().Trim();

    /// <summary>
    /// Takes a form in: whether it came from these pages, who sends it and whether that person may. When any of these
    /// fails, the form comes back with everything typed.
    /// </summary>
    /// <param name="context">The request.</param>
    /// <param name="kind">The kind of entry that the form makes.</param>
    /// <param name="show">Shows the form again.</param>
    /// <param name="save">Reads and keeps what was typed.</param>
    internal static async Task<IResult> TakeAsync(
        HttpContext context, string kind, Func<OfficePost, Task<IResult>> show, Func<OfficePost, Actor, Task<IResult>> save)
    {
        if (await FormOf(context.Request) is not { } form)
            return Problems.Answer(400, "A form was expected.", "Open the page again and send its form.");
        var post = new OfficePost(form);
        var forms = context.RequestServices.GetRequiredService<IAntiforgery>();
        if (!await forms.IsRequestValidAsync(context))
        {
            return await Again(
                400, "The form was open too long, or it did not come from this page. Nothing was saved yet: look at it once more and send it again.");
        }

        if (OfficeActor.Of(context) is not { } actor)
        {
            if (Actors.Mode(context) == AccountsMode.Accounts)
                return await Again(401, "You are not signed in any more. Nothing was saved yet: sign in in another tab, then send this again.");
            if (!form.ContainsKey(Who)) return await WhoPages.AskAsync(context, form, null);
            if (OfficeActor.NameProblem(form[Who]) is { } problem) return await WhoPages.AskAsync(context, form, problem);
            OfficeActor.Keep(context, form[Who].ToString().Trim());
            return await Again(200, $"You are {form[Who].ToString().Trim()} now. Nothing was saved yet: look at it once more and send it.");
        }

        if (OfficeActor.May(context, kind)) return await save(post, actor);
        return await Again(
            403, $"Your role, {RoleWord(actor.Role)}, may look at this, not change it; the role {RoleWord(Rights.Least(kind))} may. Nothing was saved.");

        Task<IResult> Again(int status, Core.Text.Phrase notice)
        {
            context.Response.StatusCode = status;
            return show(post with { Notice = OfficeText.Say(notice) });
        }
    }

    private static string RoleWord(Core.Register.PersonRole role) =>
        OfficeText.Role(Rights.Word(role));

    private static async Task<IFormCollection?> FormOf(HttpRequest request)
    {
        if (!request.HasFormContentType) return null;
        try
        {
            return await request.ReadFormAsync(request.HttpContext.RequestAborted);
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }
}
