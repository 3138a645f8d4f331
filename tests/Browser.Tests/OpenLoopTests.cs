using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

public sealed class OpenLoopTests(Chrome chrome, YardServer server) : IClassFixture<YardServer>
{
    private static readonly (string Setting, string Time, string Tare, string Gross)[] Runs =
    [
        ("50 %", "59.8", "62.0", "276.0"), ("50 %", "58.8", "62.0", "279.0"), ("50 %", "61.1", "62.5", "283.5"),
        ("70 %", "58.8", "62.5", "360.0"), ("70 %", "60.4", "62.0", "363.0"),
    ];

    [Fact]
    public async Task Mass_per_time_at_two_settings_is_typed_half_without_a_network_and_arrives_whole()
    {
        await using var phone = await Phone.OpenAsync(chrome, server);
        await phone.BeginAsync("HR-117", method: "The whole catch at once: bin, pallet, tarpaulin");
        await Whole.PrepareAsync(phone, "mass-per-time", "lb/min", open: true);
        await phone.HasPagesAsync();
        for (var run = 0; run < Runs.Length; run++)
        {
            if (run == 2) await phone.Context.SetOfflineAsync(true);
            await phone.StepAsync("Drop");
            if (run > 0) await phone.NextRunAsync();
            // The next run begins with the settings of the one before.
            if (run > 0) await Assertions.Expect(phone.Field("Setting of the drive")).ToHaveValueAsync(Runs[run - 1].Setting);
            if (run is 0 or 3) await phone.TypeAsync("Setting of the drive", Runs[run].Setting);
            await phone.TypeAsync("Time it ran s", Runs[run].Time);
            await phone.TypeAsync("Engine speed rpm", "1500");
            await phone.StepAsync("Weigh");
            await phone.TypeAsync("Empty bin, pallet or tarpaulin", Runs[run].Tare);
            await phone.TypeAsync("With the catch", Runs[run].Gross);
            if (run != 3) continue;
            await phone.Page.ReloadAsync();
            await phone.StandsAsync();
        }

        await phone.Context.SetOfflineAsync(false);
        await phone.AllSentAsync();
        await Whole.ArrivedAsync(phone, server);
        await Assertions.Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "At 50 %", Exact = true })).ToBeVisibleAsync();
        await Assertions.Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Name = "At 70 %", Exact = true })).ToBeVisibleAsync();
    }
}
