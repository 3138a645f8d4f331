using Lanewright.Accounts.Pages;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Host;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Accounts;

/// <summary>What a hidden field of a form holds, to prove that the form came from a page of ours.</summary>
public sealed record FormProof(string Name, string Value);

/// <summary>The pages on which people sign in and out, and set their password.</summary>
internal static class AccountPages
{
    private const string Stale =
        "The form could not be proved to come from this page (perhaps it was open for very long, or cookies are off). Send it again.";

    internal static void Map(WebApplication app)
    {
        app.MapGet("/sign-in", (HttpContext context, string? @return) =>
            Page<SignInPage>(200, new() { ["Token"] = Proof(context), ["Return"] = @return ?? "" }));
        app.MapPost("/sign-in", context => SignIn(context).Send(context)).RequireRateLimiting(SendingLimits.SignInPolicy);
        app.MapGet("/sign-out", (HttpContext context) => Actors.Of(context) is { } actor
            ? Page<SignOutPage>(200, new() { ["Token"] = Proof(context), ["Person"] = actor.Person, ["Word"] = Rights.Word(actor.Role) })
            : Results.Redirect("/sign-in"));
        app.MapPost("/sign-out", context => SignOut(context).Send(context));
        app.MapGet("/pair", (HttpContext context) => Page<PairPage>(200, new() { ["Token"] = Proof(context) }));
        app.MapPost("/pair", context => Pair(context).Send(context)).RequireRateLimiting(SendingLimits.SignInPolicy);
    }

    /// <summary>A page with one thing to say.</summary>
    internal static IResult Notice(int status, Phrase title, Phrase text) =>
        Page<NoticePage>(status, new() { ["Title"] = Say(title), ["Text"] = Say(text) });

    /// <summary>What somebody reads whose role is too small for a page.</summary>
    internal static IResult NotForRole(Actor actor, PersonRole least) => Notice(
        403, "Not for your role",
        $"This needs the role {Role(Rights.Word(least))}; you are signed in as {actor.Person}, {Role(Rights.Word(actor.Role))}.");

    /// <summary>A page.</summary>
    internal static IResult Page<T>(int status, Dictionary<string, object?> parameters)
        where T : IComponent => new RazorComponentResult<T>(parameters) { StatusCode = status };

    /// <summary>A new proof for a form of a page.</summary>
    internal static FormProof Proof(HttpContext context)
    {
        var tokens = context.RequestServices.GetRequiredService<IAntiforgery>().GetAndStoreTokens(context);
        return new(tokens.FormFieldName, tokens.RequestToken!);
    }

    /// <summary>The form that was sent; null when it did not come from a page of ours.</summary>
    internal static async Task<IFormCollection?> FormAsync(HttpContext context) =>
        context.Request.HasFormContentType
        && await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)
            ? await context.Request.ReadFormAsync(context.RequestAborted)
            : null;

    /// <summary>Answer to a form that did not come from a page of ours.</summary>
    internal static IResult NotOurs() => Notice(400, "The form was not taken", Stale);

    internal static string? AddressOf(HttpContext context) => context.Connection.RemoteIpAddress is { } address
        ? (address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address).ToString()
        : null;

    private static async Task<IResult> SignIn(HttpContext context)
    {
        if (await FormAsync(context) is not { } form) return NotOurs();
        string name = form["name"].ToString(), back = form["return"].ToString();
        var signIns = context.RequestServices.GetRequiredService<SignIns>();
        var answer = await signIns.TryAsync(name, form["password"].ToString(), AddressOf(context), context.RequestAborted);
        if (answer.Account is { } account) return await EnterAsync(context, account, back);
        return Page<SignInPage>(
            422, new() { ["Token"] = Proof(context), ["Return"] = back, ["Name"] = name, ["Wrong"] = answer.Why });
    }

    private static async Task<IResult> SignOut(HttpContext context)
    {
        if (await FormAsync(context) is null) return NotOurs();
        if (Actors.Of(context) is { } actor)
            await context.RequestServices.GetRequiredService<AccountLog>().AddAsync(actor.Person, "signed out", address: AddressOf(context));
        await context.SignOutAsync(AccountsSetup.Scheme);
        return Results.Redirect("/sign-in");
    }

    private static async Task<IResult> Pair(HttpContext context)
    {
        if (await FormAsync(context) is not { } form) return NotOurs();
        string name = form["name"].ToString().Trim(), code = form["code"].ToString(), password = form["password"].ToString();
        var wrong = new List<(string Field, string What)>();
        if (name.Length is 0 or > AccountsDesk.LongestName || name.Any(char.IsControl) || ApiTokens.LooksLike(name))
            wrong.Add(("name", Say($"Name: 1 to {AccountsDesk.LongestName} characters were expected, not ending in “{ApiTokens.Mark.Trim()}”.")));
        if (PairingCodes.Clean(code).Length == 0) wrong.Add(("code", Say("Code: nothing was read; 16 letters and digits were expected.")));
        if (PasswordRules.Fault(name, password) is { } fault) wrong.Add(("password", fault));
        else if (form["again"] != password) wrong.Add(("again", Say("The two passwords are not the same. Type both again.")));
        if (wrong.Count == 0)
        {
            var desk = context.RequestServices.GetRequiredService<AccountsDesk>();
            var answer = await desk.PairAsync(name, code, password, AddressOf(context), context.RequestAborted);
            if (answer.Account is { } account) return await EnterAsync(context, account, "");
            wrong.Add(("code", answer.Why!));
        }

        return Page<PairPage>(422, new()
        {
            ["Token"] = Proof(context),
            ["Name"] = name,
            ["Code"] = code,
            ["Wrong"] = (IReadOnlyList<(string Field, string What)>)wrong,
        });
    }

    private static async Task<IResult> EnterAsync(HttpContext context, Account account, string back)
    {
        await context.SignInAsync(AccountsSetup.Scheme, SignIns.Principal(account), new() { IsPersistent = true });
        var first = account.Role == Rights.Word(PersonRole.Operator) ? "/yard/" : "/office";
        return Results.Redirect(IsLocal(back) ? back : first);
    }

    // A path of this server and nothing else: //host and /\host lead a browser elsewhere.
    private static bool IsLocal(string path) =>
        path is ['/', ..] and not ['/', '/' or '\\', ..] && !path.Any(c => char.IsControl(c) || c == '\\');
}
