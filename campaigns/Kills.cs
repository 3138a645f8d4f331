using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Campaigns;

/// <summary>What killing the server came to.</summary>
/// <param name="Kills">How often it was killed.</param>
/// <param name="Acknowledged">Entries that clients were told are kept.</param>
/// <param name="Lost">Of those, how many are not there: must be 0.</param>
/// <param name="Doubled">Ids that are there more than once: must be 0.</param>
/// <param name="Kept">Entries there, with those whose answer was lost.</param>
/// <param name="ChainWhole">Whether the chain is whole.</param>
/// <param name="ComputedSame">Whether lists and results are what rebuilding gives.</param>
internal sealed record KillTally(int Kills, int Acknowledged, int Lost, int Doubled, long Kept, bool ChainWhole, bool ComputedSame)
{
    internal bool IsGood => Lost == 0 && Doubled == 0 && ChainWhole && ComputedSame && Acknowledged > 0;
}

/// <summary>
/// Kills the real server (SIGKILL) at random moments while several clients send entries, give up on answers and send
/// again; then looks whether every acknowledged entry is there once.
/// </summary>
internal static class Kills
{
    private const int Clients = 4;

    internal static async Task<KillTally> RunAsync(int kills, int seed, CancellationToken stop)
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-kills-").FullName;
        var port = FreePort();
        var acknowledged = new ConcurrentDictionary<string, byte>();
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(stop);
        Process? server = null;
        try
        {
            var clients = Enumerable.Range(0, Clients)
                .Select(i => Task.Run(() => SendAsync(port, seed + i, acknowledged, ending.Token), stop)).ToList();
            var random = new Random(seed);
            for (var i = 0; i < kills; i++)
            {
                server = Start(folder, port);
                await AnsweringAsync(port, server, stop);
                // Mostly in the middle of work, sometimes while the server is still getting ready.
                var before = acknowledged.Count;
                var patient = random.Next(5) > 0;
                for (var j = 0; patient && acknowledged.Count == before && j < 500; j++) await Task.Delay(20, stop);
                await Task.Delay(random.Next(250), stop);
                server.Kill();
                await server.WaitForExitAsync(stop);
                server.Dispose();
                server = null;
            }

            await ending.CancelAsync();
            await Task.WhenAll(clients);
            return await LookAsync(folder, kills, acknowledged, stop);
        }
        finally
        {
            server?.Kill();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<KillTally> LookAsync(
        string folder, int kills, ConcurrentDictionary<string, byte> acknowledged, CancellationToken stop)
    {
        var store = await EntryStore.OpenAsync(RecordsPlace.InFolder(folder), stop: stop);
        var ids = (await store.ReadAsync(stop: stop)).Select(entry => entry.Id).ToList();
        var there = ids.ToHashSet();
        var chain = await store.CheckChainAsync(stop);
        var (before, after) = await store.RebuildAsync(stop);
        store.Release();
        return new(
            kills, acknowledged.Count, acknowledged.Keys.Count(id => !there.Contains(id)), ids.Count - there.Count, ids.Count,
            chain.IsWhole, before == after);
    }

    private static async Task SendAsync(int port, int seed, ConcurrentDictionary<string, byte> acknowledged, CancellationToken end)
    {
        var random = new Random(seed);
        using var client = new HttpClient { BaseAddress = new($"http://127.0.0.1:{port}"), Timeout = TimeSpan.FromSeconds(10) };
        long seq = 0;
        while (!end.IsCancellationRequested)
        {
            var entries = Enumerable.Range(0, random.Next(1, 6)).Select(_ => Entry(seed, ++seq, random)).ToList();
            var body = $$"""{"entries":[{{string.Join(',', entries)}}]}""";
            // The same sending again and again until it is answered, as a phone's outbox does.
            while (!end.IsCancellationRequested && !await TryAsync(client, body, random, acknowledged, end)) await Task.Delay(15, CancellationToken.None);
        }
    }

    private static async Task<bool> TryAsync(
        HttpClient client, string body, Random random, ConcurrentDictionary<string, byte> acknowledged, CancellationToken end)
    {
        try
        {
            // One answer in five is not waited for: the link broke.
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(end);
            if (random.Next(5) == 0) patience.CancelAfter(random.Next(1, 15));
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var answer = await client.PostAsync("/api/entries", content, patience.Token);
            if (!answer.IsSuccessStatusCode) return false;
            using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(patience.Token));
            foreach (var result in json.RootElement.GetProperty("results").EnumerateArray())
            {
                if (result.GetProperty("status").GetString() is "accepted" or "have") acknowledged[result.GetProperty("id").GetString()!] = 1;
                else throw new InvalidOperationException($"An entry was not taken in: {result}");
            }

            return true;
        }
        catch (Exception wrong) when (wrong is HttpRequestException or OperationCanceledException or IOException or JsonException)
        {
            return false;
        }
    }

    private static string Entry(int client, long seq, Random random)
    {
        var id = $"0193a1b2-{client & 0xFFFF:x4}-7000-8000-{seq:x12}";
        var test = $"0193a1b2-{client & 0xFFFF:x4}-7000-9000-{seq / 20:x12}";
        return $$$"""
            {"id":"{{{id}}}","kind":"test.field","subject":"{{{test}}}","person":"M.O.","device":"d{{{client}}}","seq":{{{seq}}},
            "at":"2026-11-25T12:00:00.000Z","zone":"","parent":null,"why":null,
            "payload":{"path":"runs[{{{random.Next(6)}}}].pulses","text":"{{{random.Next(5000)}}}"}}
            """;
    }

    private static Process Start(string folder, int port) =>
        Start("serve", "--port", port.ToString(CultureInfo.InvariantCulture), "--data", folder);

    /// <summary>Starts a command of the program, whatever it says unread.</summary>
    internal static Process StartUnheard(params string[] arguments)
    {
        var run = Start(arguments);
        run.ErrorDataReceived += (_, _) => { };
        run.BeginErrorReadLine();
        return run;
    }

    // Its error output is left to the caller.
    private static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in (string[])[ProgramFile(), .. arguments]) start.ArgumentList.Add(argument);
        var run = Process.Start(start)!;
        run.OutputDataReceived += (_, _) => { };
        run.BeginOutputReadLine();
        return run;
    }

    /// <summary>The program as 'lanewright' publishes it or as its project builds it, whichever is newer.</summary>
    internal static string ProgramFile()
    {
        var built = Path.Combine(Root(), "src", "Lanewright", "bin");
        return Directory.GetFiles(built, "lanewright.dll", SearchOption.AllDirectories)
            .Append(Path.Combine(Root(), "out", "bin", "lanewright.dll"))
            .Where(File.Exists).MaxBy(File.GetLastWriteTimeUtc)
            ?? throw new FileNotFoundException("Build src/Lanewright first.");
    }

    /// <summary>The folder of the solution.</summary>
    internal static string Root()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "Lanewright.slnx"))) root = root.Parent;
        return root?.FullName ?? throw new DirectoryNotFoundException("Run this from within the solution.");
    }

    private static async Task AnsweringAsync(int port, Process server, CancellationToken stop)
    {
        var waited = Stopwatch.StartNew();
        while (waited.Elapsed < TimeSpan.FromMinutes(1))
        {
            if (server.HasExited)
                throw new InvalidOperationException("The server did not start: " + await server.StandardError.ReadToEndAsync(stop));
            try
            {
                using var probe = new TcpClient();
                await probe.ConnectAsync(IPAddress.Loopback, port, stop);
                return;
            }
            catch (SocketException)
            {
                await Task.Delay(20, stop);
            }
        }

        throw new TimeoutException("The server did not answer within a minute.");
    }

    internal static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
