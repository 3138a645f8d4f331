using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>The system's Chromium, driven by Playwright; nothing is downloaded.</summary>
public sealed class Chrome : IAsyncLifetime
{
    // The one without a window of its own first: it takes a quarter less of the processors.
    private static readonly string[] Places = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
        // A page lives for seconds here: compiling Core a second time, for speed, would cost more than it saves.
        "--js-flags=--liftoff-only",
    ];

    // Milliseconds until something that does not come is missed: other suites may have the processors meanwhile.
    private const int Patience = 60_000;

    private IPlaywright? playwright;

    internal IBrowser Browser { get; private set; } = null!;

    /// <summary>The browser's program: LANEWRIGHT_CHROMIUM, or where distributions put it.</summary>
    internal static string Program { get; } = Environment.GetEnvironmentVariable("LANEWRIGHT_CHROMIUM")
        ?? Places.FirstOrDefault(File.Exists)
        ?? throw new FileNotFoundException("These tests need Chromium: apt-get install chromium, or name it in LANEWRIGHT_CHROMIUM.");

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(Patience);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Program, Args = Flags });
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null) await Browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>A browser with nothing stored yet.</summary>
    internal async Task<IBrowserContext> NewAsync(BrowserNewContextOptions? options = null) => Patient(await Browser.NewContextAsync(options));

    /// <summary>A phone: nothing stored yet, a small screen with touch.</summary>
    internal Task<IBrowserContext> PhoneAsync(string locale) => NewAsync(new()
    {
        Locale = locale,
        ViewportSize = new() { Width = 390, Height = 844 },
        IsMobile = true,
        HasTouch = true,
    });

    /// <summary>The yard's own authority is not in this browser's store; a phone trusts it as docs/guide/network.md says.</summary>
    internal Task<IBrowserContext> UntrustingAsync() => NewAsync(new()
    {
        IgnoreHTTPSErrors = true,
        Locale = "en-US",
        ViewportSize = new() { Width = 390, Height = 844 },
    });

    /// <summary>The same phone with what it stored on the disk, so that it can be killed and opened again.</summary>
    internal async Task<IBrowserContext> LastingPhoneAsync(string folder) => Patient(await playwright!.Chromium.LaunchPersistentContextAsync(folder, new()
    {
        ExecutablePath = Program,
        Args = Flags,
        Locale = "en-US",
        ViewportSize = new() { Width = 390, Height = 844 },
        IsMobile = true,
        HasTouch = true,
    }));

    private static IBrowserContext Patient(IBrowserContext context)
    {
        context.SetDefaultTimeout(Patience);
        return context;
    }
}
