using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>A person with a phone in the yard: finds things by what they say, and remembers every value typed.</summary>
internal sealed class Phone : IAsyncDisposable
{
    private readonly List<string> faults = [];

    private Phone(IBrowserContext context) => Context = context;

    internal IBrowserContext Context { get; }

    internal IPage Page { get; private set; } = null!;

    /// <summary>What was typed or chosen in fields of the test, by path.</summary>
    internal Dictionary<string, string> Typed { get; } = [];

    /// <summary>The test in hand, as the address names it.</summary>
    internal string Test => Regex.Match(Page.Url, "#/test/([^/]+)").Groups[1].Value;

    internal ILocator Sent => Page.GetByRole(AriaRole.Banner).GetByText("not yet sent");

    /// <summary>Opens the yard and says who is there.</summary>
    internal static async Task<Phone> OpenAsync(Chrome chrome, YardServer server, string person = "M.O.", string locale = "en-US", string? script = null, bool isWarm = false)
    {
        var context = await chrome.PhoneAsync(locale);
        if (script is not null) await context.AddInitScriptAsync(script);
        var phone = await OnAsync(context, isWarm);
        await phone.ArriveAsync(server, person);
        return phone;
    }

    /// <summary>Opens the yard and says who is there.</summary>
    internal async Task ArriveAsync(YardServer server, string person)
    {
        await Page.GotoAsync(new Uri(server.Address, "yard/").ToString());
        await Page.GetByLabel("Name or initials").FillAsync(person);
        await PressAsync("Go on");
        await Assertions.Expect(Heading("Tests")).ToBeVisibleAsync();
    }

    // Core's warming up takes seconds of the processor on each page, and these tests wait for no quick answer.
    private const string Cold = """
        const post = Worker.prototype.postMessage;
        Worker.prototype.postMessage = function (message, ...more) { if (message?.call !== 'warm') post.call(this, message, ...more); };
        """;

    /// <summary>A phone with its first page.</summary>
    internal static async Task<Phone> OnAsync(IBrowserContext context, bool isWarm = false)
    {
        if (!isWarm) await context.AddInitScriptAsync(Cold);
        var phone = new Phone(context);
        context.WebError += (_, wrong) => phone.faults.Add(wrong.Error);
        phone.Page = context.Pages.Count > 0 ? context.Pages[0] : await context.NewPageAsync();
        return phone;
    }

    /// <summary>Another page of the same device.</summary>
    internal async Task<Phone> SecondPageAsync()
    {
        var second = new Phone(Context) { Page = await Context.NewPageAsync() };
        await second.Page.GotoAsync(Page.Url);
        return second;
    }

    public async ValueTask DisposeAsync() => await Context.DisposeAsync();

    /// <summary>No script threw anything that nobody caught.</summary>
    internal void IsFaultless() => Assert.True(faults.Count == 0, string.Join('\n', faults.Distinct()));

    internal ILocator Heading(string text) => Page.GetByRole(AriaRole.Heading, new() { Level = 1 }).Filter(new() { HasText = text });

    internal ILocator Button(string text) => Page.GetByRole(AriaRole.Button, new() { Name = text, Exact = true });

    internal ILocator Field(string label) => Page.GetByLabel(label, new() { Exact = true });

    internal Task PressAsync(string button) => Button(button).ClickAsync();

    /// <summary>Goes to a step by the list of steps.</summary>
    internal async Task StepAsync(string step)
    {
        await Page.GetByRole(AriaRole.Navigation, new() { Name = "Steps" }).GetByRole(AriaRole.Link, new() { Name = step, Exact = true }).ClickAsync();
        await Assertions.Expect(Heading(step)).ToBeVisibleAsync();
    }

    /// <summary>The pages are kept on the phone: from here on it opens without a network.</summary>
    internal Task HasPagesAsync() =>
        UntilAsync("async () => (await navigator.serviceWorker.ready).active?.state === 'activated' && navigator.serviceWorker.controller !== null");

    /// <summary>Asks the page again and again until the answer is yes; the question may wait for something itself.</summary>
    internal async Task UntilAsync(string question)
    {
        for (var i = 0; i < 600; i++)
        {
            if (await Page.EvaluateAsync<bool?>(question) is true) return;
            await Task.Delay(100);
        }

        Assert.Fail("Never true: " + question);
    }

    /// <summary>Core answers.</summary>
    internal Task ComputesAsync() => Assertions.Expect(Page.GetByText("Computing starts")).ToHaveCountAsync(0);

    /// <summary>Begins a test.</summary>
    internal async Task BeginAsync(string spreader, string? question = null, string? method = null, string? scale = null, string? material = null)
    {
        await PressAsync("New test");
        await Field("Spreader").FillAsync(spreader);
        if (question is not null) await Field("Question").SelectOptionAsync(new SelectOptionValue { Label = question });
        if (method is not null) await Field("How the catch is weighed").SelectOptionAsync(new SelectOptionValue { Label = method });
        if (scale is not null) await Field("Scale").SelectOptionAsync(new SelectOptionValue { Label = scale });
        if (material is not null) await Field("Material").SelectOptionAsync(new SelectOptionValue { Label = material });
        await PressAsync("Begin");
        await Assertions.Expect(Heading("Prepare")).ToBeVisibleAsync();
    }

    /// <summary>Takes up a test that was begun on another device.</summary>
    internal async Task ResumeAsync(string spreader)
    {
        await SendNowAsync();
        await Page.GetByRole(AriaRole.Link).Filter(new() { HasText = spreader }).First.ClickAsync();
        await Assertions.Expect(Page.Locator("[data-path]").First).ToBeVisibleAsync();
    }

    /// <summary>Opens what this device keeps and has sent.</summary>
    internal async Task SettingsAsync()
    {
        await Sent.ClickAsync();
        await Assertions.Expect(Heading("This device")).ToBeVisibleAsync();
    }

    /// <summary>Puts a text into a field at once, as a keyboard does that completes words.</summary>
    internal async Task TypeAsync(string label, string text)
    {
        var field = Field(label);
        var path = (await field.GetAttributeAsync("data-path"))!;
        await field.FillAsync(text);
        Typed[path] = text;
        await Assertions.Expect(Page.Locator($"[data-path='{path}']")).ToHaveValueAsync(text);
    }

    /// <summary>Begins the next run, on the step that is open.</summary>
    internal async Task NextRunAsync()
    {
        var runs = Page.GetByRole(AriaRole.Navigation, new() { Name = "Runs" }).GetByRole(AriaRole.Link);
        var count = await runs.CountAsync();
        await PressAsync("+ next run");
        await Assertions.Expect(runs.Nth(count)).ToHaveAttributeAsync("aria-current", "true");
    }

    /// <summary>Chooses from a field's list by what the choice says.</summary>
    internal async Task ChooseAsync(string label, string choice)
    {
        var field = Field(label);
        var value = await field.SelectOptionAsync(new SelectOptionValue { Label = choice });
        if (await field.GetAttributeAsync("data-path") is { } path) Typed[path] = value[0];
    }

    /// <summary>Opens a part that is folded away.</summary>
    internal async Task UnfoldAsync(string name)
    {
        var summary = Page.Locator("summary").Filter(new() { HasText = name });
        if (await summary.Locator("..").GetAttributeAsync("open") is null) await summary.ClickAsync();
    }

    /// <summary>Waits until everything typed is an entry and the server has it.</summary>
    internal async Task AllSentAsync()
    {
        await UntilAsync("""
            async () => {
              const store = globalThis.lanewright?.yard.store;
              return Boolean(store) && (await store.drafts()).length === 0 && await store.count('phone') === 0;
            }
            """);
        await Assertions.Expect(Sent).ToContainTextAsync("not yet sent: 0");
        await Assertions.Expect(Sent).ToContainTextAsync("online");
    }

    /// <summary>Sends now, as the page does by itself when the network comes back.</summary>
    internal async Task SendNowAsync()
    {
        await UntilAsync("() => Boolean(globalThis.lanewright)");
        await Page.EvaluateAsync("() => lanewright.sendNow()");
    }

    /// <summary>What stands in the fields on the screen, by path.</summary>
    internal async Task<Dictionary<string, string>> ShownAsync() => await Page.EvaluateAsync<Dictionary<string, string>>(
        "() => Object.fromEntries([...document.querySelectorAll('[data-path]')].map(one => [one.dataset.path, one.value]))");

    /// <summary>Everything typed that has a field on the screen stands in it.</summary>
    internal async Task StandsAsync()
    {
        await Assertions.Expect(Page.Locator("[data-path]").First).ToBeVisibleAsync();
        var shown = await ShownAsync();
        foreach (var (path, text) in shown) if (Typed.TryGetValue(path, out var typed)) Assert.Equal((path, typed), (path, text));
    }
}
