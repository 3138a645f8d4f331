using System.Data;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace Lanewright.Storage.Database;

/// <summary>Makes contexts for a place, and begins the transactions in which only one writes at a time.</summary>
internal sealed class RecordsDatabase
{
    /// <summary>Marks the file as ours: "LnWr" as a number (SQLite's application_id).</summary>
    internal const int ApplicationId = 0x4C6E5772;

    // Any fixed number will do, as long as every server on one PostgreSQL database takes the same.
    private const long WriterLock = 0x4C6E5772;

    private readonly DbContextOptions<SqliteRecords>? sqlite;
    private readonly DbContextOptions<PostgresRecords>? postgres;

    internal RecordsDatabase(RecordsPlace place)
    {
        Place = place;
        if (place.File is not null) sqlite = OptionsFor<SqliteRecords>(place);
        else postgres = OptionsFor<PostgresRecords>(place);
    }

    internal RecordsPlace Place { get; }

    internal RecordsContext Context() => sqlite is not null ? new SqliteRecords(sqlite) : new PostgresRecords(postgres!);

    /// <summary>Begins a transaction that no other writer, in this process or another, is in at the same time.</summary>
    internal static async Task<IDbContextTransaction> BeginWriteAsync(RecordsContext context, CancellationToken stop)
    {
        // On SQLite this is BEGIN IMMEDIATE: the write lock is taken at once, not at the first change.
        if (context is SqliteRecords)
            return await context.Database.BeginTransactionAsync(IsolationLevel.Serializable, stop);
        var transaction = await context.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, stop);
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({WriterLock})", stop);
        return transaction;
    }

    /// <summary>Begins a transaction that sees one state of the records from beginning to end.</summary>
    internal static async Task<IDbContextTransaction> BeginReadAsync(RecordsContext context, CancellationToken stop)
    {
        if (context is not SqliteRecords) return await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, stop);
        // A deferred transaction reads without taking the write lock.
        await context.Database.OpenConnectionAsync(stop);
        var connection = (SqliteConnection)context.Database.GetDbConnection();
        return (await context.Database.UseTransactionAsync(connection.BeginTransaction(deferred: true), stop))!;
    }

    private static DbContextOptions<T> OptionsFor<T>(RecordsPlace place)
        where T : RecordsContext =>
        SharedDatabase.For<T>(place, HistoryRepository.DefaultTableName).UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking).Options;

    /// <summary>Closes pooled connections to a SQLite file, so that it can be moved.</summary>
    internal void Release()
    {
        if (Place.File is null) return;
        using var context = Context();
        SqliteConnection.ClearPool((SqliteConnection)context.Database.GetDbConnection());
    }
}
