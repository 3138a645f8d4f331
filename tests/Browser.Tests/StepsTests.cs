using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class StepsTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    private int spreader = 300;

    [Fact]
    public async Task What_was_unfolded_stays_so_what_was_changed_is_taken_back_and_a_run_is_cleared_after_asking_twice()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-200");
        // The screen is drawn anew just as a part of it is unfolded.
        await phone.Page.EvaluateAsync("() => { document.querySelector('summary').click(); dispatchEvent(new HashChangeEvent('hashchange')); }");
        await Expect(phone.Page.Locator("details").First).ToHaveAttributeAsync("open", "");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "1");
        await phone.Field("Full (1)").FillAsync("37.8");
        await phone.Field("Empty (1)").FocusAsync();
        await phone.Field("Full (1)").FillAsync("73.8");
        await phone.Field("Empty (1)").FocusAsync();
        await phone.PressAsync("Undo Full (1)");
        await Expect(phone.Field("Full (1)")).ToHaveValueAsync("37.8");

        await phone.StepAsync("Drop");
        await phone.PressAsync("Clear this run");
        await phone.PressAsync("Clear it: press once more");
        await phone.StepAsync("Weigh");
        await Expect(phone.Field("Full (1)")).ToHaveValueAsync("");
        await phone.AllSentAsync();
        var test = await server.TestAsync(phone.Test);
        Assert.DoesNotContain(test.Fields, field => field.Path.StartsWith("runs[", StringComparison.Ordinal) && field.Text != "");
        Assert.Contains(test.Entries, entry => entry.Payload.Contains("73.8", StringComparison.Ordinal));
        phone.IsFaultless();
    }

    [Fact]
    public async Task The_next_run_stays_in_hand_from_step_to_step_and_over_a_reload_though_nothing_is_typed_in_it_yet()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-202");
        await phone.ChooseAsync("The constant is", "Pulses per mass");
        await phone.StepAsync("Drop");
        await phone.TypeAsync("Pulses counted", "1208");
        await phone.StepAsync("Weigh");
        await phone.NextRunAsync();
        await phone.StepAsync("Drop");
        await phone.Page.ReloadAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Link, new() { Name = "Run 2" })).ToHaveAttributeAsync("aria-current", "true");
        await phone.TypeAsync("Pulses counted", "1196");
        await phone.AllSentAsync();
        var test = await server.TestAsync(phone.Test);
        Assert.Equal(("1208", "1196"), (test.Text("runs[0].pulses"), test.Text("runs[1].pulses")));
        phone.IsFaultless();
    }

    [Fact]
    public async Task Without_an_answer_every_step_says_what_is_missing_first()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-203");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "1");
        await Expect(phone.Page.Locator(".strip")).ToContainTextAsync("No answer yet. Does its controller regulate");
        phone.IsFaultless();
    }

    [Fact]
    public async Task With_letters_twice_as_large_the_step_in_hand_is_in_view_and_nothing_is_wider_than_the_phone()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-204");
        // As a person chooses in the browser's settings.
        var devtools = await phone.Context.NewCDPSessionAsync(phone.Page);
        await devtools.SendAsync("Page.enable");
        await devtools.SendAsync("Page.setFontSizes", new() { ["fontSizes"] = new Dictionary<string, object> { ["standard"] = 32 } });
        foreach (var step in new[] { "Weigh", "Answer", "Decide" })
        {
            await phone.StepAsync(step);
            Assert.True(36 <= await phone.Page.EvaluateAsync<double>("() => parseFloat(getComputedStyle(document.querySelector('main')).fontSize)"));
            var at = await phone.Page.EvaluateAsync<double[]>(
                "() => { const at = document.querySelector('.steps [aria-current]').getBoundingClientRect(); return [at.left, at.right, innerWidth, document.documentElement.scrollWidth]; }");
            Assert.True(at[0] >= 0 && at[1] <= at[2] && at[3] <= at[2], $"{step}: {string.Join(", ", at)}");
        }

        phone.IsFaultless();
    }

    [Fact]
    public async Task The_timer_runs_on_over_a_reload()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-201");
        await phone.StepAsync("Drop");
        await phone.PressAsync("Start");
        await phone.Page.ReloadAsync();
        await Expect(phone.Button("Stop")).ToBeVisibleAsync();
        await Expect(phone.Page.Locator("output.time")).Not.ToHaveTextAsync("0.0 s");
        await phone.PressAsync("Stop");
        await Expect(phone.Field("Time it ran s")).ToHaveValueAsync(new Regex(@"^\d+\.\d$"));
        await Expect(phone.Button("Start")).ToBeVisibleAsync();
        phone.IsFaultless();
    }

    [Fact]
    public async Task A_clock_set_back_gives_no_time_below_nothing()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-205");
        await phone.StepAsync("Drop");
        await phone.PressAsync("Start");
        await Expect(phone.Button("Stop")).ToBeVisibleAsync();
        // While the page lives its own clock goes on.
        await phone.Page.EvaluateAsync("() => { const now = Date.now; Date.now = () => now() - 3600e3; }");
        await phone.PressAsync("Stop");
        await Expect(phone.Field("Time it ran s")).ToHaveValueAsync(new Regex(@"^\d+\.\d$"));
        await phone.TypeAsync("Time it ran s", "");
        await phone.PressAsync("Start");
        await Expect(phone.Button("Stop")).ToBeVisibleAsync();
        // Set back by two hours more, and reloaded: the start lies in the future.
        await phone.UntilAsync($"async () => {{ const key = 'timer {phone.Test} 0'; const at = await lanewright.yard.store.fact(key); if (at) await lanewright.yard.store.setFact(key, at + 7200e3); return Boolean(at); }}");
        await phone.Page.ReloadAsync();
        await Expect(phone.Page.Locator("output.time")).ToHaveTextAsync("? s");
        await phone.PressAsync("Stop");
        await Expect(phone.Page.GetByText("The clock of this device was set back")).ToBeVisibleAsync();
        await Expect(phone.Field("Time it ran s")).ToHaveValueAsync("");
        phone.IsFaultless();
    }

    [Fact]
    public async Task A_decision_says_what_was_keyed_in_and_that_the_display_shows_it()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        var name = await SeedAsync();
        await phone.ResumeAsync(name);
        await phone.StepAsync("Answer");
        await Expect(phone.Page.Locator("section.result").First).ToBeVisibleAsync();
        await phone.StepAsync("Decide");
        await phone.PressAsync("Write the decision down");
        await Expect(phone.Page.GetByText("Choose adopt, repeat or reject.")).ToBeVisibleAsync();
        await ChooseAsync(phone, "Adopt");
        await phone.Field("Value keyed in").FillAsync("12.6");
        await phone.Field("Read back from the controller").FillAsync("12.5");
        await Expect(phone.Page.GetByText("but the controller shows 12.5")).ToBeVisibleAsync();
        await phone.Field("Read back from the controller").FillAsync("12.6");
        await Expect(phone.Page.GetByText("but the controller shows")).ToHaveCountAsync(0);
        await phone.Field("Why").FillAsync("runs agree");
        // What is typed here is kept like any field.
        await phone.Page.ReloadAsync();
        await Expect(phone.Field("Value keyed in")).ToHaveValueAsync("12.6");
        await Expect(phone.Page.GetByText("To key in:")).ToBeVisibleAsync();
        var test = phone.Test;
        await phone.PressAsync("Write the decision down");
        await Expect(phone.Page.GetByText("adopted 12.6")).ToBeVisibleAsync();
        await phone.AllSentAsync();
        var decision = (await server.TestAsync(test)).Decision!;
        Assert.Contains("\"keyed\":\"12.6\"", decision.Payload, StringComparison.Ordinal);
        Assert.Contains("\"readBack\":\"12.6\"", decision.Payload, StringComparison.Ordinal);
        phone.IsFaultless();
    }

    [Fact]
    public async Task Two_people_who_decide_differently_are_both_shown_until_a_new_decision_settles_it()
    {
        var name = await SeedAsync();
        await using var first = await Phone.OpenAsync(chrome, server);
        await using var second = await Phone.OpenAsync(chrome, server, "T.K.");
        var test = "";
        foreach (var (phone, verdict) in new[] { (first, "Adopt"), (second, "Repeat") })
        {
            await phone.ResumeAsync(name);
            test = phone.Test;
            await phone.Context.SetOfflineAsync(true);
            await phone.StepAsync("Decide");
            await ChooseAsync(phone, verdict);
            await phone.Field("Value keyed in").FillAsync("12.6");
            await phone.Field("Why").FillAsync($"{verdict}, I say");
            await phone.PressAsync("Write the decision down");
            await Expect(phone.Heading("Tests")).ToBeVisibleAsync();
        }

        foreach (var phone in new[] { first, second })
        {
            await phone.Context.SetOfflineAsync(false);
            await phone.SendNowAsync();
            await phone.AllSentAsync();
        }

        await first.SendNowAsync();
        await Expect(first.Page.GetByText("two decisions")).ToBeVisibleAsync();
        await Expect(second.Page.GetByText("two decisions")).ToBeVisibleAsync();
        await first.Page.GetByRole(AriaRole.Link).Filter(new() { HasText = name }).ClickAsync();
        await first.StepAsync("Decide");
        await Expect(first.Page.GetByText("Two decisions stand")).ToBeVisibleAsync();
        await ChooseAsync(first, "Repeat");
        await first.Field("Why").FillAsync("agreed with T.K.");
        await first.PressAsync("Write the decision down");
        await first.AllSentAsync();
        await second.SendNowAsync();
        await Expect(second.Page.GetByText("to be repeated")).ToBeVisibleAsync();
        var decided = await server.TestAsync(test);
        Assert.False(decided.HasDecisionConflict);
        Assert.Single(decided.Decisions);
        first.IsFaultless();
        second.IsFaultless();
    }

    private static Task ChooseAsync(Phone phone, string verdict) =>
        phone.Page.GetByRole(AriaRole.Radio, new() { NameRegex = new("^" + verdict) }).CheckAsync();

    // A test that is ready to be decided, begun in the office or on another phone.
    private async Task<string> SeedAsync()
    {
        var name = $"HR-{Interlocked.Increment(ref spreader)}{Guid.NewGuid().ToString("N")[..4]}";
        var answer = await server.SendAsync(new
        {
            id = Guid.CreateVersion7().ToString(), kind = "test.begin", subject = Guid.CreateVersion7().ToString(),
            person = "R.V.", device = "office", seq = 0, at = "2026-11-25T10:12:13.123Z", zone = (string?)null,
            parent = (string?)null, why = (string?)null,
            payload = new { kind = "drop-test", spreader = (string?)null, fields = SheetCorpus.Complete(name) },
        });
        Assert.Equal("accepted", answer.GetProperty("results")[0].GetProperty("status").GetString());
        return name;
    }
}
