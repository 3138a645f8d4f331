using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

/// <summary>People with accounts, in the pages as they are served to a garage.</summary>
public sealed class AccountsPagesTests(Chrome chrome, AccountsYard server) : IClassFixture<AccountsYard>
{
    [Fact]
    public async Task A_supervisor_invites_a_technician_whose_typing_outlives_signing_out()
    {
        await using var office = await chrome.UntrustingAsync();
        var desk = await office.NewPageAsync();
        await server.PairAsync(desk, "R.V.", await server.FirstCode);
        await desk.GotoAsync(new Uri(server.Address, "office/accounts").ToString());
        await desk.GetByLabel("Name", new() { Exact = true }).FillAsync("T.K.");
        await desk.Locator("form[action='/office/accounts/invite'] select[name=role]").SelectOptionAsync("technician");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Make a code" }).ClickAsync();
        var code = await desk.Locator("#code code").InnerTextAsync();

        // A form of the office, typed wrong and then right.
        await desk.GotoAsync(new Uri(server.Address, "office/scales/new").ToString());
        await desk.GetByLabel("Name (needed)").FillAsync("bench");
        await desk.GetByLabel("Division", new() { Exact = true }).FillAsync("much");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(desk.Locator("main")).ToContainTextAsync("much");
        await Expect(desk.GetByLabel("Name (needed)")).ToHaveValueAsync("bench");

        await using var phone = await Phone.OnAsync(await chrome.UntrustingAsync());
        await server.PairAsync(phone.Page, "T.K.", code);
        await phone.Page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await Expect(phone.Heading("Tests")).ToBeVisibleAsync();
        await phone.BeginAsync("HR-700");
        await phone.TypeAsync("Material", "white rock salt");
        await phone.AllSentAsync();
        var test = phone.Test;
        await Expect(phone.Page.GetByText("T.K.").Or(phone.Heading("Prepare")).First).ToBeVisibleAsync();

        // A technician does not open accounts.
        var refused = await phone.Context.APIRequest.GetAsync(new Uri(server.Address, "office/accounts").ToString());
        Assert.Equal(403, refused.Status);

        // Signed out, the phone keeps what is typed and says why it is not sent.
        await phone.SettingsAsync();
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Sign out" }).ClickAsync();
        await phone.PressAsync("Sign out");
        await phone.Page.GotoAsync(new Uri(server.Address, $"yard/#/test/{test}/prepare").ToString());
        await phone.TypeAsync("Material", "white rock salt, bay 2");
        await phone.Page.Keyboard.PressAsync("Tab");
        await phone.SendNowAsync();
        await Expect(phone.Sent).ToContainTextAsync("not yet sent: 1");
        await phone.SettingsAsync();
        await Expect(phone.Page.GetByText("Sign in to send").First).ToBeVisibleAsync();

        await phone.Page.GotoAsync(new Uri(server.Address, "sign-in?return=/yard/").ToString());
        await phone.Page.GetByLabel("Name, as in the yard's register").FillAsync("T.K.");
        await phone.Page.GetByLabel("Password").FillAsync(AccountsYard.Password);
        await phone.PressAsync("Sign in");
        await phone.AllSentAsync();

        // The office has it, under the technician's name.
        await desk.GotoAsync(new Uri(server.Address, $"office/tests/{test}").ToString());
        await Expect(desk.GetByText("white rock salt, bay 2").First).ToBeVisibleAsync();
        var kept = await (await office.APIRequest.GetAsync(new Uri(server.Address, $"api/tests/{test}/entries").ToString())).JsonAsync();
        Assert.Equal(["T.K."], kept!.Value.GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("person").GetString()).Distinct());
        phone.IsFaultless();
    }
}
