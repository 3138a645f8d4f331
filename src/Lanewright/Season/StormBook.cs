using Lanewright.Core.Season;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Store;

namespace Lanewright.Season;

/// <summary>A ticket and when it was weighed.</summary>
internal sealed record TimedTicket(DateTimeOffset At, LoadTicket Ticket);

/// <summary>Tickets and logs of a season, storm by storm.</summary>
/// <param name="Loads">What each spreader was loaded with in each storm, against its log.</param>
/// <param name="Tickets">Tickets of spreaders, the depot's name with the storm behind it; a hopper's rest stands as a return of nothing.</param>
/// <param name="Logged">Logged masses, named likewise.</param>
/// <param name="Outside">How many tickets lie near no storm.</param>
internal sealed record StormBook(IReadOnlyList<StormLoads> Loads, IReadOnlyList<LoadTicket> Tickets, IReadOnlyList<LoggedMass> Logged, int Outside)
{
    // Pauses between storms are longer than twice this.
    private static readonly TimeSpan Near = TimeSpan.FromHours(6);

    /// <summary>Puts tickets and logs of a data folder together.</summary>
    /// <param name="folder">Where the logs are.</param>
    /// <param name="tickets">All tickets.</param>
    /// <param name="constants">What turns counts into mass.</param>
    /// <param name="listed">Storms; null: found from pauses of the logs.</param>
    /// <exception cref="Logs.LogException">The logs cannot be read.</exception>
    internal static StormBook Of(LogFolder folder, IReadOnlyList<TimedTicket> tickets, IReadOnlyList<SeasonConstant> constants, IReadOnlyList<Storm>? listed)
    {
        var question = Question(new() { Constants = constants, Storms = listed });
        return Of(AppliedLedger.Compute(folder, question), listed ?? AppliedLedger.FindStorms(folder, question), tickets);
    }

    /// <summary>What a ledger is asked for it.</summary>
    internal static AppliedQuestion Question(AppliedQuestion question) => question with { By = AppliedBy.Spreader, With = [AppliedBy.Storm, AppliedBy.Route] };

    /// <summary>Puts tickets and a ledger that was asked for by <see cref="Question"/> together.</summary>
    internal static StormBook Of(AppliedAnswer answer, IReadOnlyList<Storm> storms, IReadOnlyList<TimedTicket> tickets)
    {
        var logs = answer.Lines.ToLookup(line => (Spreader: line.Names[0], Storm: line.Names[1]));
        var ofDepots = new Dictionary<string, List<Storm>>(StringComparer.Ordinal);
        var (loads, moved, logged, outside) = (new List<StormLoads>(), new List<LoadTicket>(), new List<LoggedMass>(), 0);
        foreach (var own in tickets.Where(one => one.Ticket.Spreader.Length > 0).GroupBy(one => (one.Ticket.Depot, one.Ticket.Spreader))
            .OrderBy(own => own.Key.Depot, StringComparer.Ordinal).ThenBy(own => own.Key.Spreader, StringComparer.Ordinal))
        {
            var (depot, spreader) = own.Key;
            if (!ofDepots.TryGetValue(depot, out var there)) ofDepots.Add(depot, there = [.. storms.Where(storm => storm.Depot is null || storm.Depot == depot)]);
            foreach (var storm in own.GroupBy(one => StormAt(there, one.At)))
            {
                if (storm.Key is not { } of)
                {
                    outside += storm.Count();
                    continue;
                }

                var name = $"{depot}, {of.Name}";
                moved.AddRange(storm.Select(one => one.Ticket with { Depot = name }));
                // At the begin and at the end.
                moved.Add(new(name, spreader, TicketKind.Return, Measured.Of(0, StormLoads.HopperLeft * Math.Sqrt(2), ErrorSource.Normal($"hopper:{spreader}:{of.Name}", "left in the hopper"))));
                var lines = logs[(spreader, of.Name)].ToList();
                if (lines.Count == 0 || lines.Any(line => line.CountsWithoutConstant > 0)) continue;
                var mass = Measured.Sum([.. lines.Select(line => line.Mass)]);
                logged.Add(new(name, spreader, mass));
                var loaded = Measured.Sum([.. storm.Select(one => one.Ticket.Kind is TicketKind.Return ? -one.Ticket.Net : one.Ticket.Net)]);
                loads.Add(new()
                {
                    Spreader = spreader, Depot = depot, Storm = of.Name, Day = DateOnly.FromDateTime(of.To.UtcDateTime), Loaded = loaded, Logged = mass.Value,
                    Rows = lines.Sum(line => line.Rows), Holes = lines.Sum(line => line.Holes), Routes = [.. lines.Select(line => line.Names[2])],
                    Calibration = mass.Value > 0 ? mass.StandardUncertainty / mass.Value : 0,
                });
            }
        }

        return new(loads, moved, logged, outside);
    }

    private static Storm? StormAt(List<Storm> storms, DateTimeOffset at)
    {
        var nearest = storms.MinBy(Away);
        return nearest is not null && Away(nearest) <= Near ? nearest : null;

        TimeSpan Away(Storm storm) => at < storm.From ? storm.From - at : at >= storm.To ? at - storm.To : TimeSpan.Zero;
    }
}
