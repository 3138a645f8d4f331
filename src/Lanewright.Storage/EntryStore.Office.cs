using System.Linq.Expressions;
using Lanewright.Storage.Database;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

/// <summary>The test that decides how a spreader stands.</summary>
/// <param name="Id">The test.</param>
/// <param name="Spreader">The spreader's identity in the register.</param>
/// <param name="Date">Day of the test as typed.</param>
/// <param name="DecidedAt">When it was decided.</param>
/// <param name="Results">Its results.</param>
public sealed record LatestTest(
    string Id, string Spreader, string Date, DateTimeOffset DecidedAt, IReadOnlyList<TestResultRow> Results);

/// <summary>The column by which a list of tests is ordered.</summary>
public enum TestOrder
{
    /// <summary>The latest touched first.</summary>
    Touched,

    /// <summary>Day of the test.</summary>
    Day,

    /// <summary>Number of the spreader.</summary>
    Spreader,

    /// <summary>Title.</summary>
    Title,

    /// <summary>What was decided.</summary>
    Decision,
}

/// <summary>What a check found.</summary>
/// <param name="Test">The check.</param>
/// <param name="LastNumber">Number of its latest entry.</param>
/// <param name="Spreader">The spreader's identity in the register.</param>
/// <param name="Title">Title as typed.</param>
/// <param name="Date">Day as typed.</param>
/// <param name="Share">Delivered by asked.</param>
/// <param name="ShareExpanded">Expanded uncertainty of the share.</param>
public sealed record CheckFound(
    string Test, long LastNumber, string Spreader, string Title, string Date, double Share, double ShareExpanded);

public sealed partial class EntryStore
{
    /// <summary>Checks with a result from a day on, whether decided or not but not rejected; in order of their days.</summary>
    /// <param name="day">The first day.</param>
    /// <param name="spreader">Of one spreader only; null for all.</param>
    /// <param name="stop">Ends the wait.</param>
    public Task<IReadOnlyList<CheckFound>> ChecksSinceAsync(DateOnly day, string? spreader, CancellationToken stop = default)
    {
        var query = new TestQuery { Since = Day(day), Spreader = spreader };
        return WithAsync<IReadOnlyList<CheckFound>>(async context =>
        {
            var checks = Filtered(context.Tests, query).Where(row => row.Kind == "verification" && row.Spreader != null && row.Verdict != "reject");
            var found = await context.TestResults.Where(result => result.Position == 0 && result.Share > 0 && result.ShareExpanded != null)
                .Join(checks, result => result.Test, test => test.Id, (result, test) => new CheckFound(
                    test.Id, test.LastNumber, test.Spreader!, test.Title, test.Date, result.Share!.Value, result.ShareExpanded!.Value)).ToListAsync(stop);
            return [.. found.OrderBy(check => check.Date, StringComparer.Ordinal).ThenBy(check => check.LastNumber)];
        });
    }

    /// <summary>For each spreader of the register the drop test adopted last, with its results.</summary>
    public Task<IReadOnlyList<LatestTest>> LatestAdoptedAsync(CancellationToken stop = default) =>
        LatestAsync(row => row.Kind == "drop-test" && row.Verdict == "adopt", stop);

    /// <summary>For each spreader of the register the check decided last, with its results.</summary>
    public Task<IReadOnlyList<LatestTest>> LatestChecksAsync(CancellationToken stop = default) =>
        LatestAsync(row => row.Kind == "verification" && row.Verdict != null, stop);

    /// <summary>
    /// Tests ordered by a column, some of them from a place on, and how many there are. Words that look like a day, a month
    /// or a year are looked for in the day too.
    /// </summary>
    /// <param name="query">Which tests; <see cref="TestQuery.Before"/> is for the API and not used.</param>
    /// <param name="order">The column.</param>
    /// <param name="reversed">Whether the order is turned around.</param>
    /// <param name="skip">How many tests are passed over.</param>
    /// <param name="stop">Ends the wait.</param>
    public Task<(IReadOnlyList<ListedTest> Tests, int Count)> TestsAsync(
        TestQuery query, TestOrder order, bool reversed, int skip, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        return WithAsync<(IReadOnlyList<ListedTest>, int)>(async context =>
        {
            var wanted = Filtered(context.Tests, query with { Before = null });
            // Only keys are sorted; the wide rows are fetched for the page alone.
            var ids = await Ordered(wanted, order, reversed).Skip(skip).Take(query.Most).Select(row => row.Id).ToListAsync(stop);
            // What fits on the first page has been counted already, without a second look at every test.
            var count = skip == 0 && ids.Count < query.Most ? ids.Count : await wanted.CountAsync(stop);
            var rows = (await WithResultsAsync(context, await context.Tests.Where(row => ids.Contains(row.Id)).ToListAsync(stop), stop))
                .ToDictionary(one => one.Test.Id, StringComparer.Ordinal);
            return ([.. ids.Where(rows.ContainsKey).Select(id => rows[id])], count);
        });
    }

    private Task<IReadOnlyList<LatestTest>> LatestAsync(Expression<Func<TestRow, bool>> wanted, CancellationToken stop) =>
        WithAsync<IReadOnlyList<LatestTest>>(async context =>
        {
            // One step into the index for each spreader, instead of a look at every test.
            var decided = context.Tests.Where(wanted).Where(row => row.DecidedAt != null);
            var found = await context.RegisterItems.Where(item => item.Kind == "spreader")
                .Select(item => decided.Where(row => row.Spreader == item.Id)
                    .OrderByDescending(row => row.DecidedAt).Select(row => row.Id).FirstOrDefault())
                .ToListAsync(stop);
            var latest = new List<LatestTest>();
            foreach (var ids in found.OfType<string>().Chunk(1000))
            {
                var results = (await context.TestResults.Where(result => ids.Contains(result.Test)).ToListAsync(stop)).ToLookup(result => result.Test);
                var rows = await context.Tests.Where(row => ids.Contains(row.Id))
                    .Select(row => new { row.Id, row.Spreader, row.Date, row.DecidedAt }).ToListAsync(stop);
                latest.AddRange(rows.Select(row => new LatestTest(
                    row.Id, row.Spreader!, row.Date, row.DecidedAt!.Value, [.. results[row.Id].OrderBy(result => result.Position)])));
            }

            return latest;
        });

    private static IQueryable<TestRow> Ordered(IQueryable<TestRow> tests, TestOrder order, bool reversed)
    {
        if (order is TestOrder.Touched)
            return reversed ? tests.OrderBy(row => row.LastNumber) : tests.OrderByDescending(row => row.LastNumber);
        Expression<Func<TestRow, string?>> key = order switch
        {
            TestOrder.Day => row => row.Date,
            TestOrder.Spreader => row => row.SpreaderName,
            TestOrder.Title => row => row.Title,
            _ => row => row.Verdict,
        };
        return (reversed ? tests.OrderByDescending(key) : tests.OrderBy(key)).ThenByDescending(row => row.LastNumber);
    }
}
