using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Applied;

namespace Lanewright.Season;

/// <summary>A balance with what was not taken.</summary>
/// <param name="Answer">The ledgers.</param>
/// <param name="Refused">Rows that were refused.</param>
/// <param name="Outside">Tickets that lie near no storm.</param>
internal sealed record SeasonBalance(BalanceAnswer Answer, IReadOnlyList<RefusedRow> Refused, int Outside = 0);

/// <summary>The balances of the season's files and logs, worked out once and kept until one of them changes.</summary>
internal sealed class SeasonBalances(SeasonSource season) : IDisposable
{
    private readonly SemaphoreSlim working = new(1, 1);
    private string asOf = "";
    private SeasonBalance? depots;
    private SeasonBalance? storms;

    /// <inheritdoc/>
    public void Dispose() => working.Dispose();

    /// <summary>By depot; null without tickets.</summary>
    internal async Task<SeasonBalance?> DepotsAsync(CancellationToken stop)
    {
        if (!season.Has("tickets.csv")) return null;
        await working.WaitAsync(stop);
        try
        {
            await RefreshAsync(stop);
            return depots ??= await OfDepotsAsync(stop);
        }
        finally
        {
            working.Release();
        }
    }

    /// <summary>By storm of each depot, without its pile, those that do not agree first; null without tickets or logs.</summary>
    internal async Task<SeasonBalance?> StormsAsync(CancellationToken stop)
    {
        if (!season.Has("tickets.csv") || season.Ledgers is not { HasRows: true }) return null;
        await working.WaitAsync(stop);
        try
        {
            await RefreshAsync(stop);
            return storms ??= await OfStormsAsync(stop);
        }
        finally
        {
            working.Release();
        }
    }

    private async Task RefreshAsync(CancellationToken stop)
    {
        var now = await season.StampAsync(stop);
        if (now != asOf) (depots, storms, asOf) = (null, null, now);
    }

    private async Task<SeasonBalance> OfDepotsAsync(CancellationToken stop)
    {
        var files = season.Open(TextCulture.UnitedStates);
        var (tickets, piles) = (files.Tickets(), season.Has("piles.csv") ? files.Piles() : []);
        List<LoggedMass> logged = [];
        if (season.Has("applied.csv") && season.Has("constants.csv"))
        {
            logged = files.Applied(Path.Combine(season.Place!, "applied.csv"), files.Constants());
        }
        else
        {
            try
            {
                logged = SeasonFolder.FromLogs(await season.Ledgers!.OfAsync(ledger => ledger with { By = AppliedBy.Spreader }, stop), SeasonFolder.Depots(tickets));
            }
            catch (LogException wrong)
            {
                files.Refused.Add(new("logs", 0, wrong.Said));
            }
        }

        return new(new(SeasonLedger.Of(tickets, piles, logged)), files.Refused);
    }

    private async Task<SeasonBalance> OfStormsAsync(CancellationToken stop)
    {
        var files = season.Open(TextCulture.UnitedStates);
        try
        {
            var book = await season.Ledgers!.BookAsync(files.TimedTickets(), stop);
            var ledgers = SeasonLedger.Of(book.Tickets, [], book.Logged);
            return new(new([.. ledgers.OrderBy(ledger => ledger.Suspect is null)]), files.Refused, book.Outside);
        }
        catch (LogException wrong)
        {
            files.Refused.Add(new("logs", 0, wrong.Said));
            return new(new([]), files.Refused);
        }
    }
}
