using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;
using Lanewright.Core.Statistics;

namespace Lanewright.Campaigns;

/// <summary>
/// How fast the advised tests halve the entropy, against tests taken at random: minutes of work until half of it is left. The
/// answers of tests are drawn by the chances of <see cref="NextTests"/> under the true cause.
/// </summary>
internal static class DiagnosisNextTests
{
    private const double LeastEntropy = 1;
    private const double Limit = 1.5;

    internal static bool Run(int casesByCause, ulong seed)
    {
        double advised = 0, random = 0, bits = 0;
        int count = 0, never = 0, neverRandom = 0;
        foreach (var facts in CauseTable.All)
        {
            for (var i = 0; i < casesByCause; i++)
            {
                var stream = 500_000_000 + ((ulong)facts.Cause * 1_000_000) + (ulong)i;
                var chances = Diagnose.Of(PracticeCase.Draw(facts.Cause, seed, stream).Input).Chances;
                var entropy = NextTests.Entropy(chances);
                if (entropy < LeastEntropy) continue;
                count++;
                bits += entropy;
                var a = Minutes(chances, facts.Cause, new(seed, stream * 2), true);
                var r = Minutes(chances, facts.Cause, new(seed, (stream * 2) + 1), false);
                advised += a.Minutes;
                random += r.Minutes;
                if (!a.Halved) never++;
                if (!r.Halved) neverRandom++;
            }
        }

        Console.WriteLine();
        Console.WriteLine($"Next tests: {count} sheets with {LeastEntropy} bit or more left open ({bits / Math.Max(1, count):0.00} on average)");
        Console.WriteLine($"minutes until half of it is left: advised {advised / count:0.0} ({never} never), random {random / count:0.0} ({neverRandom} never)");
        var faster = random / advised;
        var good = faster >= Limit;
        Console.WriteLine($"{"advised against random tests",-34} {faster,8:0.00}   limit at least {Limit} times faster: {(good ? "held" : "NOT HELD")}");
        return good;
    }

    // A series without an end counts with the time of all its tests.
    private static (double Minutes, bool Halved) Minutes(IReadOnlyList<double> chances, Cause truth, RandomSource random, bool advised)
    {
        var goal = NextTests.Entropy(chances) / 2;
        var left = NextTests.All.ToList();
        var minutes = 0.0;
        while (left.Count > 0)
        {
            var done = NextTests.All.Where(t => !left.Contains(t)).Select(t => t.Code).ToList();
            var test = advised && NextTests.Advise(chances, done) is [var best, ..] ? best.Test : left[random.NextInt(left.Count)];
            left.Remove(test);
            minutes += test.Minutes;
            chances = NextTests.After(chances, test, random.NextDouble() < test.ChanceUnder(truth));
            if (NextTests.Entropy(chances) <= goal) return (minutes, true);
        }

        return (minutes, false);
    }
}
