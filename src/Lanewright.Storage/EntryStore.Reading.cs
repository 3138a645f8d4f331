using System.Text.RegularExpressions;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

/// <summary>A test in a list, with its results.</summary>
/// <param name="Test">The test.</param>
/// <param name="Results">Its results; for an open loop one for each drive setting.</param>
public sealed record ListedTest(TestRow Test, IReadOnlyList<TestResultRow> Results);

/// <summary>Which tests are wanted.</summary>
public sealed record TestQuery
{
    /// <summary>Most tests of one answer.</summary>
    public const int MostTests = 500;

    /// <summary>Only tests that nobody has decided yet.</summary>
    public bool OpenOnly { get; init; }

    /// <summary>Only tests of this spreader (identity in the register); null for all.</summary>
    public string? Spreader { get; init; }

    /// <summary>Words that must all be found in title, spreader, place, people, material or day; null for all.</summary>
    public string? Words { get; init; }

    /// <summary>Only tests of this day (<c>2026-09-01</c>) or later; null for all.</summary>
    public string? Since { get; init; }

    /// <summary>Only tests last touched before this number, for the next page; null from the latest on.</summary>
    public long? Before { get; init; }

    /// <summary>How many at most, 1 to <see cref="MostTests"/>.</summary>
    public int Most { get; init; } = 100;
}

/// <summary>How a scale was used.</summary>
/// <param name="Scale">Its name as typed in the tests.</param>
/// <param name="Tests">How many tests it weighed.</param>
/// <param name="First">Day of the first.</param>
/// <param name="Last">Day of the last.</param>
public sealed record ScaleUse(string Scale, int Tests, string First, string Last);

public sealed partial class EntryStore
{
    /// <summary>Entries in order of number.</summary>
    /// <param name="after">Only those with a higher number.</param>
    /// <param name="subject">Only those about this; null for all.</param>
    /// <param name="kinds">Only these kinds; null for all.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="stop">Ends the wait.</param>
    public Task<IReadOnlyList<Entry>> ReadAsync(
        long after = 0, string? subject = null, IReadOnlyList<string>? kinds = null, int most = int.MaxValue,
        CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<Entry>>(async context =>
        {
            var entries = context.Entries.Where(entry => entry.Number > after);
            if (subject is not null) entries = entries.Where(entry => entry.Subject == subject);
            if (kinds is not null) entries = entries.Where(entry => kinds.Contains(entry.Kind));
            return await entries.OrderBy(entry => entry.Number).Take(most).ToListAsync(stop);
        });

    /// <summary>An entry by its id; null when the records do not have it.</summary>
    public Task<Entry?> FindAsync(string id, CancellationToken stop = default) =>
        WithAsync(context => context.Entries.FirstOrDefaultAsync(entry => entry.Id == id, stop));

    /// <summary>The highest number and its hash; 0 and <see cref="EntryHash.First"/> when the records are empty.</summary>
    public Task<(long Number, string Hash)> LastAsync(CancellationToken stop = default) =>
        WithAsync(async context =>
        {
            var last = await context.Entries.OrderByDescending(entry => entry.Number)
                .Select(entry => new { entry.Number, entry.Hash }).FirstOrDefaultAsync(stop);
            return last is null ? (0L, EntryHash.First) : (last.Number, last.Hash);
        });

    /// <summary>A test as its entries say it is; null when there are none.</summary>
    public async Task<TestFold?> FoldAsync(string test, CancellationToken stop = default)
    {
        var entries = await ReadAsync(subject: test, stop: stop);
        var own = entries.Where(e => e.Kind.StartsWith(EntryKinds.TestPrefix, StringComparison.Ordinal)).ToList();
        return own.Count == 0 ? null : TestFold.Of(own);
    }

    /// <summary>A test's row and results; null when there is no such test.</summary>
    public async Task<ListedTest?> TestAsync(string test, CancellationToken stop = default)
    {
        var rows = await WithAsync(async context => new
        {
            Test = await context.Tests.FirstOrDefaultAsync(row => row.Id == test, stop),
            Results = await context.TestResults.Where(row => row.Test == test).OrderBy(row => row.Position).ToListAsync(stop),
        });
        return rows.Test is null ? null : new(rows.Test, rows.Results);
    }

    /// <summary>Tests, the latest touched first.</summary>
    public Task<IReadOnlyList<ListedTest>> TestsAsync(TestQuery query, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentOutOfRangeException.ThrowIfLessThan(query.Most, 1, nameof(query));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(query.Most, TestQuery.MostTests, nameof(query));
        return WithAsync<IReadOnlyList<ListedTest>>(async context =>
        {
            var tests = Filtered(context.Tests, query);
            var rows = await tests.OrderByDescending(row => row.LastNumber).Take(query.Most).ToListAsync(stop);
            return await WithResultsAsync(context, rows, stop);
        });
    }

    /// <summary>Every test of a day or later, with its results.</summary>
    public Task<IReadOnlyList<ListedTest>> TestsSinceAsync(DateOnly day, CancellationToken stop = default)
    {
        var query = new TestQuery { Since = Day(day) };
        return WithAsync<IReadOnlyList<ListedTest>>(async context =>
        {
            var tests = Filtered(context.Tests, query);
            var rows = await tests.OrderByDescending(row => row.LastNumber).ToListAsync(stop);
            var results = (await context.TestResults.Join(tests, result => result.Test, test => test.Id, (result, _) => result).ToListAsync(stop))
                .ToLookup(row => row.Test);
            return [.. rows.Select(row => new ListedTest(row, [.. results[row.Id].OrderBy(result => result.Position)]))];
        });
    }

    /// <summary>How often each scale, by its name as typed, weighed since a day; in no order.</summary>
    public Task<IReadOnlyList<ScaleUse>> ScaleUsesAsync(DateOnly since, CancellationToken stop = default)
    {
        var query = new TestQuery { Since = Day(since) };
        return WithAsync<IReadOnlyList<ScaleUse>>(async context => await Filtered(context.Tests, query).Where(row => row.Scale != "")
            .GroupBy(row => row.Scale)
            .Select(group => new ScaleUse(group.Key, group.Count(), group.Min(row => row.Date)!, group.Max(row => row.Date)!)).ToListAsync(stop));
    }

    /// <summary>Whether any test's data are made up for demonstration or practice.</summary>
    public Task<bool> AnyInventedAsync(CancellationToken stop = default) =>
        WithAsync(context => context.Tests.AnyAsync(row => row.Invented, stop));

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static IQueryable<TestRow> Filtered(IQueryable<TestRow> tests, TestQuery query)
    {
        if (query.OpenOnly) tests = tests.Where(row => row.State == TestRow.Open);
        if (query.Spreader is { } spreader) tests = tests.Where(row => row.Spreader == spreader);
#pragma warning disable CA1309 // Use ordinal string comparison: the database compares; days are digits, which all order alike.
        if (query.Since is { } since) tests = tests.Where(row => string.Compare(row.Date, since) >= 0);
#pragma warning restore CA1309
        if (query.Before is { } before) tests = tests.Where(row => row.LastNumber < before);
        foreach (var word in (query.Words ?? "").ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            tests = DayOrPart().IsMatch(word)
                ? tests.Where(row => row.Search.Contains(word) || row.Date.StartsWith(word))
                : tests.Where(row => row.Search.Contains(word));
        }

        return tests;
    }

    private static async Task<IReadOnlyList<ListedTest>> WithResultsAsync(
        RecordsContext context, List<TestRow> rows, CancellationToken stop)
    {
        var ids = rows.Select(row => row.Id).ToList();
        var results = (await context.TestResults.Where(row => ids.Contains(row.Test)).ToListAsync(stop)).ToLookup(row => row.Test);
        return [.. rows.Select(row => new ListedTest(row, [.. results[row.Id].OrderBy(result => result.Position)]))];
    }

    /// <summary>A year, a month or a day, as dates are typed.</summary>
    [GeneratedRegex(@"^\d{4}(-\d\d){0,2}$", RegexOptions.CultureInvariant)]
    private static partial Regex DayOrPart();

    /// <summary>The register's current records, in order of kind and identity.</summary>
    public Task<IReadOnlyList<RegisterItem>> RegisterAsync(CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<RegisterItem>>(async context =>
            await context.RegisterItems.OrderBy(item => item.Kind).ThenBy(item => item.Id).ToListAsync(stop));

    /// <summary>The register's current records of one kind, such as <c>spreader</c>, in order of identity.</summary>
    public Task<IReadOnlyList<RegisterItem>> RegisterAsync(string kind, CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<RegisterItem>>(async context =>
            await context.RegisterItems.Where(item => item.Kind == kind).OrderBy(item => item.Id).ToListAsync(stop));

    /// <summary>One current record of the register; null when there is none of this identity.</summary>
    public Task<RegisterItem?> RegisterItemAsync(string id, CancellationToken stop = default) =>
        WithAsync(context => context.RegisterItems.FirstOrDefaultAsync(item => item.Id == id, stop));

    /// <summary>What happened to a spreader, or to all when null, in the order received.</summary>
    public Task<IReadOnlyList<SpreaderEvent>> EventsAsync(string? spreader, CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<SpreaderEvent>>(async context => await context.SpreaderEvents
            .Where(one => spreader == null || one.Spreader == spreader).OrderBy(one => one.Number).ToListAsync(stop));

    /// <summary>What is in quarantine, in the order it came.</summary>
    public Task<IReadOnlyList<QuarantinedEntry>> QuarantineAsync(CancellationToken stop = default) =>
        WithAsync<IReadOnlyList<QuarantinedEntry>>(async context =>
            await context.Quarantine.OrderBy(one => one.Received).ThenBy(one => one.Hash).ToListAsync(stop));
}
