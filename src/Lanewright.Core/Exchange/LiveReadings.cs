using System.Globalization;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>
/// What is wrong with readings as soon as they are typed, at the field where they were typed: below zero, above the scale's
/// capacity, lighter full than empty; and a time longer than any drop, which is only a doubt. The analysis says the same, but only of runs that are complete.
/// </summary>
internal static class LiveReadings
{
    /// <summary>Adds what is wrong, in place of what the analysis said of the same.</summary>
    internal static void Check(LiveInput input, IReadOnlyList<LiveRun> runs, List<Finding> findings)
    {
        foreach (var run in runs)
        {
            foreach (var container in run.Containers)
            {
                var here = string.Create(CultureInfo.InvariantCulture, $"{run.Path}.containers[{container.Place}]");
                Pair(input, run, here, ".tare", ".gross", ".gross", findings);
            }

            Pair(input, run, run.Path + ".whole", ".tare", ".gross", ".gross", findings);
            Pair(input, run, run.Path + ".counted", ".tare", ".gross", ".gross", findings);
            Pair(input, run, run.Path + ".truck", ".after", ".before", ".after", findings);
            Time(input, run, findings);
        }
    }

    private static void Time(LiveInput input, LiveRun run, List<Finding> findings)
    {
        var path = run.Path + ".time";
        if (QuantityText.Read<Duration>(input.Text(path), input.Culture, Units.Second).TryGet(out var time)
            && ConditionChecks.LongRun(path, run.Name, time) is { } finding)
            Put(finding, path, findings);
    }

    private static void Pair(LiveInput input, LiveRun run, string here, string less, string more, string at, List<Finding> findings)
    {
        foreach (var side in (string[])[less, more])
        {
            if (input.MassAt(here + side) is not { } reading) continue;
            if (reading.Si < 0)
                Put(WeighingFindings.NegativeReading.At(here + side, Mass("reading", reading)), here + side, findings);
            if (input.MassAt("scale.capacity") is { Si: > 0 } most && reading.Si > most.Si * (1 + 1e-9))
            {
                Put(
                    WeighingFindings.Overload.At(
                        here + side, Mass("reading", reading), Mass("capacity", most), FindingValue.Text("scale", input.Text("scale.id"))),
                    here + side, findings);
            }
        }

        if (input.MassAt(here + less) is not { } small || input.MassAt(here + more) is not { } large || large.Si > small.Si) return;
        if (here.EndsWith(']'))
        {
            Put(
                WeighingFindings.LighterWhenFull.At(
                    here + at, FindingValue.Text("run", run.Name), Mass("gross", large), Mass("tare", small)), here, findings);
        }
        else if (run.Net is not > 0)
        {
            // What joined the truck in between may outweigh what it lost: then something was caught all the same.
            Put(
                WeighingFindings.NothingCaught.At(
                    here + at, FindingValue.Text("run", run.Name), Mass("net", Quantities.Mass.FromSi(run.Net ?? large.Si - small.Si))),
                run.Path, findings);
        }
    }

    private static void Put(Finding finding, string said, List<Finding> findings)
    {
        findings.RemoveAll(other => other.Kind == finding.Kind && (other.Field == said || other.Field == finding.Field));
        findings.Add(finding);
    }

    private static FindingValue Mass(string name, Mass mass) => FindingValue.Number(name, mass.Si, Dimension.Mass);
}
