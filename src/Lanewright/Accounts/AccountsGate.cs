using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Host;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Accounts;

/// <summary>
/// Lets nobody without a session, or without the role for it, reach what the program answers itself. What is not named as
/// open is shut. Files of the pages are not asked about: a page without a network must open before anybody signs in.
/// </summary>
internal static class AccountsGate
{
    private static readonly string[] Open =
        [Server.HelloPath, "/api/me", OpenApiDocument.Path, "/sign-in", "/sign-out", "/pair", "/trust"];

    // What not every role may read; everything else may be read by all.
    private static readonly (string Path, PersonRole Least)[] Shut =
    [
        ("/office/accounts", PersonRole.Supervisor), ("/office/audit", PersonRole.Technician),
        ("/api/quarantine", PersonRole.Technician),
    ];

    internal static async Task Check(HttpContext context, RequestDelegate next)
    {
        var path = context.Request.Path;
        // Others at this device must not find these pages in its cache.
        if (context.GetEndpoint() is not null) context.Response.Headers.CacheControl = "no-store";
        if (context.GetEndpoint() is null || Open.Any(open => path.Equals(open, StringComparison.OrdinalIgnoreCase)))
        {
            await next(context);
            return;
        }

        var actor = Actors.Of(context);
        var least = Shut.FirstOrDefault(one => path.StartsWithSegments(one.Path)).Least;
        if (actor is not null && actor.Role >= least)
        {
            await next(context);
            return;
        }

        await Refusal(context, actor, least).ExecuteAsync(context);
    }

    private static IResult Refusal(HttpContext context, Actor? actor, PersonRole least)
    {
        var request = context.Request;
        if (request.Path.StartsWithSegments("/api"))
        {
            if (actor is null && TokenSignIn.Comes(context))
            {
                context.Response.Headers.WWWAuthenticate = "Bearer error=\"invalid_token\"";
                return Problems.Answer(401, "The token is not known, withdrawn or too old.", "A supervisor makes tokens at /office/accounts.");
            }

            return actor is null
                ? Problems.Answer(401, "Nobody is signed in here.", "Sign in at /sign-in, then send it again.")
                : Problems.Answer(403, $"This needs the role {Role(Rights.Word(least))}.", $"{actor.Person} is signed in as {Role(Rights.Word(actor.Role))}.");
        }

        if (actor is null && (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)))
            return Results.Redirect("/sign-in?return=" + Uri.EscapeDataString(request.Path + request.QueryString));
        return actor is null
            ? AccountPages.Notice(
                401, "You are not signed in any more",
                "Nothing was stored. Sign in in another window, come back to this one, go one page back and send the form again.")
            : AccountPages.NotForRole(actor, least);
    }
}
