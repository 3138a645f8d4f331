using System.Text.RegularExpressions;
using Lanewright.Core.Exchange;
using Lanewright.Storage.Folding;
using Microsoft.Playwright;

namespace Lanewright.Browser.Tests;

/// <summary>Parts of whole tests, and what must hold when one is done.</summary>
internal static class Whole
{
    /// <summary>Types what the yard needs to know of spreader, material and scale, nothing being in the register.</summary>
    internal static async Task PrepareAsync(Phone phone, string constant, string unit, bool open = false, bool comma = false)
    {
        await phone.ChooseAsync("Controller", open ? "Open loop: it only sets the drive" : "Closed loop: it counts a sensor");
        phone.Typed["spreader.constant"] = (await phone.Field("The constant is").SelectOptionAsync(constant))[0];
        await phone.ChooseAsync("Keyed in as", unit);
        await phone.UnfoldAsync("More about the spreader");
        await phone.TypeAsync("Smallest step the controller takes", open ? "1 " + unit : (comma ? "0,1 " : "0.1 ") + unit);
        await phone.TypeAsync("Place", "Quarry Road");
        await phone.TypeAsync("Material", "white rock salt");
        await phone.TypeAsync("Scale", "bench");
        await phone.TypeAsync("Smallest step it shows", comma ? "0,1 kg" : "0.1 lb");
        await phone.ChooseAsync("Empty and full weighed on this scale within minutes?", "yes");
        await phone.UnfoldAsync("More about the scale");
        await phone.ChooseAsync("Class on the plate", "III");
    }

    /// <summary>
    /// The server has every value typed, its chain is whole, and the answer on the screen is the one that the command
    /// line gives for the same fields.
    /// </summary>
    internal static async Task ArrivedAsync(Phone phone, YardServer server)
    {
        var test = await KeptAsync(phone, server);
        await AnswersAlikeAsync(phone, server, test);
        phone.IsFaultless();
    }

    /// <summary>The server has every value typed, once, and its chain is whole.</summary>
    internal static async Task<TestFold> KeptAsync(Phone phone, YardServer server)
    {
        var test = await server.TestAsync(phone.Test);
        foreach (var (path, text) in phone.Typed)
        {
            var about = test.Entries.Where(entry => entry.Payload.Contains($"\"{path}\"", StringComparison.Ordinal));
            Assert.True(
                test.Fields.FirstOrDefault(field => field.Path == path)?.Text == text,
                $"{path} is not '{text}':\n{string.Join('\n', about.Select(entry => $"{entry.Id} over {entry.Parent}: {entry.Payload}"))}");
        }

        Assert.Equal(0, test.Conflicts);
        var refused = (await server.GetAsync("api/quarantine")).GetProperty("entries");
        Assert.DoesNotContain(refused.EnumerateArray(), one => one.GetRawText().Contains(phone.Test, StringComparison.Ordinal));
        Assert.Equal(test.Entries.Count, test.Entries.Select(entry => entry.Id).Distinct().Count());
        Assert.Equal(test.Entries.Count, test.Entries.Select(entry => (entry.Device, entry.Seq)).Distinct().Count());
        await server.ChainIsWholeAsync();
        return test;
    }

    private static async Task AnswersAlikeAsync(Phone phone, YardServer server, TestFold test)
    {
        var reading = TestComputation.Sheet(test);
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings.Select(finding => $"{finding}")));
        var file = Path.Combine(server.Folder, "sheet.json");
        await File.WriteAllTextAsync(file, SheetWriter.Write(reading.Value!));
        var command = reading.Value!.Kind == Core.Spreading.TestKind.Verification ? "check" : "analyse";
        var report = await server.RunAsync(command, file, "--trials", "0", "--culture", test.Text("culture") ?? "invariant");
        report = Regex.Replace(report, @"\s+", " ");

        await phone.StepAsync("Answer");
        var results = phone.Page.Locator("section.result");
        await Assertions.Expect(results.First).ToBeVisibleAsync();
        Assert.Equal(reading.Value!.Runs.Select(run => run.Setting).Distinct().Count(), Math.Max(1, await results.CountAsync()));
        foreach (var result in await results.AllAsync())
        {
            var text = Regex.Replace(await result.InnerTextAsync(), @"\s+", " ");
            var constant = await result.Locator("p > strong").Nth(await result.Locator(".key").CountAsync()).InnerTextAsync();
            // The page says "12.6 ± 0.2 pulse/lb", the report "12.6 pulse/lb ± 0.2".
            constant = Regex.Replace(constant, @"^(\S+) (± \S+) (.*)$", "$1 $3 $2");
            Assert.Contains(constant + " ", report, StringComparison.Ordinal);
            if (Regex.Match(text, @"Key in ([\d.,]+ \S+)") is { Success: true } key)
                Assert.Contains($"Key in {key.Groups[1].Value}", report, StringComparison.Ordinal);
        }
    }
}
