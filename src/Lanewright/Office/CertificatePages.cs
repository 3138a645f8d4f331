using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Proof;
using Lanewright.Storage.Entries;

namespace Lanewright.Office;

/// <summary>The certificate of a recorded test, on paper and as XML.</summary>
internal static class CertificatePages
{
    internal static void Map(WebApplication app, OfficeData data)
    {
        app.MapGet("/office/tests/{id}/certificate.pdf", (string id, string? paper, HttpContext context) => Pdf(data, id, paper, context));
        app.MapGet("/office/tests/{id}/certificate.xml", (string id, HttpContext context) => Xml(data, id, context));
    }

    private static async Task<IResult> Pdf(OfficeData data, string id, string? paper, HttpContext context)
    {
        if (paper is not (null or "a4" or "letter")) return Problems.Answer(400, new EntryProblem("paper", paper, "a4 or letter"));
        var (certificate, refusal) = await MakeAsync(data, id, context);
        return certificate is null
            ? refusal!
            : Results.Bytes(CertificatePdf.Draw(certificate, paper == "a4" ? Paper.A4 : Paper.Letter), "application/pdf");
    }

    private static async Task<IResult> Xml(OfficeData data, string id, HttpContext context)
    {
        var (certificate, refusal) = await MakeAsync(data, id, context);
        return certificate is null
            ? refusal!
            : Results.Bytes(DigitalCertificate.Write(certificate), "application/xml", $"{certificate.Number}.xml");
    }

    private static async Task<(Certificate? Certificate, IResult? Refusal)> MakeAsync(OfficeData data, string id, HttpContext context)
    {
        var stop = context.RequestAborted;
        var entries = RecordCertificates.OfTest(await data.Store.ReadAsync(subject: id, stop: stop));
        if (entries.Count == 0) return (null, Problems.Answer(404, "There is no test at this address."));
        var address = $"{context.Request.Scheme}://{context.Request.Host}/office/tests/{id}";
        var made = RecordCertificates.Of(entries, await data.RulesAsync(stop), DateTimeOffset.UtcNow, OfficeText.Culture, address);
        return made.Certificate is null ? (null, Problems.Answer(409, made.Refusal!)) : (made.Certificate, null);
    }
}
