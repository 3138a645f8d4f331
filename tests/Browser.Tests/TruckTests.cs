using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

public sealed class TruckTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    private static readonly (string Pulses, string Before, string After)[] Runs =
        [("14198", "53260", "50320"), ("14227", "50320", "47340"), ("13771", "47340", "44520")];

    private static readonly (string Delivered, string Tare, string Gross)[] Checks =
        [("63.0", "2.4", "64.9"), ("61.5", "2.6", "63.8"), ("62.2", "2.3", "64.0")];

    [Fact]
    public async Task The_truck_weighed_before_and_after_is_typed_half_without_a_network_and_arrives_whole()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.HasPagesAsync();
        await phone.BeginAsync("HR-121", method: "The truck before and after");
        await Whole.PrepareAsync(phone, "pulses-per-mass", "pulse/lb");
        await phone.TypeAsync("Smallest step it shows", "20");
        for (var run = 0; run < Runs.Length; run++)
        {
            if (run == 1) await phone.Context.SetOfflineAsync(true);
            await phone.StepAsync("Drop");
            if (run > 0) await phone.NextRunAsync();
            await phone.TypeAsync("Pulses counted", Runs[run].Pulses);
            await phone.StepAsync("Weigh");
            await phone.TypeAsync("Truck before the drop", Runs[run].Before);
            await phone.TypeAsync("Truck after the drop", Runs[run].After);
            await phone.ChooseAsync("The same people in it both times?", "yes");
            await phone.TypeAsync("Fuel burnt", "2");
            if (run != 1) continue;
            await phone.PressAsync("+ snow, a person, a tool");
            await phone.TypeAsync("Change 1: what", "snow off the hood");
            await phone.ChooseAsync("Change 1: came on or left", "left");
            await phone.TypeAsync("Change 1: how much", "8");
            await phone.Page.ReloadAsync();
            await phone.StandsAsync();
        }

        await phone.Context.SetOfflineAsync(false);
        await phone.AllSentAsync();
        await Whole.ArrivedAsync(phone, server);
    }

    [Fact]
    public async Task A_check_is_typed_while_the_server_is_dead_and_arrives_whole_when_it_is_back()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.HasPagesAsync();
        await phone.BeginAsync("HR-104", question: "Check the constant in the controller");
        await Whole.PrepareAsync(phone, "pulses-per-mass", "pulse/lb");
        await phone.TypeAsync("Value in the controller now", "12.6");
        await CheckAsync(phone, 0);
        await phone.AllSentAsync();

        await server.KillAsync();
        await CheckAsync(phone, 1);
        await phone.Page.ReloadAsync();
        await phone.StandsAsync();
        await CheckAsync(phone, 2);
        await Assertions.Expect(phone.Sent).ToContainTextAsync("offline");

        await server.StartAsync();
        await phone.SendNowAsync();
        await phone.AllSentAsync();
        await Whole.ArrivedAsync(phone, server);
    }

    private static async Task CheckAsync(Phone phone, int run)
    {
        await phone.StepAsync("Drop");
        if (run > 0) await phone.NextRunAsync();
        await phone.TypeAsync("Delivered, as the controller says", Checks[run].Delivered);
        await phone.StepAsync("Weigh");
        await phone.TypeAsync("How many containers did it fill?", "1");
        await phone.TypeAsync("Empty (1)", Checks[run].Tare);
        await phone.TypeAsync("Full (1)", Checks[run].Gross);
    }
}
