using System.Security.Claims;
using Lanewright.Core.Exchange;
using Lanewright.Core.Register;

namespace Lanewright.Host;

/// <summary>Who sends a request, and what that person may do.</summary>
/// <param name="Person">Name or initials, as in the register.</param>
/// <param name="Role">What the person may do.</param>
internal sealed record Actor(string Person, PersonRole Role);

/// <summary>Tells who sends a request.</summary>
internal static class Actors
{
    /// <summary>Keeps the name that a person picked on this machine.</summary>
    internal const string PersonCookie = "lanewright-person";

    /// <summary>Who it is; null when nobody said. On this machine alone a picked name is believed, with every right.</summary>
    internal static Actor? Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (Mode(context) == AccountsMode.Accounts) return OfClaims(context.User);
        var name = Uri.UnescapeDataString(context.Request.Cookies[PersonCookie] ?? "").Trim();
        return name.Length is 0 or > 60 || name.Any(char.IsControl) ? null : new(name, PersonRole.Supervisor);
    }

    /// <summary>Whether people have accounts here.</summary>
    internal static AccountsMode Mode(HttpContext context) =>
        context.RequestServices.GetRequiredService<ServerOptions>().Accounts;

    private static Actor? OfClaims(ClaimsPrincipal user)
    {
        if (user.Identity is not { IsAuthenticated: true, Name: { Length: > 0 } name }) return null;
        var role = user.FindFirstValue(ClaimTypes.Role);
        var known = RegisterReader.Roles.FirstOrDefault(word => word.Text == role);
        return new(name, known?.Value ?? PersonRole.Viewer);
    }
}

/// <summary>Whether people have accounts.</summary>
internal enum AccountsMode
{
    /// <summary>This machine only: a person picks a name.</summary>
    Local,

    /// <summary>A network: everybody signs in.</summary>
    Accounts,
}
