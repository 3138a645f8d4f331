using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Campaigns;

/// <summary>
/// How often the ledger's intervals hold the truth, over as many invented seasons as a standard error needs: the same world and the same
/// formula as <see cref="SeasonCoverage"/>, without files between them. Once against what truly was spread, once against what would have been
/// without scatter from load to load, which the interval leaves out.
/// </summary>
internal static class LedgerCoverage
{
    internal static int Run(int seasons, int seed, int interval = 300)
    {
        var tallies = new (string Name, List<double> Shares)[] { ("spreaders", []), ("depots", []), ("spreaders, loads without scatter", []), ("depots, loads without scatter", []) };
        for (var i = 0; i < seasons; i++)
        {
            var world = SeasonWorld.Make(new() { Spreaders = 40, Seed = (ulong)(seed + i), Interval = interval, Drifting = 0 });
            var spreaders = world.Spreaders.Select(spreader => Of(world, spreader)).ToList();
            tallies[0].Shares.Add(Held(spreaders.Select(one => (one.Parts, one.Truth))));
            tallies[1].Shares.Add(Held(spreaders.GroupBy(one => one.Depot).Select(depot => (depot.SelectMany(one => one.Parts).ToList(), depot.Sum(one => one.Truth)))));
            tallies[2].Shares.Add(Held(spreaders.Select(one => (one.Parts, one.Even))));
            tallies[3].Shares.Add(Held(spreaders.GroupBy(one => one.Depot).Select(depot => (depot.SelectMany(one => one.Parts).ToList(), depot.Sum(one => one.Even)))));
        }

        Console.WriteLine($"{seasons} seasons of 40 spreaders in 4 depots");
        foreach (var (name, shares) in tallies) Console.WriteLine(Say(name, shares));
        return tallies[..2].All(one => one.Shares.Average() is >= 0.93 and <= 0.97) ? 0 : 1;
    }

    /// <summary>Mean of the seasons' shares with its standard error: spreaders of a season share the errors of their scales, seasons share none.</summary>
    internal static string Say(string name, IReadOnlyList<double> shares)
    {
        var mean = shares.Average();
        var error = shares.Count > 1 ? Math.Sqrt(shares.Sum(share => (share - mean) * (share - mean)) / (shares.Count - 1) / shares.Count) : double.NaN;
        return string.Create(CultureInfo.InvariantCulture, $"{name}: {100 * mean:0.00} % of intervals hold the truth, standard error {100 * error:0.00} %");
    }

    private static (int Depot, List<CountsUnder> Parts, double Truth, double Even) Of(SeasonWorld world, SeasonSpreader spreader)
    {
        var counted = new Dictionary<SeasonCalibration, (double Counts, long Intervals)>();
        var (truth, even) = (0.0, 0.0);
        world.Drive(spreader, row =>
        {
            var constant = spreader.Constants.Last(one => one.From <= row.At - (long)row.Seconds);
            var (counts, intervals) = counted.GetValueOrDefault(constant);
            counted[constant] = (counts + row.Counts, intervals + 1);
            truth += row.Mass;
            even += row.Counts * world.TruthAt(spreader, row.At);
        });
        var scale = world.FloorScale(spreader.Depot);
        return (
            spreader.Depot,
            [
                .. counted.Select(part => new CountsUnder(
                    SeasonConstant.Stated(
                        part.Key.Id, spreader.Name, DateTimeOffset.UnixEpoch, null, part.Key.MassPerCount, part.Key.Uncertainty, part.Key.DegreesOfFreedom, scale.Id,
                        scale.Uncertainty),
                    part.Value.Counts, part.Value.Intervals)),
            ],
            truth, even);
    }

    private static double Held(IEnumerable<(List<CountsUnder> Parts, double Truth)> lines) => lines.Average(line =>
    {
        var mass = AppliedMass.Of(line.Parts, "of the line");
        return Math.Abs(mass.Value - line.Truth) <= WelchSatterthwaite.Of(mass, 0.95).Expanded ? 1.0 : 0.0;
    });
}
