using Lanewright.Core.Statistics;

namespace Lanewright.Campaigns;

/// <summary>Does the 95 % interval of a flow meter's constant, and of the other uses, hold the truth in 95 % of calibrations?</summary>
internal static class LiquidCoverage
{
    internal static int Run(int tests, ulong seed)
    {
        Console.WriteLine(
            $"Coverage of the 95 % interval of a flow meter's constant; {SimulatedLiquid.Strata.Count} strata of {tests} calibrations, seed {seed}.");
        Console.WriteLine(
            $"Scatter of the meters {SimulatedLiquid.LeastScatter:P1} to {SimulatedLiquid.MostScatter:P0}, equal chance on a logarithmic axis.");
        Table([.. SimulatedLiquid.Strata.Select(s => (s.Name, (Func<RandomSource, (bool, double)>)(r => SimulatedLiquid.Try(s, r))))], tests, seed);
        return 0;
    }

    internal static int Uses(int tests, ulong seed)
    {
        Console.WriteLine($"Coverage of 95 % intervals of static checks, brines and spread patterns; strata of {tests}, seed {seed}.");
        Table(SimulatedUses.Strata, tests, seed);
        return 0;
    }

    private static void Table(IReadOnlyList<(string Name, Func<RandomSource, (bool Held, double Width)> Try)> strata, int tests, ulong seed)
    {
        Console.WriteLine();
        Console.WriteLine($"{"stratum",-52} {"covered",8} {"s.e.",6} {"median U",9}");
        var outside = 0;
        for (var s = 0; s < strata.Count; s++)
        {
            var random = new RandomSource(seed, (ulong)s);
            var widths = new double[tests];
            var held = 0;
            for (var i = 0; i < tests; i++)
            {
                var (inside, width) = strata[s].Try(random);
                held += inside ? 1 : 0;
                widths[i] = width;
            }

            Array.Sort(widths);
            var share = (double)held / tests;
            var mark = share is < 0.93 or > 0.97 ? "  outside 93-97 %" : "";
            if (mark.Length > 0) outside++;
            Console.WriteLine(
                $"{strata[s].Name,-52} {share,8:P2} {Math.Sqrt(share * (1 - share) / tests),6:P2} {widths[tests / 2],9:P2}{mark}");
        }

        Console.WriteLine();
        Console.WriteLine($"{outside} of {strata.Count} strata outside 93-97 %.");
    }
}
