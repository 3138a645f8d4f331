using Lanewright.Core.Calibrations;
using Lanewright.Documents;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Office;

/// <summary>The card for the cab of a recorded rate card, as a PDF file.</summary>
internal static class CardPages
{
    internal static void Map(WebApplication app, EntryStore store) =>
        app.MapGet("/office/tests/{id}/card.pdf", (string id, string? paper, HttpContext context) => Card(store, id, paper, context));

    private static async Task<IResult> Card(EntryStore store, string id, string? paper, HttpContext context)
    {
        if (paper is not (null or "a5" or "letter")) return Problems.Wrong(400, "paper", paper, "a5 or letter");
        if (await store.FoldAsync(id, context.RequestAborted) is not { } fold || TestComputation.Other(fold) is not { } reading)
            return Problems.Answer(404, "There is no rate card at this address.");
        var report = reading.IsUsable && !fold.Fields.Any(field => field.IsConflict) ? reading.Value!.Analyse() : null;
        if (report is not { Usable: true, Card: { } card })
            return Problems.Answer(409, "This record makes no card: clear what its page says under findings first.");
        // The code on the card leads to the record.
        if (card.Record.Length == 0) card = card with { Record = $"{context.Request.Scheme}://{context.Request.Host}/office/tests/{id}" };
        try
        {
            var bytes = CabCardPdf.Draw(
                card, paper == "letter" ? CardPaper.Letter : CardPaper.A5, OfficeText.Culture, report.Head.Preferences);
            return Results.Bytes(bytes, "application/pdf");
        }
        catch (ArgumentException wrong)
        {
            return Problems.Answer(409, $"{wrong.Message.Split(" (Parameter", 2)[0]}");
        }
    }
}
