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
    internal static async Task<int> WithStoreAsync(
        ParseResult parsed, Option<string> data, Option<string?> database, Func<EntryStore, Task<int>> work,
        CancellationToken stop)
    {
        try
        {
            return await work(await EntryStore.OpenAsync(PlaceOf(parsed, data, database), stop: stop));
        }
        catch (RecordsException wrong)
        {
            parsed.InvocationConfiguration.Error.WriteLine(wrong.Message);
            return CommonOptions.CouldNotRead;
        }
        catch (ArgumentException) when (parsed.GetValue(database) is not null)
        {
            parsed.InvocationConfiguration.Error.WriteLine(
                "--database: a connection string was expected, such as \"Host=server;Database=lanewright;Username=yard\".");
            return CommonOptions.CouldNotRead;
        }
    }

    internal static RecordsPlace PlaceOf(ParseResult parsed, Option<string> data, Option<string?> database) =>
        parsed.GetValue(database) is { } connection
            ? RecordsPlace.InPostgres(connection)
            : RecordsPlace.InFolder(parsed.GetValue(data)!);
}
