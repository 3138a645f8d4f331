using System.Net;
using System.Text.RegularExpressions;
using Lanewright.Accounts;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Tests;

public sealed class AccountsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task The_first_supervisor_pairs_once_signs_in_and_out_and_it_is_written_down(Provider provider)
    {
        await using var server = await AccountsServer.StartAsync(provider);
        var browser = await server.SupervisorAsync();
        Assert.Equal(("accounts", "M.O.", "supervisor"), await MeAsync(browser));
        using (var again = await server.Browser().PairAsync("K.L.", server.FirstCode))
            Assert.Contains("not valid", await again.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);

        using (var gone = await browser.SubmitAsync("sign-out", "sign-out")) Assert.Equal(HttpStatusCode.Redirect, gone.StatusCode);
        Assert.Equal(("accounts", null, null), await MeAsync(browser));
        using (var wrong = await browser.SignInAsync("M.O.", "gravel under the snow"))
            Assert.Contains("do not belong together", await wrong.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using (var back = await browser.SignInAsync("m.o.")) Assert.Equal("/office", back.Headers.Location!.OriginalString);

        var page = await browser.Http.GetStringAsync("office/accounts", Stop);
        var log = page[page.IndexOf("account-log", StringComparison.Ordinal)..];
        string[] told = ["signed in", "wrong password", "signed out", "pairing refused", "paired as supervisor"];
        Assert.Equal(told, told.OrderBy(what => log.IndexOf(what, StringComparison.Ordinal)));
        Assert.All(told, what => Assert.Contains(what, log, StringComparison.Ordinal));
        Assert.DoesNotContain(AccountsServer.Password, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_session_s_cookie_is_kept_from_scripts_other_sites_and_plain_http()
    {
        await using var server = await AccountsServer.StartAsync();
        using var answer = await server.Browser().PairAsync("M.O.", server.FirstCode);
        var cookie = answer.Headers.GetValues("Set-Cookie").Single(one => one.StartsWith("__Host-lanewright=", StringComparison.Ordinal));
        foreach (var part in new[] { "secure", "httponly", "samesite=strict", "path=/" })
            Assert.Contains(part, cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Without_a_session_the_API_answers_401_and_the_office_leads_to_the_sign_in()
    {
        await using var server = await AccountsServer.StartAsync();
        var browser = server.Browser();
        foreach (var path in new[] { "api/tests", "api/register", "api/quarantine", "api/photos/x", "api/none", "API/Tests" })
        {
            using var answer = await browser.Http.GetAsync(path, Stop);
            Assert.Equal(401, (int)answer.StatusCode);
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        }

        Assert.Equal(401, (await browser.JsonAsync(HttpMethod.Post, "api/entries", "{\"entries\":[]}")).Status);
        Assert.Equal(200, (await browser.JsonAsync(HttpMethod.Get, "api/hello")).Status);
        using var office = await browser.Http.GetAsync("office/tests?q=a%26b", Stop);
        Assert.Equal("/sign-in?return=%2Foffice%2Ftests%3Fq%3Da%2526b", office.Headers.Location!.OriginalString);
        using var accounts = await browser.Http.GetAsync("office/accounts", Stop);
        Assert.StartsWith("/sign-in", accounts.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/office/tests?q=a", "/office/tests?q=a")]
    [InlineData("https://elsewhere.example/", "/office")]
    [InlineData("//elsewhere.example", "/office")]
    [InlineData("/\\elsewhere.example", "/office")]
    [InlineData("office", "/office")]
    [InlineData("/\t/elsewhere.example", "/office")]
    public async Task After_signing_in_a_person_stays_on_this_server(string back, string expected)
    {
        await using var server = await AccountsServer.StartAsync();
        await server.SupervisorAsync();
        using var answer = await server.Browser().SignInAsync("M.O.", back: back);
        Assert.Equal(expected, answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Five_wrong_passwords_lock_an_account_for_ten_minutes()
    {
        await using var server = await AccountsServer.StartAsync();
        await server.SupervisorAsync();
        var browser = server.Browser();
        for (var i = 0; i < SignIns.Tries; i++)
            (await browser.SignInAsync("M.O.", $"gravel under the snow {i}")).Dispose();
        using (var right = await browser.SignInAsync("M.O."))
            Assert.Contains("locked for another 10 minutes", await right.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        server.Clock.Now += SignIns.LockedFor + TimeSpan.FromSeconds(1);
        using var later = await browser.SignInAsync("M.O.");
        Assert.Equal(HttpStatusCode.Redirect, later.StatusCode);
    }

    [Fact]
    public async Task An_address_that_tries_too_often_is_held_up()
    {
        await using var server = await AccountsServer.StartAsync(limits: new(SignIn: 3));
        var browser = server.Browser();
        for (var i = 0; i < 3; i++)
            using (var wrong = await browser.PairAsync("M.O.", "0000-0000-0000-0000")) Assert.Equal(422, (int)wrong.StatusCode);
        using var held = await browser.PairAsync("M.O.", server.FirstCode);
        Assert.Equal(429, (int)held.StatusCode);
        Assert.Equal("60", held.Headers.GetValues("Retry-After").Single());
        Assert.Equal(200, (await browser.JsonAsync(HttpMethod.Get, "api/hello")).Status);
    }

    [Fact]
    public async Task A_flood_of_the_API_is_held_up_with_a_problem()
    {
        await using var server = await AccountsServer.StartAsync(limits: new(Api: 5));
        var browser = server.Browser();
        for (var i = 0; i < 5; i++) await browser.JsonAsync(HttpMethod.Get, "api/hello");
        var (status, problem) = await browser.JsonAsync(HttpMethod.Get, "api/hello");
        Assert.Equal(429, status);
        Assert.Contains("Too many", problem.GetProperty("title").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sign-in")]
    [InlineData("sign-out")]
    [InlineData("pair")]
    [InlineData("office/accounts/invite")]
    [InlineData("office/accounts/disable")]
    [InlineData("office/accounts/role")]
    public async Task A_form_that_does_not_come_from_a_page_of_ours_is_refused(string address)
    {
        await using var server = await AccountsServer.StartAsync();
        var browser = await server.SupervisorAsync();
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("name", "M.O."), KeyValuePair.Create("password", AccountsServer.Password)]);
        using var answer = await browser.Http.PostAsync(address, form, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.DoesNotContain(answer.Headers, header => header.Key == "Set-Cookie" && header.Value.Any(one => one.StartsWith("__Host-lanewright=", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_code_that_is_wrong_too_old_another_s_or_used_gives_no_account()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        var code = await supervisor.InviteAsync("K.L.", "operator");
        foreach (var (name, typed) in new[] { ("K.L.", "0000-0000-0000-0000"), ("A.B.", code), ("K.L.", code[..^1]) })
        {
            using var refused = await server.Browser().PairAsync(name, typed);
            var page = await refused.Content.ReadAsStringAsync(Stop);
            Assert.Equal(422, (int)refused.StatusCode);
            Assert.Contains($"value=\"{name}\"", page, StringComparison.Ordinal);
            Assert.Contains($"value=\"{typed}\"", page, StringComparison.Ordinal);
            Assert.DoesNotContain(AccountsServer.Password, page, StringComparison.Ordinal);
        }

        // As people type it.
        using (var taken = await server.Browser().PairAsync("k.l.", code.Replace("-", " ", StringComparison.Ordinal).ToLowerInvariant()))
            Assert.Equal("/yard/", taken.Headers.Location!.OriginalString);
        using (var used = await server.Browser().PairAsync("K.L.", code)) Assert.Equal(422, (int)used.StatusCode);

        var late = await supervisor.InviteAsync("E.F.", "viewer");
        server.Clock.Now += PairingCodes.InvitationLife + TimeSpan.FromSeconds(1);
        using var old = await server.Browser().PairAsync("E.F.", late);
        Assert.Equal(422, (int)old.StatusCode);
    }

    [Fact]
    public async Task The_first_code_is_good_for_ten_minutes_and_a_new_one_replaces_it()
    {
        await using var server = await AccountsServer.StartAsync();
        server.Clock.Now += PairingCodes.PrintedLife + TimeSpan.FromSeconds(1);
        using (var old = await server.Browser().PairAsync("M.O.", server.FirstCode)) Assert.Equal(422, (int)old.StatusCode);
        var second = await AccountsSetup.PrepareAsync(server.Records.Place, server.Clock, Stop);
        var third = await AccountsSetup.PrepareAsync(server.Records.Place, server.Clock, Stop);
        using (var replaced = await server.Browser().PairAsync("M.O.", second!)) Assert.Equal(422, (int)replaced.StatusCode);
        using (var good = await server.Browser().PairAsync("M.O.", third!)) Assert.Equal(HttpStatusCode.Redirect, good.StatusCode);
        Assert.Null(await AccountsSetup.PrepareAsync(server.Records.Place, server.Clock, Stop));
    }

    [Fact]
    public async Task One_code_used_by_many_at_once_gives_one_account()
    {
        await using var server = await AccountsServer.StartAsync();
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => server.Browser().PairAsync($"P{i}", server.FirstCode)));
        Assert.Single(answers, answer => answer.StatusCode == HttpStatusCode.Redirect);
        foreach (var answer in answers) answer.Dispose();
    }

    [Theory]
    [InlineData("short words", "11 characters")]
    [InlineData("password1234", "common")]
    [InlineData("Lanewright2026", "common")]
    [InlineData("123456789012", "row")]
    [InlineData("aaaaaaaaaaaaaa", "repeats")]
    [InlineData("M.Osullivan 12", "common", "M.Osullivan")]
    public async Task A_password_that_would_be_tried_first_is_refused_in_words(string password, string why, string name = "M.O.")
    {
        await using var server = await AccountsServer.StartAsync();
        using var answer = await server.Browser().PairAsync(name, server.FirstCode, password);
        Assert.Contains(why, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var differing = await server.Browser().PairAsync(name, server.FirstCode, again: "something else entirely");
        Assert.Contains("not the same", await differing.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var good = await server.Browser().PairAsync(name, server.FirstCode);
        Assert.Equal(HttpStatusCode.Redirect, good.StatusCode);
    }

    [Fact]
    public async Task Disabling_signing_out_everywhere_and_a_new_password_end_sessions_at_once()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        var operatorPhone = await server.PersonAsync(supervisor, "K.L.", "operator");
        Assert.Equal(200, (await operatorPhone.JsonAsync(HttpMethod.Get, "api/tests")).Status);

        (await supervisor.ChangeAsync("K.L.", "disable")).Dispose();
        Assert.Equal(401, (await operatorPhone.JsonAsync(HttpMethod.Get, "api/tests")).Status);
        using (var refused = await operatorPhone.SignInAsync("K.L."))
            Assert.Contains("out of use", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        (await supervisor.ChangeAsync("K.L.", "enable")).Dispose();
        (await operatorPhone.SignInAsync("K.L.")).Dispose();
        Assert.Equal(200, (await operatorPhone.JsonAsync(HttpMethod.Get, "api/tests")).Status);

        (await supervisor.ChangeAsync("K.L.", "sign-out")).Dispose();
        Assert.Equal(401, (await operatorPhone.JsonAsync(HttpMethod.Get, "api/tests")).Status);
        (await operatorPhone.SignInAsync("K.L.")).Dispose();
        var code = await supervisor.InviteAsync("K.L.", "technician");
        (await server.Browser().PairAsync("K.L.", code, "another long secret")).Dispose();
        Assert.Equal(401, (await operatorPhone.JsonAsync(HttpMethod.Get, "api/tests")).Status);
    }

    [Fact]
    public async Task A_changed_role_holds_in_the_running_session()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        var phone = await server.PersonAsync(supervisor, "K.L.", "operator");
        (await supervisor.ChangeAsync("K.L.", "role", ("role", "technician"))).Dispose();
        Assert.Equal(("accounts", "K.L.", "technician"), await MeAsync(phone));
        using var nonsense = await supervisor.ChangeAsync("K.L.", "role", ("role", "king"));
        Assert.Equal(422, (int)nonsense.StatusCode);
        Assert.Equal(("accounts", "K.L.", "technician"), await MeAsync(phone));
    }

    [Theory]
    [InlineData("disable", "")]
    [InlineData("role", "viewer")]
    public async Task The_only_supervisor_stays(string what, string role)
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        using var answer = await supervisor.ChangeAsync("M.O.", what, ("role", role));
        Assert.Contains("only supervisor", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(("accounts", "M.O.", "supervisor"), await MeAsync(supervisor));
    }

    [Theory]
    [InlineData("viewer", "office", 200)]
    [InlineData("viewer", "api/register", 200)]
    [InlineData("viewer", "office/audit", 403)]
    [InlineData("operator", "office/audit", 403)]
    [InlineData("operator", "OFFICE/Audit", 403)]
    [InlineData("operator", "api/quarantine", 403)]
    [InlineData("technician", "office/audit", 200)]
    [InlineData("technician", "office/accounts", 403)]
    [InlineData("supervisor", "office/audit", 200)]
    [InlineData("supervisor", "office/accounts", 200)]
    public async Task Each_role_reads_what_it_may(string role, string path, int status)
    {
        await using var server = await AccountsServer.StartAsync();
        var browser = await server.PersonAsync(await server.SupervisorAsync(), "K.L.", role);
        using var answer = await browser.Http.GetAsync(path, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Theory]
    [InlineData("viewer", "technician", "", "scales materials depots people rules")]
    [InlineData("operator", "technician", "", "scales materials depots people rules")]
    [InlineData("technician", "supervisor", "scales materials", "depots people rules")]
    [InlineData("supervisor", "", "scales materials depots people rules", "")]
    public async Task Each_role_is_offered_the_forms_it_may_send(string role, string least, string offered, string not)
    {
        await using var server = await AccountsServer.StartAsync();
        var browser = await server.PersonAsync(await server.SupervisorAsync(), "K.L.", role);
        foreach (var list in offered.Split(' ', StringSplitOptions.RemoveEmptyEntries)) await Offered(list, true);
        foreach (var list in not.Split(' ', StringSplitOptions.RemoveEmptyEntries)) await Offered(list, false);

        var writes = role is "technician" or "supervisor";
        var spreaders = (await PageAsync("office")).Text;
        Assert.Equal(writes, spreaders.Contains("/office/spreaders/new", StringComparison.Ordinal));
        Assert.Equal(writes, spreaders.Contains("/office/import?kind=spreaders", StringComparison.Ordinal));
        Assert.Equal(writes, (await PageAsync("office/scales")).Text.Contains("\"/office/import\"", StringComparison.Ordinal));
        var import = await PageAsync("office/import");
        Assert.Equal(writes ? 200 : 403, import.Status);
        Assert.Equal(writes, import.Text.Contains("<option value=\"scales\"", StringComparison.Ordinal));
        Assert.Equal(role is "supervisor", import.Text.Contains("<option value=\"people\"", StringComparison.Ordinal));

        async Task Offered(string list, bool may)
        {
            var address = list == "rules" ? "/office/rules/rules/edit" : $"/office/{list}/new";
            Assert.Equal(may, (await PageAsync("office/" + list)).Text.Contains(address, StringComparison.Ordinal));
            var form = await PageAsync(address[1..]);
            Assert.Equal((list, may ? 200 : 403), (list, form.Status));
            Assert.Equal(may, form.Text.Contains("class=\"record\"", StringComparison.Ordinal));
            if (!may) Assert.Matches($"This needs the role ({least}|supervisor); you are signed in as K.L., {role}", form.Text);
        }

        async Task<(int Status, string Text)> PageAsync(string path)
        {
            using var answer = await browser.Http.GetAsync(path, Stop);
            return ((int)answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop));
        }
    }

    [Fact]
    public async Task Whoever_may_only_look_at_a_spreader_is_shown_no_form_for_it()
    {
        await using var server = await AccountsServer.StartAsync();
        var supervisor = await server.SupervisorAsync();
        var make = new Drafts();
        var spreader = Core.Practice.DemoWorld.Make(20260901, DemoServer.Today).First(one => one.Kind == "register.spreader");
        await server.Store.AppendAsync([make.Draft(spreader.Kind, "sp", spreader.Payload)], Stop);
        foreach (var (role, change, happened) in new[] { ("viewer", false, false), ("operator", false, true), ("technician", true, true) })
        {
            var browser = await server.PersonAsync(supervisor, role + ".", role);
            var page = await browser.Http.GetStringAsync("office/spreaders/sp", Stop);
            Assert.Equal((role, change), (role, page.Contains("/office/spreaders/sp/edit", StringComparison.Ordinal)));
            Assert.Equal((role, happened), (role, page.Contains("action=\"/office/spreaders/sp/events\"", StringComparison.Ordinal)));
            using var form = await browser.Http.GetAsync("office/spreaders/sp/edit", Stop);
            Assert.Equal((role, change ? 200 : 403), (role, (int)form.StatusCode));
        }
    }

    [Fact]
    public async Task Accounts_travel_in_a_backup_and_not_in_an_export()
    {
        await using var server = await AccountsServer.StartAsync();
        await server.SupervisorAsync();
        var folder = Directory.CreateTempSubdirectory("lanewright-accounts-");
        try
        {
            string backup = Path.Combine(folder.FullName, "b.zip"), export = Path.Combine(folder.FullName, "e.zip");
            await Transfer.Backup.WriteAsync(server.Store, backup, Stop);
            await Transfer.Export.WriteAsync(server.Store, export, Stop);
            using (var zip = System.IO.Compression.ZipFile.OpenRead(export))
                Assert.DoesNotContain(zip.Entries, entry => entry.Name.EndsWith(".db", StringComparison.Ordinal) || Text(entry).Contains("M.O.", StringComparison.Ordinal));

            var other = TestRecords.InFolder();
            await Transfer.Backup.RestoreAsync(backup, other.Place, replace: false, stop: Stop);
            await using var second = await AccountsServer.StartAsync(records: other);
            Assert.Equal("", second.FirstCode);
            using var signedIn = await second.Browser().SignInAsync("M.O.");
            Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
            Assert.True((await second.Store.CheckChainAsync(Stop)).IsWhole);
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        static string Text(System.IO.Compression.ZipArchiveEntry entry)
        {
            using var reader = new StreamReader(entry.Open());
            return reader.ReadToEnd();
        }
    }

    [Fact]
    public void The_password_s_hash_has_the_count_that_is_advised()
    {
        Assert.Equal(PasswordRules.Iterations, new RequestLimits().HashIterations);
        var options = Microsoft.Extensions.Options.Options.Create(
            new Microsoft.AspNetCore.Identity.PasswordHasherOptions { IterationCount = new RequestLimits().HashIterations });
        var hash = Convert.FromBase64String(
            new Microsoft.AspNetCore.Identity.PasswordHasher<Account>(options).HashPassword(new(), AccountsServer.Password));
        // Version 1 of the form, pseudo-random function 2 (HMAC-SHA512), then the count.
        Assert.Equal([1, 0, 0, 0, 2], hash[..5]);
        Assert.True(System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(5)) >= 210_000);
    }

    private static async Task<(string? Mode, string? Person, string? Role)> MeAsync(AccountsClient browser)
    {
        var (_, me) = await browser.JsonAsync(HttpMethod.Get, "api/me");
        return (me.GetProperty("mode").GetString(), me.GetProperty("person").GetString(), me.GetProperty("role").GetString());
    }
}
