using System.Net;
using System.Text.Json;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;

namespace Lanewright.Storage.Tests;

/// <summary>The office's forms: picking a name, adding, changing, retiring, settling.</summary>
public sealed class OfficeFormTests(DemoServer server) : IClassFixture<DemoServer>
{
    private readonly EntryStore store = server.Store;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Uri Address => server.Client.BaseAddress!;

    [Fact]
    public async Task A_scale_is_added_changed_and_retired_and_each_record_reads_back()
    {
        using var browser = new OfficeBrowser(Address);
        var added = await browser.FillAsync(
            "office/scales/new", "/office/scales/new", ("f.id", "new floor scale"), ("f.kind", "floor"), ("f.capacity", "1.250,5 kg"),
            ("f.division", "0,2 kg"), ("f.class", "iii"), ("f.verified", "2026-04-14"), ("f.depot", "Northgate"));
        Assert.Equal(HttpStatusCode.Found, added.Status);
        var item = await ScaleAsync("new floor scale");
        var scale = Core.Exchange.TreeFields.Read(
            Core.Exchange.JsonTree.Read(item.Payload), Core.Text.TextCulture.Invariant, Core.Register.RegisterReader.Scale);
        Assert.Empty(scale.Findings);
        Assert.Equal(1250.5, scale.Value!.Scale.Capacity!.Value.Si, 9);
        Assert.Equal(0.2, scale.Value.Scale.Division!.Value.Si, 9);
        var entry = (await store.FindAsync(item.EntryId, Stop))!;
        Assert.Equal(("R.V.", "office", null), (entry.Person, entry.Device, entry.Parent));

        var edit = $"/office/scales/{item.Id}/edit";
        var silent = await browser.FillAsync(edit, edit, ("f.retired", "yes"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, silent.Status);
        Assert.Contains("nothing says why", silent.Page, StringComparison.Ordinal);
        var retired = await browser.FillAsync(edit, edit, ("f.retired", "yes"), ("why", "sold"));
        Assert.Equal(HttpStatusCode.Found, retired.Status);
        var after = await ScaleAsync("new floor scale");
        Assert.True(after.Retired);
        var change = (await store.FindAsync(after.EntryId, Stop))!;
        Assert.Equal((item.EntryId, "sold"), (change.Parent, change.Why));
    }

    [Fact]
    public async Task What_is_wrong_stands_beside_its_field_and_what_was_typed_stays()
    {
        using var browser = new OfficeBrowser(Address);
        var before = await store.LastAsync(Stop);
        var answer = await browser.FillAsync(
            "office/spreaders/new", "/office/spreaders/new", ("f.id", "HR-101"), ("f.loop", "closed"), ("f.constant", "pulses-per-mass"),
            ("f.unit", "pulse/lb"), ("f.seasonMass", "<b>much</b>"), ("f.resolution", "0.01"), ("f.note", "line one\nline two"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(before, await store.LastAsync(Stop));
        var fields = OfficeBrowser.FormOf(answer.Page, "/office/spreaders/new");
        Assert.Equal("<b>much</b>", fields["f.seasonMass"]);
        Assert.Equal("line one\nline two", fields["f.note"]);
        Assert.Contains("id=\"f-seasonMass-found\"", answer.Page, StringComparison.Ordinal);
        Assert.Contains("cannot be read as", answer.Page, StringComparison.Ordinal);
        // The number is another spreader's.
        Assert.Contains("id=\"f-id-found\"", answer.Page, StringComparison.Ordinal);
        Assert.Contains("The register has &quot;HR-101&quot; already.", answer.Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_sent_without_a_name_asks_for_it_and_comes_back_as_it_was_typed()
    {
        using var browser = new OfficeBrowser(Address, person: null);
        var asked = await browser.FillAsync(
            "office/materials/new", "/office/materials/new", ("f.name", "salt \"A\" & more"), ("f.bulkDensity", "80 lb/ft³"), ("f.supplier", "one\ntwo"));
        Assert.Contains("<h1>Who are you?</h1>", asked.Page, StringComparison.Ordinal);
        var carried = OfficeBrowser.FormOf(asked.Page, "/office/materials/new");
        carried["who"] = "N.E. W";
        var back = await browser.SendAsync("/office/materials/new", carried);
        Assert.Contains("You are N.E. W now", back.Page, StringComparison.Ordinal);
        var fields = OfficeBrowser.FormOf(back.Page, "/office/materials/new");
        Assert.Equal("salt \"A\" & more", fields["f.name"]);
        fields["f.supplier"] = "";
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync("/office/materials/new", fields)).Status);
        var item = (await store.RegisterAsync("material", Stop)).First(one => one.Payload.Contains("& more", StringComparison.Ordinal));
        Assert.Equal("N.E. W", (await store.FindAsync(item.EntryId, Stop))!.Person);
        Assert.Contains("<span>N.E. W</span>", (await browser.OpenAsync("office")).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://elsewhere.example/", "/office")]
    [InlineData("//elsewhere.example", "/office")]
    [InlineData("/office/due", "/office/due")]
    public async Task Picking_a_name_leads_back_within_the_office_only(string back, string to)
    {
        using var browser = new OfficeBrowser(Address, person: null);
        var answer = await browser.FillAsync($"office/who?back={Uri.EscapeDataString(back)}", "/office/who", ("who", "A.B."));
        Assert.Equal((HttpStatusCode.Found, to), (answer.Status, answer.Location));
        var none = await browser.FillAsync("office/who", "/office/who", ("who", " "));
        Assert.Equal(HttpStatusCode.BadRequest, none.Status);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("forged")]
    public async Task A_form_without_its_token_changes_nothing_and_comes_back(string? token)
    {
        using var browser = new OfficeBrowser(Address);
        var before = await store.LastAsync(Stop);
        var fields = OfficeBrowser.FormOf((await browser.OpenAsync("office/depots/new")).Page, "/office/depots/new");
        fields["f.name"] = $"Depot {token}";
        if (token is null) fields.Remove("token");
        else fields["token"] = token;
        var answer = await browser.SendAsync("/office/depots/new", fields);
        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Equal(before, await store.LastAsync(Stop));
        var again = OfficeBrowser.FormOf(answer.Page, "/office/depots/new");
        Assert.Equal($"Depot {token}", again["f.name"]);
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync("/office/depots/new", again)).Status);
    }

    [Fact]
    public async Task The_same_form_sent_twice_makes_one_record()
    {
        using var browser = new OfficeBrowser(Address);
        var fields = OfficeBrowser.FormOf((await browser.OpenAsync("office/people/new")).Page, "/office/people/new");
        (fields["f.name"], fields["f.role"]) = ("D.D.", "operator");
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync("/office/people/new", fields)).Status);
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync("/office/people/new", fields)).Status);
        Assert.Single(await store.RegisterAsync("person", Stop), item => item.Payload.Contains("D.D.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_record_that_somebody_changed_meanwhile_is_not_written_over_unseen()
    {
        using var browser = new OfficeBrowser(Address);
        var depot = (await store.RegisterAsync("depot", Stop)).First(item => item.Payload.Contains("Alder Flat", StringComparison.Ordinal));
        var edit = $"/office/depots/{depot.Id}/edit";
        var stale = OfficeBrowser.FormOf((await browser.OpenAsync(edit)).Page, edit);
        await browser.FillAsync(edit, edit, ("f.name", "Alder Flat North"), ("why", "renamed"));
        (stale["f.name"], stale["why"]) = ("Alder Flat South", "renamed");
        var answer = await browser.SendAsync(edit, stale);
        Assert.Contains("Somebody else changed this record meanwhile", answer.Page, StringComparison.Ordinal);
        Assert.Contains("Alder Flat North", answer.Page, StringComparison.Ordinal);
        var again = OfficeBrowser.FormOf(answer.Page, edit);
        Assert.Equal("Alder Flat South", again["f.name"]);
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync(edit, again)).Status);
        Assert.Empty((await store.RegisterItemAsync(depot.Id, Stop))!.Others);
    }

    [Fact]
    public async Task Two_standing_versions_are_shown_and_one_choice_settles_them()
    {
        var drafts = new Drafts("other office", 77);
        var subject = drafts.Id();
        var first = drafts.Draft("register.scale", subject, """{"id":"twice","capacity":"100 kg","future":[1]}""");
        await store.AppendAsync([first, drafts.Draft("register.scale", subject, """{"id":"twice","capacity":"200 kg"}""")], Stop);
        using var browser = new OfficeBrowser(Address);
        var (_, page) = await browser.OpenAsync($"office/scales/{subject}/edit");
        Assert.Contains("100 kg", page, StringComparison.Ordinal);
        Assert.Contains("200 kg", page, StringComparison.Ordinal);
        var settle = $"/office/scales/{subject}/settle";
        var silent = await browser.FillAsync($"office/scales/{subject}/edit", settle, ("keep", first.Id));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, silent.Status);
        var done = await browser.FillAsync($"office/scales/{subject}/edit", settle, ("keep", first.Id), ("why", "read off the plate"));
        Assert.Equal(HttpStatusCode.Found, done.Status);
        var item = (await store.RegisterItemAsync(subject, Stop))!;
        Assert.Empty(item.Others);
        Assert.Contains("100 kg", item.Payload, StringComparison.Ordinal);
        Assert.Contains("\"future\":[1]", item.Payload, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_member_that_a_newer_program_wrote_outlives_a_change()
    {
        var drafts = new Drafts("newer", 78);
        var subject = drafts.Id();
        await store.AppendAsync([drafts.Draft("register.depot", subject, """{"name":"Newer","colour":{"r":1}}""")], Stop);
        using var browser = new OfficeBrowser(Address);
        var edit = $"/office/depots/{subject}/edit";
        Assert.Equal(HttpStatusCode.Found, (await browser.FillAsync(edit, edit, ("f.name", "Newest"), ("why", "name"))).Status);
        using var json = JsonDocument.Parse((await store.RegisterItemAsync(subject, Stop))!.Payload);
        Assert.Equal("Newest", json.RootElement.GetProperty("name").GetString());
        Assert.Equal(1, json.RootElement.GetProperty("colour").GetProperty("r").GetInt32());
    }

    [Fact]
    public async Task The_due_list_follows_the_rules()
    {
        using var browser = new OfficeBrowser(Address);
        const string edit = "/office/rules/rules/edit";
        var day = await browser.FillAsync(edit, edit, ("f.seasonMonth", "4"), ("f.seasonDay", "31"), ("why", "trying"));
        Assert.Contains("id=\"f-seasonDay-found\"", day.Page, StringComparison.Ordinal);
        var before = (await browser.OpenAsync("office/due")).Page;
        Assert.Contains("changed on", before, StringComparison.Ordinal);
        var words = Core.Register.RegisterReader.Changes.Select(word => ($"f.recalibrateAfter.{word.Text}", "no"));
        Assert.Equal(HttpStatusCode.Found, (await browser.FillAsync(edit, edit, [.. words, ("why", "trying")])).Status);
        Assert.DoesNotContain("changed on", (await browser.OpenAsync("office/due")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Something_done_to_a_spreader_is_written_down_and_taken_back()
    {
        using var browser = new OfficeBrowser(Address);
        var item = (await store.RegisterAsync("spreader", Stop)).First(one => one.Payload.Contains("HR-107", StringComparison.Ordinal));
        var page = $"/office/spreaders/{item.Id}";
        var before = (await store.EventsAsync(item.Id, Stop)).Count;
        var wrong = await browser.FillAsync(page, page + "/events", ("f.event", "gate"), ("f.date", "11/25/2026"), ("f.note", "new plate"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        var fields = OfficeBrowser.FormOf(wrong.Page, page + "/events");
        Assert.Equal(("11/25/2026", "new plate", "gate"), (fields["f.date"], fields["f.note"], fields["f.event"]));
        Assert.Contains("not a date of the form", wrong.Page, StringComparison.Ordinal);
        fields["f.date"] = "2026-11-24";
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync(page + "/events", fields)).Status);
        var happened = (await store.EventsAsync(item.Id, Stop))[^1];
        Assert.Equal(("gate", "2026-11-24", "new plate", "R.V."), (happened.Event, happened.Date, happened.Note, happened.Person));
        var back = page + "/events/take-back";
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await browser.FillAsync(page, back, ("event", happened.EntryId))).Status);
        Assert.Equal(HttpStatusCode.Found, (await browser.FillAsync(page, back, ("event", happened.EntryId), ("why", "other truck"))).Status);
        Assert.Equal(before, (await store.EventsAsync(item.Id, Stop)).Count);
    }

    private async Task<RegisterItem> ScaleAsync(string id) =>
        (await store.RegisterAsync("scale", Stop)).Single(item => item.Payload.Contains($"\"{id}\"", StringComparison.Ordinal));
}
