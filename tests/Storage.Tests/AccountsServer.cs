using System.Net;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lanewright.Accounts;
using Lanewright.Host;
using Lanewright.Network;
using Microsoft.AspNetCore.Builder;

namespace Lanewright.Storage.Tests;

/// <summary>A server with accounts on https, with a certificate of the yard's own authority, and people who use it.</summary>
internal sealed class AccountsServer : IAsyncDisposable
{
    internal const string Password = "gravel under the plow";

    private readonly string certificates = Directory.CreateTempSubdirectory("lanewright-certificates-").FullName;
    private readonly List<HttpClient> clients = [];
    private WebApplication app = null!;

    private AccountsServer(TestRecords records, MovingClock clock) => (Records, Clock) = (records, clock);

    internal TestRecords Records { get; }

    internal MovingClock Clock { get; }

    internal EntryStore Store { get; private set; } = null!;

    internal string FirstCode { get; private set; } = "";

    internal ServerCertificates Certificates { get; private set; } = null!;

    internal Uri Address { get; private set; } = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    internal static async Task<AccountsServer> StartAsync(Provider provider = Provider.Sqlite, RequestLimits? limits = null, TestRecords? records = null)
    {
        var server = new AccountsServer(records ?? await TestRecords.OnAsync(provider), new());
        server.Store = await server.Records.OpenAsync();
        server.Certificates = ServerCertificates.InFolder(server.certificates, [], OwnNames.Addresses(), TimeProvider.System);
        server.FirstCode = await AccountsSetup.PrepareAsync(server.Records.Place, server.Clock, Stop) ?? "";
        server.app = Server.Build(
            new(0, server.certificates, AccountsMode.Accounts)
            {
                Network = new(OwnNames.Names, server.Certificates),
                Clock = server.Clock,
                Limits = (limits ?? new(SignIn: 1000)) with { HashIterations = 1000 },
            },
            server.Store);
        await server.app.StartAsync(Stop);
        server.Address = new($"https://localhost:{new Uri(server.app.Urls.First()).Port}/");
        return server;
    }

    /// <summary>A browser of its own, which trusts the yard's authority and nothing else, and follows no redirections.</summary>
    internal AccountsClient Browser()
    {
        // The client's handler owns the cookies; both end with the server.
#pragma warning disable CA2000 // Dispose objects before losing scope
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() };
#pragma warning restore CA2000
        // A test may name another host in its request; the certificate must be this server's all the same.
        handler.SslOptions.RemoteCertificateValidationCallback = (_, certificate, _, errors) =>
            (errors & ~SslPolicyErrors.RemoteCertificateNameMismatch) is SslPolicyErrors.None
            && certificate is X509Certificate2 shown && shown.MatchesHostname("localhost");
        handler.SslOptions.CertificateChainPolicy = new()
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            CustomTrustStore = { Certificates.Authority! },
            RevocationMode = X509RevocationMode.NoCheck,
        };
        var client = new HttpClient(handler) { BaseAddress = Address };
        clients.Add(client);
        return new(client);
    }

    /// <summary>The first supervisor, signed in.</summary>
    internal async Task<AccountsClient> SupervisorAsync(string name = "M.O.")
    {
        var browser = Browser();
        using var paired = await browser.PairAsync(name, FirstCode);
        Assert.Equal(HttpStatusCode.Redirect, paired.StatusCode);
        return browser;
    }

    /// <summary>A person with a role, invited by a supervisor and signed in.</summary>
    internal async Task<AccountsClient> PersonAsync(AccountsClient supervisor, string name, string role)
    {
        var browser = Browser();
        using var paired = await browser.PairAsync(name, await supervisor.InviteAsync(name, role));
        Assert.Equal(HttpStatusCode.Redirect, paired.StatusCode);
        return browser;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var client in clients) client.Dispose();
        await app.DisposeAsync();
        await Records.DisposeAsync();
        Directory.Delete(certificates, recursive: true);
    }
}

/// <summary>A clock that stands still until it is moved.</summary>
internal sealed class MovingClock : TimeProvider
{
    internal DateTimeOffset Now { get; set; } = DateTimeOffset.UtcNow;

    public override DateTimeOffset GetUtcNow() => Now;
}

/// <summary>What a person does with a browser.</summary>
internal sealed partial class AccountsClient(HttpClient http)
{
    internal HttpClient Http => http;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Opens a page and sends its form.</summary>
    internal async Task<HttpResponseMessage> SubmitAsync(string page, string to, params (string Name, string Value)[] fields)
    {
        var token = Token().Match(await http.GetStringAsync(page, Stop));
        Assert.True(token.Success, $"{page} has no form of ours");
        var all = fields.Append((token.Groups[1].Value, token.Groups[2].Value));
        using var form = new FormUrlEncodedContent(all.Select(field => KeyValuePair.Create(field.Item1, field.Item2)));
        return await http.PostAsync(to, form, Stop);
    }

    internal Task<HttpResponseMessage> SignInAsync(string name, string password = AccountsServer.Password, string back = "") =>
        SubmitAsync("sign-in", "sign-in", ("name", name), ("password", password), ("return", back));

    internal Task<HttpResponseMessage> PairAsync(
        string name, string code, string password = AccountsServer.Password, string? again = null) =>
        SubmitAsync("pair", "pair", ("name", name), ("code", code), ("password", password), ("again", again ?? password));

    internal async Task<string> InviteAsync(string name, string role)
    {
        using var answer = await SubmitAsync("office/accounts", "office/accounts/invite", ("person", name), ("role", role));
        return Code().Match(await answer.Content.ReadAsStringAsync(Stop)).Groups[1].Value;
    }

    /// <summary>Does something to another's account on the accounts page.</summary>
    internal async Task<HttpResponseMessage> ChangeAsync(string name, string what, params (string Name, string Value)[] fields)
    {
        var page = await http.GetStringAsync("office/accounts", Stop);
        var id = Regex.Match(page, $"<th scope=\"row\">{Regex.Escape(name)}</th>.*?name=\"id\" value=\"([^\"]+)\"", RegexOptions.Singleline).Groups[1].Value;
        return await SubmitAsync("office/accounts", $"office/accounts/{what}", [("id", id), .. fields]);
    }

    internal async Task<(int Status, JsonElement Json)> JsonAsync(HttpMethod method, string path, string? body = null)
    {
        using var request = new HttpRequestMessage(method, path);
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await http.SendAsync(request, Stop);
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        return ((int)answer.StatusCode, json.RootElement.Clone());
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"(token)\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("<code>([0-9A-Z]{4}(?:-[0-9A-Z]{4}){3})</code>")]
    private static partial Regex Code();
}
