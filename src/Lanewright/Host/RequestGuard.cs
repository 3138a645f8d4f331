using System.Net;
using Lanewright.Network;
using Lanewright.Storage.Entries;

namespace Lanewright.Host;

/// <summary>
/// Refuses requests that a foreign page could have made a browser send, and puts the security headers on every answer.
/// </summary>
internal static class RequestGuard
{
    private static readonly string[] Hosts = ["localhost", "127.0.0.1", "[::1]"];

    // wasm-unsafe-eval lets the browser compile the computing core; nothing else of script may come from text.
    private const string ContentPolicy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; "
        + "connect-src 'self'; worker-src 'self'; manifest-src 'self'; object-src 'none'; base-uri 'none'; "
        + "form-action 'self'; frame-ancestors 'none'";

    internal static async Task Check(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        // Other sites learn nothing. With "no-referrer" a browser would send the Origin of our own forms as null.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "geolocation=(), microphone=()";
        var network = context.RequestServices.GetRequiredService<ServerOptions>().Network;
        if (network is { IsPublic: true }) headers.StrictTransportSecurity = "max-age=31536000";
        if (context.Request.Path.StartsWithSegments("/api"))
        {
            headers[Server.VersionHeader] = Server.Version;
            headers.CacheControl = "no-store";
        }

        if (Refusal(context.Request, network) is { } refusal) await refusal.ExecuteAsync(context);
        else await next(context);
    }

    private static IResult? Refusal(HttpRequest request, NetworkOptions? network)
    {
        // A foreign name that leads to this machine (DNS rebinding) would make a foreign page the same origin.
        if (!IsOwn(request, network))
        {
            return Problems.Wrong(421, "Host", request.Host.Host,
                $"{(network is null ? "localhost" : network.Names[0])}: open the pages by the address that 'serve' printed");
        }

        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) return null;
        var own = $"{request.Scheme}://{request.Host}";
        if ((string?)request.Headers.Origin is { } origin && !string.Equals(origin, own, StringComparison.OrdinalIgnoreCase))
            return Problems.Wrong(403, "Origin", origin, own);
        if ((string?)request.Headers["Sec-Fetch-Site"] is not (null or "same-origin" or "none"))
            return Problems.Wrong(403, "Sec-Fetch-Site", request.Headers["Sec-Fetch-Site"], "same-origin");

        // A form of a foreign page can send text/plain without asking, but not JSON.
        return HttpMethods.IsPost(request.Method) && request.Path.StartsWithSegments("/api") && !request.HasJsonContentType()
            ? Problems.Wrong(415, "Content-Type", request.ContentType, "application/json")
            : null;
    }

    private static bool IsOwn(HttpRequest request, NetworkOptions? network)
    {
        var host = request.Host.Host;
        if (network is { BehindProxy: true }) return network.Names.Contains(host, StringComparer.OrdinalIgnoreCase);
        if (Hosts.Contains(host, StringComparer.OrdinalIgnoreCase)) return true;
        if (network is null) return false;
        // An address cannot be made to lead elsewhere, only a name can; but it must be the one that was connected to.
        var local = request.HttpContext.Connection.LocalIpAddress;
        return network.Names.Contains(host, StringComparer.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && local is not null
                && address.Equals(local.IsIPv4MappedToIPv6 ? local.MapToIPv4() : local));
    }
}
