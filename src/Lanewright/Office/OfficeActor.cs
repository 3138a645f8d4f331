using Lanewright.Accounts;
using Lanewright.Core.Register;
using Lanewright.Host;

namespace Lanewright.Office;

/// <summary>Who works in the office; on one machine alone the person picks a name, which a cookie keeps.</summary>
internal static class OfficeActor
{
    private const int LongestName = 60;
    private static readonly object Picked = new();

    /// <summary>Who it is; also right in the answer to the request in which the name was picked.</summary>
    internal static Actor? Of(HttpContext context) => context.Items[Picked] as Actor ?? Actors.Of(context);

    /// <summary>
    /// Whether a form that makes a kind of entry is taken from who asks. On one machine alone it is from everybody: who says
    /// no name yet is asked for it when the form is sent.
    /// </summary>
    internal static bool May(HttpContext context, string kind) =>
        Of(context) is { } actor ? Rights.Allows(actor.Role, kind) : Actors.Mode(context) != AccountsMode.Accounts;

    /// <summary>Says in words that a form is not for the role of who asks; null when it is.</summary>
    internal static IResult? Refusal(HttpContext context, string kind) =>
        May(context, kind) || Of(context) is not { } actor ? null : AccountPages.NotForRole(actor, Rights.Least(kind));

    /// <summary>What is wrong with a name; null when nothing is.</summary>
    internal static string? NameProblem(string? name)
    {
        var text = (name ?? "").Trim();
        return text.Length == 0 ? OfficeText.Say("No name was read. Pick one, or type initials or a name.")
            : text.Length > LongestName ? OfficeText.Say($"The name has {text.Length} characters; at most {LongestName} are allowed. Use initials.")
            : text.Any(char.IsControl) ? OfficeText.Say("The name holds a character that cannot be shown. Type it again instead of pasting it.")
            : null;
    }

    /// <summary>Keeps a picked name for this browser.</summary>
    internal static void Keep(HttpContext context, string name)
    {
        context.Items[Picked] = new Actor(name, PersonRole.Supervisor);
        context.Response.Cookies.Append(Actors.PersonCookie, Uri.EscapeDataString(name), new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            Path = "/",
            MaxAge = TimeSpan.FromDays(365),
        });
    }
}
