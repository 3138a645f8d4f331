using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

public sealed partial class OfficeAccessTests(Chrome chrome, DemoWinter server) : IClassFixture<DemoWinter>
{
    [Fact]
    public async Task Every_page_of_the_office_has_no_fault_that_axe_finds_in_light_and_dark()
    {
        await using var context = await chrome.NewAsync();
        await context.AddCookiesAsync([new() { Name = "lanewright-person", Value = "R.V.", Url = server.Address.ToString() }]);
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(server.Address, "office").ToString());
        var places = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('nav a[href^=\"/office\"]:not([href*=\"?\"])')].map(link => link.href)");
        Assert.True(places.Length > 4, string.Join(' ', places));
        var wrong = new List<string>();
        Assert.Contains("/office/drift", places.Select(place => new Uri(place).AbsolutePath));
        // Of each list, the first thing it leads to as well.
        var all = new HashSet<string>([.. places, new Uri(server.Address, "office/season").ToString(), new Uri(server.Address, "office/map").ToString()]);
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
        Assert.Contains(all, place => place.EndsWith("/drift", StringComparison.Ordinal) && place.Contains("/spreaders/", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_season_fits_a_phone_and_shows_the_truck_that_drifted_and_the_lost_ticket()
    {
        await using var context = await chrome.NewAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        var page = await context.NewPageAsync();
        async Task<string> ReadAsync(string place)
        {
            await page.GotoAsync(new Uri(server.Address, place).ToString());
            Assert.Equal(390, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
            Assert.Empty(await Axe.FaultsAsync(page, place));
            return await page.InnerTextAsync("main");
        }

        Assert.Contains("Invented data.", await ReadAsync("office/drift"), StringComparison.Ordinal);
        var drifted = await page.EvaluateAsync<string>("() => document.querySelector('#drift tbody a').getAttribute('href')");
        var one = await ReadAsync(drifted[1..]);
        Assert.Contains("too little", one, StringComparison.Ordinal);
        Assert.Contains("Alarm since ", one, StringComparison.Ordinal);
        Assert.Contains("Most likely wrong", await ReadAsync("office/season"), StringComparison.Ordinal);
        Assert.Contains("within 10 %", await ReadAsync("office/map"), StringComparison.Ordinal);
    }
}
