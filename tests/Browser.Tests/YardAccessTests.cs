using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class YardAccessTests(Chrome chrome, DemoYard server) : IClassFixture<DemoYard>
{
    private readonly List<string> wrong = [];

    [Fact]
    public async Task Every_screen_of_the_yard_can_be_seen_touched_and_read_out_in_light_and_dark()
    {
        await using var phone = await Phone.OnAsync(await chrome.PhoneAsync("en-US"));
        await phone.Page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await Expect(phone.Page.GetByRole(AriaRole.Button, new() { Name = "T.K." })).ToBeVisibleAsync();
        await LookAsync(phone, "who");
        await phone.PressAsync("T.K.");
        await Expect(phone.Heading("Tests")).ToBeVisibleAsync();
        await LookAsync(phone, "home");
        await phone.SettingsAsync();
        await LookAsync(phone, "settings");
        await phone.PressAsync("All tests");
        await phone.PressAsync("New test");
        await LookAsync(phone, "new");
        await phone.PressAsync("Back");
        await SeedAsync();
        await phone.ResumeAsync("HR-900");
        foreach (var step in new[] { "Prepare", "Drop", "Weigh", "Answer", "Decide" })
        {
            await phone.StepAsync(step);
            await phone.ComputesAsync();
            foreach (var summary in await phone.Page.Locator("main summary").AllAsync()) await summary.ClickAsync();
            await LookAsync(phone, step);
        }

        await phone.Page.GotoAsync(phone.Page.Url.Replace("decide", "weigh/1", StringComparison.Ordinal));
        await Expect(phone.Page.GetByText("two different values").First).ToBeVisibleAsync();
        await LookAsync(phone, "conflict");
        await phone.Page.GotoAsync(phone.Page.Url.Replace("weigh/1", "weigh/3", StringComparison.Ordinal));
        await phone.Field("This run is weighed by").SelectOptionAsync("truck");
        await phone.PressAsync("+ snow, a person, a tool");
        await LookAsync(phone, "truck");
        await phone.Field("This run is weighed by").SelectOptionAsync("whole");
        await LookAsync(phone, "whole");
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Distinct()));
        phone.IsFaultless();
    }

    [Fact]
    public async Task Everything_on_a_screen_is_reached_by_keyboard_in_order()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-901");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "2");
        await phone.Field("Empty (1)").FocusAsync();
        await Expect(phone.Field("Empty (2)")).ToBeVisibleAsync();
        await phone.AllSentAsync();
        await phone.Page.EvaluateAsync("() => { document.activeElement.blur(); getSelection().setPosition(document.body, 0); }");
        const string stops = "a[href], button, input, select, textarea, summary";
        var wanted = await phone.Page.EvaluateAsync<int>($"() => [...document.querySelectorAll('{stops}')].filter(one => one.checkVisibility()).length");
        var reached = new HashSet<int>();
        for (var i = 0; i < (2 * wanted) + 10; i++)
        {
            await phone.Page.Keyboard.PressAsync("Tab");
            reached.Add(await phone.Page.EvaluateAsync<int>($"() => [...document.querySelectorAll('{stops}')].indexOf(document.activeElement)"));
        }

        reached.Remove(-1);
        Assert.Equal(wanted, reached.Count);
    }

    private async Task LookAsync(Phone phone, string screen) =>
        wrong.AddRange(await Axe.FaultsAsync(phone.Page, screen, async () => await phone.Page.EvaluateAsync<string[]>(Script())));

    private static string Script()
    {
        using var stream = typeof(YardAccessTests).Assembly.GetManifestResourceStream("access.js")!;
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd();
        return text[text.IndexOf("() =>", StringComparison.Ordinal)..];
    }

    // A test with an answer, and one field that two devices typed differently.
    private async Task SeedAsync()
    {
        var test = Guid.CreateVersion7().ToString();
        object Entry(string kind, object payload) => new
        {
            id = Guid.CreateVersion7().ToString(), kind, subject = test, person = "R.V.", device = "office", seq = 0,
            at = "2026-11-25T10:12:13.123Z", zone = (string?)null, parent = (string?)null, why = (string?)null, payload,
        };
        await server.SendAsync(
            Entry("test.begin", new { kind = "drop-test", spreader = (string?)null, fields = SheetCorpus.Complete("HR-900") }),
            Entry("test.field", new { path = "runs[1].containers[4].tare", text = "2.2" }),
            Entry("test.field", new { path = "runs[1].containers[4].tare", text = "2.3" }));
    }
}
