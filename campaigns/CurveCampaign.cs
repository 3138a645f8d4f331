using Lanewright.Core.Statistics;

namespace Lanewright.Campaigns;

/// <summary>
/// Does the 95 % interval of a delivery curve, a gate table or a ground speed hold the truth? Prints the share of intervals that do
/// for each stratum of <see cref="SimulatedCurves"/>.
/// </summary>
internal static class CurveCampaign
{
    internal static int Run(int tests, ulong seed)
    {
        Console.WriteLine($"Coverage of the 95 % interval of curves and courses, {tests} tests a stratum, seed {seed}.");
        Console.WriteLine();
        Console.WriteLine($"{"stratum",-78} {"covered",8} {"s.e.",6} {"median U",9} {"answers",8}");
        var stream = 0UL;
        var outside = 0;
        foreach (var (name, draw) in Strata())
        {
            var random = new RandomSource(seed, stream++);
            var tallies = new SortedDictionary<string, Tally>(StringComparer.Ordinal);
            for (var i = 0; i < tests; i++)
            {
                foreach (var (what, truth, value, half) in draw(random))
                {
                    if (!tallies.TryGetValue(what, out var tally)) tallies.Add(what, tally = new());
                    tally.Add(Math.Abs(value - truth) <= half, half / Math.Abs(truth));
                }
            }

            foreach (var (what, tally) in tallies)
            {
                var mark = tally.Share is < 0.93 or > 0.97 ? "  outside 93-97 %" : "";
                if (mark.Length > 0) outside++;
                Console.WriteLine($"{name + ": " + what,-78} {tally.Share,8:P2} {tally.Error,6:P2} {tally.Median,9:P2} {tally.Count,8}{mark}");
            }
        }

        Console.WriteLine();
        Console.WriteLine($"{outside} lines outside 93-97 %.");
        return 0;
    }

    private static IEnumerable<(string Name, Func<RandomSource, IEnumerable<SimulatedAnswer>> Draw)> Strata()
    {
        foreach (var shape in SimulatedCurves.Shapes)
        {
            foreach (var runs in new[] { 1, 2, 3 })
            {
                foreach (var settings in new[] { 5, 9 })
                    yield return ($"curve, {shape.Name}, {settings} settings, {runs} runs", random => SimulatedCurves.Curve(random, shape.Share, settings, runs, 0));
            }
        }

        yield return ("curve, line from 12 %, 7 settings, 2 runs, small deliveries scatter more", random => SimulatedCurves.Curve(random, SimulatedCurves.Shapes[0].Share, 7, 2, 0.5));
        foreach (var runs in new[] { 1, 2, 3 })
        {
            foreach (var openings in new[] { 3, 5 })
            {
                yield return ($"gate on a line, {openings} openings, {runs} runs", random => SimulatedCurves.Gate(random, openings, runs, 0));
                yield return ($"gate bowed by 4 %, {openings} openings, {runs} runs", random => SimulatedCurves.Gate(random, openings, runs, 0.04));
            }
        }

        foreach (var passes in new[] { 2, 3, 5 })
        {
            yield return ($"ground speed, passes differ by 0.05 to 1 %, {passes} passes", random => SimulatedCurves.Course(random, passes, 0.0005, 0.01));
        }
    }

    private sealed class Tally
    {
        private readonly List<double> widths = [];
        private int held;

        internal int Count => widths.Count;

        internal double Share => (double)held / widths.Count;

        internal double Error => Math.Sqrt(Share * (1 - Share) / widths.Count);

        internal double Median
        {
            get
            {
                widths.Sort();
                return widths[widths.Count / 2];
            }
        }

        internal void Add(bool inside, double width)
        {
            held += inside ? 1 : 0;
            widths.Add(width);
        }
    }
}
