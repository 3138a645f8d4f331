using System.IO.Compression;
using System.Text.Json;
using Microsoft.Playwright;

namespace Lanewright.Campaigns;

/// <summary>Times the yard pages in Chromium on this machine and holds them against their limits.</summary>
internal static class YardTiming
{
    private const int Keys = 50;
    private static bool isOver;

    internal static async Task<int> RunAsync()
    {
        await using var yard = await YardBrowser.OpenAsync();
        var test = await yard.BeginAsync(YardBrowser.Closed(10, 5));
        await using (var phone = await yard.PhoneAsync())
        {
            var page = await phone.NewPageAsync();
            await page.GotoAsync(new Uri(yard.Address, "yard/").ToString(), new() { WaitUntil = WaitUntilState.Commit });
            Tell("first visit, until a person can type", await AtAsync(page, "document.querySelector('#person')"), 3000, "ms");
            Tell("first visit, until Core answers", await AtAsync(page, "(await import('/yard/core.js')).state === true"), null, "ms");
            await page.EvaluateAsync("async () => { const ready = await navigator.serviceWorker.ready; while (ready.active?.state !== 'activated') await new Promise(requestAnimationFrame); }");
            await page.GotoAsync(new Uri(yard.Address, "yard/?again").ToString(), new() { WaitUntil = WaitUntilState.Commit });
            Tell("cached visit, until a person can type", await AtAsync(page, "document.querySelector('#person')"), 1500, "ms");
            Tell("cached visit, until Core answers", await AtAsync(page, "(await import('/yard/core.js')).state === true"), null, "ms");

            var times = await KeysAsync(page, new Uri(yard.Address, $"yard/#/test/{test}/weigh/9"));
            Tell($"key to answer, 10 runs of 5 containers, median of {times.Count}", times[times.Count / 2], 100, "ms");
            Tell($"key to answer, 95 % of {times.Count}", times[(int)(times.Count * 0.95)], 100, "ms");
        }

        Tell("pages kept on the device, brotli", await BytesAsync() / 1e6, 4, "MB");
        return isOver ? 1 : 0;
    }

    private static Task<double> AtAsync(IPage page, string until) => page.EvaluateAsync<double>(
        $"async () => {{ while (!({until})) await new Promise(requestAnimationFrame); return performance.now(); }}");

    // From the input event until the frame after the answer was put on the screen.
    private static async Task<List<double>> KeysAsync(IPage page, Uri test)
    {
        await page.GetByLabel("Name or initials").FillAsync("M.O.");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Tests" }).WaitForAsync();
        await page.GotoAsync(test.ToString());
        var field = page.GetByLabel("Full (5)", new() { Exact = true });
        await field.ClickAsync();
        await page.Keyboard.PressAsync("End");
        // A reload starts Core anew; it has warmed up when a person has found the field.
        Tell("page opened on a test, until Core has warmed up", await AtAsync(page, "(await import('/yard/core.js')).warm"), null, "ms");
        await page.EvaluateAsync("""
            () => {
              globalThis.times = [];
              let began = null;
              addEventListener('input', event => { began = event.timeStamp; }, true);
              new MutationObserver(() => {
                if (began === null) return;
                const from = began;
                began = null;
                requestAnimationFrame(() => times.push(performance.now() - from));
              }).observe(document.getElementById('main'), { childList: true, subtree: true, characterData: true });
            }
            """);
        for (var i = 0; i < Keys; i++)
        {
            await page.Keyboard.PressAsync(i % 2 == 0 ? "5" : "Backspace");
            await page.WaitForFunctionAsync($"() => times.length > {i}");
        }

        var times = await page.EvaluateAsync<double[]>("() => times");
        Console.WriteLine("in the order of the keys, ms: " + string.Join(' ', times.Select(time => time.ToString("F0"))));
        return [.. times.Order()];
    }

    // What the service worker keeps, as a browser that takes brotli receives it.
    private static async Task<long> BytesAsync()
    {
        var root = Path.Combine(Path.GetDirectoryName(YardBrowser.Program)!, "wwwroot");
        using var list = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(root, "pages.json")));
        long sum = 0;
        foreach (var file in list.RootElement.GetProperty("files").EnumerateObject())
        {
            if (!file.Name.StartsWith("yard/", StringComparison.Ordinal) && !file.Name.StartsWith("core/", StringComparison.Ordinal)) continue;
            var path = Path.Combine(root, file.Name);
            if (File.Exists(path + ".br")) sum += new FileInfo(path + ".br").Length;
            else
            {
                using var packed = new MemoryStream();
                await using (var brotli = new BrotliStream(packed, CompressionLevel.Optimal, leaveOpen: true))
                    await brotli.WriteAsync(await File.ReadAllBytesAsync(path));
                sum += packed.Length;
            }
        }

        return sum;
    }

    private static void Tell(string what, double figure, double? limit, string unit)
    {
        isOver |= figure > limit;
        var held = limit is null ? "" : $"   limit {limit} {unit}{(figure > limit ? "   OVER" : "")}";
        Console.WriteLine($"{what,-62} {figure.ToString(unit == "MB" ? "F2" : "F0"),6} {unit}{held}");
    }
}
