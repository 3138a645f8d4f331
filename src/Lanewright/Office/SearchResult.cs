using Lanewright.Core.Register;
using Lanewright.Storage;

namespace Lanewright.Office;

/// <summary>What the one search of the office found: the first few of each kind.</summary>
internal sealed record SearchResult(
    ListPage<OfficeSpreader> Spreaders, ListPage<ListedTest> Tests, ListPage<RegisterPerson> People)
{
    private const int Most = 20;

    internal static SearchResult None { get; } =
        new(ListPage<OfficeSpreader>.Empty, ListPage<ListedTest>.Empty, ListPage<RegisterPerson>.Empty);

    internal bool Nothing => Spreaders.Count + Tests.Count + People.Count == 0;

    internal static async Task<SearchResult> OfAsync(OfficeData data, ListQuery query, CancellationToken stop)
    {
        if (query.WordList.Count == 0) return None;
        var state = await data.SpreadersAsync(stop);
        var spreaders = state.InUse.Concat(state.Retired).Where(one => query.Finds(one.Search)).ToList();
        var people = (await data.PeopleAsync(stop)).Where(person => query.Finds(person.Name)).ToList();
        var (tests, count) = await data.Store.TestsAsync(new() { Words = query.Words, Most = Most }, TestOrder.Touched, false, 0, stop);
        return new(
            new([.. spreaders.Take(Most)], spreaders.Count), new(tests, count), new([.. people.Take(Most)], people.Count));
    }
}
