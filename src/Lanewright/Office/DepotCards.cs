using Lanewright.Core.Calibrations;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Storage;
using Lanewright.Storage.Folding;

namespace Lanewright.Office;

/// <summary>The cards of a depot.</summary>
/// <param name="Cards">A card for each spreader that has one, in order of number.</param>
/// <param name="Without">Sentences about those that have none.</param>
internal sealed record DepotCards(IReadOnlyList<BookletCard> Cards, IReadOnlyList<string> Without)
{
    /// <summary>Gathers the card of the latest usable rate card of every spreader in use.</summary>
    /// <param name="data">The records.</param>
    /// <param name="depot">Name of the depot.</param>
    /// <param name="address">What stands before a test's identity in the code on its card.</param>
    /// <param name="culture">Language of the sentences.</param>
    /// <param name="stop">Ends the work.</param>
    internal static async Task<DepotCards> OfAsync(OfficeData data, string depot, string address, TextCulture culture, CancellationToken stop)
    {
        List<BookletCard> cards = [];
        List<string> without = [];
        foreach (var spreader in (await data.SpreadersAsync(stop)).InUse)
        {
            if (!string.Equals(spreader.Record.Depot, depot, StringComparison.OrdinalIgnoreCase)) continue;
            if (await LatestAsync(data.Store, spreader.Id, address, stop) is { } card) cards.Add(card);
            else without.Add(culture.Say($"{spreader.Number}: no rate card that can be used."));
        }

        return new(cards, without);
    }

    private static async Task<BookletCard?> LatestAsync(EntryStore store, string spreader, string address, CancellationToken stop)
    {
        var query = new TestQuery { Spreader = spreader, Most = TestQuery.MostTests };
        foreach (var test in await store.TestsAsync(query, stop))
        {
            if (test.Test.Kind != RateCard.Kind.Word || test.Test.Severity == "stop" || test.Test.Verdict is "reject" or "repeat") continue;
            if (await store.FoldAsync(test.Test.Id, stop) is not { Conflicts: 0 } fold || TestComputation.Other(fold) is not { IsUsable: true } reading) continue;
            var report = reading.Value!.Analyse();
            if (report is not { Usable: true, Card: { } card }) continue;
            return new(card.Record.Length == 0 ? card with { Record = address + test.Test.Id } : card, report.Head.Preferences);
        }

        return null;
    }
}
