using System.CommandLine;
using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Lanewright.Accounts;
using Lanewright.Commands;
using Lanewright.Host;
using Lanewright.Network;
using Lanewright.Storage.Database;
using Microsoft.AspNetCore.Builder;

namespace Lanewright.Storage.Tests;

/// <summary>Certificates, the page that explains them, and what comes from foreign hosts and proxies.</summary>
public sealed class NetworkTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-network-").FullName;
    private readonly MovingClock clock = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_server_s_certificate_verifies_with_the_authority_alone_for_its_names_and_addresses()
    {
        var made = Made("yard.example.org");
        using var server = made.Current();
        Assert.True(Verifies(server, made.Authority!));
        foreach (var name in OwnNames.Names.Append("yard.example.org")) Assert.True(server.MatchesHostname(name), name);
        Assert.True(server.MatchesHostname("127.0.0.1"));
        Assert.False(server.MatchesHostname("elsewhere.example"));
        Assert.True(server.NotAfter - server.NotBefore < TimeSpan.FromDays(92));
        using var chain = new X509Chain();
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        Assert.False(chain.Build(server));
    }

    [Theory]
    [InlineData("yard.example.org", null, true)]
    [InlineData("sub.yard.example.org", null, true)]
    [InlineData("garage.local", null, true)]
    [InlineData("bank.example", null, false)]
    [InlineData("notyard.example.org", null, false)]
    [InlineData("garage.local", "192.168.7.9", true)]
    [InlineData("garage.local", "fd00::7", true)]
    [InlineData("garage.local", "203.0.113.9", false)]
    public void The_authority_is_believed_for_the_yard_s_names_and_private_addresses_only(string name, string? address, bool believed)
    {
        var made = Made("yard.example.org");
        using var signed = YardAuthority.Sign(made.Authority!, [name], address is null ? [] : [IPAddress.Parse(address)], clock.Now);
        Assert.Equal(believed, Verifies(signed, made.Authority!));
        if (address is null) Assert.Equal(believed, NameConstraints.Allows(made.Authority!, name));
    }

    [Fact]
    public void A_certificate_is_kept_renewed_in_time_even_while_serving_and_its_authority_stays()
    {
        var first = Made();
        using var server = first.Current();
        using var again = Made().Current();
        Assert.Equal(server.Thumbprint, again.Thumbprint);
        clock.Now += YardAuthority.ServerLife - YardAuthority.RenewBefore + TimeSpan.FromDays(1);
        using var renewed = first.Current();
        Assert.NotEqual(server.Thumbprint, renewed.Thumbprint);
        Assert.True(Verifies(renewed, first.Authority!));
        var later = Made();
        Assert.Equal(renewed.Thumbprint, later.Current().Thumbprint);
        Assert.Equal(first.Authority!.Thumbprint, later.Authority!.Thumbprint);
        // Another address: another certificate, the same authority.
        var moved = ServerCertificates.InFolder(folder, [], [IPAddress.Parse("10.1.2.3")], clock);
        Assert.NotEqual(renewed.Thumbprint, moved.Current().Thumbprint);
        Assert.Equal(first.Authority.Thumbprint, moved.Authority!.Thumbprint);
    }

    [Fact]
    public void Keys_are_for_the_owner_alone()
    {
        Made();
        Assert.Equal(4, Directory.GetFiles(folder).Length);
        if (OperatingSystem.IsWindows()) return;
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        foreach (var file in Directory.GetFiles(folder))
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public void A_name_the_authority_may_not_vouch_for_and_damaged_files_are_said_in_words()
    {
        Made();
        var wrong = Assert.Throws<RecordsException>(() => Made("new.example.org"));
        Assert.Contains("may not vouch for 'new.example.org'", wrong.Message, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(folder, "authority.pem"), "nonsense");
        Assert.Contains(folder, Assert.Throws<RecordsException>(() => Made()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_trust_page_serves_the_authority_its_fingerprint_and_a_picture_and_nothing_else()
    {
        var made = Made();
        await using var site = TrustSite.Build(0, made.Authority!, "https://garage.local:5180/");
        await site.StartAsync(Stop);
        using var client = new HttpClient { BaseAddress = new($"http://localhost:{new Uri(site.Urls.First()).Port}/") };
        var page = await client.GetStringAsync("", Stop);
        Assert.Contains(TrustSite.Fingerprint(made.Authority!), page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Contains("https://garage.local:5180/", page, StringComparison.Ordinal);
        using var file = await client.GetAsync(TrustSite.CertificatePath[1..], Stop);
        Assert.Equal("application/x-x509-ca-cert", file.Content.Headers.ContentType!.MediaType);
        var bytes = await file.Content.ReadAsByteArrayAsync(Stop);
        Assert.Equal(made.Authority!.RawData, bytes);
        Assert.Equal(Convert.ToHexString(SHA256.HashData(bytes)), TrustSite.Fingerprint(made.Authority!).Replace(":", "", StringComparison.Ordinal));
        foreach (var path in new[] { "api/hello", "office", "sign-in", "yard/", "office/office.js", "authority-key.pem" })
            Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(path, Stop)).StatusCode);
        using var form = new StringContent("x");
        Assert.False((await client.PostAsync("", form, Stop)).IsSuccessStatusCode);
    }

    [Theory]
    [InlineData("Host", "yard.example", 421)]
    [InlineData("Host", "192.0.2.1", 421)]
    [InlineData("Origin", "https://yard.example", 403)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    public async Task What_comes_from_a_foreign_host_or_page_is_refused(string header, string value, int status)
    {
        await using var server = await AccountsServer.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, "sign-in") { Content = new FormUrlEncodedContent([]) };
        request.Headers.TryAddWithoutValidation(header, value);
        using var answer = await server.Browser().Http.SendAsync(request, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Fact]
    public async Task Https_speaks_to_who_trusts_the_authority_and_a_browser_is_not_bound_to_it_for_good()
    {
        await using var server = await AccountsServer.StartAsync();
        using var hello = await server.Browser().Http.GetAsync("api/hello", Stop);
        Assert.Equal(200, (int)hello.StatusCode);
        Assert.False(hello.Headers.Contains("Strict-Transport-Security"));
        using var page = await server.Browser().Http.GetAsync("trust", Stop);
        Assert.Contains("/office/trust.js", await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        using var stranger = new HttpClient { BaseAddress = server.Address };
        await Assert.ThrowsAsync<HttpRequestException>(() => stranger.GetAsync("api/hello", Stop));
    }

    [Fact]
    public async Task Behind_a_proxy_its_word_about_https_and_host_holds_and_without_it_nothing_is_answered()
    {
        await using var records = TestRecords.InFolder();
        var store = await records.OpenAsync();
        await AccountsSetup.PrepareAsync(records.Place, clock, Stop);
        await using var app = Server.Build(
            new(0, folder, AccountsMode.Accounts) { Network = new(["yard.example.org"], null) }, store);
        await app.StartAsync(Stop);
        using var client = new HttpClient { BaseAddress = new(app.Urls.First()) };
        Assert.Equal(400, await StatusAsync());
        Assert.Equal(400, await StatusAsync(("X-Forwarded-Proto", "http"), ("X-Forwarded-Host", "yard.example.org")));
        Assert.Equal(421, await StatusAsync(("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", "elsewhere.example")));
        Assert.Equal(200, await StatusAsync(("X-Forwarded-Proto", "https"), ("Host", "yard.example.org")));
        Assert.Equal(200, await StatusAsync(("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", "yard.example.org"), ("X-Forwarded-For", "203.0.113.5")));

        async Task<int> StatusAsync(params (string Name, string Value)[] headers)
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "api/hello");
            foreach (var (name, value) in headers) request.Headers.TryAddWithoutValidation(name, value);
            using var answer = await client.SendAsync(request, Stop);
            if (answer.IsSuccessStatusCode) Assert.True(answer.Headers.Contains("Strict-Transport-Security"));
            return (int)answer.StatusCode;
        }
    }

    [Fact]
    public async Task Certificates_and_options_that_cannot_be_used_are_refused_in_words_and_make_no_records()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var other = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        Pem("good", key, "yard.example.org", 30);
        Pem("old", key, "yard.example.org", -1);
        await File.WriteAllTextAsync(Named("other-key.pem"), other.ExportPkcs8PrivateKeyPem(), Stop);
        await File.WriteAllTextAsync(Named("nonsense.pem"), "nonsense", Stop);
        await RefusedAsync("without its key", "--lan", "--certificate", Named("good.pem"));
        await RefusedAsync("cannot be used", "--lan", "--certificate", Named("good.pem"), "--key", Named("other-key.pem"));
        await RefusedAsync("cannot be used", "--lan", "--certificate", Named("nonsense.pem"), "--key", Named("good-key.pem"));
        await RefusedAsync("was not found", "--lan", "--certificate", Named("none.pem"), "--key", Named("good-key.pem"));
        await RefusedAsync("ended on", "--lan", "--certificate", Named("old.pem"), "--key", Named("old-key.pem"));
        await RefusedAsync(
            "not for 'elsewhere.example' but for yard.example.org",
            "--lan", "--certificate", Named("good.pem"), "--key", Named("good-key.pem"), "--name", "elsewhere.example");
        await RefusedAsync("belong to --lan", "--certificate", Named("good.pem"));
        await RefusedAsync("without its certificate", "--lan", "--key", Named("good-key.pem"));
        await RefusedAsync("do not go together", "--lan", "--proxy", "--name", "a.example");
        await RefusedAsync("needs --name", "--proxy");
        await RefusedAsync("belongs to --lan", "--name", "a.example");
        await RefusedAsync("'https://a.example/' was read", "--lan", "--name", "https://a.example/");
        Assert.False(Directory.Exists(Named("data")));
    }

    [Fact]
    public void Given_certificates_are_read_as_PEM_and_as_a_container_with_a_password()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var made = Pem("good", key, "yard.example.org", 30);
        File.WriteAllBytes(Named("good.pfx"), made.Export(X509ContentType.Pfx, "let me in"));
        File.WriteAllText(Named("password"), "let me in\n");
        File.WriteAllText(Named("wrong"), "let me out\n");
        var pem = GivenCertificate.Read(Named("good.pem"), Named("good-key.pem"), null, [], clock.Now);
        var pfx = GivenCertificate.Read(Named("good.pfx"), null, Named("password"), ["yard.example.org"], clock.Now);
        Assert.Equal(made.Thumbprint, pem.Certificates.Current().Thumbprint);
        Assert.Equal(made.Thumbprint, pfx.Certificates.Current().Thumbprint);
        Assert.True(pem.Certificates.Current().HasPrivateKey && !pem.Certificates.IsOwn);
        Assert.Equal(["yard.example.org"], pem.Names);
        Assert.Throws<RecordsException>(() => GivenCertificate.Read(Named("good.pfx"), null, Named("wrong"), [], clock.Now));
    }

    [Fact]
    public async Task A_port_in_use_is_said_with_the_option_that_changes_it()
    {
        using var taken = new System.Net.Sockets.TcpListener(IPAddress.Any, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        await RefusedAsync($"Port {port} is in use", "--lan", "--port", port);
        await RefusedAsync("--trust-port", "--lan", "--port", "0", "--trust-port", port);
    }

    [Fact]
    public async Task A_lost_password_is_replaced_with_a_code_that_a_command_prints()
    {
        await using var server = await AccountsServer.StartAsync();
        await server.SupervisorAsync();
        server.Clock.Now = DateTimeOffset.UtcNow;
        using var output = new StringWriter();
        Assert.Equal(0, await AccountsCommand.Make().Parse(["pair", "--data", server.Records.Place.DataFolder!]).InvokeAsync(new() { Output = output }, Stop));
        var browser = server.Browser();
        using var paired = await browser.PairAsync("M.O.", output.ToString()[..19], "a new password of mine");
        Assert.Equal(HttpStatusCode.Redirect, paired.StatusCode);
        using var old = await server.Browser().SignInAsync("M.O.");
        Assert.Equal(422, (int)old.StatusCode);
        var page = await browser.Http.GetStringAsync("office/accounts", Stop);
        Assert.Contains("a code for a supervisor was printed", page, StringComparison.Ordinal);
        Assert.Contains("paired anew as supervisor", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_of_an_address_has_its_quiet_zone_and_fits_a_terminal()
    {
        var lines = QrPicture.Lines("https://garage.local:5180/").ToList();
        Assert.All(lines, line => Assert.Equal(lines[0].Length, line.Length));
        Assert.True(lines[0].Length <= 60 && lines[0].All(c => c == '█'));
        Assert.StartsWith("<svg", QrPicture.Svg("https://garage.local:5180/"), StringComparison.Ordinal);
    }

    private string Named(string name) => Path.Combine(folder, name);

    private ServerCertificates Made(params string[] names) => ServerCertificates.InFolder(folder, names, [IPAddress.Loopback], clock);

    private bool Verifies(X509Certificate2 server, X509Certificate2 authority)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy = new()
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            CustomTrustStore = { authority },
            RevocationMode = X509RevocationMode.NoCheck,
            VerificationTime = clock.Now.LocalDateTime,
            ApplicationPolicy = { new Oid("1.3.6.1.5.5.7.3.1") },
        };
        return chain.Build(server);
    }

    private X509Certificate2 Pem(string name, ECDsa key, string host, int days)
    {
        var request = new CertificateRequest($"CN={host}", key, HashAlgorithmName.SHA256);
        var alternatives = new SubjectAlternativeNameBuilder();
        alternatives.AddDnsName(host);
        request.CertificateExtensions.Add(alternatives.Build());
        var made = request.CreateSelfSigned(clock.Now.AddDays(-9), clock.Now.AddDays(days));
        File.WriteAllText(Named($"{name}.pem"), made.ExportCertificatePem());
        File.WriteAllText(Named($"{name}-key.pem"), key.ExportPkcs8PrivateKeyPem());
        return made;
    }

    private async Task RefusedAsync(string words, params string[] arguments)
    {
        using var output = new StringWriter();
        var result = await ServeCommand.Make().Parse([.. arguments, "--data", Named("data")]).InvokeAsync(new() { Output = output, Error = output }, Stop);
        Assert.Contains(words, output.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, result);
    }
}
