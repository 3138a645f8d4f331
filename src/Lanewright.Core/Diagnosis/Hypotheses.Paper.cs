using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;
using R = Lanewright.Core.Diagnosis.EffectRanges;

namespace Lanewright.Core.Diagnosis;

/// <summary>What can go wrong between scale, head and paper.</summary>
internal sealed partial class Hypotheses
{
    private IEnumerable<Hypothesis> Tares()
    {
        var total = seen.Runs.Sum(r => r.ZeroTares);
        if (total == 0) yield break;
        var others = seen.Runs.SelectMany(r => r.Containers).Where(c => c.Tare.Si > 0).ToList();
        var known = seen.Facts.Tare ?? (others.Count > 0 ? others.Average(c => c.Tare.Si) : null as double?);
        var bins = seen.Runs.Exists(r => r.Run.Catch is WholeCatch);
        var sizes = known is { } k ? [0.85 * k, 0.95 * k, 1.05 * k, 1.15 * k]
            : (bins ? Grid(R.LeastBin, R.MostBin, 8) : Grid(R.LeastPail, R.MostPail, 8)).ToList();
        foreach (var tare in sizes)
            yield return Added(Cause.TareForgotten, tare, run => tare * seen.Runs[run].ZeroTares, 1.0 / sizes.Count);
    }

    private IEnumerable<Hypothesis> Missing()
    {
        var candidates = Enumerable.Range(0, N).Where(i => seen.Runs[i] is { Containers.Count: > 1, Run.Filled: null }).ToList();
        double[] fills = [0.85, 1, 1.15];
        foreach (var j in candidates)
        {
            var run = seen.Runs[j];
            var fill = run.Mass / run.Containers.Count;
            foreach (var share in fills)
                yield return Added(Cause.ContainerMissing, fill * share, i => i == j ? -fill * share : 0, 1.0 / candidates.Count / fills.Length, j);
        }
    }

    private IEnumerable<Hypothesis> Person()
    {
        var trucks = Enumerable.Range(0, N).Where(i => seen.Runs[i].Run.Catch is TruckCatch).ToList();
        foreach (var j in trucks)
            foreach (var person in Grid(R.LeastPerson, R.MostPerson, 8))
                foreach (var sign in (double[])[1, -1])
                    yield return Added(Cause.PersonChanged, person, i => i == j ? sign * person : 0, 1.0 / trucks.Count / 16, j);
    }

    private IEnumerable<Hypothesis> Dropped()
    {
        var counted = Enumerable.Range(0, N).Where(i => seen.Runs[i].Pulses is >= 1).ToList();
        foreach (var j in counted)
            for (var digit = 0; digit < 10; digit++)
            {
                var last = digit;
                yield return new(Cause.DigitDropped, 0.1 / counted.Count, 0.1)
                {
                    Run = j, Written = Each((r, i) => i == j ? Elementary.Log(r.Pulses!.Value / ((10 * r.Pulses.Value) + last)) : 0),
                };
            }
    }

    // Every pair of neighbouring digits of every reading: what was meant would be the other order.
    private List<Hypothesis> Swapped()
    {
        var found = new List<(int Run, double Mass, double Pulses)>();
        var unit = seen.Sheet.Units is Spreading.UnitSystem.Si ? Units.Kilogram
            : seen.Sheet.Units is null && seen.Sheet.Preferences == UnitPreferences.Metric ? Units.Kilogram : Units.Pound;
        for (var j = 0; j < N; j++)
        {
            var run = seen.Runs[j];
            foreach (var (reading, sign) in Readings(run.Run.Catch))
                foreach (var other in DigitSwaps.Of(unit.FromSi(reading), Decimals(unit)))
                {
                    var change = sign * (unit.ToSi(other) - reading);
                    if (run.Mass + change > 0) found.Add((j, Elementary.Log(run.Mass / (run.Mass + change)), 0));
                }

            foreach (var other in run.Pulses is { } p ? DigitSwaps.Of(p, 0) : [])
                if (other > 0) found.Add((j, 0, Elementary.Log(run.Pulses!.Value / other)));
        }

        return found.ConvertAll(f => new Hypothesis(Cause.DigitsSwapped, 1.0 / found.Count, f.Mass - f.Pulses)
        {
            Run = f.Run,
            Mass = f.Mass == 0 ? null : Each((_, i) => i == f.Run ? f.Mass : 0),
            Written = f.Pulses == 0 ? null : Each((_, i) => i == f.Run ? f.Pulses : 0),
        });
    }

    private int Decimals(Unit unit)
    {
        if (seen.Sheet.Scale.Division is not { Si: > 0 } division) return 1;
        var step = unit.FromSi(division.Si);
        var decimals = 0;
        while (decimals < 3 && Math.Abs(step - Math.Round(step)) > 1e-6)
        {
            step *= 10;
            decimals++;
        }

        return decimals;
    }

    private static IEnumerable<(double Reading, int Sign)> Readings(Catch weighing) => weighing switch
    {
        ContainerCatch c => c.Containers.SelectMany(x => new[] { (x.Gross.Si, 1), (x.Tare.Si, -1) }),
        WholeCatch c => [(c.Gross.Si, 1), (c.Tare.Si, -1)],
        TruckCatch c => [(c.Before.Si, 1), (c.After.Si, -1)],
        _ => [],
    };
}
