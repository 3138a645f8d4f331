using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Lanewright.Core.Text;
using Lanewright.Host;
using Lanewright.Network.Pages;
using Lanewright.Office;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Network;

/// <summary>
/// The page that explains how a phone comes to trust the yard's authority. It is the only thing served without
/// encryption, since a phone that does not trust it yet cannot open the rest.
/// </summary>
internal static class TrustSite
{
    internal const string CertificatePath = "/lanewright-authority.crt";

    private const string ContentPolicy =
        "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>A server for the page alone.</summary>
    /// <param name="port">Port on every address; 0 for any free one.</param>
    /// <param name="authority">The authority to trust.</param>
    /// <param name="address">The https address to open afterwards.</param>
    /// <param name="language">The language of those whose browser wants none of ours; English when null.</param>
    internal static WebApplication Build(int port, X509Certificate2 authority, string address, Language? language = null)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Error);
        // A server that cannot start says so itself, in words.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 0;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            kestrel.ListenAnyIP(port);
        });
        builder.Services.AddRazorComponents();
        builder.Services.AddSingleton(new ServerOptions(port) { Language = language ?? Language.English });
        var app = builder.Build();
        app.Use(OfficeLanguage.Use);
        app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = ContentPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers.CacheControl = "no-store";
            return next(context);
        });
        app.Use(OfficeLanguage.Keep);
        app.MapGet("/", IResult () => new RazorComponentResult<TrustPage>(new Dictionary<string, object?>
        {
            ["Address"] = address,
            ["Fingerprint"] = Fingerprint(authority),
            ["Name"] = authority.GetNameInfo(X509NameType.SimpleName, false),
        }));
        app.MapGet(CertificatePath, () => Results.File(
            authority.Export(X509ContentType.Cert), "application/x-x509-ca-cert", CertificatePath[1..]));
        var pages = Path.Combine(AppContext.BaseDirectory, "wwwroot", "office");
        foreach (var style in new[] { "office.css", "accounts.css" })
            app.MapGet($"/office/{style}", () => Results.File(Path.Combine(pages, style), "text/css"));
        app.MapFallback(context =>
            Problems.Answer(404, $"Only the page that explains the certificate is here. Everything else: {address}").ExecuteAsync(context));
        return app;
    }

    /// <summary>SHA-256 of a certificate, in pairs that people can compare.</summary>
    internal static string Fingerprint(X509Certificate2 certificate) =>
        string.Join(':', certificate.GetCertHash(HashAlgorithmName.SHA256).Chunk(2).Select(pair => Convert.ToHexString(pair)));
}
