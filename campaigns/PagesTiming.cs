using System.Diagnostics;
using System.Globalization;
using System.Net;
using Lanewright.Core.Practice;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;

namespace Lanewright.Campaigns;

/// <summary>
/// The real server over a large register: how long every page of the office and every list of the API takes to be asked for
/// and read to its end, and how much memory the server holds.
/// </summary>
internal static class PagesTiming
{
    private const double LimitMilliseconds = 300;
    private const double LimitMegabytes = 120;
    private const int Times = 10;

    // Pools of buffers let go of what nobody takes over some minutes.
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(4);

    internal static async Task<int> RunAsync(int spreaders, int tests, string? folder, CancellationToken stop)
    {
        var own = folder is null;
        var demo = Directory.CreateTempSubdirectory("lanewright-demo-pages-").FullName;
        folder ??= Directory.CreateTempSubdirectory("lanewright-pages-").FullName;
        try
        {
            var place = RecordsPlace.InFolder(folder);
            if (!File.Exists(place.File))
            {
                var store = await EntryStore.OpenAsync(place, stop: stop);
                await new LargeRegister(spreaders, tests).FillAsync(store, stop);
                store.Release();
            }

            var slow = await ServedAsync(["serve", "--data", folder], Addresses(spreaders, tests), $"{spreaders} spreaders, {tests} tests", stop);
            await DemoAsync(demo, stop);
            slow += await ServedAsync(
                ["serve", "--data", demo],
                ["/office", "/office/due", "/office/tests", "/office/people", "/office/scales", "/office/audit", "/office/compare", "/api/tests", "/api/register", "/api/me"],
                "the demo yard", stop);
            Console.WriteLine(slow == 0 ? "All within the limits." : $"{slow} beyond the limits.");
            return slow == 0 ? 0 : 1;
        }
        finally
        {
            if (own) Directory.Delete(folder, recursive: true);
            Directory.Delete(demo, recursive: true);
        }
    }

    private static async Task DemoAsync(string folder, CancellationToken stop)
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(folder), stop: stop);
        foreach (var batch in DemoWorld.Make(1, new(2026, 11, 25)).Chunk(EntryStore.MostEntries))
        {
            EntryDraft[] drafts =
            [
                .. batch.Select(entry => new EntryDraft
                {
                    Id = entry.Id.ToString("D"), Kind = entry.Kind, Subject = entry.Subject, Person = entry.Person,
                    Device = entry.Device.ToString("D"), Seq = entry.Sequence, At = entry.At, Zone = entry.Zone, Payload = entry.Payload,
                }),
            ];
            await store.AppendAsync(drafts, stop);
        }

        store.Release();
    }

    private static string[] Addresses(int spreaders, int tests)
    {
        var (spreader, test) = (LargeRegister.Spreader(spreaders / 2), LargeRegister.Test(tests / 2));
        return
        [
            "/office", "/office?page=7", "/office?sort=material&page=2", "/office?sort=calibrated&down=1", "/office?q=Depot+7", "/office?only=due", "/office?q=no+such+words",
            "/office/spreaders.csv", $"/office/spreaders/{spreader}", $"/office/spreaders/{spreader}/edit", "/office/spreaders/new",
            "/office/tests", "/office/tests?page=400", "/office/tests?q=test+49", "/office/tests?q=no+such+words", "/office/tests?open=1",
            "/office/tests?sort=spreader&down=1", $"/office/tests/{test}", "/office/due", "/office/due?page=3",
            "/office/compare", $"/office/compare?a={test}&b={LargeRegister.Test(3)}", "/office/people", "/office/scales", "/office/materials", "/office/depots",
            "/office/rules", "/office/rules/rules/edit", "/office/audit", "/office/audit?before=5000", "/office/who", "/office/search?q=HR-14", "/office/search?q=Depot+7",
            "/office/search?q=2026-01-14", "/office/register/spreaders.csv", "/office/import",
            "/office/reports", "/office/reports/fleet", "/office/reports/due", "/office/reports/season", "/office/reports/before-after", "/office/reports/scales",
            "/api/reports/season", $"/api/tests/{test}/report", "/api/entries",
            "/api/tests", "/api/tests?state=open", "/api/tests?q=test+49", $"/api/tests?spreader={spreader}", $"/api/tests/{test}/entries", "/api/register",
            $"/api/spreaders/{spreader}/events", "/api/quarantine", "/api/me",
        ];
    }

    private static async Task<int> ServedAsync(string[] command, string[] addresses, string what, CancellationToken stop)
    {
        var port = Kills.FreePort();
        using var server = Start([.. command, "--port", $"{port}"]);
        try
        {
            using var client = new HttpClient { BaseAddress = new($"http://localhost:{port}"), Timeout = TimeSpan.FromMinutes(1) };
            await AnsweringAsync(client, server, stop);
            await Task.Delay(TimeSpan.FromSeconds(12), stop);
            var started = Megabytes(server);
            foreach (var address in addresses.Take(Times)) (await client.GetAsync(address, stop)).Dispose();
            await Task.Delay(Rest, stop);
            var resting = Megabytes(server);
            Console.WriteLine($"{what}: median and slowest of {Times} against {LimitMilliseconds:0} ms");
            var slow = 0;
            foreach (var address in addresses) slow += await TimedAsync(client, address, stop) ? 0 : 1;
            await Task.Delay(Rest, stop);
            slow += Memory("with nobody having asked for anything", started) + Memory("after 10 requests and 4 minutes of rest", resting)
                + Memory("after all requests and 4 minutes of rest", Megabytes(server));
            return slow;
        }
        finally
        {
            server.Kill();
            await server.WaitForExitAsync(CancellationToken.None);
        }
    }

    private static async Task<bool> TimedAsync(HttpClient client, string address, CancellationToken stop)
    {
        var times = new List<double>();
        var bytes = 0;
        var status = HttpStatusCode.OK;
        for (var i = 0; i <= Times; i++)
        {
            var clock = Stopwatch.StartNew();
            using var answer = await client.GetAsync(address, stop);
            bytes = (await answer.Content.ReadAsByteArrayAsync(stop)).Length;
            status = answer.StatusCode;
            // The first is for warming up.
            if (i > 0) times.Add(clock.Elapsed.TotalMilliseconds);
        }

        times.Sort();
        var good = times[^1] <= LimitMilliseconds && status == HttpStatusCode.OK;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {times[Times / 2],7:0.0} {times[^1],7:0.0} ms {bytes / 1024.0,8:0} kB  {(good ? "  " : status == HttpStatusCode.OK ? "! " : $"{(int)status} ")}{address}"));
        return good;
    }

    private static int Memory(string when, double megabytes)
    {
        var good = megabytes <= LimitMegabytes;
        Console.WriteLine($"  memory {when}: {megabytes:0} MB against {LimitMegabytes:0} MB{(good ? "" : " !")}");
        return good ? 0 : 1;
    }

    private static double Megabytes(Process server)
    {
        var line = File.ReadLines($"/proc/{server.Id}/status").First(one => one.StartsWith("VmRSS:", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024;
    }

    private static Process Start(string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        start.ArgumentList.Add(Kills.ProgramFile());
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        return Process.Start(start) ?? throw new InvalidOperationException("The server did not start.");
    }

    private static async Task AnsweringAsync(HttpClient client, Process server, CancellationToken stop)
    {
        while (!server.HasExited)
        {
            try
            {
                if ((await client.GetAsync("/api/hello", stop)).IsSuccessStatusCode) return;
            }
            catch (HttpRequestException)
            {
                await Task.Delay(100, stop);
            }
        }

        throw new InvalidOperationException("The server ended before it answered.");
    }
}
