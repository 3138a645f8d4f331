using System.Data.Common;
using Lanewright.Core.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace Lanewright.Storage.Database;

/// <summary>Which versions of a context's tables a database has, against those this program knows.</summary>
internal static class TableVersions
{
    /// <summary>Brings the tables up to date; a SQLite file that has older ones is copied beside itself first.</summary>
    /// <exception cref="RecordsException">A newer program wrote them, or there are none and none may be made.</exception>
    internal static async Task UpdateAsync(DbContext context, RecordsPlace place, bool mayMake, CancellationToken stop)
    {
        var known = context.Database.GetMigrations().ToList();
        var applied = await AppliedAsync(context, stop);
        if (applied.FirstOrDefault(name => !known.Contains(name)) is { } newer) throw Newer(place, newer);
        if (applied.Count == 0 && !mayMake) throw None(place);
        if (applied.Count == known.Count) return;
        if (applied.Count > 0 && place.File is not null) RecordsOpening.Copy(place, known[^1]);
        await context.Database.MigrateAsync(stop);
    }

    internal static RecordsException None(RecordsPlace place) => new(
        RecordsFault.Denied,
        $"There are no records in {place.Name}. Name the right place with {(place.File is null ? "--database" : "--data")}.");

    private static RecordsException Newer(RecordsPlace place, string migration) => new(
        RecordsFault.Newer,
        $"The records in {place.Name} were written by a newer version of Lanewright ({migration}). Update this program."
        + $" Nothing was changed.");

    // Asked in SQL: the framework's own way builds a second model of everything for this one list, with every start.
    private static async Task<IReadOnlyList<string>> AppliedAsync(DbContext context, CancellationToken stop)
    {
        var table = RelationalOptionsExtension.Extract(context.GetService<IDbContextOptions>()).MigrationsHistoryTableName
            ?? HistoryRepository.DefaultTableName;
        if (!await context.GetService<IRelationalDatabaseCreator>().ExistsAsync(stop)) return [];
        await context.Database.OpenConnectionAsync(stop);
        try
        {
            await using var command = context.Database.GetDbConnection().CreateCommand();
            command.CommandText = context.Database.IsSqlite()
                ? $"SELECT name FROM sqlite_master WHERE type = 'table' AND name = '{table}'"
                : $"SELECT to_regclass('\"{table}\"')::text";
            if (await command.ExecuteScalarAsync(stop) is not string) return [];
            command.CommandText = $"SELECT \"MigrationId\" FROM \"{table}\"";
            return await NamesAsync(command, stop);
        }
        finally
        {
            await context.Database.CloseConnectionAsync();
        }
    }

    private static async Task<List<string>> NamesAsync(DbCommand command, CancellationToken stop)
    {
        var names = new List<string>();
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop)) names.Add(rows.GetString(0));
        names.Sort(StringComparer.Ordinal);
        return names;
    }
}
