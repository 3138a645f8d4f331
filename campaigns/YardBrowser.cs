using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Lanewright.Campaigns;

/// <summary>The program's demo yard, served, and the system's Chromium to look at it.</summary>
internal sealed partial class YardBrowser : IAsyncDisposable
{
    private readonly Process server;
    private readonly IPlaywright playwright;

    private YardBrowser(Process server, Uri address, IPlaywright playwright, IBrowser browser)
    {
        this.server = server;
        this.playwright = playwright;
        Address = address;
        Browser = browser;
    }

    internal Uri Address { get; }

    internal IBrowser Browser { get; }

    /// <summary>The program as <c>./lanewright</c> builds it.</summary>
    internal static string Program { get; } = Path.Combine(Kills.Root(), "out", "bin", "lanewright");

    internal static async Task<YardBrowser> OpenAsync()
    {
        var start = new ProcessStartInfo(Program) { RedirectStandardOutput = true };
        foreach (var argument in new[] { "demo", "--port", "0" }) start.ArgumentList.Add(argument);
        var server = Process.Start(start)!;
        var address = "";
        while (await server.StandardOutput.ReadLineAsync() is { } line)
        {
            if (Yard().Match(line) is not { Success: true } match) continue;
            address = match.Value;
            break;
        }

        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("LANEWRIGHT_CHROMIUM") ?? "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
        return new(server, new(new Uri(address), "/"), playwright, browser);
    }

    internal Task<IBrowserContext> PhoneAsync() => Browser.NewContextAsync(new()
    {
        Locale = "en-US", ViewportSize = new() { Width = 390, Height = 844 }, IsMobile = true, HasTouch = true, ReducedMotion = ReducedMotion.Reduce,
    });

    /// <summary>Begins a test in the yard, as another device would; gives its identity.</summary>
    internal async Task<string> BeginAsync(IReadOnlyDictionary<string, string> fields)
    {
        var test = Guid.CreateVersion7().ToString();
        using var client = new HttpClient();
        var entry = new
        {
            id = Guid.CreateVersion7().ToString(), kind = "test.begin", subject = test, person = "M.O.", device = "phone", seq = 0,
            at = DateTime.UtcNow.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture), zone = (string?)null,
            parent = (string?)null, why = (string?)null, payload = new { kind = "drop-test", spreader = (string?)null, fields },
        };
        using var answer = await client.PostAsJsonAsync(new Uri(Address, "api/entries"), new { entries = new[] { entry } });
        answer.EnsureSuccessStatusCode();
        return test;
    }

    /// <summary>A closed-loop test, invented, with runs of several containers.</summary>
    internal static Dictionary<string, string> Closed(int runs, int containers)
    {
        var fields = new Dictionary<string, string>
        {
            ["culture"] = "en-US", ["units"] = "us", ["invented"] = "yes", ["date"] = "2026-11-25", ["people"] = "M.O., T.K.",
            ["title"] = "HR-104, white rock salt", ["spreader.id"] = "HR-104", ["spreader.loop"] = "closed",
            ["spreader.constant"] = "pulses-per-mass", ["spreader.unit"] = "pulse/lb", ["spreader.resolution"] = "0.1",
            ["spreader.current"] = "11.4", ["material.name"] = "white rock salt", ["scale.id"] = "bench", ["scale.kind"] = "platform",
            ["scale.division"] = "0.1", ["scale.capacity"] = "150", ["scale.class"] = "iii", ["scale.verified"] = "2026-04-14",
            ["commonError"] = "yes", ["tolerance"] = "5 %",
        };
        for (var run = 0; run < runs; run++)
        {
            var net = 0.0;
            for (var i = 0; i < containers; i++)
            {
                var (tare, gross) = (2.3 + (0.1 * ((run + i) % 6)), 36.5 + (0.7 * ((3 * run + 2 * i) % 7)));
                net += gross - tare;
                fields[$"runs[{run}].containers[{i}].tare"] = tare.ToString("F1", CultureInfo.InvariantCulture);
                fields[$"runs[{run}].containers[{i}].gross"] = gross.ToString("F1", CultureInfo.InvariantCulture);
            }

            fields[$"runs[{run}].filled"] = containers.ToString(CultureInfo.InvariantCulture);
            fields[$"runs[{run}].pulses"] = (net * (12.62 + (0.04 * (run % 3)))).ToString("F0", CultureInfo.InvariantCulture);
        }

        return fields;
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        playwright.Dispose();
        server.Kill();
        server.Dispose();
    }

    [GeneratedRegex(@"http://localhost:\d+/yard/")]
    private static partial Regex Yard();
}
