using Lanewright.Storage.Database;
using Npgsql;

namespace Lanewright.Storage.Tests;

/// <summary>Which kind of database a test runs on.</summary>
public enum Provider
{
    Sqlite,
    Postgres,
}

/// <summary>Records of a test's own: a folder or a fresh PostgreSQL database, gone afterwards.</summary>
internal sealed class TestRecords : IAsyncDisposable
{
    /// <summary>Names a cluster that the tests may make databases in; see tests/with-postgres.</summary>
    internal const string PostgresVariable = "LANEWRIGHT_TEST_POSTGRES";

    private readonly string? admin;
    private readonly string? name;

    private TestRecords(RecordsPlace place, string? admin, string? name) => (Place, this.admin, this.name) = (place, admin, name);

    internal RecordsPlace Place { get; }

    internal string File => Place.File!;

    internal static TestRecords InFolder() =>
        new(RecordsPlace.InFolder(Directory.CreateTempSubdirectory("lanewright-records-").FullName), null, null);

    /// <summary>Records on a provider; skips the test when there is no PostgreSQL to run it on.</summary>
    internal static async Task<TestRecords> OnAsync(Provider provider)
    {
        if (provider is Provider.Sqlite) return InFolder();
        var admin = Environment.GetEnvironmentVariable(PostgresVariable);
        Assert.SkipWhen(string.IsNullOrEmpty(admin), $"PostgreSQL is not at hand: {PostgresVariable} is not set (see tests/with-postgres).");
        var name = $"lanewright_{Guid.NewGuid():N}";
        await RunAsync(admin!, $"CREATE DATABASE {name}");
        return new(RecordsPlace.InPostgres(new NpgsqlConnectionStringBuilder(admin) { Database = name }.ConnectionString), admin, name);
    }

    internal Task<EntryStore> OpenAsync(TimeProvider? clock = null) =>
        EntryStore.OpenAsync(Place, clock, stop: TestContext.Current.CancellationToken);

    /// <summary>Does something to the database behind the program's back.</summary>
    internal async Task TamperAsync(string command)
    {
        var context = new RecordsDatabase(Place).Context();
        await using (context)
        {
            await Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.ExecuteSqlRawAsync(
                context.Database, command, TestContext.Current.CancellationToken);
        }
    }

    public async ValueTask DisposeAsync()
    {
        new RecordsDatabase(Place).Release();
        if (Place.DataFolder is { } folder) Directory.Delete(folder, recursive: true);
        if (name is null) return;
        NpgsqlConnection.ClearAllPools();
        await RunAsync(admin!, $"DROP DATABASE {name} WITH (FORCE)");
    }

    private static async Task RunAsync(string connection, string command)
    {
        await using var server = NpgsqlDataSource.Create(connection);
        await using var run = server.CreateCommand(command);
        await run.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
