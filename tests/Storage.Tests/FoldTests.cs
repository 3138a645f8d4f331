using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;
using Lanewright.Storage.Records;

namespace Lanewright.Storage.Tests;

public sealed class FoldTests
{
    public static TheoryData<Provider> Providers => [Provider.Sqlite, Provider.Postgres];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Providers))]
    public async Task Two_devices_on_one_field_are_both_kept_and_shown_until_a_later_entry_settles_it(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var (one, two) = (new Drafts("phone-1", 1), new Drafts("phone-2", 2));
        var test = one.Id();
        const string path = "runs[0].containers[0].gross";
        var begin = one.Begin(test);
        var left = one.Field(test, path, "64.8", begin.Id);
        var right = two.Field(test, path, "46.8", begin.Id);

        await store.AppendAsync([begin, left, right], Stop);
        var fold = (await store.FoldAsync(test, Stop))!;
        var state = fold.Fields.Single(field => field.Path == path);
        Assert.True(state.IsConflict);
        Assert.Equal(["64.8", "46.8"], state.Heads.Select(head => head.Text));
        Assert.Null(fold.Text(path));
        var listed = (await store.TestAsync(test, Stop))!;
        Assert.Equal(1, listed.Test.Conflicts);
        Assert.Empty(listed.Results);
        Assert.Equal("stop", listed.Test.Severity);

        await store.AppendAsync([two.Field(test, path, "64.8", right.Id, left.Id)], Stop);
        var settled = (await store.TestAsync(test, Stop))!;
        Assert.Equal(0, settled.Test.Conflicts);
        Assert.Equal("64.8", (await store.FoldAsync(test, Stop))!.Text(path));
        Assert.Single(settled.Results);
        Assert.Equal(4, settled.Test.Entries);
    }

    [Fact]
    public void Two_devices_that_typed_the_same_are_no_conflict()
    {
        var (one, two) = (new Drafts("phone-1", 1), new Drafts("phone-2", 2));
        var fold = Fold([one.Field("t", "place", "Quarry Road"), two.Field("t", "place", "Quarry Road")]);
        Assert.Equal(0, fold.Conflicts);
        Assert.Equal("Quarry Road", fold.Text("place"));
    }

    [Fact]
    public void Replacing_a_test_s_beginning_for_one_field_leaves_its_other_fields_standing()
    {
        var make = new Drafts();
        var begin = make.Begin("t");
        var fold = Fold([begin, make.Field("t", "title", "new title", begin.Id)]);
        Assert.Equal("new title", fold.Text("title"));
        Assert.Equal("Quarry Road", fold.Text("place"));
    }

    [Fact]
    public void Entries_that_replace_each_other_in_a_circle_all_stand()
    {
        var make = new Drafts();
        var (a, b) = (make.Field("t", "place", "A"), make.Field("t", "place", "B"));
        var fold = Fold([a with { Parent = b.Id }, b with { Parent = a.Id }]);
        Assert.Equal(2, fold.Fields.Single().Heads.Count);
    }

    [Fact]
    public void The_fold_is_the_same_whatever_the_order_of_arrival()
    {
        CsCheck.Check.Sample(
            CsCheck.Gen.Int[0, 100_000],
            seed =>
            {
                var random = new Random(seed);
                var devices = new[] { new Drafts("phone-1", seed), new Drafts("phone-2", seed + 1) };
                var sent = new List<EntryDraft> { devices[0].Begin("t") };
                for (var i = 0; i < 12; i++)
                {
                    var path = random.Next(3) switch { 0 => "title", 1 => "place", _ => "runs[0].delivered" };
                    var parents = sent.Where(one => one.Payload.Contains($"\"{path}\"", StringComparison.Ordinal)).ToList();
                    var parent = parents.Count > 0 && random.Next(4) > 0 ? parents[random.Next(parents.Count)].Id : null;
                    sent.Add(devices[random.Next(2)].Field("t", path, $"{random.Next(3)}", parent));
                }

                var shuffled = sent.ToArray();
                random.Shuffle(shuffled);
                return Shape(Fold(sent)) == Shape(Fold(shuffled));
            },
            iter: 300, threads: 1);

        static string Shape(TestFold fold) => string.Join(
            ';',
            fold.Fields.Select(field => $"{field.Path}={string.Join('|', field.Heads.Select(head => head.Entry.Id + head.Text).Order())}"));
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task The_computed_result_is_that_of_the_same_sheet_written_by_hand(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var test = make.Id();
        // Field by field, a run left out in the middle of the list, and typed on the way to the right text.
        var typed = Drafts.Verification
            .Select(field => make.Field(test, field.Key.Replace("runs[2]", "runs[7]", StringComparison.Ordinal), field.Value)).ToList();
        await store.AppendAsync([make.Begin(test, new Dictionary<string, string>()), .. typed], Stop);

        var listed = (await store.TestAsync(test, Stop))!;

        var result = Assert.Single(listed.Results);
        // Net masses 62.5, 61.2 and 61.7 lb against 63.0, 61.5 and 62.2 lb that the controller said.
        Assert.Equal((62.5 + 61.2 + 61.7) / (63.0 + 61.5 + 62.2), result.Value, 0.002);
        Assert.Equal("pass", result.Conformity);
        Assert.Equal("HR-104", listed.Test.SpreaderName);
        Assert.Equal(TestRow.Open, listed.Test.State);

        await store.AppendAsync([make.Decide(test, "adopt")], Stop);
        var decided = (await store.TestAsync(test, Stop))!.Test;
        Assert.Equal((TestRow.Decided, "adopt", "M.O."), (decided.State, decided.Verdict, decided.DecidedBy));
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task The_register_holds_the_latest_record_and_names_those_it_does_not_know_to_be_older(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var (one, two) = (new Drafts("office", 1), new Drafts("phone-2", 2));
        var first = one.Spreader("sp-1", "HR-104");
        var (left, right) = (one.Spreader("sp-1", "HR-104A", first.Id), two.Spreader("sp-1", "HR-104B", first.Id));
        await store.AppendAsync([first, left, right, one.Spreader("sp-2", "HR-9", retired: true)], Stop);

        var items = await store.RegisterAsync(Stop);
        Assert.Equal(["sp-1", "sp-2"], items.Select(item => item.Id));
        Assert.Equal(right.Id, items[0].EntryId);
        Assert.Equal(left.Id, items[0].Others);
        Assert.True(items[1].Retired);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task A_corrected_event_is_shown_once(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var wrong = make.Draft("spreader.event", "sp-1", """{"event":"gate","note":"gate bent","date":"2026-11-01"}""");
        var right = make.Draft(
            "spreader.event", "sp-1", """{"event":"sensor","note":"sensor, not gate","date":"2026-11-01"}""", wrong.Id, "wrong word");
        await store.AppendAsync([wrong, right], Stop);
        Assert.Equal("sensor", Assert.Single(await store.EventsAsync("sp-1", Stop)).Event);
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task Tests_are_listed_page_by_page_latest_first_and_found_by_words(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        var tests = Enumerable.Range(0, 25).Select(i => make.Begin(
            make.Id(), new Dictionary<string, string> { ["title"] = $"Check {i}", ["place"] = i % 2 == 0 ? "Quarry" : "Mill Ünder" },
            $"sp-{i % 5}")).ToList();
        await store.AppendAsync(tests, Stop);
        await store.AppendAsync([make.Decide(tests[3].Subject, "adopt")], Stop);

        var seen = new List<string>();
        long? before = null;
        while (true)
        {
            var page = await store.TestsAsync(new() { Before = before, Most = 10 }, Stop);
            if (page.Count == 0) break;
            seen.AddRange(page.Select(one => one.Test.Id));
            before = page[^1].Test.LastNumber;
        }

        Assert.Equal(25, seen.Distinct().Count());
        Assert.Equal(tests[3].Subject, seen[0]);
        Assert.Equal(24, (await store.TestsAsync(new() { OpenOnly = true }, Stop)).Count);
        Assert.Equal(5, (await store.TestsAsync(new() { Spreader = "sp-1" }, Stop)).Count);
        Assert.Equal(12, (await store.TestsAsync(new() { Words = "MILL ünder check" }, Stop)).Count);
        Assert.Empty(await store.TestsAsync(new() { Words = "%" }, Stop));
    }

    [Theory, MemberData(nameof(Providers))]
    public async Task Rebuilding_gives_the_very_same_computed_rows_and_mends_ones_gone_astray(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        var store = await records.OpenAsync();
        var make = new Drafts();
        for (var i = 0; i < 8; i++)
        {
            var test = make.Id();
            await store.AppendAsync([make.Begin(test), make.Field(test, "place", $"Depot {i}"), make.Spreader($"sp-{i}", $"HR-{i}")], Stop);
            if (i % 2 == 0) await store.AppendAsync([make.Decide(test, "adopt"), make.Field(test, "title", "both", null)], Stop);
        }

        var (before, after) = await store.RebuildAsync(Stop);
        Assert.Equal(before, after);

        await records.TamperAsync("UPDATE tests SET \"Title\" = 'astray'");
        var (astray, mended) = await store.RebuildAsync(Stop);
        Assert.NotEqual(before, astray);
        Assert.Equal(before, mended);
    }

    private static TestFold Fold(IReadOnlyList<EntryDraft> drafts) => TestFold.Of(
        [.. drafts.Select((draft, i) => EntryStore.Chained(draft, i + 1, Drafts.Noon, EntryHash.First, EntryHash.First))]);
}
