using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

public sealed partial class EntryStore
{
    /// <summary>For each spreader of the register the latest adopted drop test, with its results.</summary>
    public Task<IReadOnlyList<ListedTest>> LatestAdoptedAsync(CancellationToken stop = default) =>
        LatestAsync("drop-test", stop);

    /// <summary>For each spreader of the register the latest decided check, with its results.</summary>
    public Task<IReadOnlyList<ListedTest>> LatestChecksAsync(CancellationToken stop = default) =>
        LatestAsync("verification", stop);

    private Task<IReadOnlyList<ListedTest>> LatestAsync(string kind, CancellationToken stop) =>
        WithAsync<IReadOnlyList<ListedTest>>(async context =>
        {
            var wanted = context.Tests.Where(row => row.Kind == kind && row.Spreader != null);
            wanted = kind == "drop-test"
                ? wanted.Where(row => row.Verdict == "adopt")
                : wanted.Where(row => row.State == TestRow.Decided);
            var numbers = wanted.GroupBy(row => row.Spreader).Select(group => group.Max(row => row.LastNumber));
            var rows = await context.Tests.Where(row => numbers.Contains(row.LastNumber)).ToListAsync(stop);
            var results = (await context.TestResults
                .Where(result => context.Tests.Any(row => row.Id == result.Test && numbers.Contains(row.LastNumber)))
                .ToListAsync(stop)).ToLookup(result => result.Test);
            return [.. rows.Select(row => new ListedTest(row, [.. results[row.Id].OrderBy(result => result.Position)]))];
        });
}
