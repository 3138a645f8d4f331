using System.Diagnostics;
using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Store;

namespace Lanewright.Campaigns;

/// <summary>What killing imports came to.</summary>
/// <param name="Kills">How often an import was killed.</param>
/// <param name="Ends">How often one came to its end after kills.</param>
/// <param name="Rows">Rows of one whole import.</param>
/// <param name="Wrong">Ends at which rows or refused rows were not those of an import that nobody stopped: must be 0.</param>
internal sealed record LogKillTally(int Kills, int Ends, long Rows, int Wrong);

/// <summary>
/// Kills (SIGKILL) the program while it takes logs in, at random moments, and starts it again until it is done; then compares what is
/// stored with what an import gives that nobody stopped.
/// </summary>
internal static class LogKills
{
    internal static LogKillTally Run(int kills, int seed)
    {
        var folder = Directory.CreateTempSubdirectory("lanewright-log-kills-").FullName;
        try
        {
            var season = Path.Combine(folder, "season");
            SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 8, Storms = 4, Interval = 20, Seed = (ulong)seed }), season);
            // Rows doubled and out of order, across the limits of parts.
            var file = Path.Combine(season, "logs", "rollover-001.csv");
            var profile = Path.Combine(season, "profiles", "rollover.json");
            var (whole, rows) = (Path.Combine(folder, "whole"), 0L);
            var timed = Stopwatch.StartNew();
            using (var run = Start(file, profile, whole)) run.WaitForExit();
            var wanted = Content(whole, out rows);
            var random = new Random(seed);
            int done = 0, ends = 0, wrong = 0;
            // As long as an import takes here, so that kills fall everywhere in it.
            var span = 1.1 * timed.ElapsedMilliseconds;
            while (done < kills)
            {
                var data = Path.Combine(folder, "data");
                while (true)
                {
                    var watch = Stopwatch.StartNew();
                    using var run = Start(file, profile, data);
                    if (done < kills && !run.WaitForExit((int)(random.NextDouble() * span)))
                    {
                        run.Kill();
                        run.WaitForExit();
                        done++;
                        continue;
                    }

                    run.WaitForExit();
                    if (done < kills) span = 1.2 * watch.ElapsedMilliseconds;
                    break;
                }

                ends++;
                if (Content(data, out _) != wanted) wrong++;
                Directory.Delete(data, recursive: true);
            }

            return new(done, ends, rows, wrong);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Everything that an import stored, as one text that is equal for equal content.</summary>
    internal static string Content(string data, out long rows)
    {
        var folder = new LogFolder(data);
        using var engine = Engine.Open(Path.Combine(folder.Root, "spill"));
        var files = Directory.EnumerateFiles(folder.Rows, "*.parquet", SearchOption.AllDirectories).ToList();
        var answer = "";
        var count = 0L;
        // Every file that is there, as another program would read it, and not only those of the journal.
        engine.Ask(
            $"SELECT count(*), count(DISTINCT (spreader, moment)), bit_xor(hash(COLUMNS(*)))::VARCHAR, sum(counts), sum(line) FROM (SELECT * EXCLUDE (file) FROM {RowTable.Read(files)})",
            row =>
            {
                count = row.GetInt64(0);
                answer = string.Join('|', Enumerable.Range(0, row.FieldCount).Select(i => row.GetValue(i).ToString()));
            });
        rows = count;
        var refused = Directory.Exists(folder.Refused)
            ? Directory.EnumerateFiles(folder.Refused).Order(StringComparer.Ordinal).Select(File.ReadAllText) : [];
        return answer + "\n" + string.Concat(refused);
    }

    private static Process Start(string file, string profile, string data) => Kills.StartUnheard(
        "logs", "import", file, "--profile", profile, "--data", data, "--part", 0.2.ToString(CultureInfo.InvariantCulture));
}
