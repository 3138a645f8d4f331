using Lanewright.Core.Exchange;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>A spreader of the register with what the office shows beside it.</summary>
/// <param name="Id">Its identity in the register.</param>
/// <param name="Record">The record.</param>
/// <param name="Latest">Its latest adopted drop test; null for none.</param>
/// <param name="Due">Why it is due; null when it is not.</param>
public sealed record OfficeSpreader(string Id, RegisterSpreader Record, ListedTest? Latest, DueItem? Due);

/// <summary>Gathers what the pages show from the records.</summary>
internal sealed class OfficeData(EntryStore store, TimeProvider clock)
{
    internal EntryStore Store => store;

    internal async Task<IReadOnlyList<OfficeSpreader>> SpreadersAsync(CancellationToken stop)
    {
        var items = await store.RegisterAsync(stop);
        var latest = (await store.LatestAdoptedAsync(stop)).ToDictionary(one => one.Test.Spreader!, StringComparer.Ordinal);
        var checks = (await store.LatestChecksAsync(stop)).ToDictionary(one => one.Test.Spreader!, StringComparer.Ordinal);
        var changes = (await store.EventsAsync(null, stop)).ToLookup(one => one.Spreader, StringComparer.Ordinal);
        var prices = items.Where(item => item.Kind == "material")
            .Select(item => Read(item, RegisterReader.Material)).OfType<RegisterMaterial>()
            .GroupBy(material => material.Material.Name, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.First().PricePerTonne, StringComparer.Ordinal);
        var spreaders = items.Where(item => item.Kind == "spreader")
            .Select(item => (item.Id, Record: Read(item, RegisterReader.Spreader)))
            .Where(one => one.Record is not null).Select(one => (one.Id, Record: one.Record!)).ToList();
        var states = spreaders.ToDictionary(one => one.Id, one => State(one.Id, one.Record), StringComparer.Ordinal);
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var due = DueList.Of(states.Values, RulesOf(items), today).ToDictionary(item => item.Spreader);
        return
        [
            .. spreaders.Where(one => !one.Record.Retired).OrderBy(one => one.Record.Spreader.Id, StringComparer.Ordinal)
                .Select(one => new OfficeSpreader(
                    one.Id, one.Record, latest.GetValueOrDefault(one.Id), due.GetValueOrDefault(one.Record))),
        ];

        CalibrationState State(string id, RegisterSpreader record)
        {
            var test = latest.GetValueOrDefault(id);
            var check = checks.GetValueOrDefault(id);
            var failed = check is not null && (test is null || check.Test.LastNumber > test.Test.LastNumber)
                ? check.Results.FirstOrDefault(result => result.Conformity == "fail")?.Share
                : null;
            var words = RegisterReader.Changes.ToDictionary(word => word.Text, word => word.Value, StringComparer.Ordinal);
            return new(
                record, test is null ? null : OfficeText.ReadDay(test.Test.Date), failed,
                [
                    .. changes[id].Where(one => words.ContainsKey(one.Event) && OfficeText.ReadDay(one.Date) is not null)
                        .Select(one => (words[one.Event], OfficeText.ReadDay(one.Date)!.Value)),
                ],
                prices.GetValueOrDefault(record.Material));
        }
    }

    /// <summary>The yard's rules; the usual ones where nothing, or nothing readable, is written down.</summary>
    internal async Task<YardRules> RulesAsync(CancellationToken stop) =>
        RulesOf(await store.RegisterAsync(RegisterKind.Rules.Word, stop));

    /// <summary>A list of the register.</summary>
    internal async Task<RegisterList> ListAsync(RegisterKind kind, CancellationToken stop) => new(
        kind,
        [
            .. (await store.RegisterAsync(kind.Word, stop)).Select(item => new RegisterRow(item, RegisterPayload.Texts(item.Payload)))
                .OrderBy(row => row.Item.Retired).ThenBy(row => row.Texts.GetValueOrDefault(kind.Key, ""), StringComparer.Ordinal),
        ]);

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
            suggestions[named.Word] = [.. (await ListAsync(named, stop)).Rows.Where(row => !row.Item.Retired).Select(row => row.Texts.GetValueOrDefault(named.Key, ""))];
        }

        return suggestions;
    }

    internal async Task<IReadOnlyList<RegisterPerson>> PeopleAsync(CancellationToken stop) =>
    [
        .. (await store.RegisterAsync(RegisterKind.Person.Word, stop))
            .Select(item => Read(item, RegisterReader.Person)).OfType<RegisterPerson>()
            .OrderBy(person => person.Name, StringComparer.Ordinal),
    ];

    private static YardRules RulesOf(IReadOnlyList<RegisterItem> items) =>
        items.Where(item => item.Kind == RegisterKind.Rules.Word).Select(item => Read(item, RegisterReader.Rules)).FirstOrDefault()
        ?? new();

    // A record that cannot be read is left out here and stays as it is in the register.
    private static T? Read<T>(RegisterItem item, Func<Fields, T?> read)
        where T : class =>
        TreeFields.Read(JsonTree.Read(item.Payload), TextCulture.Invariant, read).Value;
}
