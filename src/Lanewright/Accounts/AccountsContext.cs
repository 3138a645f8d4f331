using Lanewright.Storage.Database;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Lanewright.Accounts;

/// <summary>The tables of the accounts. They are in the database of the records, so that a backup carries them.</summary>
internal abstract class AccountsContext(DbContextOptions options) : IdentityUserContext<Account>(options)
{
    /// <summary>Lists the migrations of these tables, apart from those of the records.</summary>
    internal const string History = "__accounts_history";

    internal DbSet<PairingCode> Codes => Set<PairingCode>();

    internal DbSet<ApiToken> Tokens => Set<ApiToken>();

    internal DbSet<AccountEvent> Log => Set<AccountEvent>();

    /// <summary>A context of its own over the place of the records.</summary>
    internal static AccountsContext At(RecordsPlace place) => place.File is null
        ? new PostgresAccounts(SharedDatabase.For<PostgresAccounts>(place, History).Options)
        : new SqliteAccounts(SharedDatabase.For<SqliteAccounts>(place, History).Options);

    // As in the records: neither database orders or keeps moments the same way, whole ticks serve both.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<Account>().ToTable("accounts");
        builder.Entity<IdentityUserClaim<string>>().ToTable("account_claims");
        builder.Entity<IdentityUserLogin<string>>().ToTable("account_logins");
        builder.Entity<IdentityUserToken<string>>().ToTable("account_tokens");
        builder.Entity<PairingCode>().ToTable("account_codes");
        builder.Entity<ApiToken>().ToTable("api_tokens").HasIndex(one => one.Hash).IsUnique();
        builder.Entity<AccountEvent>().ToTable("account_log");
    }

    private sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(
        moment => moment.UtcTicks, ticks => new DateTimeOffset(ticks, TimeSpan.Zero));
}

/// <summary>The accounts in a SQLite file.</summary>
internal sealed class SqliteAccounts(DbContextOptions<SqliteAccounts> options) : AccountsContext(options);

/// <summary>The accounts in a PostgreSQL database.</summary>
internal sealed class PostgresAccounts(DbContextOptions<PostgresAccounts> options) : AccountsContext(options);

/// <summary>Lets the database tool write migrations for SQLite.</summary>
internal sealed class SqliteAccountsDesign : IDesignTimeDbContextFactory<SqliteAccounts>
{
    public SqliteAccounts CreateDbContext(string[] args) => new(new DbContextOptionsBuilder<SqliteAccounts>()
        .UseSqlite("Data Source=unused", sqlite => sqlite.MigrationsHistoryTable(AccountsContext.History)).Options);
}

/// <summary>Lets the database tool write migrations for PostgreSQL.</summary>
internal sealed class PostgresAccountsDesign : IDesignTimeDbContextFactory<PostgresAccounts>
{
    public PostgresAccounts CreateDbContext(string[] args) => new(new DbContextOptionsBuilder<PostgresAccounts>()
        .UseNpgsql("Host=unused", postgres => postgres.MigrationsHistoryTable(AccountsContext.History)).Options);
}
