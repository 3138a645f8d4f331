using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lanewright.Core.Tests;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Folding;

namespace Lanewright.Browser.Tests;

/// <summary>
/// The real program as <c>./lanewright</c> builds it, serving a folder of its own; it can be killed at any moment and
/// started again at the same address.
/// </summary>
public partial class YardServer : IAsyncLifetime
{
    private readonly HttpClient client = new();
    private Process? process;
    private int port;

    /// <summary>The program as built; a copy of its folder for tests that change pages.</summary>
    internal string Program { get; set; } = Repository.File("out", "bin", "lanewright");

    internal string Folder { get; } = Directory.CreateTempSubdirectory("lanewright-browser-").FullName;

    internal virtual Uri Address => new($"http://localhost:{port}/");

    /// <summary>Its port.</summary>
    protected int Port => port;

    public async ValueTask InitializeAsync()
    {
        await FillAsync();
        await StartAsync();
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await KillAsync();
        client.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>How it serves: this machine only, or with accounts.</summary>
    protected virtual string[] Serving => ["serve"];

    /// <summary>What it said when it started, line by line.</summary>
    protected virtual void Said(string line)
    {
    }

    /// <summary>What the yard begins with: nothing.</summary>
    protected virtual Task FillAsync() => Task.CompletedTask;

    /// <summary>Starts it, at the address it had before if it had one.</summary>
    internal async Task StartAsync()
    {
        process = Start([.. Serving, "--port", port.ToString(CultureInfo.InvariantCulture), "--data", Folder]);
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            Said(line);
            if (Place().Match(line) is not { Success: true } match) continue;
            port = int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
            _ = ReadOnAsync(process.StandardOutput);
            return;
        }

        throw new InvalidOperationException("The server did not start: " + await process.StandardError.ReadToEndAsync());
    }

    private async Task ReadOnAsync(StreamReader output)
    {
        while (await output.ReadLineAsync() is { } line) Said(line);
    }

    /// <summary>SIGKILL: no chance to finish anything.</summary>
    internal async Task KillAsync()
    {
        if (process is null) return;
        process.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
        process = null;
    }

    /// <summary>Runs a command of the program; gives what it printed, after seeing that it ended well.</summary>
    internal async Task<string> RunAsync(params string[] arguments)
    {
        using var command = Start(arguments);
        var error = command.StandardError.ReadToEndAsync();
        var output = await command.StandardOutput.ReadToEndAsync();
        await command.WaitForExitAsync();
        Assert.True(command.ExitCode == 0, $"{string.Join(' ', arguments)}: {output}{await error}");
        return output;
    }

    internal async Task<JsonElement> GetAsync(string path) => await client.GetFromJsonAsync<JsonElement>(new Uri(Address, path));

    internal async Task<byte[]> BytesAsync(string path) => await client.GetByteArrayAsync(new Uri(Address, path));

    /// <summary>Sends entries as a device would; gives the answer.</summary>
    internal async Task<JsonElement> SendAsync(params object[] entries)
    {
        using var answer = await client.PostAsJsonAsync(new Uri(Address, "api/entries"), new { entries });
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    /// <summary>What the server has of a test, folded by the server's rules.</summary>
    internal async Task<TestFold> TestAsync(string id)
    {
        var answer = await GetAsync($"api/tests/{id}/entries");
        return TestFold.Of([.. answer.GetProperty("entries").EnumerateArray().Select(json =>
        {
            var reading = EntryReader.Read(json);
            Assert.Null(reading.Problem);
            return EntryStore.Chained(
                reading.Draft!, json.GetProperty("number").GetInt64(), json.GetProperty("received").GetDateTimeOffset(),
                json.GetProperty("previousHash").GetString()!, json.GetProperty("hash").GetString()!);
        })]);
    }

    /// <summary>The chain of everything kept is whole. The server goes on serving.</summary>
    internal async Task ChainIsWholeAsync()
    {
        var said = await RunAsync("check-records", "--data", Folder);
        Assert.DoesNotContain("broken", said, StringComparison.OrdinalIgnoreCase);
    }

    private Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo(Program) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }

    [GeneratedRegex(@"https?://localhost:(\d+)/")]
    private static partial Regex Place();
}
