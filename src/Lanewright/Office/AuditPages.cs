using System.Globalization;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Office;

/// <summary>The chain as it was found when somebody asked for it to be checked.</summary>
/// <param name="Report">What came of it.</param>
/// <param name="At">When.</param>
/// <param name="Took">How long it took.</param>
internal sealed record CheckedChain(ChainReport Report, DateTimeOffset At, TimeSpan Took)
{
    internal string Seconds => Took.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) + " s";
}

/// <summary>Who did what, and the proof that nothing was changed. The whole chain is checked when asked for, for that takes long.</summary>
internal sealed class AuditPages(EntryStore store, TimeProvider clock)
{
    private const int PageOfEntries = 100;
    private CheckedChain? found;

    internal void Map(WebApplication app)
    {
        app.MapGet("/office/audit", (long? before, CancellationToken stop) => Show(before, stop));
        app.MapGet("/office/audit.csv", () => OfficeCsv.Answer("audit.csv", Rows));
        app.MapPost("/office/audit/check", context => Check(context).Send(context));
    }

    private async Task<IResult> Check(HttpContext context)
    {
        if (!await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context))
            return Problems.Answer(400, "The page was open too long.", "Open the audit again and press the button.");
        var begun = clock.GetTimestamp();
        var report = await store.CheckChainAsync(context.RequestAborted);
        found = new(report, clock.GetUtcNow(), clock.GetElapsedTime(begun));
        return Results.LocalRedirect("/office/audit#checked");
    }

    private async Task<IResult> Show(long? before, CancellationToken stop)
    {
        var (last, _) = await store.LastAsync(stop);
        var end = Math.Clamp(before ?? (last + 1), 1, last + 1);
        var entries = await store.ReadAsync(after: Math.Max(0, end - 1 - PageOfEntries), most: PageOfEntries, stop: stop);
        return new RazorComponentResult<AuditPage>(new Dictionary<string, object?>
        {
            ["Check"] = found,
            ["Entries"] = (IReadOnlyList<Entry>)[.. entries.Where(entry => entry.Number < end).Reverse()],
            ["Last"] = last,
            ["Before"] = end - 1 > PageOfEntries ? end - PageOfEntries : (long?)null,
            ["After"] = end <= last ? Math.Min(end + PageOfEntries, last + 1) : (long?)null,
        });
    }

    private async IAsyncEnumerable<string[]> Rows()
    {
        yield return ["number", "received", "at", "person", "device", "kind", "subject", "parent", "why", "payload", "hash"];
        for (IReadOnlyList<Entry> some = await store.ReadAsync(most: 1000); some.Count > 0; some = await store.ReadAsync(some[^1].Number, most: 1000))
        {
            foreach (var entry in some)
            {
                yield return
                [
                    entry.Number.ToString(CultureInfo.InvariantCulture), Moments.Write(entry.Received), Moments.Write(entry.At), entry.Person,
                    entry.Device, entry.Kind, entry.Subject, entry.Parent ?? "", entry.Why ?? "", entry.Payload, entry.Hash,
                ];
            }
        }
    }
}
