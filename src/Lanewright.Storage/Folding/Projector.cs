using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage.Folding;

/// <summary>Keeps the computed tables in step with the entries, within the same transaction.</summary>
internal static class Projector
{
    /// <summary>Makes the computed rows of some subjects again.</summary>
    internal static async Task UpdateAsync(RecordsContext context, IReadOnlyList<string> subjects, CancellationToken stop)
    {
        if (subjects.Count == 0) return;
        await context.Tests.Where(row => subjects.Contains(row.Id)).ExecuteDeleteAsync(stop);
        await context.TestResults.Where(row => subjects.Contains(row.Test)).ExecuteDeleteAsync(stop);
        await context.RegisterItems.Where(row => subjects.Contains(row.Id)).ExecuteDeleteAsync(stop);
        await context.SpreaderEvents.Where(row => subjects.Contains(row.Spreader)).ExecuteDeleteAsync(stop);
        var entries = await context.Entries.Where(entry => subjects.Contains(entry.Subject))
            .OrderBy(entry => entry.Number).ToListAsync(stop);
        foreach (var subject in entries.GroupBy(entry => entry.Subject)) Add(context, [.. subject]);
        await context.SaveChangesAsync(stop);
        context.ChangeTracker.Clear();
    }

    /// <summary>Throws all computed rows away and makes them again from the entries.</summary>
    internal static async Task RebuildAsync(RecordsContext context, CancellationToken stop)
    {
        await context.Tests.ExecuteDeleteAsync(stop);
        await context.TestResults.ExecuteDeleteAsync(stop);
        await context.RegisterItems.ExecuteDeleteAsync(stop);
        await context.SpreaderEvents.ExecuteDeleteAsync(stop);
        // Subjects in portions, so that a season's records need not fit in memory.
        const int portion = 500;
        string? after = null;
        while (true)
        {
#pragma warning disable CA1309 // Use ordinal string comparison: the database compares here, by code points on both providers.
            var subjects = await context.Entries.Select(entry => entry.Subject)
                .Where(subject => after == null || string.Compare(subject, after) > 0)
                .Distinct().OrderBy(subject => subject).Take(portion).ToListAsync(stop);
#pragma warning restore CA1309
            if (subjects.Count == 0) return;
            var entries = await context.Entries.Where(entry => subjects.Contains(entry.Subject))
                .OrderBy(entry => entry.Number).ToListAsync(stop);
            foreach (var subject in entries.GroupBy(entry => entry.Subject)) Add(context, [.. subject]);
            await context.SaveChangesAsync(stop);
            context.ChangeTracker.Clear();
            after = subjects[^1];
        }
    }

    private static void Add(RecordsContext context, IReadOnlyList<Entry> entries)
    {
        var projection = Projection.Of(entries);
        if (projection.Test is { } test) context.Add(test);
        if (projection.Item is { } item) context.Add(item);
        context.AddRange(projection.Results);
        context.AddRange(projection.Events);
    }
}
