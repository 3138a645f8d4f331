using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Lanewright.Accounts;

/// <summary>Knows a program by the token in <c>Authorization: Bearer</c> (RFC 6750). Only the API takes tokens.</summary>
internal sealed class TokenSignIn(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, ApiTokens tokens)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the way.</summary>
    internal const string Way = "lanewright-token";

    private const string Word = "Bearer";

    /// <summary>Whether a request comes with a token: then its cookie does not count, and what it may do is the token's.</summary>
    internal static bool Comes(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api")
        && context.Request.Headers.Authorization.ToString().Split(' ')[0].Equals(Word, StringComparison.OrdinalIgnoreCase);

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var token = Request.Headers.Authorization.ToString()[Word.Length..].Trim();
        return await tokens.FindAsync(token, Context.RequestAborted) is { } found
            ? AuthenticateResult.Success(new(new ClaimsPrincipal(found), Way))
            : AuthenticateResult.Fail("The token is not known, withdrawn or too old.");
    }
}
