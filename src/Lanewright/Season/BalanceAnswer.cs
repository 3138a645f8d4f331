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
            yield return $"{Excerpt.Of(depot.Depot)}: spread {Mass(depot.Spread, show)}";
            var table = new TextTable(("", false), ("", false), ("measured", true), ("after balancing", true), ("moved", true));
            foreach (var line in depot.Lines)
            {
                table.Add(
                    Excerpt.Of(line.Spreader), Word(line.Item), Mass(line.Measured, show), Mass(line.Adjusted, show),
                    show.Mass(line.Adjusted.Value - line.Measured.Value, 3));
            }

            foreach (var line in table.Lines()) yield return line;
            yield return "  " + Verdict(depot, show);
            yield return "";
        }

        yield return $"All depots: spread {Mass(Measured.Sum([.. Depots.Select(depot => depot.Spread)]), show)}";
        yield return "± are half the widths of 95 % intervals; what scales, constants and densities share does not average out.";
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
                    depot.Depot, line.Spreader, Word(line.Item), line.Measured.Value, line.Measured.StandardUncertainty, line.Adjusted.Value,
                    line.Adjusted.StandardUncertainty, depot.Result?.Chance, depot.Suspect is { } suspect && suspect.Places.Contains(i) ? "yes" : "");
            }
        }

        return paper;
    }

    /// <summary>What fits, and what is most likely wrong.</summary>
    internal static string Verdict(SeasonLedger depot, Show show)
    {
        if (depot.Result is not { } result) return "Nothing to balance: tickets, logs or surveys are missing.";
        if (depot.Suspect is not { } suspect)
            return $"Tickets, piles and logs agree within their uncertainties (chance of a misfit as large: {show.Percent(result.Chance)}).";
        if (suspect.Source is { } source)
            return $"They do not agree. Most likely wrong: {source}, by {Times(suspect.Size, show)} its standard uncertainty (chance that this is by accident: {Chance(suspect.Chance, show)}). {Then}";
        var names = string.Join(" or ", suspect.Places.Select(place => $"{Word(depot.Lines[place].Item)} {Excerpt.Of(depot.Lines[place].Spreader)}".Trim()));
        return $"They do not agree. Most likely wrong: {names}, {(suspect.Size > 0 ? "too high" : "too low")} by {show.Mass(Math.Abs(suspect.Size), 3)}"
            + $" (chance that this is by accident: {Chance(suspect.Chance, show)}). {Then}";
    }

    private const string Then = "Put that right and balance again; until then the balanced values lean on it.";

    private static string Chance(double chance, Show show) => chance < 1e-4 ? "less than " + show.Percent(1e-4) : show.Percent(chance);

    internal static string Word(LedgerItem item) => item switch
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
        QuantityText.WriteNumber(Math.Abs(size), show.Culture, NumberForm.Decimals(1)) + " times";
}
