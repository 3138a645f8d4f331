using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed partial class OfficeAccessTests
{
    private static readonly (string Address, string Heading)[] French =
        [("office", "Épandeuses"), ("office/due", "À étalonner"), ("office/reports", "Rapports"), ("office/tests", "Essais")];

    [Fact]
    public async Task The_office_and_the_yard_speak_the_language_of_a_French_phone_until_another_is_chosen()
    {
        await using var phone = await Phone.OnAsync(await chrome.PhoneAsync("fr-FR"));
        var (page, wrong) = (phone.Page, new List<string>());
        foreach (var (address, heading) in French)
        {
            await page.GotoAsync(new Uri(server.Address, address).ToString());
            await Expect(phone.Heading(heading)).ToBeVisibleAsync();
            await LookAsync(address);
        }

        await page.Locator("#tests tbody a").First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Constats" })).ToBeVisibleAsync();
        await LookAsync("a test");
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));

        await page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await phone.PressAsync("T.K.");
        await Expect(phone.Heading("Essais")).ToBeVisibleAsync();
        Assert.Equal("fr", await LanguageAsync());

        await page.GotoAsync(new Uri(server.Address, "office/due").ToString());
        await page.GetByRole(AriaRole.Link, new() { Name = "Suomi" }).ClickAsync();
        await Expect(phone.Heading("Kalibroitava")).ToBeVisibleAsync();
        Assert.Equal("fi", await LanguageAsync());
        Assert.EndsWith("/office/due", page.Url, StringComparison.Ordinal);
        phone.IsFaultless();

        async Task LookAsync(string place)
        {
            if (await LanguageAsync() != "fr") wrong.Add($"{place}: not French");
            if (await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") is > 0 and var over) wrong.Add($"{place}: {over} px too wide");
            wrong.AddRange(await Axe.FaultsAsync(page, place));
        }

        Task<string> LanguageAsync() => page.EvaluateAsync<string>("() => document.documentElement.lang");
    }
}
