using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class TwoDevicesTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    [Fact]
    public async Task Two_pages_of_one_phone_type_into_one_field_and_both_texts_stay_until_a_person_chooses()
    {
        await using var first = await Phone.OpenAsync(chrome, server);
        await BeginAsync(first);
        var second = await first.SecondPageAsync();
        await Expect(second.Field("Full (1)")).ToBeVisibleAsync();
        await first.HasPagesAsync();
        await first.Context.SetOfflineAsync(true);

        // Both have the field in hand before either types, and neither leaves it before the other has typed.
        await second.Field("Full (1)").FocusAsync();
        await first.Field("Full (1)").PressSequentiallyAsync("37.8");
        await second.Field("Full (1)").PressSequentiallyAsync("38.7");
        await first.Field("Empty (1)").FocusAsync();
        await second.Field("Empty (1)").FocusAsync();
        await SettleAsync(first, second, "37.8", "38.7");

        // The other page is sending when the network comes back; this one learns of it all the same.
        await second.Page.EvaluateAsync("() => { navigator.locks.request('lanewright-sync', () => new Promise(done => setTimeout(done, 2000))); }");
        await first.Context.SetOfflineAsync(false);
        await first.AllSentAsync();
        await AgreeAsync(first, "38.7");
        first.IsFaultless();
    }

    [Fact]
    public async Task Two_phones_type_into_one_field_and_both_texts_stay_until_a_person_chooses()
    {
        await using var first = await Phone.OpenAsync(chrome, server);
        await BeginAsync(first);
        await first.AllSentAsync();
        await using var second = await Phone.OpenAsync(chrome, server, "T.K.");
        await second.ResumeAsync("HR-500");
        await second.StepAsync("Weigh");
        foreach (var phone in new[] { first, second })
        {
            await phone.HasPagesAsync();
            await phone.Context.SetOfflineAsync(true);
        }

        await first.TypeAsync("Full (1)", "37.8");
        await first.TypeAsync("Full (2)", "40.2");
        await second.TypeAsync("Full (1)", "38.7");
        await second.TypeAsync("Full (3)", "39.1");
        foreach (var phone in new[] { first, second })
        {
            await phone.Field("Empty (1)").FocusAsync();
            await phone.Context.SetOfflineAsync(false);
            await phone.AllSentAsync();
        }

        await first.SendNowAsync();
        await SettleAsync(first, second, "37.8", "38.7");
        await first.SendNowAsync();
        await first.AllSentAsync();
        await second.SendNowAsync();
        await AgreeAsync(first, "38.7");
        var test = await server.TestAsync(first.Test);
        Assert.Equal(("40.2", "39.1"), (test.Text("runs[0].containers[1].gross"), test.Text("runs[0].containers[2].gross")));
        foreach (var phone in new[] { first, second })
        {
            await Expect(phone.Field("Full (1)")).ToHaveValueAsync("38.7");
            await Expect(phone.Field("Full (2)")).ToHaveValueAsync("40.2");
            await Expect(phone.Field("Full (3)")).ToHaveValueAsync("39.1");
            phone.IsFaultless();
        }
    }

    [Fact]
    public async Task No_key_is_lost_while_values_of_another_phone_arrive()
    {
        await using var first = await Phone.OpenAsync(chrome, server);
        await BeginAsync(first);
        await first.AllSentAsync();
        await using var second = await Phone.OpenAsync(chrome, server, "T.K.");
        await second.ResumeAsync("HR-500");
        await second.StepAsync("Weigh");

        await first.Field("Full (1)").ClickAsync();
        const string text = "1234.567890123456";
        for (var i = 0; i < text.Length; i++)
        {
            await first.Page.Keyboard.PressAsync($"{text[i]}");
            // Other fields and the very same one; new fields make the screen draw anew.
            if (i == 3) await ArriveAsync(second, first, "Full (2)", "40.2");
            if (i == 8) await ArriveAsync(second, first, "Full (1)", "38.7");
            if (i == 12) await ArriveAsync(second, first, "Empty (3)", "2.2");
        }

        await Expect(first.Field("Full (1)")).ToHaveValueAsync(text);
        await first.Field("Empty (1)").FocusAsync();
        await Expect(first.Page.GetByText("Full (1): two different values")).ToBeVisibleAsync();
        await Expect(first.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^" + text) })).ToBeVisibleAsync();
        await Expect(first.Field("Full (2)")).ToHaveValueAsync("40.2");
        await Expect(first.Field("Empty (3)")).ToHaveValueAsync("2.2");
        first.IsFaultless();
    }

    private static async Task ArriveAsync(Phone from, Phone to, string label, string text)
    {
        await from.TypeAsync(label, text);
        await from.Page.Keyboard.PressAsync("Tab");
        await from.SendNowAsync();
        await from.AllSentAsync();
        await to.SendNowAsync();
    }

    private static async Task BeginAsync(Phone phone)
    {
        await phone.BeginAsync("HR-500");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "3");
        await phone.TypeAsync("Empty (1)", "2.6");
    }

    // Both pages show both texts; a person chooses on the second.
    private static async Task SettleAsync(Phone first, Phone second, string one, string other)
    {
        foreach (var phone in new[] { first, second })
        {
            var conflict = phone.Page.GetByRole(AriaRole.Group, new() { Name = "Full (1): two different values" });
            await Expect(conflict.GetByRole(AriaRole.Button, new() { NameRegex = new($"^{one} ") })).ToBeVisibleAsync();
            await Expect(conflict.GetByRole(AriaRole.Button, new() { NameRegex = new($"^{other} ") })).ToBeVisibleAsync();
        }

        await second.Page.GetByRole(AriaRole.Button, new() { NameRegex = new($"^{other} ") }).ClickAsync();
        await Expect(second.Field("Full (1)")).ToHaveValueAsync(other);
        await second.SendNowAsync();
        await first.SendNowAsync();
        await Expect(first.Field("Full (1)")).ToHaveValueAsync(other);
    }

    private async Task AgreeAsync(Phone phone, string text)
    {
        var test = await server.TestAsync(phone.Test);
        Assert.Equal(0, test.Conflicts);
        Assert.Equal(text, test.Text("runs[0].containers[0].gross"));
        Assert.Equal("2.6", test.Text("runs[0].containers[0].tare"));
    }
}
