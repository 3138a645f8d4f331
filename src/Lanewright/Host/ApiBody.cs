using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;

namespace Lanewright.Host;

/// <summary>Reads bodies of requests within limits.</summary>
internal static class ApiBody
{
    /// <summary>Most bytes of a sending of entries: 1 MB.</summary>
    internal const int MostBytes = 1024 * 1024;

    // Deeper than any entry may be, so that one entry too deep is that entry's problem and not the whole sending's.
    private const int Depth = 500;

    /// <summary>The body as JSON; null when it is not JSON.</summary>
    internal static async Task<JsonDocument?> JsonAsync(HttpRequest request)
    {
        try
        {
            return await JsonDocument.ParseAsync(request.Body, new() { MaxDepth = Depth }, request.HttpContext.RequestAborted);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The body as bytes.</summary>
    /// <exception cref="BadHttpRequestException">It is longer than allowed.</exception>
    internal static async Task<byte[]> BytesAsync(HttpRequest request, int most)
    {
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most;
        using var bytes = new MemoryStream((int)Math.Clamp(request.ContentLength ?? 0, 0, most));
        await request.Body.CopyToAsync(bytes, request.HttpContext.RequestAborted);
        return bytes.ToArray();
    }
}
