using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage.Database;

/// <summary>
/// Lets another part of the program keep tables of its own in the database of the records, so that one backup carries both.
/// </summary>
public static class SharedDatabase
{
    /// <summary>Options of a context, that of the records among others, at the place of the records.</summary>
    /// <param name="place">Where the records are.</param>
    /// <param name="history">The table in which the context's own migrations are listed.</param>
    public static DbContextOptionsBuilder<T> For<T>(RecordsPlace place, string history)
        where T : DbContext
    {
        ArgumentNullException.ThrowIfNull(place);
        var options = new DbContextOptionsBuilder<T>();
        if (place.File is { } file) InFile(options, file, place.MostPages, history);
        else AtServer(options, place.Database!, history);
        return options;
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

    private static string Connection(string file) => new SqliteConnectionStringBuilder
    {
        DataSource = file,
        Mode = SqliteOpenMode.ReadWriteCreate,
        DefaultTimeout = SqlitePragmas.BusyMilliseconds / 1000,
    }.ToString();

    // Each in a method of its own: what is not used is not loaded.
    private static void InFile(DbContextOptionsBuilder options, string file, int? mostPages, string history) =>
        options.UseSqlite(Connection(file), sqlite => sqlite.MigrationsHistoryTable(history)).AddInterceptors(new SqlitePragmas(mostPages));

    private static void AtServer(DbContextOptionsBuilder options, string connection, string history) =>
        options.UseNpgsql(connection, postgres => postgres.MigrationsHistoryTable(history));
}
