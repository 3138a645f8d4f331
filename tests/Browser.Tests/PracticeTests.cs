using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

/// <summary>Practice on a phone: a run, a test, a wrong number, a fault named; all of it outlives a reload.</summary>
public sealed class PracticeTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    [Fact]
    public async Task A_fault_is_looked_for_and_named_and_the_truth_is_shown_only_then()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Practise finding a fault" }).ClickAsync();
        await Expect(phone.Heading("Practice")).ToBeVisibleAsync();
        await phone.Page.GetByLabel("Exercise, easy to hard").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        await phone.PressAsync("Start it");
        await phone.Page.GetByLabel("Setting of the drive").FillAsync("fast");
        await phone.PressAsync("Run");
        await Expect(phone.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("fast");
        await phone.Page.GetByLabel("Setting of the drive").FillAsync("50 %");
        await phone.PressAsync("Run");
        await Expect(phone.Page.Locator("dl.facts").First).ToContainTextAsync("pulses counted");
        await phone.Page.ReloadAsync();
        await Expect(phone.Page.Locator("dl.facts").First).ToContainTextAsync("pulses counted");
        await phone.Page.GetByText("Do a test").ClickAsync();
        await phone.Page.Locator("ul.todo button").First.ClickAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Tests done" })).ToBeVisibleAsync();
        await Expect(phone.Page.Locator("main")).Not.ToContainTextAsync("Right");
        await phone.Page.GetByLabel("It is", new() { Exact = true }).SelectOptionAsync("mass-unit");
        await phone.PressAsync("That is it");
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Right" })).ToBeVisibleAsync();
        await phone.PressAsync("Another one");
        await Expect(phone.Page.GetByLabel("Exercise, easy to hard")).ToBeVisibleAsync();
        phone.IsFaultless();
    }
}
