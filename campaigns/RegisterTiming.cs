using System.Diagnostics;
using System.Globalization;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;

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
            long seq = 0;
            await TimedAsync("take in", async () =>
            {
                var all = Enumerable.Range(0, spreaders).Select(i => Draft("register.spreader", $"sp-{i}", $$"""{"name":"HR-{{i}}"}""", ++seq))
                    .Concat(Enumerable.Range(0, tests).SelectMany(i => Test(i, spreaders, ref seq)));
                foreach (var batch in all.Chunk(EntryStore.MostEntries)) await store.AppendAsync(batch, stop);
            });
            Console.WriteLine($"  {seq} entries, {new FileInfo(place.File!).Length / 1048576} MB");
            await ManyAsync("first page of tests", () => store.TestsAsync(new(), stop));
            await ManyAsync("first page of open tests", () => store.TestsAsync(new() { OpenOnly = true }, stop));
            await ManyAsync("tests of one spreader", () => store.TestsAsync(new() { Spreader = "sp-7" }, stop));
            await ManyAsync("search that finds few", () => store.TestsAsync(new() { Words = "check 49" }, stop));
            await ManyAsync("search that finds nothing", () => store.TestsAsync(new() { Words = "no such words" }, stop));
            await ManyAsync("whole register", () => store.RegisterAsync(stop));
            await ManyAsync("send one entry", () => store.AppendAsync([Draft("test.note", "t-1", """{"text":"x"}""", ++seq)], stop));
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

    private static EntryDraft[] Test(int i, int spreaders, ref long seq)
    {
        var begin = string.Create(
            CultureInfo.InvariantCulture,
            $$$"""
            {"kind":"verification","spreader":"sp-{{{i % spreaders}}}","fields":{"title":"check {{{i}}}","units":"us","date":"2026-10-06",
            "place":"Quarry Road","spreader.id":"HR-{{{i % spreaders}}}","spreader.loop":"closed","spreader.constant":"pulses-per-mass",
            "spreader.unit":"pulse/lb","spreader.current":"12.6","material.name":"salt","scale.id":"bench","scale.kind":"platform",
            "scale.capacity":"150 lb","scale.division":"0.1 lb","scale.class":"iii","commonError":"yes","tolerance":"5 %",
            "runs[0].delivered":"{{{60 + i % 7}}}","runs[0].containers[0].tare":"2.4","runs[0].containers[0].gross":"{{{63 + i % 5}}}",
            "runs[1].delivered":"61.5","runs[1].containers[0].tare":"2.6","runs[1].containers[0].gross":"63.8",
            "runs[2].delivered":"62.2","runs[2].containers[0].tare":"2.3","runs[2].containers[0].gross":"64.0"}}
            """);
        return
        [
            Draft("test.begin", $"t-{i}", begin, ++seq),
            Draft("test.decision", $"t-{i}", """{"verdict":"adopt","why":"inside the tolerance"}""", ++seq),
        ];
    }

    private static EntryDraft Draft(string kind, string subject, string payload, long seq) => new()
    {
        Id = $"0193a1b2-0000-7000-8000-{seq:x12}", Kind = kind, Subject = subject, Person = "M.O.", Device = "d", Seq = seq,
        At = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(seq), Zone = "", Payload = payload,
    };

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
