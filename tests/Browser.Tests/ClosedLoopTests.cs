using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

public sealed class ClosedLoopTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    private static readonly (string Pulses, string[] Containers)[] Runs =
    [
        ("2309", ["2.6 37.8", "2.6 40.2", "2.8 38.2", "2.2 37.6", "2.3 39.7"]),
        ("2196", ["2.4 35.7", "2.6 37.2", "2.7 35.4", "2.9 37.3", "2.7 41.5"]),
        ("2239", ["2.7 35.7", "2.5 38.2", "2.5 37.7", "2.8 39.0", "2.7 40.0"]),
    ];

    [Fact]
    public async Task A_whole_test_with_containers_is_typed_half_without_a_network_and_arrives_whole()
    {
        await using var phone = await Phone.OpenAsync(chrome, server, isWarm: true);
        await phone.HasPagesAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.BeginAsync("HR-104");
        await Whole.PrepareAsync(phone, "pulses-per-mass", "pulse/lb");
        await RunAsync(phone, 0, 5);
        await RunAsync(phone, 1, 5);

        await phone.Page.ReloadAsync();
        await phone.StandsAsync();
        await phone.StepAsync("Prepare");
        await phone.StandsAsync();
        await phone.StepAsync("Weigh");
        await RunAsync(phone, 2, 5);
        Assert.DoesNotContain("not yet sent: 0", await phone.Sent.InnerTextAsync(), StringComparison.Ordinal);

        await phone.Context.SetOfflineAsync(false);
        await phone.AllSentAsync();
        await Whole.ArrivedAsync(phone, server);
    }

    [Fact]
    public async Task A_german_phone_takes_decimal_commas_and_answers_with_them()
    {
        await using var phone = await Phone.OpenAsync(chrome, server, locale: "de-DE");
        await phone.HasPagesAsync();
        await phone.Context.SetOfflineAsync(true);
        await phone.BeginAsync("FM-03");
        await Whole.PrepareAsync(phone, "pulses-per-mass", "pulse/kg", comma: true);
        for (var run = 0; run < 3; run++) await RunAsync(phone, run, 2, comma: true);
        Assert.Contains(phone.Typed, typed => typed is { Key: "runs[0].containers[0].gross", Value: "37,8" });

        await phone.Page.ReloadAsync();
        await phone.StandsAsync();
        await Assertions.Expect(phone.Page.GetByText("net 33,0 kg, together 33,0 kg")).ToBeVisibleAsync();
        await phone.Context.SetOfflineAsync(false);
        await phone.AllSentAsync();
        await Whole.ArrivedAsync(phone, server);
        await Assertions.Expect(phone.Page.Locator(".key strong")).ToContainTextAsync(",");
    }

    private static async Task RunAsync(Phone phone, int run, int containers, bool comma = false)
    {
        string Written(string text) => comma ? text.Replace('.', ',') : text;
        await phone.StepAsync("Drop");
        if (run > 0) await phone.NextRunAsync();
        await phone.TypeAsync("Pulses counted", Runs[run].Pulses);
        await phone.TypeAsync("Time it ran s", Written("62.4"));
        await phone.TypeAsync(comma ? "Gate opening mm" : "Gate opening in", comma ? "50" : "2");
        await phone.ChooseAsync("Hydraulic oil", "warm");
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", $"{containers}");
        for (var i = 0; i < containers; i++)
        {
            var weights = Written(Runs[run].Containers[i]).Split(' ');
            await phone.TypeAsync($"Empty ({i + 1})", weights[0]);
            await phone.TypeAsync($"Full ({i + 1})", weights[1]);
        }

        await Assertions.Expect(phone.Page.GetByText(", together ")).ToHaveCountAsync(containers);
    }
}
