using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Lanewright.Storage.Database;

/// <summary>The tables. Entries and photos are truth; quarantine is kept; the rest can be made again from entries.</summary>
internal abstract class RecordsContext(DbContextOptions options) : DbContext(options)
{
    internal DbSet<Entry> Entries => Set<Entry>();

    internal DbSet<Photo> Photos => Set<Photo>();

    internal DbSet<QuarantinedEntry> Quarantine => Set<QuarantinedEntry>();

    internal DbSet<TestRow> Tests => Set<TestRow>();

    internal DbSet<TestResultRow> TestResults => Set<TestResultRow>();

    internal DbSet<RegisterItem> RegisterItems => Set<RegisterItem>();

    internal DbSet<SpreaderEvent> SpreaderEvents => Set<SpreaderEvent>();

    // Ordering by DateTimeOffset throws on SQLite, and PostgreSQL keeps only microseconds: UTC ticks serve both.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<Entry>(entry =>
        {
            entry.ToTable("entries").HasKey(e => e.Number);
            entry.Property(e => e.Number).ValueGeneratedNever();
            entry.Property(e => e.Id).IsRequired();
            entry.HasIndex(e => e.Id).IsUnique();
            entry.HasIndex(e => new { e.Subject, e.Number });
        });
        modelBuilder.Entity<Photo>().ToTable("photos").HasKey(photo => photo.EntryId);
        modelBuilder.Entity<QuarantinedEntry>().ToTable("quarantine").HasKey(one => one.Hash);
        modelBuilder.Entity<TestRow>(test =>
        {
            test.ToTable("tests").HasKey(t => t.Id);
            test.HasIndex(t => t.LastNumber);
            test.HasIndex(t => new { t.State, t.LastNumber });
            test.HasIndex(t => new { t.Spreader, t.LastNumber });
            // The office asks for the latest decided test of every spreader at once.
            test.HasIndex(t => new { t.Kind, t.Spreader, t.DecidedAt });
            test.HasIndex(t => t.Date);
            test.HasIndex(t => t.SpreaderName);
            test.HasIndex(t => t.Invented);
        });
        modelBuilder.Entity<TestResultRow>().ToTable("test_results").HasKey(result => new { result.Test, result.Position });
        modelBuilder.Entity<RegisterItem>(item =>
        {
            item.ToTable("register_items").HasKey(i => i.Id);
            item.HasIndex(i => i.Kind);
        });
        modelBuilder.Entity<SpreaderEvent>(happened =>
        {
            happened.ToTable("spreader_events").HasKey(e => e.EntryId);
            happened.HasIndex(e => new { e.Spreader, e.Number });
        });
    }

    internal sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(
        moment => moment.UtcTicks, ticks => new DateTimeOffset(ticks, TimeSpan.Zero));
}
