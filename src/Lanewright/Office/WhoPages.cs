using Lanewright.Host;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Picking who you are, on one machine alone.</summary>
internal static class WhoPages
{
    private const string Address = "/office/who";

    internal static void Map(WebApplication app)
    {
        app.MapGet(Address, context => Show(context, Back(context.Request.Query["back"]), [], null, Address).Send(context));
        app.MapPost(Address, context => Pick(context).Send(context));
    }

    /// <summary>Asks who it is before a form is taken; the form travels along and comes back as it was typed.</summary>
    internal static async Task<IResult> AskAsync(HttpContext context, IFormCollection form, string? problem)
    {
        var carried = form.Where(field => field.Key is not (OfficeServices.TokenField or "who"))
            .SelectMany(field => field.Value, (field, value) => KeyValuePair.Create(field.Key, value ?? "")).ToList();
        return await Show(context, null, carried, problem, context.Request.Path + context.Request.QueryString);
    }

    private static async Task<IResult> Pick(HttpContext context)
    {
        if (Actors.Mode(context) == AccountsMode.Accounts) return Problems.Answer(404, "Here people sign in.");
        if (!context.Request.HasFormContentType) return Problems.Answer(400, "A form was expected.");
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var back = Back(form["back"]);
        if (!await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context))
        {
            context.Response.StatusCode = 400;
            return await Show(context, back, [], OfficeText.Say("The page was open too long. Pick the name once more."), Address);
        }

        if (OfficeActor.NameProblem(form["who"]) is { } problem)
        {
            context.Response.StatusCode = 400;
            return await Show(context, back, [], problem, Address);
        }

        OfficeActor.Keep(context, form["who"].ToString().Trim());
        return Results.LocalRedirect(back);
    }

    private static async Task<IResult> Show(
        HttpContext context, string? back, IReadOnlyList<KeyValuePair<string, string>> carried, string? problem, string action)
    {
        if (Actors.Mode(context) == AccountsMode.Accounts) return Problems.Answer(404, "Here people sign in.");
        var people = await context.RequestServices.GetRequiredService<OfficeData>().PeopleAsync(context.RequestAborted);
        return new RazorComponentResult<WhoPage>(new Dictionary<string, object?>
        {
            ["People"] = (IReadOnlyList<Core.Register.RegisterPerson>)[.. people.Where(person => !person.Retired)],
            ["Back"] = back,
            ["Carried"] = carried,
            ["Problem"] = problem,
            ["Action"] = action,
        });
    }

    // Only to pages of the office; anything else would let a foreign link lead away from here.
    private static string Back(string? address) =>
        address is not null && (address == "/office" || address.StartsWith("/office/", StringComparison.Ordinal))
        && !address.Any(char.IsControl) && !address.Contains('\\', StringComparison.Ordinal)
            ? address
            : "/office";
}
