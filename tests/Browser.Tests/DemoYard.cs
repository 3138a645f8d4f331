using Lanewright.Commands;
using Lanewright.Season;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Browser.Tests;

/// <summary>The invented yard of <c>demo</c>: spreaders, scales, materials, three seasons of tests, two months of logs.</summary>
public sealed class DemoYard : YardServer
{
    protected override async Task FillAsync()
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(Folder));
        await DemoCommand.FillAsync(store, DateOnly.FromDateTime(DateTime.UtcNow), CancellationToken.None);
        await DemoSeason.WriteAsync(store, 1, DateOnly.FromDateTime(DateTime.UtcNow), CancellationToken.None);
        DemoSeason.Match(Folder, CancellationToken.None);
        store.Release();
    }
}
