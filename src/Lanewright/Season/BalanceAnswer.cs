using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Print;

namespace Lanewright.Season;

/// <summary>The ledgers of the depots.</summary>
internal sealed record BalanceAnswer(IReadOnlyList<SeasonLedger> Depots)
{
    internal IEnumerable<string> Text(Show show)
    {
        foreach (var depot in Depots)
        {
            yield return show.Say($"{Excerpt.Of(depot.Depot)}: spread {Mass(depot.Spread, show)}");
            var table = new TextTable(("", false), ("", false), (show.Say("measured"), true), (show.Say("after balancing"), true), (show.Say("moved"), true));
            foreach (var line in depot.Lines)
            {
                table.Add(
                    Excerpt.Of(line.Spreader), show.Say(Word(line.Item)), Mass(line.Measured, show), Mass(line.Adjusted, show),
                    show.Mass(line.Adjusted.Value - line.Measured.Value, 3));
            }

            foreach (var line in table.Lines()) yield return line;
            yield return "  " + Verdict(depot, show);
            yield return "";
        }

        yield return show.Say($"All depots: spread {Mass(Measured.Sum([.. Depots.Select(depot => depot.Spread)]), show)}");
        yield return show.Say("± are half the widths of 95 % intervals; what scales, constants and densities share does not average out.");
    }

    internal SeasonPaper Paper()
    {
        var paper = new SeasonPaper("depot", "spreader", "item", "measured_kg", "u_kg", "adjusted_kg", "u_adjusted_kg", "misfit_chance", "suspect");
        foreach (var depot in Depots)
        {
            for (var i = 0; i < depot.Lines.Count; i++)
            {
                var line = depot.Lines[i];
                paper.Add(
                    depot.Depot, line.Spreader, Word(line.Item).Key, line.Measured.Value, line.Measured.StandardUncertainty, line.Adjusted.Value,
                    line.Adjusted.StandardUncertainty, depot.Result?.Chance, depot.Suspect is { } suspect && suspect.Places.Contains(i) ? "yes" : "");
            }
        }

        return paper;
    }

    /// <summary>What fits, and what is most likely wrong.</summary>
    internal static string Verdict(SeasonLedger depot, Show show)
    {
        if (depot.Result is not { } result) return show.Say("Nothing to balance: tickets, logs or surveys are missing.");
        if (depot.Suspect is not { } suspect)
            return show.Say($"Tickets, piles and logs agree within their uncertainties (chance of a misfit as large: {show.Percent(result.Chance)}).");
        return Wrong(depot, suspect, show) + " " + show.Say("Put that right and balance again; until then the balanced values lean on it.");
    }

    private static string Wrong(SeasonLedger depot, Suspect suspect, Show show)
    {
        var chance = suspect.Chance < 1e-4 ? show.Say($"less than {show.Percent(1e-4)}") : show.Percent(suspect.Chance);
        if (suspect.Source is { } source)
            return show.Say($"They do not agree. Most likely wrong: {Phrase.OfFamily(source)}, by {Times(suspect.Size, show)} times its standard uncertainty (chance that this is by accident: {chance}).");
        var names = string.Join(show.Say(" or "), suspect.Places.Select(place => $"{show.Say(Word(depot.Lines[place].Item))} {Excerpt.Of(depot.Lines[place].Spreader)}".Trim()));
        var size = show.Mass(Math.Abs(suspect.Size), 3);
        return suspect.Size > 0
            ? show.Say($"They do not agree. Most likely wrong: {names}, too high by {size} (chance that this is by accident: {chance}).")
            : show.Say($"They do not agree. Most likely wrong: {names}, too low by {size} (chance that this is by accident: {chance}).");
    }

    internal static Phrase Word(LedgerItem item) => item switch
    {
        LedgerItem.PileFirst => "pile at the begin",
        LedgerItem.PileLast => "pile at the end",
        LedgerItem.Delivered => "deliveries",
        LedgerItem.Loads => "loads",
        LedgerItem.Returns => "returns",
        _ => "logged",
    };

    internal static string Mass(Measured mass, Show show) =>
        $"{show.Mass(mass.Value, 5)} ± {show.Mass(WelchSatterthwaite.Of(mass, 0.95).Expanded, 2)}";

    private static string Times(double size, Show show) =>
        QuantityText.WriteNumber(Math.Abs(size), show.Culture, NumberForm.Decimals(1));
}
