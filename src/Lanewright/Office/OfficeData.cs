using Lanewright.Core.Exchange;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>Gathers what the pages show from the records.</summary>
internal sealed class OfficeData(EntryStore store, TimeProvider clock) : IDisposable
{
    private static readonly Dictionary<string, SpreaderChange> ChangeWords =
        RegisterReader.Changes.ToDictionary(word => word.Text, word => word.Value, StringComparer.Ordinal);

    private readonly SemaphoreSlim working = new(1, 1);
    private SpreaderState? known;
    private string knownFiles = "";

    public void Dispose()
    {
        working.Dispose();
        Season.Dispose();
    }

    internal EntryStore Store => store;

    /// <summary>The season's files beside the records.</summary>
    internal SeasonSource Season { get; } = new(store);

    /// <summary>The spreaders as the records have them now; worked out again only when the records or the day changed.</summary>
    internal async Task<SpreaderState> SpreadersAsync(CancellationToken stop)
    {
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var (last, _) = await store.LastAsync(stop);
        var files = Season.Stamp();
        if (known is { } state && state.Last == last && state.Day == today && knownFiles == files) return state;
        await working.WaitAsync(stop);
        try
        {
            // Many requests at once after a change wait for one working out.
            if (known is not { } now || now.Last != last || now.Day != today || knownFiles != files) (known, knownFiles) = (await WorkOutAsync(last, today, stop), files);
            return known;
        }
        finally
        {
            working.Release();
        }
    }

    private async Task<SpreaderState> WorkOutAsync(long last, DateOnly today, CancellationToken stop)
    {
        var items = await store.RegisterAsync(stop);
        var latest = (await store.LatestAdoptedAsync(stop)).ToDictionary(one => one.Spreader, StringComparer.Ordinal);
        var checks = (await store.LatestChecksAsync(stop)).ToDictionary(one => one.Spreader, StringComparer.Ordinal);
        var found = (await store.ChecksSinceAsync(today.AddDays(-OfficeDrift.DaysBack), null, stop)).ToLookup(one => one.Spreader, StringComparer.Ordinal);
        var season = await Season.LooksAsync(stop);
        var changes = (await store.EventsAsync(null, stop)).ToLookup(one => one.Spreader, StringComparer.Ordinal);
        var prices = PricesOf(items);
        var rules = RulesOf(items);
        var read = items.Where(item => item.Kind == RegisterKind.Spreader.Word)
            .Select(item => (Item: item, Record: Read(item, RegisterReader.Spreader))).ToList();
        var spreaders = read.Where(one => one.Record is not null).Select(one => (one.Item, Record: one.Record!))
            .OrderBy(one => one.Record.Spreader.Id, NaturalOrder.Instance).ToList();
        var states = spreaders.Select(one => State(one.Item.Id, one.Record)).ToList();
        var due = DueList.Of(states, rules, today);
        var reasons = new Dictionary<RegisterSpreader, DueItem>(ReferenceEqualityComparer.Instance);
        foreach (var item in due) reasons.Add(item.Spreader, item);
        var all = spreaders.Select(one => new OfficeSpreader(
            one.Item.Id, one.Record, one.Item.Others.Length > 0, latest.GetValueOrDefault(one.Item.Id),
            reasons.GetValueOrDefault(one.Record))).ToList();
        var byRecord = new Dictionary<RegisterSpreader, OfficeSpreader>(ReferenceEqualityComparer.Instance);
        foreach (var one in all) byRecord.Add(one.Record, one);
        return new(
            last, today, [.. all.Where(one => !one.Record.Retired)], [.. all.Where(one => one.Record.Retired)],
            [.. read.Where(one => one.Record is null).Select(one => one.Item)],
            [.. due.Select(item => byRecord[item.Spreader])]);

        CalibrationState State(string id, RegisterSpreader record)
        {
            var test = latest.GetValueOrDefault(id);
            var check = checks.GetValueOrDefault(id);
            var failed = check is not null && (test is null || check.DecidedAt > test.DecidedAt)
                ? check.Results.FirstOrDefault(result => result.Conformity == "fail")?.Share
                : null;
            return new(
                record, test is null ? null : OfficeText.ReadDay(test.Date), failed,
                [
                    .. changes[id].Where(one => ChangeWords.ContainsKey(one.Event) && OfficeText.ReadDay(one.Date) is not null)
                        .Select(one => (ChangeWords[one.Event], OfficeText.ReadDay(one.Date)!.Value)),
                ],
                prices.GetValueOrDefault(record.Material))
            {
                DriftedShare = OfficeDrift.Outside(test, found[id], season, record.Spreader.Id, rules.Tolerance, today),
            };
        }
    }

    /// <summary>Prices of materials for 1,000 kg, by name; null where nobody said.</summary>
    internal async Task<IReadOnlyDictionary<string, double?>> PricesAsync(CancellationToken stop) =>
        PricesOf(await store.RegisterAsync(RegisterKind.Material.Word, stop));

    /// <summary>The yard's rules; the usual ones where nothing, or nothing readable, is written down.</summary>
    internal async Task<YardRules> RulesAsync(CancellationToken stop) =>
        RulesOf(await store.RegisterAsync(RegisterKind.Rules.Word, stop));

    /// <summary>A list of the register, those in use first.</summary>
    internal async Task<RegisterList> ListAsync(RegisterKind kind, ListQuery query, CancellationToken stop)
    {
        var rows = (await RowsAsync(kind, stop)).Where(row => query.Finds(row.Search)).ToList();
        var keys = kind.Fields.ToDictionary(
            field => field.Path, field => (Func<RegisterRow, IComparable?>)(row => row.Texts.GetValueOrDefault(field.Path)), StringComparer.Ordinal);
        keys["state"] = row => row.State;
        return new(kind, query, query.Take(rows, keys));
    }

    /// <summary>Every record of a kind, those in use first, in order of their names.</summary>
    internal async Task<IReadOnlyList<RegisterRow>> RowsAsync(RegisterKind kind, CancellationToken stop) =>
    [
        .. (await store.RegisterAsync(kind.Word, stop)).Select(item => new RegisterRow(item, RegisterPayload.Texts(item.Payload)))
            .OrderBy(row => row.Item.Retired).ThenBy(row => row.Texts.GetValueOrDefault(kind.Key, ""), NaturalOrder.Instance),
    ];

    /// <summary>Whether another record of the kind has a name already.</summary>
    internal async Task<bool> TakenAsync(RegisterKind kind, string name, string subject, CancellationToken stop) =>
        (await store.RegisterAsync(kind.Word, stop)).Any(item => item.Id != subject
            && string.Equals(OfficeText.Member(item.Payload, kind.Key), name, StringComparison.OrdinalIgnoreCase));

    /// <summary>What is offered while typing: the names of depots and materials.</summary>
    internal async Task<IReadOnlyDictionary<string, IReadOnlyList<string>>> SuggestionsAsync(RegisterKind kind, CancellationToken stop)
    {
        var suggestions = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        foreach (var named in new[] { RegisterKind.Depot, RegisterKind.Material })
        {
            if (kind == named || kind.Fields.All(field => field.Path != named.Word)) continue;
            suggestions[named.Word] = [.. (await RowsAsync(named, stop)).Where(row => !row.Item.Retired).Select(row => row.Texts.GetValueOrDefault(named.Key, ""))];
        }

        return suggestions;
    }

    internal async Task<IReadOnlyList<RegisterPerson>> PeopleAsync(CancellationToken stop) =>
    [
        .. (await store.RegisterAsync(RegisterKind.Person.Word, stop))
            .Select(item => Read(item, RegisterReader.Person)).OfType<RegisterPerson>()
            .OrderBy(person => person.Name, StringComparer.Ordinal),
    ];

    private static Dictionary<string, double?> PricesOf(IReadOnlyList<RegisterItem> items) =>
        items.Where(item => item.Kind == RegisterKind.Material.Word)
            .Select(item => Read(item, RegisterReader.Material)).OfType<RegisterMaterial>()
            .GroupBy(material => material.Material.Name, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.First().PricePerTonne, StringComparer.Ordinal);

    private static YardRules RulesOf(IReadOnlyList<RegisterItem> items) =>
        items.Where(item => item.Kind == RegisterKind.Rules.Word).Select(item => Read(item, RegisterReader.Rules)).FirstOrDefault()
        ?? new();

    // A record that cannot be read is left out here and stays as it is in the register.
    private static T? Read<T>(RegisterItem item, Func<Fields, T?> read)
        where T : class =>
        TreeFields.Read(JsonTree.Read(item.Payload), TextCulture.Invariant, read).Value;
}
