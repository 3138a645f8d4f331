using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Season;

namespace Lanewright.Campaigns;

/// <summary>
/// Invented seasons with a known truth, read from their files as the commands read them: are the planted changes of 5 % found within the
/// looks promised, how many sound spreaders raise an alarm, and do the balance's intervals hold what truly was spread.
/// </summary>
internal static class SeasonWatch
{
    internal static int Run(int seasons, int seed, int fleet)
    {
        int sound = 0, falsely = 0, steps = 0, found = 0, ramps = 0, ramped = 0;
        var promised = 0.0;
        (int All, int Held) spreaders = (0, 0), depots = (0, 0);
        var suspected = 0;
        for (var i = 0; i < seasons; i++)
        {
            var root = Directory.CreateTempSubdirectory("lanewright-watch-").FullName;
            try
            {
                var world = SeasonWorld.Make(new() { Spreaders = fleet, Seed = (ulong)(seed + i), Interval = 600 });
                SeasonWriter.Write(world, root);
                var folder = new SeasonFolder(root, TextCulture.Invariant);
                var (constants, checks) = (folder.Constants(), folder.Checks());
                var last = DateOnly.FromDateTime(checks.Max(check => check.At).UtcDateTime);
                var drifts = DriftAnswer.Of(constants, checks, new(), last).Spreaders.ToDictionary(one => one.Spreader, one => one.Drift, StringComparer.Ordinal);
                foreach (var spreader in world.Spreaders)
                {
                    if (!drifts.TryGetValue(spreader.Name, out var drift) || drift.Promise is not { } promise) continue;
                    if (spreader.Drift is SeasonDrift.None)
                    {
                        sound++;
                        promised += promise.FalseAlarm;
                        if (drift.Alarm is not null) falsely++;
                        continue;
                    }

                    // The change is there from the first moment of a day.
                    var from = world.Settings.Begins.AddDays((int)(spreader.DriftFrom / 86400));
                    // A calibration after the change has found it already.
                    if (drift.Calibration.Day >= from) continue;
                    var after = drift.Points.Where(point => point.Look.Day >= from).ToList();
                    var looks = after.TakeWhile(point => point != drift.Alarm).Count() + 1;
                    if (spreader.Drift is SeasonDrift.Ramp)
                    {
                        ramps++;
                        if (drift.Alarm is not null) ramped++;
                    }
                    else if (promise.MostToFind is { } most && after.Count >= most)
                    {
                        steps++;
                        if (drift.Alarm is not null && looks <= most) found++;
                    }
                }

                Balance(folder, root, ref spreaders, ref depots, ref suspected);
            }
            finally
            {
                Directory.Delete(root, recursive: true);
            }
        }

        Say($"{sound} sound spreaders: promised at most {promised / Math.Max(1, sound):P1} alarms, {(double)falsely / Math.Max(1, sound):P1} raised one");
        Say($"{steps} with a step of 5 % and looks enough after it: {(double)found / Math.Max(1, steps):P1} found within the looks promised with 95 % chance");
        Say($"{ramps} that wore by 5 % until the end of the season: {(double)ramped / Math.Max(1, ramps):P1} raised an alarm before it");
        Say($"balance of tickets and piles: {spreaders.Held} of {spreaders.All} intervals of spreaders hold the truth, {(double)spreaders.Held / spreaders.All:P1}");
        Say($"{depots.Held} of {depots.All} intervals of depots, {(double)depots.Held / depots.All:P1}; in {suspected} depots something sound was suspected");
        return 0;
    }

    private static void Balance(SeasonFolder folder, string root, ref (int All, int Held) spreaders, ref (int All, int Held) depots, ref int suspected)
    {
        var truth = SeasonTable.Read(Path.Combine(root, "truth.csv"), "spreader", "depot", "applied_kg");
        var rows = Enumerable.Range(0, truth.Count)
            .Select(r => (Spreader: truth.Text(r, "spreader"), Depot: truth.Text(r, "depot"), Mass: truth.Number(r, "applied_kg")!.Value)).ToList();
        foreach (var ledger in SeasonLedger.Of(folder.Tickets(), folder.Piles(), []))
        {
            Count(ref depots, ledger.Spread, rows.Where(row => row.Depot == ledger.Depot).Sum(row => row.Mass));
            if (ledger.Suspect is not null) suspected++;
            foreach (var own in ledger.Lines.Where(line => line.Spreader.Length > 0).GroupBy(line => line.Spreader, StringComparer.Ordinal))
            {
                var spread = Measured.Linear([.. own.Select(line => line.Adjusted)], [.. own.Select(line => line.Item is LedgerItem.Loads ? 1.0 : -1.0)]);
                Count(ref spreaders, spread, rows.Where(row => row.Spreader == own.Key).Sum(row => row.Mass));
            }
        }
    }

    private static void Count(ref (int All, int Held) tally, Measured mass, double truth) =>
        tally = (tally.All + 1, tally.Held + (Math.Abs(mass.Value - truth) <= 1.96 * mass.StandardUncertainty ? 1 : 0));

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
