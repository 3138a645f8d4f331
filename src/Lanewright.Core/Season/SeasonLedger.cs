using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>What a ticket is about.</summary>
public enum TicketKind
{
    /// <summary>From the pile to a spreader.</summary>
    Load,

    /// <summary>From a spreader back to the pile.</summary>
    Return,

    /// <summary>From the supplier to the pile.</summary>
    Delivery,
}

/// <summary>A load ticket.</summary>
/// <param name="Depot">The depot.</param>
/// <param name="Spreader">The spreader; empty for a delivery.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Net">Net mass with the water in it, kg; the scale's gain is one source for all its tickets.</param>
public sealed record LoadTicket(string Depot, string Spreader, TicketKind Kind, Measured Net);

/// <summary>A depot's pile at the begin and the end of the time.</summary>
/// <param name="Depot">The depot.</param>
/// <param name="First">Mass at the begin, kg.</param>
/// <param name="Last">Mass at the end, kg.</param>
public sealed record PilePair(string Depot, Measured First, Measured Last);

/// <summary>Mass that a spreader's log says it spread.</summary>
/// <param name="Depot">The depot.</param>
/// <param name="Spreader">The spreader.</param>
/// <param name="Mass">kg.</param>
public sealed record LoggedMass(string Depot, string Spreader, Measured Mass);

/// <summary>What a line of the ledger is.</summary>
public enum LedgerItem
{
    /// <summary>The pile at the begin.</summary>
    PileFirst,

    /// <summary>Deliveries to the pile.</summary>
    Delivered,

    /// <summary>The pile at the end.</summary>
    PileLast,

    /// <summary>A spreader's loads.</summary>
    Loads,

    /// <summary>A spreader's returns.</summary>
    Returns,

    /// <summary>What a spreader's log says.</summary>
    Logged,
}

/// <summary>A line of the ledger.</summary>
/// <param name="Item">What it is.</param>
/// <param name="Spreader">The spreader; empty for the depot.</param>
/// <param name="Measured">As measured, kg.</param>
/// <param name="Adjusted">As the balance has it, kg.</param>
public sealed record LedgerLine(LedgerItem Item, string Spreader, Measured Measured, Measured Adjusted);

/// <summary>
/// The balance of a depot and its spreaders: pile at the begin + deliveries - loads + returns = pile at the end, and for each
/// spreader loads - returns = what it logged. Without two surveys the pile's balance is left out; a spreader without tickets or
/// without a log has no balance of its own.
/// </summary>
/// <param name="Depot">The depot.</param>
/// <param name="Lines">What was measured and what the balance makes of it; <see cref="Suspect.Places"/> point here.</param>
/// <param name="Result">The reconciliation; null when there is nothing to balance.</param>
/// <param name="Spread">Mass spread by the depot's spreaders, as the balance has it, kg.</param>
public sealed record SeasonLedger(string Depot, IReadOnlyList<LedgerLine> Lines, Reconciliation? Result, Measured Spread)
{
    /// <summary>Chance below which a suspect is named.</summary>
    public const double Named = 0.05;

    /// <summary>The suspect to name; null when everything fits.</summary>
    public Suspect? Suspect => Result is { Suspects: [var first, ..] } && first.Chance < Named ? first : null;

    /// <summary>The ledgers of all depots, by name.</summary>
    public static IReadOnlyList<SeasonLedger> Of(
        IReadOnlyList<LoadTicket> tickets, IReadOnlyList<PilePair> piles, IReadOnlyList<LoggedMass> logged)
    {
        ArgumentNullException.ThrowIfNull(tickets);
        ArgumentNullException.ThrowIfNull(piles);
        ArgumentNullException.ThrowIfNull(logged);
        return
        [
            .. tickets.Select(t => t.Depot).Concat(piles.Select(p => p.Depot)).Concat(logged.Select(l => l.Depot)).Distinct()
                .Order(StringComparer.Ordinal)
                .Select(depot => OfDepot(
                    depot, [.. tickets.Where(t => t.Depot == depot)], piles.FirstOrDefault(p => p.Depot == depot),
                    [.. logged.Where(l => l.Depot == depot)])),
        ];
    }

    private static SeasonLedger OfDepot(string depot, List<LoadTicket> tickets, PilePair? pile, List<LoggedMass> logged)
    {
        var (items, balances, stock) = (new List<(LedgerItem Item, string Spreader, Measured Value)>(), new List<Balance>(), new List<(int, double)>());
        int Add(LedgerItem item, string spreader, Measured value)
        {
            items.Add((item, spreader, value));
            return items.Count - 1;
        }

        if (pile is not null)
        {
            stock.Add((Add(LedgerItem.PileFirst, "", pile.First), 1));
            stock.Add((Add(LedgerItem.PileLast, "", pile.Last), -1));
        }

        if (Sum(TicketKind.Delivery, "") is { } delivered) stock.Add((Add(LedgerItem.Delivered, "", delivered), 1));
        var spread = new List<(int Place, double Factor)>();
        foreach (var spreader in tickets.Where(t => t.Kind is not TicketKind.Delivery).Select(t => t.Spreader)
            .Concat(logged.Select(l => l.Spreader)).Distinct().Order(StringComparer.Ordinal))
        {
            var own = new List<(int, double)>();
            if (Sum(TicketKind.Load, spreader) is { } loads) own.Add((Add(LedgerItem.Loads, spreader, loads), 1));
            if (Sum(TicketKind.Return, spreader) is { } returns) own.Add((Add(LedgerItem.Returns, spreader, returns), -1));
            stock.AddRange(own.Select(term => (term.Item1, -term.Item2)));
            var logs = logged.Where(l => l.Spreader == spreader).Select(l => l.Mass).ToArray();
            if (logs.Length == 0)
            {
                spread.AddRange(own);
                continue;
            }

            var place = Add(LedgerItem.Logged, spreader, Measured.Sum(logs));
            spread.Add((place, 1));
            if (own.Count > 0) balances.Add(new(spreader, [.. own, (place, -1)]));
        }

        if (pile is not null) balances.Add(new(depot, stock));
        var values = items.Select(item => item.Value).ToList();
        var result = balances.Count > 0 ? Reconciliation.Of(values, balances) : null;
        var adjusted = result?.Adjusted ?? values;
        return new(
            depot, [.. items.Select((item, i) => new LedgerLine(item.Item, item.Spreader, item.Value, adjusted[i]))], result,
            Measured.Linear([.. spread.Select(term => adjusted[term.Place])], [.. spread.Select(term => term.Factor)]));

        Measured? Sum(TicketKind kind, string spreader)
        {
            var some = tickets.Where(t => t.Kind == kind && (kind is TicketKind.Delivery || t.Spreader == spreader)).Select(t => t.Net).ToArray();
            return some.Length == 0 ? null : Measured.Sum(some);
        }
    }
}
