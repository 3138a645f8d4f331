using System.Diagnostics;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class KeepingTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    [Fact]
    public async Task A_key_survives_a_reload_though_the_field_was_not_left()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await BeginAsync(phone);
        foreach (var text in new[] { "3", "37", "37.", "37.8" })
        {
            await phone.Field("Full (1)").PressAsync("End");
            await phone.Page.Keyboard.PressAsync(text[^1..]);
            await phone.Page.ReloadAsync();
            await Expect(phone.Field("Full (1)")).ToHaveValueAsync(text);
        }

        await phone.AllSentAsync();
        Assert.Equal("37.8", (await server.TestAsync(phone.Test)).Text("runs[0].containers[0].gross"));
        phone.IsFaultless();
    }

    [Fact]
    public async Task What_was_typed_when_the_browser_was_killed_is_there_when_it_is_opened_again()
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-profile-").FullName;
        try
        {
            string address;
            {
                var phone = await Phone.OnAsync(await chrome.LastingPhoneAsync(folder));
                await phone.ArriveAsync(server, "M.O.");
                await BeginAsync(phone);
                await phone.HasPagesAsync();
                await phone.Context.SetOfflineAsync(true);
                await phone.Field("Full (1)").PressSequentiallyAsync("37.8");
                await phone.UntilAsync("async () => (await lanewright.yard.store.drafts()).some(draft => draft.text === '37.8')");
                address = phone.Page.Url;
                await KillAsync(folder);
            }

            await server.KillAsync();
            await using (var again = await Phone.OnAsync(await chrome.LastingPhoneAsync(folder)))
            {
                await again.Page.GotoAsync(address);
                await Expect(again.Field("Full (1)")).ToHaveValueAsync("37.8");
                await server.StartAsync();
                await again.SendNowAsync();
                await again.AllSentAsync();
                Assert.Equal("37.8", (await server.TestAsync(again.Test)).Text("runs[0].containers[0].gross"));
                again.IsFaultless();
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("Object.defineProperty(globalThis, 'indexedDB', { value: undefined })")]
    [InlineData("IDBFactory.prototype.open = () => { throw new DOMException('The store is closed.', 'SecurityError'); }")]
    public async Task Without_a_store_the_page_warns_and_still_sends(string script)
    {
        await using var phone = await Phone.OpenAsync(chrome, server, script: script);
        await Expect(phone.Page.GetByText("This browser stores nothing")).ToBeVisibleAsync();
        await BeginAsync(phone);
        await phone.TypeAsync("Full (1)", "37.8");
        await phone.Page.Keyboard.PressAsync("Tab");
        await phone.AllSentAsync();
        Assert.Equal("37.8", (await server.TestAsync(phone.Test)).Text("runs[0].containers[0].gross"));
        await phone.SettingsAsync();
        await Expect(phone.Page.GetByText("Keeps nothing")).ToBeVisibleAsync();
        phone.IsFaultless();
    }

    [Theory]
    [InlineData("false", "The browser did not promise to keep it")]
    [InlineData("true", "The browser promised not to clear it.")]
    public async Task Whether_the_browser_promises_to_keep_it_is_shown(string promised, string said)
    {
        await using var phone = await Phone.OpenAsync(chrome, server, script: $"if (navigator.storage) StorageManager.prototype.persist = async () => {promised}");
        await phone.SettingsAsync();
        await Expect(phone.Page.GetByText(said)).ToBeVisibleAsync();
        phone.IsFaultless();
    }

    [Fact]
    public async Task A_full_device_is_said_and_the_text_stays_on_the_screen()
    {
        await using var phone = await Phone.OpenAsync(chrome, server, script: """
            const put = IDBObjectStore.prototype.put, add = IDBObjectStore.prototype.add;
            const full = act => function (...about) {
              if (globalThis.full) throw new DOMException('No space.', 'QuotaExceededError');
              return act.apply(this, about);
            };
            IDBObjectStore.prototype.put = full(put);
            IDBObjectStore.prototype.add = full(add);
            """);
        await BeginAsync(phone);
        await phone.Field("Full (2)").FocusAsync();
        await phone.Page.EvaluateAsync("() => { globalThis.full = true; }");
        await phone.Field("Full (1)").PressSequentiallyAsync("37.8");
        await Expect(phone.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "This device is full" })).ToBeVisibleAsync();
        await phone.Field("Empty (2)").PressSequentiallyAsync("2.5");
        await phone.Field("Full (2)").FocusAsync();
        await Expect(phone.Field("Full (1)")).ToHaveValueAsync("37.8");
        await Expect(phone.Field("Empty (2)")).ToHaveValueAsync("2.5");

        // With space again, what is typed is kept, and what was not kept before goes with it.
        await phone.Page.EvaluateAsync("() => { globalThis.full = false; }");
        await phone.PressAsync("Close");
        await phone.TypeAsync("Full (1)", "37.9");
        await phone.Field("Full (2)").FocusAsync();
        await phone.AllSentAsync();
        var test = await server.TestAsync(phone.Test);
        Assert.Equal(
            ("2.6", "37.9", "2.5"),
            (test.Text("runs[0].containers[0].tare"), test.Text("runs[0].containers[0].gross"), test.Text("runs[0].containers[1].tare")));
        phone.IsFaultless();
    }

    private static async Task BeginAsync(Phone phone)
    {
        await phone.BeginAsync("HR-500");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "2");
        await phone.TypeAsync("Empty (1)", "2.6");
    }

    // The browser that was started for this folder, and nothing else.
    private static async Task KillAsync(string folder)
    {
        foreach (var process in Process.GetProcesses())
        {
            using (process)
            {
                string[] command;
                try
                {
                    command = (await File.ReadAllTextAsync($"/proc/{process.Id}/cmdline")).Split('\0');
                }
                catch (IOException)
                {
                    continue;
                }

                if (!command.Contains($"--user-data-dir={folder}") || command.Any(part => part.StartsWith("--type=", StringComparison.Ordinal))) continue;
                process.Kill();
                await process.WaitForExitAsync();
            }
        }
    }
}
