using Microsoft.Playwright;

namespace Lanewright.Campaigns;

/// <summary>Takes the pictures of README and guide from the demo yard.</summary>
internal static class Pictures
{
    internal static async Task<int> RunAsync()
    {
        var folder = Path.Combine(Kills.Root(), "docs", "guide", "pictures");
        Directory.CreateDirectory(folder);
        await using var yard = await YardBrowser.OpenAsync();
        var test = await yard.BeginAsync(YardBrowser.Closed(5, 5));
        await using var phone = await yard.PhoneAsync();
        var page = await phone.NewPageAsync();
        await page.GotoAsync(new Uri(yard.Address, "yard/").ToString());
        await page.GetByRole(AriaRole.Button, new() { Name = "M.O." }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Tests" }).WaitForAsync();
        foreach (var step in new[] { "prepare", "weigh/2", "answer" })
        {
            await page.GotoAsync(new Uri(yard.Address, $"yard/#/test/{test}/{step}").ToString());
            await page.WaitForFunctionAsync("() => !document.body.innerText.includes('Computing starts') && !document.body.innerText.includes('computing part has started') && document.querySelector('.cautions li:nth-child(2), .strip .value, .result')");
            await KeepAsync(page, folder, "yard-" + step.Split('/')[0]);
        }

        await using var desk = await yard.Browser.NewContextAsync(new() { Locale = "en-US", ViewportSize = new() { Width = 960, Height = 680 } });
        await desk.AddCookiesAsync([new() { Name = "lanewright-person", Value = "R.V.", Url = yard.Address.ToString() }]);
        var office = await desk.NewPageAsync();
        await office.GotoAsync(new Uri(yard.Address, "office/due").ToString());
        await KeepAsync(office, folder, "office-due");
        await office.Locator("main a[href^='/office/spreaders/']").First.ClickAsync();
        await office.WaitForLoadStateAsync();
        await KeepAsync(office, folder, "office-spreader");
        return 0;
    }

    private static async Task KeepAsync(IPage page, string folder, string name)
    {
        var file = Path.Combine(folder, name + ".png");
        await page.ScreenshotAsync(new() { Path = file, Animations = ScreenshotAnimations.Disabled });
        Console.WriteLine($"{name}.png, {new FileInfo(file).Length / 1000.0:F0} kB");
    }
}
