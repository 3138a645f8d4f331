using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Lanewright.Storage.Database;
using Lanewright.Storage.Folding;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage;

public sealed partial class EntryStore
{
    /// <summary>Throws away everything computed and makes it again from the entries.</summary>
    /// <returns>The digest of what was there before, and of what is there now; equal when nothing had gone astray.</returns>
    public Task<(string Before, string After)> RebuildAsync(CancellationToken stop = default) =>
        WriteAsync(async context =>
        {
            var before = await DigestAsync(context, stop);
            await Projector.RebuildAsync(context, stop);
            return (before, await DigestAsync(context, stop));
        }, stop);

    /// <summary>SHA-256 over every row of the computed tables, in order of their keys.</summary>
    public Task<string> ComputedDigestAsync(CancellationToken stop = default) =>
        WithAsync(async context =>
        {
            await using var reading = await RecordsDatabase.BeginReadAsync(context, stop);
            return await DigestAsync(context, stop);
        });

    private static async Task<string> DigestAsync(RecordsContext context, CancellationToken stop)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await foreach (var row in context.Tests.OrderBy(row => row.Id).AsAsyncEnumerable().WithCancellation(stop)) Take(row);
        await foreach (var row in context.TestResults.OrderBy(row => row.Test).ThenBy(row => row.Position)
            .AsAsyncEnumerable().WithCancellation(stop)) Take(row);
        await foreach (var row in context.RegisterItems.OrderBy(row => row.Id).AsAsyncEnumerable().WithCancellation(stop)) Take(row);
        await foreach (var row in context.SpreaderEvents.OrderBy(row => row.EntryId).AsAsyncEnumerable().WithCancellation(stop))
            Take(row);
        return Convert.ToHexStringLower(hash.GetHashAndReset());

        void Take(object row)
        {
            // Every column by its name, numbers with all their digits.
            var entity = context.Model.FindEntityType(row.GetType())!;
            foreach (var column in entity.GetProperties())
            {
                var text = column.PropertyInfo!.GetValue(row) switch
                {
                    null => "\u0001",
                    double number => number.ToString("R", CultureInfo.InvariantCulture),
                    DateTimeOffset moment => moment.UtcTicks.ToString(CultureInfo.InvariantCulture),
                    var other => Convert.ToString(other, CultureInfo.InvariantCulture)!,
                };
                hash.AppendData(Encoding.UTF8.GetBytes($"{column.Name}={text}\u0000"));
            }
        }
    }
}
