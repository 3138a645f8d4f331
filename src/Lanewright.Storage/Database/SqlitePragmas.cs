using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Lanewright.Storage.Database;

/// <summary>Every PRAGMA of the program's connections, with its reason.</summary>
/// <param name="mostPages">Most pages the file may have, for tests of a full disk; null for no limit.</param>
internal sealed class SqlitePragmas(int? mostPages) : DbConnectionInterceptor
{
    private readonly string commands = string.Join(
        '\n',
        // "Confirmed" means on the disk: without FULL, WAL may lose the last commits when the power goes.
        "PRAGMA synchronous = FULL;",
        // A backup or a second program holds the file for moments; waiting is better than an error.
        $"PRAGMA busy_timeout = {BusyMilliseconds};",
        "PRAGMA foreign_keys = ON;",
        // A file may come from elsewhere (restore): its schema must not call functions with effects.
        "PRAGMA trusted_schema = OFF;",
        // Damage is noticed where it is read instead of giving wrong rows.
        "PRAGMA cell_size_check = ON;",
        mostPages is { } pages ? string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count = {pages};") : "");

    // Readers never wait for the writer, and a killed program leaves a file that opens.
    private const string WriteAheadLog = "PRAGMA journal_mode = WAL;\n";

    internal const int BusyMilliseconds = 5000;

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = CommandsFor(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        var command = connection.CreateCommand();
        await using (command.ConfigureAwait(false))
        {
            command.CommandText = CommandsFor(connection);
            await command.ExecuteNonQueryAsync(cancellationToken).ConfigureAwait(false);
        }
    }

    // The mode is the file's own; a connection that only reads cannot set it.
    private string CommandsFor(DbConnection connection) =>
        new SqliteConnectionStringBuilder(connection.ConnectionString).Mode is SqliteOpenMode.ReadOnly
            ? commands
            : WriteAheadLog + commands;
}
