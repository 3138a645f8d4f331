using System.CommandLine;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Commands;

/// <summary>What the commands about records are told the same way, and how they fail.</summary>
internal static class RecordsOptions
{
    internal static Option<string> Data() => new("--data")
    {
        Description = "Folder of the records.",
        DefaultValueFactory = _ => "lanewright-data",
    };

    internal static Option<string?> Database() => new("--database")
    {
        Description = "Connection string of a PostgreSQL database that holds the records, instead of a folder.",
    };

    /// <summary>Opens the records and does something with them; what keeps it from being done is said in words.</summary>
    internal static Task<int> WithStoreAsync(
        ParseResult parsed, Option<string> data, Option<string?>? database, Func<EntryStore, Task<int>> work,
        CancellationToken stop, Opening opening = Opening.Make) =>
        ToldAsync(parsed, async () =>
        {
            if (PlaceOf(parsed, data, database) is not { } place) return CommonOptions.CouldNotRead;
            return await work(await EntryStore.OpenAsync(place, stop: stop, opening: opening));
        });

    /// <summary>Does something, and says in words what keeps it from being done.</summary>
    internal static async Task<int> ToldAsync(ParseResult parsed, Func<Task<int>> work)
    {
        try
        {
            return await work();
        }
        catch (RecordsException wrong)
        {
            parsed.InvocationConfiguration.Error.WriteLine(wrong.Message);
            return CommonOptions.CouldNotRead;
        }
    }

    private static RecordsPlace? PlaceOf(ParseResult parsed, Option<string> data, Option<string?>? database)
    {
        if (database is null || parsed.GetValue(database) is not { } connection)
            return RecordsPlace.InFolder(parsed.GetValue(data)!);
        try
        {
            return RecordsPlace.InPostgres(connection);
        }
        catch (ArgumentException)
        {
            parsed.InvocationConfiguration.Error.WriteLine(
                "--database: a connection string was expected, such as \"Host=server;Database=lanewright;Username=yard\".");
            return null;
        }
    }
}
