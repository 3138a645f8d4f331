using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Storage;

namespace Lanewright.Season;

/// <summary>What a season's files say of the spreaders' drift.</summary>
/// <param name="Calibrations">Of spreaders that <c>constants.csv</c> names: the latest constant, as the look that others are held against.</param>
/// <param name="Looks">Looks at each spreader by its number, in no order.</param>
/// <param name="Refused">Rows that were not taken.</param>
internal sealed record SeasonLooks(
    IReadOnlyDictionary<string, DriftLook> Calibrations, ILookup<string, DriftLook> Looks, IReadOnlyList<RefusedRow> Refused)
{
    internal static readonly SeasonLooks None = new(
        new Dictionary<string, DriftLook>(), Array.Empty<DriftLook>().ToLookup(_ => "", StringComparer.Ordinal), []);
}

/// <summary>The season that stands in the folder <c>season</c> of the data folder, beside the records and the logs.</summary>
internal sealed class SeasonSource(EntryStore store) : IDisposable
{
    private const string Folder = "season";
    private readonly SemaphoreSlim working = new(1, 1);
    private SeasonLedgers? ledgers;
    private SeasonBalances? balances;
    private (string Stamp, SeasonLooks Looks)? known;

    /// <summary>Its folder; null when the records are in a database without one.</summary>
    internal string? Place => store.Place.DataFolder is { } data ? Path.Combine(data, Folder) : null;

    /// <summary>Whether it is a practice season: only those have a truth.</summary>
    internal bool IsInvented => Has("truth.csv");

    internal bool Has(string file) => Place is { } place && File.Exists(Path.Combine(place, file));

    internal SeasonFolder Open(TextCulture culture) => new(Place!, culture);

    /// <summary>The constants that turn logged counts into mass: those stated beside the tickets come before those of the records.</summary>
    /// <exception cref="LogException">They cannot be read.</exception>
    internal async Task<IReadOnlyList<SeasonConstant>> ConstantsAsync(CancellationToken stop) =>
        Has("constants.csv") ? ConstantTable.Read(Path.Combine(Place!, "constants.csv")) : await RecordConstants.OfAsync(store, stop);

    /// <summary>Changes when a file of the season does, logs are taken in, or other constants hold.</summary>
    internal async Task<string> StampAsync(CancellationToken stop)
    {
        if (Has("constants.csv")) return Stamp();
        var adopted = await store.LatestAdoptedAsync(stop);
        return $"{Stamp()}|{adopted.Count} {(adopted.Count == 0 ? 0 : adopted.Max(one => one.DecidedAt.UtcTicks))}";
    }

    /// <summary>Changes when a file of the season does, or logs are taken in; empty without either.</summary>
    internal string Stamp()
    {
        if (Place is not { } place || !(Directory.Exists(place) || Directory.Exists(Path.Combine(store.Place.DataFolder!, "logs")))) return "";
        var imports = new DirectoryInfo(Path.Combine(store.Place.DataFolder!, "logs", "imports"));
        return string.Join('|', (Directory.Exists(place) ? new DirectoryInfo(place).EnumerateFiles("*.csv") : []).OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file => $"{file.Name} {file.Length} {file.LastWriteTimeUtc.Ticks}")
            .Concat(imports.Exists ? imports.EnumerateDirectories().OrderBy(one => one.Name, StringComparer.Ordinal).Select(one => $"{one.Name} {one.LastWriteTimeUtc.Ticks}") : []));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        working.Dispose();
        ledgers?.Dispose();
        balances?.Dispose();
    }

    /// <summary>Tickets, piles and logs held against each other.</summary>
    internal SeasonBalances Balances => LazyInitializer.EnsureInitialized(ref balances, () => new SeasonBalances(this));

    /// <summary>What the logs say; null when the records are in a database without a folder.</summary>
    internal SeasonLedgers? Ledgers => store.Place.DataFolder is { } data
        ? LazyInitializer.EnsureInitialized(ref ledgers, () => new SeasonLedgers(data, this)) : null;

    /// <summary>The looks that the season's files and the logs hold; worked out again only when they or the adopted constants changed.</summary>
    internal async Task<SeasonLooks> LooksAsync(CancellationToken stop)
    {
        if (Stamp().Length == 0) return SeasonLooks.None;
        await working.WaitAsync(stop);
        try
        {
            var stamp = await StampAsync(stop);
            if (known is not { } now || now.Stamp != stamp) known = (stamp, await ReadAsync(stop));
            return known.Value.Looks;
        }
        finally
        {
            working.Release();
        }
    }

    private async Task<SeasonLooks> ReadAsync(CancellationToken stop)
    {
        var season = Open(TextCulture.UnitedStates);
        var calibrations = Has("constants.csv")
            ? season.Constants().GroupBy(constant => constant.Spreader, StringComparer.Ordinal)
                .ToDictionary(own => own.Key, own => DriftAnswer.Calibration(own.MaxBy(constant => constant.From)!), StringComparer.Ordinal)
            : [];
        var looks = (Has("verifications.csv") ? season.Checks() : []).Select(check => (check.Spreader, Look: DriftAnswer.Look(check))).ToList();
        if (Has("tickets.csv") && Ledgers is { HasRows: true } ledgers)
        {
            try
            {
                looks.AddRange(StormLoads.Looks((await ledgers.BookAsync(season.TimedTickets(), stop)).Loads));
            }
            catch (LogException wrong)
            {
                season.Refused.Add(new("logs", 0, wrong.Said));
            }
        }

        return new(calibrations, looks.ToLookup(one => one.Spreader, one => one.Look, StringComparer.Ordinal), season.Refused);
    }
}
