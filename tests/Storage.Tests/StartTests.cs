using System.Diagnostics;
using Lanewright.Storage.Database;
using Lanewright.Storage.Records;
using Microsoft.Data.Sqlite;

namespace Lanewright.Storage.Tests;

public sealed class StartTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_empty_a_cut_off_a_garbled_and_a_foreign_file_are_refused_and_left_as_they_are()
    {
        await using var records = await FilledAsync(40);
        var whole = await File.ReadAllBytesAsync(records.File, Stop);
        var garbled = (byte[])whole.Clone();
        for (var i = 4096; i < 12000; i++) garbled[i] ^= 0x5A;
        foreach (var (bytes, what) in new (byte[], string)[]
        {
            ([], "empty"), (whole[..^4096], ""), (whole[..5000], ""), (garbled, ""), ([.. "not a database"u8, .. new byte[5000]], "not a database"),
        })
        {
            await File.WriteAllBytesAsync(records.File, bytes, Stop);
            var refused = await Assert.ThrowsAsync<RecordsException>(() => records.OpenAsync());
            Assert.Equal(RecordsFault.Damaged, refused.Fault);
            Assert.Contains(records.File, refused.Message, StringComparison.Ordinal);
            Assert.Contains("lanewright restore", refused.Message, StringComparison.Ordinal);
            Assert.Contains(what, refused.Message, StringComparison.Ordinal);
            Assert.Equal(bytes, await File.ReadAllBytesAsync(records.File, Stop));
        }
    }

    [Fact]
    public async Task A_database_of_another_program_and_a_log_without_its_file_are_refused()
    {
        await using var records = TestRecords.InFolder();
        await using (var other = new SqliteConnection($"Data Source={records.File};Pooling=False"))
        {
            await other.OpenAsync(Stop);
            RecordsOpening.Scalar(other, "CREATE TABLE own (x)");
        }

        Assert.Contains("not one of Lanewright's", (await Assert.ThrowsAsync<RecordsException>(() => records.OpenAsync())).Message, StringComparison.Ordinal);
        File.Move(records.File, records.File + "-wal");
        Assert.Contains("log", (await Assert.ThrowsAsync<RecordsException>(() => records.OpenAsync())).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(records.File));
    }

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task Records_of_a_newer_version_are_refused(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        await records.OpenAsync();
        await records.TamperAsync("""INSERT INTO "__EFMigrationsHistory" VALUES ('29990101000000_Later', '99')""");
        Assert.Equal(RecordsFault.Newer, (await Assert.ThrowsAsync<RecordsException>(() => records.OpenAsync())).Fault);
    }

    [Fact]
    public async Task A_full_disk_keeps_everything_confirmed_and_goes_on_when_there_is_room_again()
    {
        await using var records = TestRecords.InFolder();
        var store = await EntryStore.OpenAsync(records.Place with { MostPages = 60 }, stop: Stop);
        var make = new Drafts();
        var confirmed = new List<string>();
        RecordsException? full = null;
        for (var i = 0; i < 500 && full is null; i++)
        {
            var batch = Enumerable.Range(0, 20).Select(_ => make.Spreader(make.Id(), new string('x', 200))).ToList();
            try
            {
                confirmed.AddRange((await store.AppendAsync(batch, Stop)).Results.Select(one => one.Id!));
            }
            catch (RecordsException wrong)
            {
                full = wrong;
            }
        }

        Assert.Equal(RecordsFault.Full, full!.Fault);
        Assert.Contains("full", full.Message, StringComparison.Ordinal);
        Assert.Equal(confirmed, (await store.ReadAsync(stop: Stop)).Select(entry => entry.Id));
        store.Release();
        var roomy = await records.OpenAsync();
        Assert.Equal(AppendStatus.Accepted, (await roomy.AppendAsync([make.Spreader("sp", "HR")], Stop)).Results[0].Status);
        Assert.True((await roomy.CheckChainAsync(Stop)).IsWhole);
    }

    [Fact]
    public async Task A_file_held_by_another_program_gives_a_clear_message_and_nothing_is_lost()
    {
        await using var records = await FilledAsync(3);
        var store = await records.OpenAsync();
        await using var other = new SqliteConnection($"Data Source={records.File};Pooling=False");
        await other.OpenAsync(Stop);
        RecordsOpening.Scalar(other, "BEGIN IMMEDIATE");
        var make = new Drafts(seed: 9);
        var waited = Stopwatch.StartNew();
        var busy = await Assert.ThrowsAsync<RecordsException>(() => store.AppendAsync([make.Spreader("a", "b")], Stop));
        Assert.Equal(RecordsFault.Busy, busy.Fault);
        Assert.InRange(waited.Elapsed.TotalSeconds, 1, 60);
        Assert.Equal(3, (await store.ReadAsync(stop: Stop)).Count);
        RecordsOpening.Scalar(other, "ROLLBACK");
        Assert.Equal(4, (await store.AppendAsync([make.Spreader("a", "b")], Stop)).Last);
    }

    [Fact]
    public async Task A_clock_set_back_changes_neither_order_nor_proof_and_is_told()
    {
        await using var records = TestRecords.InFolder();
        var make = new Drafts();
        DateTimeOffset[] clocks = [Drafts.Noon, Drafts.Noon.AddYears(10), Drafts.Noon.AddYears(-10), Drafts.Noon];
        foreach (var now in clocks)
        {
            var store = await records.OpenAsync(new FixedClock(now));
            await store.AppendAsync([make.Spreader(make.Id(), "HR")], Stop);
            Assert.True((await store.CheckChainAsync(Stop)).IsWhole);
        }

        var last = await records.OpenAsync(new FixedClock(Drafts.Noon));
        Assert.Equal([1, 2, 3, 4], (await last.ReadAsync(stop: Stop)).Select(entry => entry.Number));
        Assert.Contains("clock", Assert.Single(last.Notes).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_may_not_be_written_gives_a_clear_message()
    {
        // A folder below a file can be made by nobody, root included.
        var file = Path.GetTempFileName();
        var refused = await Assert.ThrowsAsync<RecordsException>(
            () => EntryStore.OpenAsync(RecordsPlace.InFolder(Path.Combine(file, "records")), stop: Stop));
        File.Delete(file);
        Assert.Equal(RecordsFault.Denied, refused.Fault);
        Assert.Contains("--data", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Records_that_are_only_looked_for_are_not_made()
    {
        var place = RecordsPlace.InFolder(Path.Combine(Path.GetTempPath(), $"lanewright-none-{Guid.NewGuid():N}"));
        await Assert.ThrowsAsync<RecordsException>(() => EntryStore.OpenAsync(place, null, Opening.Existing, Stop));
        Assert.False(Directory.Exists(place.DataFolder));
    }

    [Fact]
    public async Task A_log_cut_or_garbled_anywhere_leaves_a_beginning_of_the_records_or_is_refused()
    {
        var tally = await WalCuts.RunAsync(200, 11, Stop);
        Assert.Equal(200, tally.Cases);
        Assert.Equal(0, tally.Wrong);
        Assert.True(tally.Opened > 100, $"{tally}");
    }

    private static async Task<TestRecords> FilledAsync(int entries)
    {
        var records = TestRecords.InFolder();
        var store = await records.OpenAsync();
        var make = new Drafts(seed: 5);
        await store.AppendAsync([.. Enumerable.Range(0, entries).Select(i => make.Spreader($"sp-{i}", new string('n', 300)))], Stop);
        store.Release();
        return records;
    }

    private sealed class FixedClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
