using Lanewright.Storage.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Lanewright.Storage.Tests;

public sealed class MigrationTests
{
    [Fact]
    public void No_migration_is_missing_for_SQLite()
    {
        using var context = new SqliteDesign().CreateDbContext([]);
        Assert.NotEmpty(context.Database.GetMigrations());
        Assert.False(context.Database.HasPendingModelChanges(), "Run: dotnet ef migrations add NAME --context SqliteRecords");
    }

    [Fact]
    public void No_migration_is_missing_for_PostgreSQL()
    {
        using var context = new PostgresDesign().CreateDbContext([]);
        Assert.NotEmpty(context.Database.GetMigrations());
        Assert.False(context.Database.HasPendingModelChanges(), "Run: dotnet ef migrations add NAME --context PostgresRecords");
    }

    [Fact]
    public void The_tables_written_into_the_program_are_those_of_the_classes()
    {
        using var context = new SqliteDesign().CreateDbContext([]);
        var written = context.Model;
        Assert.IsType<Lanewright.Storage.Database.Compiled.Sqlite.SqliteRecordsModel>(written, exactMatch: false);
        // What the framework works out from the classes, which the program itself no longer does.
        var worked = context.GetService<IDesignTimeModel>().Model;
        Assert.True(
            Tables(worked).SequenceEqual(Tables(written), StringComparer.Ordinal),
            "Run: dotnet ef dbcontext optimize --context SqliteRecords (docs/decisions/0005-records.md)");
        Assert.Contains("tests.LastNumber INTEGER", string.Join('\n', Tables(worked)), StringComparison.Ordinal);
    }

    private static List<string> Tables(IModel model) =>
    [
        .. from entity in model.GetEntityTypes()
           let table = entity.GetTableName()
           from line in (string[])
           [
               .. entity.GetProperties().Select(property =>
                   $"{table}.{property.GetColumnName()} {property.GetColumnType()}, {(property.IsNullable ? "may" : "must not")} be null,"
                   + $" {property.GetTypeMapping().Converter?.GetType().Name} {property.ValueGenerated} {property.GetMaxLength()}"),
               .. entity.GetKeys().Select(key => $"{table} key {Names(key.Properties)} {key.IsPrimaryKey()}"),
               .. entity.GetIndexes().Select(index => $"{table} index {Names(index.Properties)} {index.IsUnique}"),
               .. entity.GetForeignKeys().Select(key => $"{table} foreign {Names(key.Properties)}"),
           ]
           orderby line
           select line,
    ];

    private static string Names(IEnumerable<IReadOnlyProperty> properties) => string.Join(' ', properties.Select(property => property.Name));

    [Fact]
    public void Both_databases_have_the_same_migrations()
    {
        using var sqlite = new SqliteDesign().CreateDbContext([]);
        using var postgres = new PostgresDesign().CreateDbContext([]);
        Assert.Equal(
            sqlite.Database.GetMigrations().Select(name => name.Split('_', 2)[1]),
            postgres.Database.GetMigrations().Select(name => name.Split('_', 2)[1]));
    }

    [Fact]
    public void No_migration_of_the_accounts_is_missing()
    {
        using var sqlite = new Lanewright.Accounts.SqliteAccountsDesign().CreateDbContext([]);
        using var postgres = new Lanewright.Accounts.PostgresAccountsDesign().CreateDbContext([]);
        Assert.False(sqlite.Database.HasPendingModelChanges(), "Run: dotnet ef migrations add NAME --context SqliteAccounts");
        Assert.False(postgres.Database.HasPendingModelChanges(), "Run: dotnet ef migrations add NAME --context PostgresAccounts");
        Assert.NotEmpty(sqlite.Database.GetMigrations());
        Assert.Equal(
            sqlite.Database.GetMigrations().Select(name => name.Split('_', 2)[1]),
            postgres.Database.GetMigrations().Select(name => name.Split('_', 2)[1]));
    }

    public static TheoryData<string> Kept => [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "kept"), "*.db").Select(path => Path.GetFileName(path)!)];

    [Theory, MemberData(nameof(Kept))]
    public async Task The_database_of_every_released_version_still_opens_whole(string name)
    {
        var stop = TestContext.Current.CancellationToken;
        await using var records = TestRecords.InFolder();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "kept", name), records.File);
        var store = await records.OpenAsync();
        var report = await store.CheckChainAsync(stop);
        Assert.True(report.IsWhole);
        Assert.True(report is { Entries: > 3, Photos: 1 });
        Assert.NotEmpty(await store.QuarantineAsync(stop));
        var (opened, rebuilt) = await store.RebuildAsync(stop);
        Assert.Equal(rebuilt, opened);
        Assert.Equal(rebuilt, await store.ComputedDigestAsync(stop));
        Assert.Contains((await store.TestsAsync(new(), stop)), test => test.Results.Count == 1 && test.Test.Verdict == "adopt");
        Assert.Equal(AppendStatus.Accepted, (await store.AppendAsync([new Drafts("new", 900).Spreader("sp-new", "HR")], stop)).Results[0].Status);
    }

    /// <summary>Writes the file to keep for a release; run by its name when a version is released.</summary>
    [Fact(Explicit = true)]
    public async Task Keep_a_database_of_this_version()
    {
        var stop = TestContext.Current.CancellationToken;
        await using var records = TestRecords.InFolder();
        var store = await TransferTests.FilledAsync(records);
        await store.AppendAsync([new Drafts("note", 40).Draft("test.note", "t-2", """{"text":"invented data"}""")], stop);
        store.Release();
        var version = typeof(EntryStore).Assembly.GetName().Version!.ToString(3);
        File.Copy(records.File, Path.Combine(Environment.GetEnvironmentVariable("LANEWRIGHT_KEEP") ?? ".", $"{version}.db"));
    }
}
