using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class RolesTests(Chrome chrome, AccountsYard server) : IClassFixture<AccountsYard>
{
    [Fact]
    public async Task A_phone_is_told_to_sign_in_and_a_refused_decision_decides_nothing()
    {
        await using var office = await chrome.UntrustingAsync();
        var desk = await office.NewPageAsync();
        await server.PairAsync(desk, "S.P.", await server.FirstCode);
        await desk.GotoAsync(new Uri(server.Address, "office/accounts").ToString());
        await desk.GetByLabel("Name", new() { Exact = true }).FillAsync("O.L.");
        await desk.Locator("form[action='/office/accounts/invite'] select[name=role]").SelectOptionAsync("operator");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Make a code" }).ClickAsync();
        var code = await desk.Locator("#code code").InnerTextAsync();

        // Nobody is asked to type a name where people sign in.
        await using var phone = await Phone.OnAsync(await chrome.UntrustingAsync());
        await phone.Page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await Expect(phone.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Link, new() { Name = "Sign in" })).ToBeVisibleAsync();
        await Expect(phone.Page.GetByLabel("Name or initials")).ToHaveCountAsync(0);

        await server.PairAsync(phone.Page, "O.L.", code);
        await phone.Page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await Expect(phone.Heading("Tests")).ToBeVisibleAsync();
        await phone.BeginAsync("HR-701");
        await phone.AllSentAsync();
        await phone.StepAsync("Decide");
        await Expect(phone.Page.GetByText("O.L. is signed in to read and type, not to decide.")).ToBeVisibleAsync();
        await phone.Page.GetByRole(AriaRole.Radio, new() { Name = "Reject" }).CheckAsync();
        await phone.Field("Why").FillAsync("the chute was iced");
        await phone.PressAsync("Write the decision down");
        await Expect(phone.Sent).ToContainTextAsync("not taken: 1");
        await phone.Page.GetByRole(AriaRole.Link).Filter(new() { HasText = "HR-701" }).ClickAsync();
        await phone.StepAsync("Decide");
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Not taken by the server" })).ToBeVisibleAsync();
        await Expect(phone.Page.GetByText("the chute was iced")).ToBeVisibleAsync();
        await Expect(phone.Page.GetByText("Deciding a test needs the role technician")).ToBeVisibleAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Decided" })).ToHaveCountAsync(0);

        // A supervisor gives the role; what was refused is offered again and holds.
        await desk.GotoAsync(new Uri(server.Address, "office/accounts").ToString());
        await desk.GetByRole(AriaRole.Row).Filter(new() { HasText = "O.L." }).Locator("select[name=role]").First.SelectOptionAsync("technician");
        await desk.GetByRole(AriaRole.Row).Filter(new() { HasText = "O.L." }).Locator("form").Filter(new() { Has = desk.Locator("select[name=role]") }).Locator("button").ClickAsync();
        await phone.SettingsAsync();
        await phone.PressAsync("Offer them again");
        await Expect(phone.Sent).Not.ToContainTextAsync("not taken");
        await phone.AllSentAsync();
        await phone.PressAsync("All tests");
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Decided" })).ToBeVisibleAsync();

        // The session ends: the line in view says so on every step.
        await phone.Context.ClearCookiesAsync();
        await phone.SendNowAsync();
        await Expect(phone.Page.GetByText("Nobody is signed in: everything is kept here, nothing is sent.")).ToBeVisibleAsync();
        phone.IsFaultless();
    }
}
