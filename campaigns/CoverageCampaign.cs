using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Campaigns;

/// <summary>
/// Does the 95 % interval hold the truth in 95 % of tests? Prints, for each stratum, the share of tests whose interval
/// holds the truth, the standard error of that share, the median width, and what the classical interval does.
/// </summary>
internal static class CoverageCampaign
{
    private static readonly Scale Bench = ScaleOf("bench", ScaleKind.Platform, ScaleClass.III, 150, 0.1);
    private static readonly Scale Pallet = ScaleOf("pallet", ScaleKind.Pallet, ScaleClass.III, 2000, 0.5);
    private static readonly Scale Hanging = ScaleOf("hanging", ScaleKind.Hanging, ScaleClass.IIII, 1000, 1);
    private static readonly Scale Vehicle = ScaleOf("vehicle", ScaleKind.Vehicle, ScaleClass.IIIL, 120_000, 20);

    internal static int Run(int testsPerStratum, ulong seed)
    {
        var strata = Strata().ToList();
        Console.WriteLine(
            $"Coverage of the 95 % interval; {strata.Count} strata of {testsPerStratum} tests "
            + $"({strata.Count * testsPerStratum} in all), seed {seed}.");
        Console.WriteLine(
            $"Scatter of the spreaders {SimulatedYard.LeastScatter:P1} to {SimulatedYard.MostScatter:P0}, equal chance "
            + "on a logarithmic axis.");
        Console.WriteLine();
        Console.WriteLine($"{"stratum",-58} {"covered",8} {"s.e.",6} {"median U",9} {"classical",9} {"its U",8}");
        var outside = 0;
        var byScatter = new Tally[4];
        for (var s = 0; s < strata.Count; s++)
        {
            var tally = Measure(strata[s], testsPerStratum, seed, (ulong)s, byScatter);
            var mark = tally.Share is < 0.94 or > 0.96 ? "  outside 94-96 %" : "";
            if (mark.Length > 0) outside++;
            Console.WriteLine(
                $"{strata[s].Name,-58} {tally.Share,8:P2} {tally.StandardError,6:P2} {tally.Median,9:P2} "
                + $"{tally.ClassicalShare,9:P2} {tally.ClassicalMedian,8:P2}{mark}");
        }

        Console.WriteLine();
        Console.WriteLine("By the spreader's true scatter, strata of three and more runs together:");
        string[] names = ["0.3 to 0.63 %", "0.63 to 1.34 %", "1.34 to 2.84 %", "2.84 to 6 %"];
        for (var i = 0; i < byScatter.Length; i++)
            Console.WriteLine($"{names[i],-58} {byScatter[i].Share,8:P2} {byScatter[i].StandardError,6:P2}");
        Console.WriteLine();
        Console.WriteLine($"{outside} of {strata.Count} strata outside 94-96 %.");
        return 0;
    }

    private static Tally Measure(Stratum stratum, int tests, ulong seed, ulong stream, Tally[] byScatter)
    {
        var random = new RandomSource(seed, stream);
        var tally = new Tally();
        for (var i = 0; i < tests; i++)
        {
            var test = SimulatedYard.Draw(stratum, random);
            var report = SheetAnalysis.Analyse(test.Sheet);
            if (report.Results.Count != 1) continue;
            var result = report.Results[0];
            var off = Math.Abs(result.Value.Value - test.Truth);
            tally.Add(
                off <= result.Expanded, result.RelativeExpanded, off <= result.Classical.Expanded,
                result.Classical.Expanded / result.Value.Value);
            if (stratum.Runs < 3) continue;
            var place = Math.Log(test.Scatter / SimulatedYard.LeastScatter)
                / Math.Log(SimulatedYard.MostScatter / SimulatedYard.LeastScatter) * byScatter.Length;
            (byScatter[Math.Min((int)place, byScatter.Length - 1)] ??= new()).Add(
                off <= result.Expanded, result.RelativeExpanded, false, 0);
        }

        return tally;
    }

    private static IEnumerable<Stratum> Strata()
    {
        foreach (var runs in new[] { 2, 3, 5, 8 })
        {
            foreach (var common in new[] { true, false })
            {
                var how = common ? "common error" : "separate errors";
                yield return new(
                    $"containers, bench scale, {how}, {runs} runs", CatchMethod.Containers, Bench, common, runs, 100, 400,
                    true, ConstantForm.PulsesPerMass);
                yield return new(
                    $"whole catch, pallet scale, {how}, {runs} runs", CatchMethod.Whole, Pallet, common, runs, 150, 800,
                    false, ConstantForm.PulsesPerMass);
                yield return new(
                    $"truck, vehicle scale, {how}, {runs} runs", CatchMethod.Truck, Vehicle, common, runs, 1500, 5000,
                    false, ConstantForm.PulsesPerMass);
                yield return new(
                    $"small drop, hanging scale, {how}, {runs} runs", CatchMethod.Whole, Hanging, common, runs, 25, 60,
                    true, ConstantForm.MassPerPulse);
            }

            yield return new(
                $"open loop, pallet scale, common error, {runs} runs", CatchMethod.Whole, Pallet, true, runs, 150, 600,
                true, ConstantForm.MassFlow);
        }

        foreach (var runs in new[] { 3, 5, 8 })
        {
            yield return new(
                $"scatter adding up along the drop, pallet scale, {runs} runs", CatchMethod.Whole, Pallet, true, runs, 150,
                800, false, ConstantForm.PulsesPerMass, 1);
            yield return new(
                $"scatter of one amount, pallet scale, {runs} runs", CatchMethod.Whole, Pallet, true, runs, 150, 800, false,
                ConstantForm.PulsesPerMass, 2);
        }

        yield return new(
            "containers, bench scale, common error, 1 run", CatchMethod.Containers, Bench, true, 1, 100, 400, true,
            ConstantForm.PulsesPerMass);
        yield return new(
            "truck, vehicle scale, separate errors, 1 run", CatchMethod.Truck, Vehicle, false, 1, 1500, 5000, true,
            ConstantForm.PulsesPerMass);
    }

    private static Scale ScaleOf(string id, ScaleKind kind, ScaleClass scaleClass, double capacity, double division) =>
        new()
        {
            Id = id,
            Kind = kind,
            Class = scaleClass,
            Capacity = Mass.FromPounds(capacity),
            Division = Mass.FromPounds(division),
        };

    private sealed class Tally
    {
        private readonly List<double> widths = [];
        private readonly List<double> classicalWidths = [];
        private int held;
        private int classicalHeld;

        internal double Share => (double)held / widths.Count;

        internal double ClassicalShare => (double)classicalHeld / widths.Count;

        internal double StandardError => Math.Sqrt(Share * (1 - Share) / widths.Count);

        internal double Median => MedianOf(widths);

        internal double ClassicalMedian => MedianOf(classicalWidths);

        internal void Add(bool inside, double width, bool classicalInside, double classicalWidth)
        {
            held += inside ? 1 : 0;
            classicalHeld += classicalInside ? 1 : 0;
            widths.Add(width);
            classicalWidths.Add(classicalWidth);
        }

        private static double MedianOf(List<double> values)
        {
            values.Sort();
            return values[values.Count / 2];
        }
    }
}
