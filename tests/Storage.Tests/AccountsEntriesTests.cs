using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;

namespace Lanewright.Storage.Tests;

/// <summary>What becomes of entries and photos by who sends them.</summary>
public sealed class AccountsEntriesTests : IAsyncLifetime
{
    private static readonly string[] Roles = ["viewer", "operator", "technician", "supervisor"];

    private AccountsServer server = null!;
    private AccountsClient supervisor = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        server = await AccountsServer.StartAsync();
        supervisor = await server.SupervisorAsync("S.V.");
    }

    public ValueTask DisposeAsync() => server.DisposeAsync();

    [Theory]
    [InlineData("test.begin", """{"kind":"drop-test","spreader":null,"fields":{}}""", 1)]
    [InlineData("test.field", """{"path":"place","text":"Quarry Road"}""", 1)]
    [InlineData("test.note", """{"text":"rain"}""", 1)]
    [InlineData("spreader.event", """{"event":"battery","note":"","date":"2026-11-25"}""", 1)]
    [InlineData("test.decision", """{"verdict":"adopt","why":"","keyed":null,"readBack":null}""", 2)]
    [InlineData("register.spreader", """{"name":"HR-1"}""", 2)]
    [InlineData("register.scale", """{"name":"bench"}""", 2)]
    [InlineData("register.material", """{"name":"salt"}""", 2)]
    [InlineData("unheard.of", "{}", 2)]
    [InlineData("register.person", """{"name":"X","role":"viewer"}""", 3)]
    [InlineData("register.depot", """{"name":"North"}""", 3)]
    [InlineData("register.rules", "{}", 3)]
    public async Task Each_role_makes_the_kinds_it_may(string kind, string payload, int least)
    {
        var make = new Drafts();
        for (var role = 0; role < Roles.Length; role++)
        {
            var browser = await server.PersonAsync(supervisor, $"P{role}", Roles[role]);
            var before = (await server.Store.LastAsync(Stop)).Number;
            var result = await SendAsync(browser, make.Draft(kind, make.Id(), payload) with { Person = $"P{role}" });
            Assert.Equal((role >= least ? "accepted" : "refused", Roles[role]), (result.Status, Roles[role]));
            if (role < least) Assert.Contains($"needs the role {Roles[least]}", result.Reason, StringComparison.Ordinal);
            Assert.Equal(before + (role >= least ? 1 : 0), (await server.Store.LastAsync(Stop)).Number);
        }

        Assert.Empty(await server.Store.QuarantineAsync(Stop));
    }

    [Fact]
    public async Task Another_s_entry_waits_on_the_phone_and_what_is_here_already_is_confirmed()
    {
        var make = new Drafts();
        var phone = await server.PersonAsync(supervisor, "K.L.", "operator");
        EntryDraft own = make.Spreader("sp", "x") with { Kind = EntryKinds.TestNote, Payload = """{"text":"mine"}""", Person = "K.L." };
        var others = own with { Id = make.Id(), Person = "M.O." };
        var waiting = await SendAsync(phone, others);
        Assert.Equal("wait", waiting.Status);
        Assert.Contains("sign in as M.O.", waiting.Reason, StringComparison.Ordinal);
        Assert.Equal(others.Id, waiting.Id);
        Assert.Equal("accepted", (await SendAsync(phone, own)).Status);
        Assert.Equal(1, (await server.Store.LastAsync(Stop)).Number);
        Assert.Empty(await server.Store.QuarantineAsync(Stop));

        // The answer was lost, and now somebody else is signed in on the phone.
        var (_, json) = await supervisor.JsonAsync(HttpMethod.Post, "api/entries", Body(own, others));
        Assert.Equal(["have", "wait"], json.GetProperty("results").EnumerateArray().Select(one => one.GetProperty("status").GetString()));
        Assert.Equal("wait", (await SendAsync(supervisor, own with { Payload = """{"text":"changed"}""" })).Status);
    }

    [Fact]
    public async Task Answers_stand_in_the_order_sent_and_what_is_not_understood_goes_to_quarantine()
    {
        var make = new Drafts();
        var phone = await server.PersonAsync(supervisor, "K.L.", "operator");
        var note = make.Draft(EntryKinds.TestNote, "t", """{"text":"a"}""") with { Person = "K.L." };
        string[] sent =
        [
            EntryWriter.Text(note with { Person = "M.O." }), "{\"id\":\"poison\"}", EntryWriter.Text(note with { Id = make.Id() }),
            EntryWriter.Text(note with { Id = make.Id(), Kind = "register.person", Payload = "{}" }), EntryWriter.Text(note with { Id = make.Id() }),
        ];
        var (_, json) = await phone.JsonAsync(HttpMethod.Post, "api/entries", $$"""{"entries":[{{string.Join(',', sent)}}]}""");
        Assert.Equal(
            ["wait", "rejected", "accepted", "refused", "accepted"],
            json.GetProperty("results").EnumerateArray().Select(one => one.GetProperty("status").GetString()));
        Assert.Single(await server.Store.QuarantineAsync(Stop));

        var viewer = await server.PersonAsync(supervisor, "V.W.", "viewer");
        var (_, refused) = await viewer.JsonAsync(HttpMethod.Post, "api/entries", """{"entries":[{"id":"more"}]}""");
        Assert.Equal("refused", refused.GetProperty("results")[0].GetProperty("status").GetString());
        Assert.Single(await server.Store.QuarantineAsync(Stop));
    }

    [Fact]
    public async Task A_photo_comes_from_the_person_whose_entry_it_belongs_to()
    {
        var make = new Drafts();
        byte[] bytes = [1, 2, 3];
        var phone = await server.PersonAsync(supervisor, "K.L.", "operator");
        var entry = make.Draft(EntryKinds.TestPhoto, make.Id(),
            $$"""{"slot":"runs[0]","name":"a.jpg","mime":"image/jpeg","bytes":3,"sha256":"{{PhotoHash.Of(bytes)}}"}""") with { Person = "K.L." };
        Assert.Equal("accepted", (await SendAsync(phone, entry)).Status);
        Assert.Equal(403, await PutAsync(supervisor));
        Assert.Equal(403, await PutAsync(await server.PersonAsync(supervisor, "V.W.", "viewer")));
        Assert.Equal(200, await PutAsync(phone));
        Assert.Equal(bytes, await supervisor.Http.GetByteArrayAsync($"api/photos/{entry.Id}", Stop));

        async Task<int> PutAsync(AccountsClient browser)
        {
            using var content = new ByteArrayContent(bytes);
            using var answer = await browser.Http.PutAsync($"api/photos/{entry.Id}", content, Stop);
            return (int)answer.StatusCode;
        }
    }

    private static string Body(params EntryDraft[] drafts) => $$"""{"entries":[{{string.Join(',', drafts.Select(EntryWriter.Text))}}]}""";

    private static async Task<(string? Id, string? Status, string? Reason)> SendAsync(AccountsClient browser, EntryDraft draft)
    {
        var (_, json) = await browser.JsonAsync(HttpMethod.Post, "api/entries", Body(draft));
        var result = json.GetProperty("results")[0];
        return (result.GetProperty("id").GetString(), result.GetProperty("status").GetString(), result.GetProperty("reason").GetString());
    }
}
