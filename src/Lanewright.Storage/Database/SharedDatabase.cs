using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage.Database;

/// <summary>
/// Lets another part of the program keep tables of its own in the database of the records, so that one backup carries both.
/// </summary>
public static class SharedDatabase
{
    /// <summary>Connects a context to the place of the records, the same way the records do.</summary>
    /// <param name="options">The options of the context.</param>
    /// <param name="place">Where the records are.</param>
    /// <param name="history">The table in which the context's own migrations are listed.</param>
    public static void Use(DbContextOptionsBuilder options, RecordsPlace place, string history)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(place);
        if (place.File is { } file)
        {
            options.UseSqlite(Connection(file), sqlite => sqlite.MigrationsHistoryTable(history))
                .AddInterceptors(new SqlitePragmas(place.MostPages));
        }
        else
        {
            options.UseNpgsql(place.Database, postgres => postgres.MigrationsHistoryTable(history));
        }
    }

    /// <summary>Brings the context's own tables up to date.</summary>
    /// <exception cref="RecordsException">A newer version wrote them, or the database cannot be used.</exception>
    public static async Task PrepareAsync(DbContext context, RecordsPlace place, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(place);
        try
        {
            await TableVersions.UpdateAsync(context, place, mayMake: true, stop);
        }
        catch (Exception wrong) when (wrong is not RecordsException && Fault(wrong, place) is not null)
        {
            throw Fault(wrong, place)!;
        }
    }

    /// <summary>Says in words what an error of the database means; null for a mistake in the program.</summary>
    public static RecordsException? Fault(Exception wrong, RecordsPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Faults.Of(wrong, place.Name, place.RestoreCommand);
    }

    internal static string Connection(string file) => new SqliteConnectionStringBuilder
    {
        DataSource = file,
        Mode = SqliteOpenMode.ReadWriteCreate,
        DefaultTimeout = SqlitePragmas.BusyMilliseconds / 1000,
    }.ToString();
}
