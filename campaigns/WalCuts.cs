using Lanewright.Storage;
using Lanewright.Storage.Database;
using Lanewright.Storage.Entries;

namespace Lanewright.Campaigns;

/// <summary>What cutting and garbling the database's log did.</summary>
/// <param name="Cases">How many times it was cut or garbled.</param>
/// <param name="Opened">Opened with a whole chain that is a beginning of what was written.</param>
/// <param name="Refused">Refused as damaged.</param>
/// <param name="Wrong">Opened with anything else: must be 0.</param>
internal sealed record WalTally(int Cases, int Opened, int Refused, int Wrong);

/// <summary>
/// A power cut leaves the log of the database cut off or half written. Each case takes a copy of a database whose log is
/// still beside it, cuts the log at a random place or garbles a sector of it, and opens the copy.
/// </summary>
internal static class WalCuts
{
    internal static async Task<WalTally> RunAsync(int cases, int seed, CancellationToken stop)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-wal-").FullName;
        try
        {
            var (file, log, hashes) = await SourceAsync(Path.Combine(root, "source"), stop);
            var random = new Random(seed);
            int opened = 0, refused = 0, wrong = 0;
            for (var i = 0; i < cases; i++)
            {
                var place = RecordsPlace.InFolder(Directory.CreateDirectory(Path.Combine(root, "case")).FullName);
                await File.WriteAllBytesAsync(place.File!, file, stop);
                await File.WriteAllBytesAsync(place.File + "-wal", Harm(log, random), stop);
                try
                {
                    var store = await EntryStore.OpenAsync(place, stop: stop);
                    var read = (await store.ReadAsync(stop: stop)).Select(entry => entry.Hash);
                    var isBeginning = read.SequenceEqual(hashes.Take(read.Count()));
                    if (isBeginning && (await store.CheckChainAsync(stop)).IsWhole) opened++;
                    else wrong++;
                    store.Release();
                }
                catch (RecordsException)
                {
                    refused++;
                }

                Directory.Delete(place.DataFolder!, recursive: true);
            }

            return new(cases, opened, refused, wrong);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static byte[] Harm(byte[] log, Random random)
    {
        if (random.Next(2) == 0) return log[..random.Next(log.Length)];
        var harmed = (byte[])log.Clone();
        var start = random.Next(log.Length);
        random.NextBytes(harmed.AsSpan(start, Math.Min(512, log.Length - start)));
        return harmed;
    }

    private static async Task<(byte[] File, byte[] Log, IReadOnlyList<string> Hashes)> SourceAsync(string folder, CancellationToken stop)
    {
        var place = RecordsPlace.InFolder(folder);
        var store = await EntryStore.OpenAsync(place, stop: stop);
        // Close once, so that the tables are in the file and only entries are in the log.
        store.Release();
        for (var i = 0; i < 25; i++)
        {
            await store.AppendAsync(
                [
                    new EntryDraft
                    {
                        Id = $"0193a1b2-0000-7000-8000-{i:x12}", Kind = "register.spreader", Subject = $"sp-{i}", Person = "M.O.",
                        Device = "d", Seq = i, At = new(2026, 11, 25, 12, 0, i, TimeSpan.Zero), Zone = "", Payload = """{"name":"HR"}""",
                    },
                ],
                stop);
        }

        var file = await File.ReadAllBytesAsync(place.File!, stop);
        var log = await File.ReadAllBytesAsync(place.File + "-wal", stop);
        var hashes = (await store.ReadAsync(stop: stop)).Select(entry => entry.Hash).ToList();
        store.Release();
        return (file, log, hashes);
    }
}
