using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Tests;

public sealed class ChainTests
{
    public static TheoryData<Provider, string, long> Changes
    {
        get
        {
            // Every column of an entry; ' || ' appends to a text, + changes a number.
            var data = new TheoryData<Provider, string, long>();
            foreach (var provider in new[] { Provider.Sqlite, Provider.Postgres })
            {
                foreach (var text in new[] { "Kind", "Subject", "Person", "Device", "Zone", "Payload", "Hash", "PreviousHash", "Id" })
                    data.Add(provider, $"UPDATE entries SET \"{text}\" = \"{text}\" || 'x' WHERE \"Number\" = 5", 5);
                foreach (var number in new[] { "At", "Received", "Seq" })
                    data.Add(provider, $"UPDATE entries SET \"{number}\" = \"{number}\" + 1 WHERE \"Number\" = 5", 5);
                data.Add(provider, "UPDATE entries SET \"Why\" = 'no reason' WHERE \"Number\" = 5", 5);
                data.Add(provider, "UPDATE entries SET \"Parent\" = 'x' WHERE \"Number\" = 5", 5);
                data.Add(provider, "DELETE FROM entries WHERE \"Number\" = 5", 6);
                data.Add(provider, "DELETE FROM entries WHERE \"Number\" = 1", 2);
                data.Add(provider, "UPDATE entries SET \"Number\" = 99 WHERE \"Number\" = 5", 6);
                data.Add(
                    provider,
                    "UPDATE entries SET \"Number\" = 1000 WHERE \"Number\" = 5; UPDATE entries SET \"Number\" = 5 WHERE \"Number\" = 6;"
                    + " UPDATE entries SET \"Number\" = 6 WHERE \"Number\" = 1000", 5);
            }

            return data;
        }
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Changes))]
    public async Task A_changed_removed_or_moved_entry_is_found(Provider provider, string change, long at)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await FilledAsync(records);
        await LiftGuardAsync(provider, records);

        await records.TamperAsync(change);

        var report = await store.CheckChainAsync(Stop);
        Assert.False(report.IsWhole);
        Assert.Equal(at, report.Problems[0].Number);
        var refused = await Assert.ThrowsAsync<Database.RecordsException>(() => records.OpenAsync());
        Assert.Contains("damaged", refused.Message, StringComparison.Ordinal);
        var looked = await EntryStore.OpenAsync(records.Place, null, Opening.Inspect, Stop);
        Assert.False((await looked.CheckChainAsync(Stop)).IsWhole);
    }

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task The_database_itself_refuses_to_change_or_remove_entries(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await FilledAsync(records);
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => records.TamperAsync("UPDATE entries SET \"Person\" = 'x'"));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => records.TamperAsync("DELETE FROM entries"));
        Assert.True((await store.CheckChainAsync(Stop)).IsWhole);
    }

    [Fact]
    public async Task Any_single_bit_flipped_in_any_text_of_an_entry_is_found()
    {
        await using var records = TestRecords.InFolder();
        var entry = (await (await FilledAsync(records)).ReadAsync(stop: Stop))[3];
        var random = new Random(7);
        for (var i = 0; i < 2000; i++)
        {
            var payload = entry.Payload.ToCharArray();
            var place = random.Next(payload.Length);
            payload[place] ^= (char)(1 << random.Next(7));
            Assert.NotEqual(entry.Hash, EntryHash.Of(entry with { Payload = new string(payload) }));
        }
    }

    [Fact]
    public void Moving_text_from_one_field_to_the_next_changes_the_hash()
    {
        var make = new Drafts();
        var one = make.Draft("k", "s", "{}") with { Why = "a\nb", Zone = "z" };
        var hashes = new[]
        {
            one, one with { Why = "a", Payload = "b\n{}" }, one with { Why = "a\\nb" }, one with { Why = "a\\\nb" },
            one with { Zone = "", Parent = "z" },
        }.Select(draft => EntryHash.Of(1, Drafts.Noon, EntryHash.First, draft)).ToList();
        Assert.Equal(hashes.Count, hashes.Distinct().Count());
    }

    [Fact]
    public void The_hash_is_that_of_the_lines_in_the_format_page()
    {
        // Worked out with sha256sum over the lines of docs/formats/entries.md; the data is invented.
        var draft = new EntryDraft
        {
            Id = "0193a1b2-0000-7000-8000-000000000001", Kind = "test.note", Subject = "0193a1b2-0000-7000-8000-00000000000a",
            Person = "M.O.", Device = "d1", Seq = 1, At = new(2026, 11, 25, 10, 12, 13, 123, TimeSpan.Zero), Zone = "America/Chicago",
            Why = "two\nlines", Payload = "{\"text\":\"salt \\\"wet\\\"\"}",
        };
        Assert.Equal(
            "327b8b064d093b48aa18be270a31fdb1ce25932b60183cdd917f87bfc3fd52df",
            EntryHash.Of(1, new(2026, 11, 25, 10, 12, 14, TimeSpan.Zero), EntryHash.First, draft));
    }

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task A_photo_is_kept_once_proved_against_its_entry_and_a_changed_one_is_found(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        byte[] bytes = [1, 2, 3, 4];
        var entry = make.Draft(
            EntryKinds.TestPhoto, make.Id(),
            $$"""{"slot":"runs[0]","name":"a.jpg","mime":"image/jpeg","bytes":4,"sha256":"{{Records.PhotoHash.Of(bytes)}}"}""");
        Assert.Equal(PhotoStatus.NoEntry, await store.PutPhotoAsync(entry.Id, bytes, Stop));
        await store.AppendAsync([entry], Stop);
        Assert.Equal(PhotoStatus.OtherBytes, await store.PutPhotoAsync(entry.Id, [9], Stop));
        var put = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => store.PutPhotoAsync(entry.Id, bytes, Stop)));
        Assert.Equal(1, put.Count(status => status is PhotoStatus.Accepted));
        Assert.Equal(7, put.Count(status => status is PhotoStatus.Have));
        Assert.Equal(bytes, (await store.PhotoAsync(entry.Id, Stop))!.Bytes);
        Assert.Equal((1, true), ((await store.CheckChainAsync(Stop)).Photos, (await store.CheckChainAsync(Stop)).IsWhole));

        await records.TamperAsync(provider is Provider.Sqlite ? "UPDATE photos SET Bytes = x'01020305'" : "UPDATE photos SET \"Bytes\" = '\\x01020305'");
        Assert.Contains("photo", (await store.CheckChainAsync(Stop)).Problems.Single().What.ToString(), StringComparison.Ordinal);
    }

    private static async Task<EntryStore> FilledAsync(TestRecords records)
    {
        var store = await records.OpenAsync();
        var make = new Drafts();
        var test = make.Id();
        await store.AppendAsync(
            [make.Begin(test), .. Enumerable.Range(0, 9).Select(i => make.Field(test, $"runs[{i}].pulses", $"{100 + i}"))], Stop);
        return store;
    }

    private static async Task LiftGuardAsync(Provider provider, TestRecords records)
    {
        string[] guards = provider is Provider.Sqlite
            ? ["DROP TRIGGER entries_stay_1", "DROP TRIGGER entries_stay_2"]
            : ["DROP TRIGGER entries_stay ON entries"];
        foreach (var guard in guards) await records.TamperAsync(guard);
    }
}
