using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;
using Lanewright.Storage.Transfer;

namespace Lanewright.Storage.Tests;

public sealed class TransferTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-transfer-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_backup_taken_while_entries_come_in_restores_to_the_same_export()
    {
        await using var records = TestRecords.InFolder();
        var store = await FilledAsync(records);
        var make = new Drafts("busy", 77);
        var writing = Task.Run(async () =>
        {
            for (var i = 0; i < 40; i++) await store.AppendAsync([make.Spreader(make.Id(), $"HR-{i}")], Stop);
        }, Stop);
        var during = await Backup.WriteAsync(store, Named("during.zip"), Stop);
        await writing;
        var after = await Backup.WriteAsync(store, Named("after.zip"), Stop);
        await Export.WriteAsync(store, Named("before.zip"), Stop);
        Assert.True(during.IsWhole && during.Entries <= after.Entries);

        await using var other = TestRecords.InFolder();
        var (report, aside) = await Backup.RestoreAsync(Named("after.zip"), other.Place, replace: false, stop: Stop);

        Assert.Equal((after.Entries, after.LastHash, null), (report.Entries, report.LastHash, aside));
        var restored = await other.OpenAsync();
        await Export.WriteAsync(restored, Named("again.zip"), Stop);
        Assert.Equal(await File.ReadAllBytesAsync(Named("before.zip"), Stop), await File.ReadAllBytesAsync(Named("again.zip"), Stop));
        Assert.Equal(await store.ComputedDigestAsync(Stop), await restored.ComputedDigestAsync(Stop));
    }

    [Fact]
    public async Task A_backup_damaged_at_any_place_is_refused_and_the_records_stay()
    {
        await using var records = TestRecords.InFolder();
        var store = await FilledAsync(records);
        await Backup.WriteAsync(store, Named("good.zip"), Stop);
        var good = await File.ReadAllBytesAsync(Named("good.zip"), Stop);
        await using var other = TestRecords.InFolder();
        var random = new Random(3);
        var refused = 0;
        for (var i = 0; i < 60; i++)
        {
            var bad = (byte[])good.Clone();
            if (i % 3 == 0) bad = bad[..random.Next(bad.Length)];
            else bad[random.Next(bad.Length)] ^= (byte)(1 << random.Next(8));
            await File.WriteAllBytesAsync(Named("bad.zip"), bad, Stop);
            try
            {
                var (report, _) = await Backup.RestoreAsync(Named("bad.zip"), other.Place, replace: true, stop: Stop);
                // A bit that carries nothing (a time, a spare field of the zip): what was restored is whole all the same.
                Assert.Equal((await store.LastAsync(Stop)).Hash, report.LastHash);
            }
            catch (RecordsException wrong)
            {
                Assert.Contains("Nothing was changed", wrong.Message, StringComparison.Ordinal);
                refused++;
            }
        }

        Assert.True(refused > 40, $"{refused} of 60 refused");
    }

    [Fact]
    public async Task Restoring_never_overwrites_and_sets_the_old_records_aside()
    {
        await using var records = TestRecords.InFolder();
        var store = await FilledAsync(records);
        await Backup.WriteAsync(store, Named("b.zip"), Stop);
        var make = new Drafts("later", 5);
        await store.AppendAsync([make.Spreader("sp-later", "HR")], Stop);
        store.Release();

        var refused = await Assert.ThrowsAsync<RecordsException>(() => Backup.RestoreAsync(Named("b.zip"), records.Place, false, stop: Stop));
        Assert.Contains("--replace", refused.Message, StringComparison.Ordinal);
        using (ServingLock.Take(records.Place))
        {
            var running = await Assert.ThrowsAsync<RecordsException>(() => Backup.RestoreAsync(Named("b.zip"), records.Place, true, stop: Stop));
            Assert.Contains("running", running.Message, StringComparison.Ordinal);
        }

        var (report, aside) = await Backup.RestoreAsync(Named("b.zip"), records.Place, true, stop: Stop);
        var old = await EntryStore.OpenAsync(RecordsPlace.InFolder(aside!), stop: Stop);
        Assert.Equal(report.Entries + 1, (await old.LastAsync(Stop)).Number);
        old.Release();
        Assert.Equal(report.Entries, (await (await records.OpenAsync()).LastAsync(Stop)).Number);
    }

    [Fact]
    public async Task A_backup_is_not_written_over_a_file_that_is_there()
    {
        await using var records = TestRecords.InFolder();
        var store = await FilledAsync(records);
        await File.WriteAllTextAsync(Named("mine.zip"), "mine", Stop);
        await Assert.ThrowsAsync<RecordsException>(() => Backup.WriteAsync(store, Named("mine.zip"), Stop));
        Assert.Equal("mine", await File.ReadAllTextAsync(Named("mine.zip"), Stop));
        Assert.Single(Directory.GetFileSystemEntries(folder));
    }

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task An_import_merges_and_the_second_time_changes_nothing(Provider provider)
    {
        await using var from = TestRecords.InFolder();
        var source = await FilledAsync(from);
        await Export.WriteAsync(source, Named("e.zip"), Stop);
        await using var to = await TestRecords.OnAsync(provider);
        var target = await to.OpenAsync();
        var make = new Drafts("own", 50);
        await target.AppendAsync([make.Spreader("own-1", "HR-1")], Stop);

        var first = await Export.ReadAsync(target, Named("e.zip"), Stop);
        Assert.Equal((first.Entries, 1L), (first.Added, first.Photos));
        Assert.Equal(first.Entries + 1, (await target.LastAsync(Stop)).Number);
        Assert.Equal((await source.QuarantineAsync(Stop)).Select(one => one.Raw), (await target.QuarantineAsync(Stop)).Select(one => one.Raw));
        Assert.Equal(
            (await source.ReadAsync(stop: Stop)).Select(EntryWriterDraft), (await target.ReadAsync(1, stop: Stop)).Select(EntryWriterDraft));
        Assert.True((await target.CheckChainAsync(Stop)).IsWhole);

        var second = await Export.ReadAsync(target, Named("e.zip"), Stop);
        Assert.Equal((0L, 0L, 0L), (second.Added, second.Photos, second.Conflicts));
    }

    [Fact]
    public async Task A_damaged_or_altered_export_is_refused_before_anything_is_written()
    {
        await using var from = TestRecords.InFolder();
        await Export.WriteAsync(await FilledAsync(from), Named("e.zip"), Stop);
        var bytes = await File.ReadAllBytesAsync(Named("e.zip"), Stop);
        bytes[bytes.Length / 2] ^= 1;
        await File.WriteAllBytesAsync(Named("bad.zip"), bytes, Stop);
        await using var to = TestRecords.InFolder();
        var target = await to.OpenAsync();
        await Assert.ThrowsAsync<RecordsException>(() => Export.ReadAsync(target, Named("bad.zip"), Stop));
        await Assert.ThrowsAsync<RecordsException>(() => Export.ReadAsync(target, Named("none.zip"), Stop));
        Assert.Equal(0, (await target.LastAsync(Stop)).Number);
    }

    private static string EntryWriterDraft(Entry entry) => EntryWriter.Text((EntryDraft)entry);

    private string Named(string name) => Path.Combine(folder, name);

    internal static async Task<EntryStore> FilledAsync(TestRecords records)
    {
        var store = await records.OpenAsync();
        var make = new Drafts();
        byte[] photo = [.. Enumerable.Range(0, 5000).Select(i => (byte)(i * 7))];
        var test = make.Id();
        var picture = make.Draft(
            EntryKinds.TestPhoto, test,
            $$"""{"slot":"runs[0]","name":"ä.jpg","mime":"image/jpeg","bytes":5000,"sha256":"{{PhotoHash.Of(photo)}}"}""");
        await store.AppendAsync([make.Begin(test), picture, make.Spreader("sp-1", "HR-104 \"quoted\""), make.Decide(test, "adopt")], Stop);
        await store.AppendAsync([Drafts.Read("""{"id":"poison","x":"\u0000\ud83d\ude00"}""")], Stop);
        await store.PutPhotoAsync(picture.Id, photo, Stop);
        return store;
    }
}
