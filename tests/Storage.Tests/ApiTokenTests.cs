using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Lanewright.Accounts;
using Lanewright.Storage.Entries;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Storage.Tests;

/// <summary>Tokens of other programs: made and withdrawn by a supervisor, limited by their role.</summary>
public sealed partial class ApiTokenTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task A_token_reads_and_sends_under_its_own_name_until_it_is_withdrawn(Provider provider)
    {
        await using var server = await AccountsServer.StartAsync(provider);
        var supervisor = await server.SupervisorAsync();
        var program = With(server, await MakeAsync(supervisor, "Scale house", "operator"));
        Assert.Equal(200, (await program.JsonAsync(HttpMethod.Get, "api/tests")).Status);
        var (_, me) = await program.JsonAsync(HttpMethod.Get, "api/me");
        Assert.Equal(("Scale house (token)", "operator"), (me.GetProperty("person").GetString(), me.GetProperty("role").GetString()));

        var make = new Drafts();
        var test = make.Id();
        var (status, answer) = await program.JsonAsync(HttpMethod.Post, "api/entries", Sent(
            make.Begin(test) with { Person = "Scale house (token)" }, make.Begin(make.Id()) with { Person = "M.O." },
            make.Spreader("sp-1", "HR-104") with { Person = "Scale house (token)" }));
        Assert.Equal(200, status);
        Assert.Equal(["accepted", "wait", "refused"], answer.GetProperty("results").EnumerateArray().Select(one => one.GetProperty("status").GetString()));
        Assert.Equal("Scale house (token)", (await server.Store.ReadAsync(subject: test, stop: Stop)).Single().Person);

        var page = await supervisor.Http.GetStringAsync("office/accounts", Stop);
        Assert.Contains("token made as operator for 90 days", page, StringComparison.Ordinal);
        Assert.DoesNotContain(ApiTokens.Prefix, page, StringComparison.Ordinal);
        (await supervisor.ChangeAsync("Scale house", "token/withdraw")).Dispose();
        var (gone, problem) = await program.JsonAsync(HttpMethod.Get, "api/tests");
        Assert.Equal(401, gone);
        Assert.Contains("withdrawn", problem.GetProperty("title").GetString(), StringComparison.Ordinal);
        Assert.Contains("token withdrawn", await supervisor.Http.GetStringAsync("office/accounts", Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_hash_of_a_token_is_kept_and_it_ends_by_itself()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        var token = await MakeAsync(supervisor, "Night copy", "technician");
        await using (var data = AccountsContext.At(server.Records.Place))
        {
            var kept = await data.Tokens.SingleAsync(Stop);
            Assert.Matches("^[0-9a-f]{64}$", kept.Hash);
            Assert.DoesNotContain(token[ApiTokens.Prefix.Length..], string.Join(' ', kept.Hash, kept.Name, kept.Role), StringComparison.Ordinal);
        }

        var program = With(server, token);
        Assert.Equal(200, (await program.JsonAsync(HttpMethod.Get, "api/entries")).Status);
        server.Clock.Now += TimeSpan.FromDays(90) + TimeSpan.FromSeconds(1);
        Assert.Equal(401, (await program.JsonAsync(HttpMethod.Get, "api/entries")).Status);
    }

    [Theory]
    [InlineData("viewer", "api/entries", 403)]
    [InlineData("operator", "api/quarantine", 403)]
    [InlineData("technician", "api/entries", 200)]
    [InlineData("viewer", "api/reports/due", 200)]
    [InlineData("supervisor", "office/accounts", 302)]
    [InlineData("supervisor", "office", 302)]
    public async Task A_token_does_what_its_role_may_and_opens_no_page(string role, string path, int expected)
    {
        await using var server = await AccountsServer.StartAsync();
        var program = With(server, await MakeAsync(await server.SupervisorAsync(), "Program", role));
        using var answer = await program.Http.GetAsync(path, Stop);
        Assert.Equal(expected, (int)answer.StatusCode);
    }

    [Fact]
    public async Task A_wrong_token_is_refused_even_beside_a_good_session()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        foreach (var wrong in (string[])["", "x", ApiTokens.Prefix, ApiTokens.Prefix + new string('A', 43), new string('A', 8_000)])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "api/tests");
            request.Headers.TryAddWithoutValidation("Authorization", "Bearer " + wrong);
            using var answer = await supervisor.Http.SendAsync(request, Stop);
            Assert.Equal(401, (int)answer.StatusCode);
            Assert.Equal("Bearer error=\"invalid_token\"", answer.Headers.WwwAuthenticate.ToString());
        }

        Assert.Equal(200, (await supervisor.JsonAsync(HttpMethod.Get, "api/tests")).Status);
    }

    [Theory]
    [InlineData("", "viewer", "90", "What for")]
    [InlineData("Night copy", "boss", "90", "Role")]
    [InlineData("Night copy", "viewer", "9999", "Valid for")]
    [InlineData("Taken", "viewer", "90", "already")]
    public async Task A_token_that_is_asked_for_wrongly_is_not_made_and_what_was_typed_stays(string name, string role, string days, string what)
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        await MakeAsync(supervisor, "Taken", "viewer");
        using var answer = await supervisor.SubmitAsync("office/accounts", "office/accounts/token", ("name", name), ("role", role), ("days", days));
        var page = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(422, (int)answer.StatusCode);
        Assert.Contains(what, page, StringComparison.Ordinal);
        Assert.Contains($"name=\"name\" value=\"{name}\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_person_cannot_take_the_name_of_a_token_and_only_supervisors_make_them()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        using (var invited = await supervisor.SubmitAsync("office/accounts", "office/accounts/invite", ("person", "Scale house (Token) "), ("role", "operator")))
            Assert.Equal(422, (int)invited.StatusCode);
        var technician = await server.PersonAsync(supervisor, "K.L.", "technician");
        using var refused = await technician.SubmitAsync("sign-out", "office/accounts/token", ("name", "x"), ("role", "viewer"), ("days", "90"));
        Assert.Equal(403, (int)refused.StatusCode);
    }

    private static async Task<string> MakeAsync(AccountsClient supervisor, string name, string role)
    {
        using var answer = await supervisor.SubmitAsync("office/accounts", "office/accounts/token", ("name", name), ("role", role), ("days", "90"));
        return Token().Match(await answer.Content.ReadAsStringAsync(Stop)).Groups[1].Value;
    }

    private static AccountsClient With(AccountsServer server, string token)
    {
        var program = server.Browser();
        program.Http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return program;
    }

    private static string Sent(params EntryDraft[] drafts) => $$"""{"entries":[{{string.Join(',', drafts.Select(EntryWriter.Text))}}]}""";

    [GeneratedRegex("<code>(lanewright-token-[0-9A-Za-z_-]{43})</code>")]
    private static partial Regex Token();
}
