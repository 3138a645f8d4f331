using System.Globalization;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

/// <summary>A truck whose constant came out double: what the technician and the office see, and what is kept of it.</summary>
public sealed class DiagnosisTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    [Fact]
    public async Task A_doubled_count_is_named_also_without_a_network_and_what_it_was_is_counted()
    {
        await SeedAsync("2024-10-08", 1);
        await SeedAsync("2025-10-07", 1);
        var test = await SeedAsync("2026-10-06", 2);
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.HasPagesAsync();
        await phone.Page.GotoAsync(new Uri(server.Address, $"yard/#/test/{test}/answer").ToString());
        var section = phone.Page.Locator(".diagnosis");
        await Expect(section).ToContainTextAsync("What may be wrong");
        await Expect(section.Locator("ol.causes > li").First).ToContainTextAsync("counted twice");
        await Expect(section).ToContainTextAsync("minutes");

        // The earlier tests stay on the phone.
        await phone.Context.SetOfflineAsync(true);
        await phone.Page.ReloadAsync();
        await Expect(section.Locator("ol.causes > li").First).ToContainTextAsync("counted twice");
        await section.GetByLabel("It turned out to be").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        var chosen = await section.GetByLabel("It turned out to be").EvaluateAsync<string>("list => list.selectedOptions[0].textContent");
        await section.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(section).ToContainTextAsync($"It turned out to be: {chosen}.");
        await phone.Context.SetOfflineAsync(false);
        await phone.AllSentAsync();
        phone.IsFaultless();

        // The service desk sees the same, answers, and the answer reaches the phone.
        await using var desk = await chrome.NewAsync();
        await desk.AddCookiesAsync([new() { Name = "lanewright-person", Value = "R.V.", Url = server.Address.ToString() }]);
        var page = await desk.NewPageAsync();
        await page.GotoAsync(new Uri(server.Address, $"office/tests/{test}/diagnosis").ToString());
        await Expect(page.Locator("main")).ToContainTextAsync("counted twice");
        await Expect(page.Locator("main")).ToContainTextAsync($"It turned out to be: {chosen}.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("0 characters");
        await page.GetByLabel("Your answer to the technician").FillAsync("Count one turn by hand, then call me.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("R.V.: Count one turn by hand, then call me.");
        await page.GotoAsync(new Uri(server.Address, "office/causes").ToString());
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = chosen })).ToContainTextAsync("1");
        await phone.SendNowAsync();
        await Expect(section).ToContainTextAsync("Count one turn by hand, then call me.");
    }

    private async Task<string> SeedAsync(string date, int counted)
    {
        var fields = SheetCorpus.Complete("HR-910");
        fields["date"] = date;
        fields["spreader.current"] = "12.5";
        for (var run = 0; run < 3; run++) fields[$"runs[{run}].pulses"] = (counted * (2000 + (10 * run))).ToString(CultureInfo.InvariantCulture);
        var test = Guid.CreateVersion7().ToString();
        await server.SendAsync(new
        {
            id = Guid.CreateVersion7().ToString(), kind = "test.begin", subject = test, person = "T.K.", device = "bench", seq = 0,
            at = $"{date}T10:12:13.123Z", zone = (string?)null, parent = (string?)null, why = (string?)null,
            payload = new { kind = "drop-test", spreader = (string?)null, fields },
        });
        return test;
    }
}
