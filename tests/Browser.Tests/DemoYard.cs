using Lanewright.Commands;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Browser.Tests;

/// <summary>The invented yard of <c>demo</c>: spreaders, scales, materials, three seasons of tests.</summary>
public sealed class DemoYard : YardServer
{
    protected override async Task FillAsync()
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(Folder));
        await DemoCommand.FillAsync(store, DateOnly.FromDateTime(DateTime.UtcNow), CancellationToken.None);
        store.Release();
    }
}
