using Lanewright.Commands;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Browser.Tests;

/// <summary>The invented yard of <c>demo</c>: spreaders, scales, materials, three seasons of tests.</summary>
public class DemoYard : YardServer
{
    protected override async Task FillAsync()
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(Folder));
        await DemoCommand.FillAsync(store, DateOnly.FromDateTime(DateTime.UtcNow), CancellationToken.None);
        await MoreAsync(store);
        store.Release();
    }

    /// <summary>What a yard begins with besides.</summary>
    private protected virtual Task MoreAsync(EntryStore store) => Task.CompletedTask;
}

/// <summary>The same yard with its two months of logs, found on the roads.</summary>
public sealed class DemoWinter : DemoYard
{
    private protected override async Task MoreAsync(EntryStore store)
    {
        await DemoSeason.WriteAsync(store, 1, DateOnly.FromDateTime(DateTime.UtcNow), CancellationToken.None);
        DemoSeason.Match(Folder, CancellationToken.None);
    }
}
