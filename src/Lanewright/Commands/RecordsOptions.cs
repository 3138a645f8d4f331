using System.CommandLine;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Proof;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Commands;

/// <summary>What the commands about records are told the same way, and how they fail.</summary>
internal static class RecordsOptions
{
    /// <summary>The folder of the records when none is named.</summary>
    internal const string UsualFolder = "lanewright-data";

    internal static Option<string> Data() => new("--data")
    {
        Description = "Folder of the records.",
        DefaultValueFactory = _ => UsualFolder,
    };

    internal static Option<string?> Database() => new("--database")
    {
        Description = "Connection string of a PostgreSQL database that holds the records, instead of a folder.",
    };

    internal static Option<string?> KeyFolder() => new("--key-folder")
    {
        Description = "Folder of the yard's own key; keys in the folder of --data when left out, also beside --database.",
    };

    /// <summary>The folder of the yard's key: the one that was named, or that of the records.</summary>
    internal static string KeyFolderOf(ParseResult parsed, Option<string> data, Option<string?> keyFolder) =>
        Path.GetFullPath(parsed.GetValue(keyFolder) ?? YardKey.FolderOf(parsed.GetValue(data)!));

    /// <summary>Opens the records and does something with them; what keeps it from being done is said in words.</summary>
    internal static Task<int> WithStoreAsync(
        ParseResult parsed, Option<string> data, Option<string?>? database, Func<EntryStore, Task<int>> work,
        CancellationToken stop, Opening opening = Opening.Make) =>
        ToldAsync(parsed, async () =>
        {
            if (PlaceOf(parsed, parsed.GetValue(data), database is null ? null : parsed.GetValue(database)) is not { } place) return CommonOptions.CouldNotRead;
            return await work(await EntryStore.OpenAsync(place, stop: stop, opening: opening));
        });

    /// <summary>Does something, and says in words, in the language of the command, what keeps it from being done.</summary>
    internal static async Task<int> ToldAsync(ParseResult parsed, Func<Task<int>> work)
    {
        if (!CommonOptions.Speak(parsed)) return CommonOptions.CouldNotRead;
        try
        {
            return await work();
        }
        catch (RecordsException wrong)
        {
            parsed.InvocationConfiguration.Error.WriteLine(OfficeText.Say(wrong.Said));
            return CommonOptions.CouldNotRead;
        }
    }

    /// <summary>Where the records are; null after saying what is wrong with the connection string.</summary>
    internal static RecordsPlace? PlaceOf(ParseResult parsed, string? folder, string? connection)
    {
        if (connection is null) return RecordsPlace.InFolder(folder!);
        try
        {
            return RecordsPlace.InPostgres(connection);
        }
        catch (ArgumentException)
        {
            parsed.InvocationConfiguration.Error.WriteLine(
                OfficeText.Say("--database: a connection string was expected, such as \"Host=server;Database=lanewright;Username=yard\"."));
            return null;
        }
    }
}
