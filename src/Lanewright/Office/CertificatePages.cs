using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Proof;
using Lanewright.Storage.Entries;

namespace Lanewright.Office;

/// <summary>The certificate of a recorded test, on paper and as XML, sealed with the yard's key.</summary>
internal sealed class CertificatePages(OfficeData data, string? keyFolder)
{
    /// <summary>Maps certificates, the page that checks them, and reports.</summary>
    internal static void Map(WebApplication app, OfficeData data)
    {
        // Where the yard's key lies; null where neither a folder of records nor one of keys is known.
        var keyFolder = app.Services.GetRequiredService<ServerOptions>().KeyFolder
            ?? (data.Store.Place.DataFolder is { } folder ? YardKey.FolderOf(folder) : null);
        new CertificatePages(data, keyFolder).Map(app);
        new VerifyPages(data.Store, keyFolder).Map(app);
        new ReportPages(data).Map(app);
    }

    private void Map(WebApplication app)
    {
        foreach (var root in new[] { "/office", "/api" })
        {
            app.MapGet(root + "/tests/{id}/certificate.pdf", (string id, string? paper, HttpContext context) => Pdf(id, paper, context));
            app.MapGet(root + "/tests/{id}/certificate.xml", (string id, HttpContext context) => Xml(id, context));
        }
    }

    private async Task<IResult> Pdf(string id, string? paper, HttpContext context)
    {
        if (paper is not (null or "a4" or "letter")) return Problems.Wrong(400, "paper", paper, "a4 or letter");
        var (certificate, refusal) = await MakeAsync(id, context);
        if (certificate is null) return refusal!;
        using var key = Key();
        return Results.Bytes(SealedFiles.Pdf(certificate, paper == "a4" ? Paper.A4 : Paper.Letter, key), "application/pdf");
    }

    private async Task<IResult> Xml(string id, HttpContext context)
    {
        var (certificate, refusal) = await MakeAsync(id, context);
        if (certificate is null) return refusal!;
        using var key = Key();
        return Results.Bytes(SealedFiles.Xml(certificate, key), "application/xml", $"{certificate.Number}.xml");
    }

    private YardKey? Key() => keyFolder is null ? null : YardKey.Open(keyFolder);

    private async Task<(Certificate? Certificate, IResult? Refusal)> MakeAsync(string id, HttpContext context)
    {
        var stop = context.RequestAborted;
        var entries = RecordCertificates.OfTest(await data.Store.ReadAsync(subject: id, stop: stop));
        if (entries.Count == 0) return (null, Problems.Answer(404, "There is no test at this address."));
        var address = $"{context.Request.Scheme}://{context.Request.Host}/office/tests/{id}";
        var made = RecordCertificates.Of(entries, await data.RulesAsync(stop), DateTimeOffset.UtcNow, OfficeText.Culture, address);
        return made.Certificate is null ? (null, Problems.Answer(409, made.Refusal!)) : (made.Certificate, null);
    }
}
