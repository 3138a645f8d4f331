namespace Lanewright.Host;

/// <summary>Tells a page who is signed in, or that nobody needs to be.</summary>
internal static class MeApi
{
    internal static void Map(WebApplication app) => app.MapGet("/api/me", (HttpContext context) =>
    {
        var actor = Actors.Of(context);
        var role = actor is null ? null : Rights.Word(actor.Role);
        var mode = Actors.Mode(context) == AccountsMode.Accounts ? "accounts" : "local";
        return ApiJson.Answer(new Me(mode, actor?.Person, role), HostJson.Default.Me);
    });
}

/// <summary>Who is signed in.</summary>
/// <param name="Mode">local or accounts.</param>
/// <param name="Person">Who; null for nobody yet.</param>
/// <param name="Role">The role's word; null for nobody yet.</param>
internal sealed record Me(string Mode, string? Person, string? Role);
