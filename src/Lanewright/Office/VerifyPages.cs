using Lanewright.Host;
using Lanewright.Proof;
using Lanewright.Storage;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>Looks at a certificate or an export that somebody sends, and shows the yard's public key.</summary>
internal sealed class VerifyPages(EntryStore store, string? keyFolder)
{
    private const string Address = "/office/verify";
    private const int MostFile = 25 * 1024 * 1024;
    private const int MostBody = MostFile + (64 * 1024);
    // An export that unpacks to more is for the command: a zip file can be made to swell.
    private const long MostUnpacked = 250L * 1024 * 1024;

    internal void Map(WebApplication app)
    {
        app.MapGet(Address, IResult () => Page(null, null));
        app.MapPost(Address, context => Take(context).Send(context));
        app.MapGet(Address + "/key.pem", Key);
    }

    private IResult Key()
    {
        if (keyFolder is null) return Problems.Answer(404, "This server has no key: it knows no folder for it.");
        using var key = YardKey.Open(keyFolder);
        return Results.Text(key.PublicPem, "application/x-pem-file");
    }

    private RazorComponentResult<VerifyPage> Page(Verified? verified, string? problem, string name = "")
    {
        using var key = keyFolder is null ? null : YardKey.Open(keyFolder);
        return new(new Dictionary<string, object?>
        {
            ["Looked"] = verified, ["Problem"] = problem, ["Name"] = name, ["Fingerprint"] = key?.Fingerprint,
        });
    }

    private async Task<IResult> Take(HttpContext context)
    {
        var (form, status, wrong) = await PostedFile.ReadAsync(
            context, MostBody, _ => $"The file is longer than {MostFile / 1048576} MB. Use the command: lanewright verify FILE --data FOLDER");
        if (form is null) return Again(status, wrong);
        if (form.Files.GetFile("file") is not { Length: > 0 } file) return Again(400, "No file was chosen, or it is empty.");
        var path = Path.Combine(Path.GetTempPath(), $"lanewright-verify-{Guid.NewGuid():N}");
        try
        {
            await using (var copy = new FileStream(path, FileMode.CreateNew, FileAccess.Write)) await file.CopyToAsync(copy, context.RequestAborted);
            using var key = keyFolder is null ? null : YardKey.Open(keyFolder);
            var verified = await new Verifier(RecordSource.Of(store, context.RequestAborted), key?.Fingerprint, OfficeText.Culture).LookAsync(path, MostUnpacked);
            // A path of this machine means nothing to who sent the file.
            var name = Core.Text.Excerpt.Of(Path.GetFileName(file.FileName));
            return Page(verified with { Lines = [.. verified.Lines.Select(line => line with { Text = line.Text.Replace(path, name, StringComparison.Ordinal) })] }, null, name);
        }
        finally
        {
            File.Delete(path);
        }

        IResult Again(int code, Core.Text.Phrase problem)
        {
            context.Response.StatusCode = code;
            return Page(null, OfficeText.Say(problem));
        }
    }
}
