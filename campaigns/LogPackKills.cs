using System.Diagnostics;
using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Store;

namespace Lanewright.Campaigns;

/// <summary>What killing the packing of logs came to.</summary>
/// <param name="Kills">How often it was killed.</param>
/// <param name="Ends">How often it came to its end.</param>
/// <param name="Files">Files before it.</param>
/// <param name="Rows">Rows in them.</param>
/// <param name="Wrong">Kills and ends after which the rows were not those of before: must be 0.</param>
internal sealed record LogPackTally(int Kills, int Ends, int Files, long Rows, int Wrong);

/// <summary>
/// Kills (SIGKILL) <c>logs pack</c> at random moments and looks after each kill whether every row is there once for whoever reads by the
/// journal; starts it again until it is done, then with the unpacked files anew.
/// </summary>
internal static class LogPackKills
{
    internal static LogPackTally Run(int kills, int seed)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-pack-kills-").FullName;
        try
        {
            var (season, whole, data) = (Path.Combine(root, "season"), Path.Combine(root, "whole"), Path.Combine(root, "data"));
            SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 8, Storms = 8, Interval = 10, Seed = (ulong)seed }), season);
            SeasonCoverage.Take(season, whole, partBytes: 200_000);
            var (wanted, rows) = Content(whole);
            var files = new LogFolder(whole).Files().Count;
            var random = new Random(seed);
            int done = 0, ends = 0, wrong = 0;
            Copy(whole, data);
            var watch = Stopwatch.StartNew();
            using (var first = Start(data)) first.WaitForExit();
            // As long as packing takes here, so that kills fall everywhere in it.
            var span = 1.1 * watch.ElapsedMilliseconds;
            if (Content(data).Content != wanted || new LogFolder(data).Files().Count >= files) wrong++;
            while (done < kills)
            {
                Directory.Delete(data, recursive: true);
                Copy(whole, data);
                while (true)
                {
                    using var run = Start(data);
                    if (done < kills && !run.WaitForExit((int)(random.NextDouble() * span)))
                    {
                        run.Kill();
                        run.WaitForExit();
                        done++;
                        if (Content(data).Content != wanted) wrong++;
                        continue;
                    }

                    run.WaitForExit();
                    break;
                }

                ends++;
                if (Content(data).Content != wanted) wrong++;
            }

            return new(done, ends, files, rows, wrong);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static (string Content, long Rows) Content(string data)
    {
        using var engine = Engine.OpenForReading();
        var content = ("", 0L);
        engine.Ask(
            $"SELECT count(*), sum(counts)::VARCHAR || ' ' || bit_xor(hash(spreader, moment, counts, file, line))::VARCHAR FROM {RowTable.Read(new LogFolder(data).Files())}",
            row => content = (string.Create(CultureInfo.InvariantCulture, $"{row.GetInt64(0)} {row.GetString(1)}"), row.GetInt64(0)));
        return content;
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private static Process Start(string data) => Kills.StartUnheard("logs", "pack", "--data", data);
}
