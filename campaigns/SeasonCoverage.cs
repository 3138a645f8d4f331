using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Store;

namespace Lanewright.Campaigns;

/// <summary>How often intervals of the ledger hold the truth.</summary>
/// <param name="Seasons">Generated seasons.</param>
/// <param name="Spreaders">Intervals of spreaders, and how many hold the truth.</param>
/// <param name="Depots">Intervals of depots, and how many hold it.</param>
/// <param name="Wholes">Intervals of whole seasons, and how many hold it.</param>
internal sealed record SeasonCoverageTally(int Seasons, (int All, int Held) Spreaders, (int All, int Held) Depots, (int All, int Held) Wholes)
{
    /// <summary>Shares of spreaders that hold the truth, season by season.</summary>
    public required IReadOnlyList<double> SpreadersBySeason { get; init; }

    /// <summary>Shares of depots.</summary>
    public required IReadOnlyList<double> DepotsBySeason { get; init; }
}

/// <summary>
/// Invented seasons on the real road: written as logs, taken in, computed. The truth of each is known, since the season was made of it.
/// Nothing drifts in them: drift after a calibration is not in the interval, and finding it is the charts' work.
/// </summary>
internal static class SeasonCoverage
{
    internal static SeasonCoverageTally Run(int seasons, int seed, int spreaders = 40, int interval = 300)
    {
        (int All, int Held) each = (0, 0), depots = (0, 0), wholes = (0, 0);
        var (eachBySeason, depotsBySeason) = (new List<double>(), new List<double>());
        for (var i = 0; i < seasons; i++)
        {
            var root = Directory.CreateTempSubdirectory("lanewright-season-").FullName;
            var (eachBefore, depotsBefore) = (each, depots);
            try
            {
                var season = Path.Combine(root, "season");
                SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = spreaders, Seed = (ulong)(seed + i), Interval = interval, Drifting = 0 }), season);
                var folder = Take(season, Path.Combine(root, "data"));
                var constants = ConstantTable.Read(Path.Combine(season, "constants.csv"));
                var truth = SeasonTable.Read(Path.Combine(season, "truth.csv"), "spreader", "depot", "logged_kg");
                var rows = Enumerable.Range(0, truth.Count).Select(r => (Spreader: truth.Text(r, "spreader"), Depot: truth.Text(r, "depot"), Mass: truth.Number(r, "logged_kg")!.Value)).ToList();
                var bySpreader = AppliedLedger.Compute(folder, new() { By = AppliedBy.Spreader, Constants = constants });
                foreach (var line in bySpreader.Lines) Count(ref each, line, rows.Where(r => r.Spreader == line.Name).Sum(r => r.Mass));
                foreach (var line in AppliedLedger.Compute(folder, new() { By = AppliedBy.Depot, Constants = constants }).Lines)
                    Count(ref depots, line, rows.Where(r => r.Depot == line.Name).Sum(r => r.Mass));
                Count(ref wholes, bySpreader.Total, rows.Sum(r => r.Mass));
                eachBySeason.Add((double)(each.Held - eachBefore.Held) / (each.All - eachBefore.All));
                depotsBySeason.Add((double)(depots.Held - depotsBefore.Held) / (depots.All - depotsBefore.All));
            }
            finally
            {
                Directory.Delete(root, recursive: true);
            }
        }

        return new(seasons, each, depots, wholes) { SpreadersBySeason = eachBySeason, DepotsBySeason = depotsBySeason };
    }

    /// <summary>Takes a written season in.</summary>
    internal static LogFolder Take(string season, string data, SeasonLogKind[]? kinds = null, int partBytes = LogImport.UsualPart)
    {
        var folder = new LogFolder(data);
        foreach (var kind in kinds ?? Enum.GetValues<SeasonLogKind>())
        {
            using var import = LogImport.Begin(folder, LogProfileReader.Read(File.ReadAllText(Path.Combine(season, "profiles", SeasonWriter.Word(kind) + ".json"))), partBytes: partBytes);
            foreach (var file in Directory.EnumerateFiles(Path.Combine(season, "logs"), SeasonWriter.Word(kind) + "-*.csv").Order(StringComparer.Ordinal))
                if (import.Take(file) is { Problem: { } problem }) throw new InvalidOperationException(problem.ToString());
        }

        return folder;
    }

    internal static string Say(string what, (int All, int Held) tally) =>
        string.Create(CultureInfo.InvariantCulture, $"{what}: {tally.Held} of {tally.All} intervals hold the truth, {100.0 * tally.Held / Math.Max(1, tally.All):0.0} %");

    private static void Count(ref (int All, int Held) tally, AppliedLine line, double truth) =>
        tally = (tally.All + 1, tally.Held + (Math.Abs(line.Mass.Value - truth) <= line.Expanded ? 1 : 0));
}
