using System.Text.Json;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Tests;

public sealed class AppendTests
{
    public static TheoryData<Provider> Providers => [Provider.Sqlite, Provider.Postgres];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Providers))]
    public async Task Entries_are_numbered_chained_and_read_back_as_sent(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var test = make.Id();
        var sent = new[] { make.Begin(test), make.Field(test, "people", "Ünal \\ \"T.K.\"\n"), make.Spreader("sp-1", "HR-104") };

        var answer = await store.AppendAsync(sent, Stop);

        Assert.Equal([1L, 2L, 3L], answer.Results.Select(one => one.Number!.Value));
        Assert.All(answer.Results, one => Assert.Equal(AppendStatus.Accepted, one.Status));
        var read = await store.ReadAsync(stop: Stop);
        // The payload is kept with its characters written in one way.
        Assert.All(read.Zip(sent), pair => Assert.True(pair.First.SameContent(
            pair.Second with { Payload = EntryReader.Minify(JsonDocument.Parse(pair.Second.Payload).RootElement) })));
        Assert.Equal(EntryHash.First, read[0].PreviousHash);
        Assert.Equal(read[0].Hash, read[1].PreviousHash);
        Assert.All(read, entry => Assert.Equal(EntryHash.Of(entry), entry.Hash));
        Assert.True((await store.CheckChainAsync(Stop)).IsWhole);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task The_same_batch_twenty_times_in_parallel_gives_one_copy(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var test = make.Id();
        var batch = Enumerable.Range(0, 30).Select(i => make.Field(test, $"runs[{i}].pulses", $"{i}")).Prepend(make.Begin(test)).ToList();

        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(i => Task.Run(async () =>
        {
            // Half of them through a store of their own, as a second program would.
            var own = i % 2 == 0 ? store : await records.OpenAsync();
            return await own.AppendAsync(i % 3 == 0 ? [.. batch.AsEnumerable().Reverse()] : batch, Stop);
        }, Stop)));

        Assert.Equal(31, (await store.ReadAsync(stop: Stop)).Count);
        Assert.Equal(31, answers.Sum(answer => answer.Results.Count(one => one.Status is AppendStatus.Accepted)));
        Assert.All(answers.SelectMany(answer => answer.Results), one => Assert.NotNull(one.Number));
        Assert.Empty(await store.QuarantineAsync(Stop));
        Assert.True((await store.CheckChainAsync(Stop)).IsWhole);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task Numbers_have_no_gaps_when_many_write_at_once(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();

        await Task.WhenAll(Enumerable.Range(0, 12).Select(device => Task.Run(async () =>
        {
            var make = new Drafts($"phone-{device}", device + 100);
            for (var i = 0; i < 5; i++) await store.AppendAsync([make.Spreader(make.Id(), $"HR-{device}-{i}")], Stop);
        }, Stop)));

        Assert.Equal(Enumerable.Range(1, 60).Select(i => (long)i), (await store.ReadAsync(stop: Stop)).Select(one => one.Number));
        Assert.True((await store.CheckChainAsync(Stop)).IsWhole);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task An_id_that_says_something_else_is_a_conflict_and_both_are_kept(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var first = make.Spreader("sp-1", "HR-104");
        var other = first with { Payload = """{"name":"HR-105"}""" };

        await store.AppendAsync([first], Stop);
        var answer = await store.AppendAsync([other, other], Stop);

        Assert.All(answer.Results, one => Assert.Equal(AppendStatus.Conflict, one.Status));
        Assert.True((await store.ReadAsync(stop: Stop)).Single().SameContent(first));
        var aside = Assert.Single(await store.QuarantineAsync(Stop));
        Assert.Contains("HR-105", aside.Raw, StringComparison.Ordinal);
        Assert.Equal(first.Id, aside.EntryId);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task Entries_that_are_not_understood_go_to_quarantine_and_hold_up_nothing(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var good = make.Spreader("sp-1", "HR-104");
        string[] poison =
        [
            "17", "null", "[]", "{}", """{"id":"x"}""",
            EntryWriter.Text(make.Field("t", "runs[0]..pulses", "1")),
            EntryWriter.Text(good with { Id = "0193A1B2-0000-7000-8000-00000000000A" }),
            EntryWriter.Text(good).Replace("M.O.", "\\ud800", StringComparison.Ordinal),
            EntryWriter.Text(good).Replace("HR-104", "\\ud800", StringComparison.Ordinal),
            EntryWriter.Text(good).Replace("M.O.", "M\\u0000O", StringComparison.Ordinal),
            EntryWriter.Text(good).Replace("2026-11-25", "25.11.2026", StringComparison.Ordinal),
            EntryWriter.Text(good).Replace("\"seq\":1", "\"seq\":1e99", StringComparison.Ordinal),
            EntryWriter.Text(good).Replace("{\"name\"", "{\"deep\":" + new string('[', 300) + new string(']', 300) + ",\"name\"", StringComparison.Ordinal),
        ];
        var sent = poison.Select(Drafts.Read).Append(Drafts.Read(EntryWriter.Text(good))).ToList();

        var answer = await store.AppendAsync(sent, Stop);

        Assert.All(answer.Results.SkipLast(1), one => Assert.Equal(AppendStatus.Rejected, one.Status));
        Assert.All(answer.Results.SkipLast(1), one => Assert.False(string.IsNullOrEmpty(one.Reason?.ToString())));
        Assert.Equal(AppendStatus.Accepted, answer.Results[^1].Status);
        Assert.Equal(poison.Length, (await store.QuarantineAsync(Stop)).Count);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task Unknown_kinds_and_members_are_kept_as_they_are(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var test = make.Id();
        var zero = """{"a":"\u0000 é \uD83D\uDE00","n":1.50,"n2":1e5}""";
        EntryDraft[] sent = [make.Draft("weather.seen", "w", zero), make.Draft("test.wind", test, """{"speed":"5 m/s"}""")];

        var answer = await store.AppendAsync([.. sent.Select(one => Drafts.Read(EntryWriter.Text(one)))], Stop);

        Assert.All(answer.Results, one => Assert.Equal(AppendStatus.Accepted, one.Status));
        Assert.Equal(zero, (await store.ReadAsync(kinds: ["weather.seen"], stop: Stop)).Single().Payload);
        Assert.Equal(1, (await store.TestAsync(test, Stop))!.Test.Entries);
    }
}
