using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

public sealed partial class OfficeAccessTests(Chrome chrome, DemoYard server) : IClassFixture<DemoYard>
{
    [Fact]
    public async Task Every_page_of_the_office_has_no_fault_that_axe_finds_in_light_and_dark()
    {
        await using var context = await chrome.Browser.NewContextAsync();
        await context.AddCookiesAsync([new() { Name = "lanewright-person", Value = "R.V.", Url = server.Address.ToString() }]);
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(server.Address, "office").ToString());
        var places = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('nav a[href^=\"/office\"]:not([href*=\"?\"])')].map(link => link.href)");
        Assert.True(places.Length > 4, string.Join(' ', places));
        var wrong = new List<string>();
        // Of each list, the first thing it leads to as well.
        var all = new HashSet<string>(places);
        foreach (var place in places)
        {
            await page.GotoAsync(place);
            if (await page.EvaluateAsync<string?>("() => document.querySelector('main table a[href^=\"/office/\"]:not([href*=\"?\"]), main li a[href^=\"/office/\"]:not([href*=\"?\"])')?.href") is { } first) all.Add(first);
        }

        foreach (var place in all)
        {
            await page.GotoAsync(place);
            wrong.AddRange(await Axe.FaultsAsync(page, new Uri(place).AbsolutePath));
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Distinct()));
    }
}
