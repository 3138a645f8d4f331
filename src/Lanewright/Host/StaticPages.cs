using System.Text.RegularExpressions;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;

namespace Lanewright.Host;

/// <summary>
/// The files of the pages: a compressed copy beside a file (.br, .gz) is sent to browsers that take it; a file with a hash
/// in its name is kept by the browser for good, any other is asked for again by its tag.
/// </summary>
internal static partial class StaticPages
{
    private static readonly (string Encoding, string Ending)[] Compressed = [("br", ".br"), ("gzip", ".gz")];

    internal static void Use(WebApplication app)
    {
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".webmanifest"] = "application/manifest+json";
        types.Mappings[".dat"] = "application/octet-stream";
        app.UseDefaultFiles();
        app.Use((context, next) =>
        {
            Choose(context, app.Environment.WebRootFileProvider, types);
            return next(context);
        });
        app.UseStaticFiles(new StaticFileOptions
        {
            ContentTypeProvider = types,
            ServeUnknownFileTypes = true,
            OnPrepareResponse = file => Prepare(file.Context),
        });
    }

    private static void Choose(HttpContext context, IFileProvider files, FileExtensionContentTypeProvider types)
    {
        var path = context.Request.Path.Value ?? "";
        if (path.StartsWith("/api/", StringComparison.Ordinal) || !types.TryGetContentType(path, out var type)) return;
        var taken = context.Request.Headers.AcceptEncoding.ToString();
        foreach (var (encoding, ending) in Compressed)
        {
            if (!files.GetFileInfo(path + ending).Exists) continue;
            context.Response.Headers.Vary = "Accept-Encoding";
            if (!taken.Contains(encoding, StringComparison.OrdinalIgnoreCase)) continue;
            context.Items[typeof(StaticPages)] = new Chosen(path, type, encoding);
            context.Request.Path = path + ending;
            return;
        }
    }

    private static void Prepare(HttpContext context)
    {
        var path = context.Request.Path.Value ?? "";
        if (context.Items[typeof(StaticPages)] is Chosen chosen)
        {
            context.Response.ContentType = chosen.Type;
            context.Response.Headers.ContentEncoding = chosen.Encoding;
            path = chosen.Path;
        }

        context.Response.Headers.CacheControl = HashedName().IsMatch(path)
            ? "public, max-age=31536000, immutable"
            : "no-cache";
    }

    /// <summary>The name that the publishing of the core gives its files: name.hash.ending.</summary>
    [GeneratedRegex(@"^/core/.*\.[a-z0-9]{10}\.(js|wasm|dat|json)$", RegexOptions.CultureInvariant)]
    private static partial Regex HashedName();

    private sealed record Chosen(string Path, string Type, string Encoding);
}
