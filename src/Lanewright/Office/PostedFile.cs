using Lanewright.Core.Text;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;

namespace Lanewright.Office;

/// <summary>A form with a file, as a browser sends it.</summary>
internal static class PostedFile
{
    // A larger one than is wanted is read and thrown away, since a browser shows the answer only after it has sent everything.
    private const int MostDrained = 100 * 1024 * 1024;

    /// <summary>The form; or a status and what is wrong, for who sent it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="most">Most bytes of the form.</param>
    /// <param name="tooLong">What to say of so many bytes.</param>
    internal static async Task<(IFormCollection? Form, int Status, Phrase Problem)> ReadAsync(HttpContext context, int most, Func<long, Phrase> tooLong)
    {
        var (request, stop) = (context.Request, context.RequestAborted);
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit) limit.MaxRequestBodySize = MostDrained;
        if (request.ContentLength > most)
        {
            await request.Body.CopyToAsync(Stream.Null, stop);
            return (null, 413, tooLong(request.ContentLength.Value));
        }

        if (!request.HasFormContentType) return (null, 400, "A file was expected. Choose one and send it.");
        try
        {
            var form = await request.ReadFormAsync(new FormOptions { MultipartBodyLengthLimit = most }, stop);
            return await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)
                ? (form, 200, "")
                : (null, 400, "The page was open too long. Choose the file and send it once more.");
        }
        catch (InvalidDataException)
        {
            return (null, 400, "The file could not be read. Choose it and send it once more.");
        }
    }
}
