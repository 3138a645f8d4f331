using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class NewerPagesTests(Chrome chrome, CopiedProgram server) : IClassFixture<CopiedProgram>
{
    [Fact]
    public async Task Newer_pages_are_offered_whole_never_half_and_using_them_loses_nothing()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.HasPagesAsync();
        await phone.BeginAsync("HR-600");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "1");
        await phone.TypeAsync("Empty (1)", "2.6");

        // A server renewed half way: the file is new, the list is not.
        await server.ChangeAsync("yard/yard.css", "\n:root { --renewed: 1; }\n", isListed: false);
        await server.ChangeAsync("yard/icon.svg", "\n<!-- newer -->\n", isListed: true);
        await phone.Page.ReloadAsync();
        await Looked(phone);
        await Expect(phone.Page.GetByText("Newer pages are here")).ToHaveCountAsync(0);
        await phone.Page.ReloadAsync();
        Assert.Equal("", await RenewedAsync(phone));
        await Expect(phone.Field("Empty (1)")).ToHaveValueAsync("2.6");

        await server.ListAsync("yard/yard.css");
        await phone.Page.ReloadAsync();
        await Expect(phone.Page.GetByText("Newer pages are here")).ToBeVisibleAsync();
        await phone.Field("Full (1)").PressSequentiallyAsync("37.8");
        await phone.PressAsync("Use them");
        await Expect(phone.Page.GetByText("Newer pages are here")).ToHaveCountAsync(0);
        await phone.UntilAsync("() => getComputedStyle(document.documentElement).getPropertyValue('--renewed').trim() === '1'");
        await Expect(phone.Field("Full (1)")).ToHaveValueAsync("37.8");
        await phone.AllSentAsync();
        var test = await server.TestAsync(phone.Test);
        Assert.Equal(("2.6", "37.8"), (test.Text("runs[0].containers[0].tare"), test.Text("runs[0].containers[0].gross")));
        phone.IsFaultless();
    }

    // The page's service worker has looked for newer pages and is done with it.
    private static async Task Looked(Phone phone)
    {
        await phone.HasPagesAsync();
        await phone.UntilAsync("async () => (await caches.keys()).filter(key => key.startsWith('lanewright-pages-')).length === 1");
    }

    private static Task<string> RenewedAsync(Phone phone) =>
        phone.Page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).getPropertyValue('--renewed').trim()");
}
