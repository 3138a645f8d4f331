using System.Security.Cryptography;
using System.Text;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lanewright.Browser.Tests;

public sealed class SendingTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    private static readonly byte[] Picture = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==");

    [Fact]
    public async Task An_answer_that_is_no_confirmation_is_said_and_marks_nothing_as_sent()
    {
        (int Status, bool IsOurs, string Said)[] answers =
        [
            (200, false, "Something other than Lanewright answered"), (500, true, "Nothing works."), (503, true, "The records are busy."),
            (507, true, "The disk is full."), (502, false, "Something other than Lanewright answered"),
        ];
        await using var phone = await Phone.OpenAsync(chrome, server);
        var (status, isOurs, said) = answers[0];
        await phone.Context.RouteAsync("**/api/**", route => route.FulfillAsync(new()
        {
            Status = status,
            ContentType = isOurs ? "application/problem+json" : "text/html",
            Headers = isOurs ? new Dictionary<string, string> { ["x-lanewright"] = "0.1.0", ["content-type"] = "application/problem+json" } : null,
            Body = isOurs ? $$"""{"title":"{{said}}","status":{{status}}}""" : "<html><title>Sign in to this network</title></html>",
        }));
        await BeginAsync(phone);
        await phone.TypeAsync("Full (1)", "37.8");
        await phone.SettingsAsync();
        foreach (var answer in answers)
        {
            (status, isOurs, said) = answer;
            await phone.PressAsync("Send now");
            await Expect(phone.Page.GetByText(said)).ToBeVisibleAsync();
            Assert.DoesNotContain("not yet sent: 0", await phone.Sent.InnerTextAsync(), StringComparison.Ordinal);
        }

        await phone.Context.UnrouteAllAsync();
        await phone.PressAsync("Send now");
        await phone.AllSentAsync();
        await phone.Page.GoBackAsync();
        await Whole.KeptAsync(phone, server);
        phone.IsFaultless();
    }

    [Fact]
    public async Task A_server_killed_in_the_middle_of_taking_entries_in_loses_and_doubles_nothing()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.Context.SetOfflineAsync(true);
        await BeginAsync(phone);
        await phone.TypeAsync("Full (1)", "37.8");
        await phone.TypeAsync("Empty (2)", "2.4");
        var kills = 0;
        var dead = new[] { new TaskCompletionSource(), new TaskCompletionSource() };
        await phone.Context.RouteAsync("**/api/entries", async route =>
        {
            var kill = kills++;
            // First the answer is lost after everything was on the disk; then the server dies at any moment.
            if (kill == 0) await route.FetchAsync();
            else _ = route.ContinueAsync();
            if (kill > 1) return;
            await server.KillAsync();
            if (kill == 0) await route.AbortAsync();
            dead[kill].TrySetResult();
        });
        await phone.Context.SetOfflineAsync(false);
        await phone.SendNowAsync();
        await dead[0].Task;
        await server.StartAsync();
        await phone.TypeAsync("Full (2)", "40.2");
        await phone.Field("Empty (1)").FocusAsync();
        await dead[1].Task;
        await server.StartAsync();
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        Assert.True(kills >= 2);
        await Whole.KeptAsync(phone, server);
    }

    [Fact]
    public async Task An_entry_that_the_server_rejects_holds_up_nothing_and_is_shown_with_its_reason()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await BeginAsync(phone);
        await phone.Page.EvaluateAsync("""
            async test => {
              const { write } = await import('/yard/yard.js');
              await write('test.field', test, { path: 'runs[0].' + 'x'.repeat(600), text: '1' });
            }
            """, phone.Test);
        await phone.TypeAsync("Full (1)", "37.8");
        await phone.Field("Empty (1)").FocusAsync();
        await phone.AllSentAsync();
        await Expect(phone.Sent).ToContainTextAsync("not taken: 1");
        Assert.Equal("37.8", (await server.TestAsync(phone.Test)).Text("runs[0].containers[0].gross"));
        await phone.SettingsAsync();
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "Not taken by the server" })).ToBeVisibleAsync();
        await Expect(phone.Page.GetByText("payload.path")).ToBeVisibleAsync();
        phone.IsFaultless();
    }

    [Fact]
    public async Task A_picture_taken_without_a_network_is_sent_last_and_arrives_as_it_was()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.HasPagesAsync();
        await phone.Context.SetOfflineAsync(true);
        await BeginAsync(phone);
        var input = phone.Page.GetByLabel("Picture of the ticket or the display");
        await input.SetInputFilesAsync(new FilePayload { Name = "notes.png", MimeType = "image/png", Buffer = Encoding.UTF8.GetBytes("no picture") });
        await Expect(phone.Page.GetByText("This file is not a picture")).ToBeVisibleAsync();
        await input.SetInputFilesAsync(new FilePayload { Name = "ticket.png", MimeType = "image/png", Buffer = Picture });
        await Expect(phone.Page.GetByText("on this device only")).ToBeVisibleAsync();
        await phone.TypeAsync("Full (1)", "37.8");
        await phone.Field("Empty (1)").FocusAsync();

        var sent = new List<string>();
        phone.Context.Request += (_, request) => sent.Add($"{request.Method} {new Uri(request.Url).AbsolutePath}");
        await phone.Context.SetOfflineAsync(false);
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        var test = await server.TestAsync(phone.Test);
        var photo = Assert.Single(test.Photos);
        Assert.StartsWith("PUT", sent.Last(one => !one.StartsWith("GET", StringComparison.Ordinal)), StringComparison.Ordinal);
        var bytes = await server.BytesAsync($"api/photos/{photo.Id}");
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(bytes)), photo.Payload, StringComparison.Ordinal);
        Assert.Equal("37.8", test.Text("runs[0].containers[0].gross"));
        await server.ChainIsWholeAsync();
        phone.IsFaultless();
    }

    private static async Task BeginAsync(Phone phone)
    {
        await phone.BeginAsync("HR-500");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "2");
        await phone.TypeAsync("Empty (1)", "2.6");
    }
}
