using System.Net;
using System.Security.Authentication;
using Lanewright.Host;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Lanewright.Network;

/// <summary>Where a server on a network listens, and whom it believes about where a request came from.</summary>
internal static class Listening
{
    internal static void Configure(KestrelServerOptions kestrel, int port, NetworkOptions network)
    {
        if (network.Certificates is not { } certificates)
        {
            // Only the proxy on this machine gets here.
            kestrel.Listen(IPAddress.Loopback, port);
            return;
        }

        kestrel.ListenAnyIP(port, listen => listen.UseHttps(https =>
        {
            https.ServerCertificateSelector = (_, _) => certificates.Current();
            https.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13;
            if (certificates.Chain.Count > 0) https.ServerCertificateChain = certificates.Chain;
        }));
    }

    /// <summary>Behind a proxy: what it says about the browser's address, scheme and host holds, from this machine alone.</summary>
    internal static void UseProxy(WebApplication app, NetworkOptions network)
    {
        if (!network.BehindProxy) return;
        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost,
            ForwardLimit = 1,
            AllowedHosts = [.. network.Names],
        };
        app.UseForwardedHeaders(options);
        app.Use((context, next) => context.Request.IsHttps
            ? next(context)
            : Problems.Answer(
                400, "The reverse proxy did not say that the browser came over https.",
                "Let it send X-Forwarded-Proto, X-Forwarded-For and X-Forwarded-Host (or the Host); see docs/guide/network.md.")
                .ExecuteAsync(context));
    }
}
