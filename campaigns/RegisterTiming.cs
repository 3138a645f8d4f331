using System.Diagnostics;
using System.Globalization;
using Lanewright.Storage;
using Lanewright.Storage.Database;

namespace Lanewright.Campaigns;

/// <summary>
/// A large agency's register: how long taking in, listing, searching, opening, checking, rebuilding and backing up last
/// with very many spreaders and tests. The data is invented.
/// </summary>
internal static class RegisterTiming
{
    internal static async Task<int> RunAsync(int spreaders, int tests, CancellationToken stop)
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-register-").FullName;
        try
        {
            var place = RecordsPlace.InFolder(Path.Combine(folder, "records"));
            var store = await EntryStore.OpenAsync(place, stop: stop);
            Console.WriteLine($"{spreaders} spreaders, {tests} tests of one beginning and one decision");
            var register = new LargeRegister(spreaders, tests);
            await TimedAsync("take in", () => register.FillAsync(store, stop));
            Console.WriteLine($"  {register.Count} entries, {new FileInfo(place.File!).Length / 1048576} MB");
            await ManyAsync("first page of tests", () => store.TestsAsync(new(), stop));
            await ManyAsync("first page of open tests", () => store.TestsAsync(new() { OpenOnly = true }, stop));
            await ManyAsync("tests of one spreader", () => store.TestsAsync(new() { Spreader = LargeRegister.Spreader(7) }, stop));
            await ManyAsync("search that finds few", () => store.TestsAsync(new() { Words = "test 49" }, stop));
            await ManyAsync("search that finds nothing", () => store.TestsAsync(new() { Words = "no such words" }, stop));
            await ManyAsync("whole register", () => store.RegisterAsync(stop));
            await ManyAsync("send one entry", () => store.AppendAsync([register.Next("test.note", LargeRegister.Test(1), """{"text":"x"}""")], stop));
            store.Release();
            await TimedAsync("open", async () => store = await EntryStore.OpenAsync(place, stop: stop));
            await TimedAsync("check the whole chain", () => store.CheckChainAsync(stop));
            await TimedAsync("compute everything again", () => store.RebuildAsync(stop));
            await TimedAsync("back up and prove", () => Storage.Transfer.Backup.WriteAsync(store, Path.Combine(folder, "b.zip"), stop));
            store.Release();
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task TimedAsync(string what, Func<Task> work)
    {
        var clock = Stopwatch.StartNew();
        await work();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {what,-28} {clock.Elapsed.TotalSeconds,9:0.000} s"));
    }

    private static async Task ManyAsync(string what, Func<Task> work)
    {
        await work();
        var times = new List<double>();
        for (var i = 0; i < 25; i++)
        {
            var clock = Stopwatch.StartNew();
            await work();
            times.Add(clock.Elapsed.TotalMilliseconds);
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"  {what,-28} {times[12],9:0.0} ms median, {times[23],9:0.0} ms the slowest but one of 25"));
    }
}
