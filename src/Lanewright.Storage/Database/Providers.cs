using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Lanewright.Storage.Database;

/// <summary>The records in a SQLite file.</summary>
internal sealed class SqliteRecords(DbContextOptions<SqliteRecords> options) : RecordsContext(options);

/// <summary>The records in a PostgreSQL database.</summary>
internal sealed class PostgresRecords(DbContextOptions<PostgresRecords> options) : RecordsContext(options)
{
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        base.OnModelCreating(modelBuilder);
        // Order by code points, as SQLite does, whatever the server's language.
        foreach (var entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var property in entity.GetProperties().Where(property => property.ClrType == typeof(string)))
                property.SetCollation("C");
        }
    }
}

/// <summary>Lets the database tool write migrations for SQLite.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteRecords>
{
    public SqliteRecords CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteRecords>().UseSqlite("Data Source=unused").Options);
}

/// <summary>Lets the database tool write migrations for PostgreSQL.</summary>
internal sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresRecords>
{
    public PostgresRecords CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresRecords>().UseNpgsql("Host=unused").Options);
}
