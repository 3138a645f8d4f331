using System.Diagnostics;
using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Store;
using Lanewright.Season;

namespace Lanewright.Campaigns;

/// <summary>The season of a large agency from end to end, on the road of the commands: time and memory of each step.</summary>
internal static class SeasonAgency
{
    internal static int Run(int spreaders, int interval)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-agency-").FullName;
        try
        {
            var (season, data) = (Path.Combine(root, "season"), Path.Combine(root, "data"));
            var rows = 0L;
            Step("generate", () => rows = SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = spreaders, Interval = interval, Seed = 27 }), season));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {rows:N0} rows, {Directory.EnumerateFiles(season, "*", SearchOption.AllDirectories).Sum(file => new FileInfo(file).Length) / 1e6:N0} MB"));
            var folder = Step("import", () => SeasonCoverage.Take(season, data));
            Step("pack", () => LogPacking.Pack(folder));
            var tables = new SeasonFolder(season, TextCulture.Invariant);
            var constants = tables.LogConstants();
            foreach (var by in new[] { AppliedBy.Spreader, AppliedBy.Depot, AppliedBy.Route, AppliedBy.Storm })
                Step($"applied by {by}", () => AppliedLedger.Compute(folder, new() { By = by, Constants = constants, Storms = tables.Storms() }));
            var ledgers = Step("balance by depot", () => SeasonLedger.Of(tables.Tickets(), tables.Piles(), SeasonFolder.FromLogs(data, constants, SeasonFolder.Depots(tables.Constants()))));
            Console.WriteLine($"  {ledgers.Count} depots, {ledgers.Count(one => one.Suspect is not null)} do not agree");
            var book = Step("tickets against logs by storm", () => StormBook.Of(folder, tables.TimedTickets(), constants, tables.Storms()));
            var byStorm = Step("balance by storm", () => SeasonLedger.Of(book.Tickets, [], book.Logged));
            Console.WriteLine($"  {byStorm.Count} storms of depots");
            var checks = tables.Checks();
            var last = DateOnly.FromDateTime(checks.Max(check => check.At).UtcDateTime);
            var drift = Step("drift", () => DriftAnswer.Of(tables.Constants(), checks, new(), last, StormLoads.Looks(book.Loads)));
            Console.WriteLine($"  {drift.Spreaders.Count} spreaders, {drift.Spreaders.Count(one => one.Drift.Alarm is not null)} with an alarm");
            return tables.Refused.Count == 0 ? 0 : 1;
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static T Step<T>(string name, Func<T> work)
    {
        var watch = Stopwatch.StartNew();
        var answer = work();
        using var own = Process.GetCurrentProcess();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {watch.Elapsed.TotalSeconds:0.0} s, {own.PeakWorkingSet64 / 1e6:0} MB at most so far"));
        return answer;
    }
}
