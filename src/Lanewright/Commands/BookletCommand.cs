using System.CommandLine;
using Lanewright.Core.Text;
using Lanewright.Documents;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Commands;

/// <summary><c>lanewright booklet</c>: every cab card of a depot in one PDF file.</summary>
internal static class BookletCommand
{
    internal static Command Make()
    {
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var depot = new Option<string>("--depot") { Description = "Name of the depot.", Required = true };
        var target = new Option<string>("--out") { Description = "The PDF file to write.", Required = true };
        var paper = new Option<string>("--paper") { Description = "a5 or letter.", DefaultValueFactory = _ => "a5" };
        paper.AcceptOnlyFromAmong("a5", "letter");
        var culture = CommonOptions.Culture();
        var command = new Command("booklet", "Draw every cab card of a depot in one PDF file.") { data, database, depot, target, paper, culture };
        command.SetAction((parsed, stop) => RecordsOptions.WithStoreAsync(parsed, data, database, async store =>
        {
            var output = parsed.InvocationConfiguration.Output;
            var error = parsed.InvocationConfiguration.Error;
            if (CommonOptions.CultureOf(parsed, culture, error) is not { } c) return CommonOptions.CouldNotRead;
            using var office = new OfficeData(store, TimeProvider.System);
            var name = parsed.GetValue(depot)!;
            var booklet = await DepotCards.OfAsync(office, name, "lanewright:", c, stop);
            foreach (var line in booklet.Without) error.WriteLine(line);
            if (booklet.Cards.Count == 0)
            {
                var depots = (await office.SpreadersAsync(stop)).InUse.Select(one => one.Record.Depot).Where(one => one.Length > 0).Distinct().Order(StringComparer.Ordinal);
                error.WriteLine(c.Say($"--depot: '{Excerpt.Of(name)}' was read; there is no card to print for it. Depots with spreaders: {string.Join(", ", depots)}."));
                return CommonOptions.CouldNotRead;
            }

            var bytes = CabCardPdf.Booklet(booklet.Cards, parsed.GetValue(paper) == "letter" ? CardPaper.Letter : CardPaper.A5, c);
            if (!WholeFile.Write(parsed.GetValue(target)!, bytes, error)) return CommonOptions.CouldNotRead;
            output.WriteLine(c.Say($"{parsed.GetValue(target)}: {booklet.Cards.Count} card of {name}, {bytes.Length / 1024} kB|{parsed.GetValue(target)}: {booklet.Cards.Count} cards of {name}, {bytes.Length / 1024} kB"));
            return CommonOptions.Answered;
        }, stop, Opening.Existing));
        return command;
    }
}
