using System.Diagnostics;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;

namespace Lanewright.Campaigns;

/// <summary>
/// Does the diagnosis name what is wrong? Practice spreaders with known faults; prints how often the right cause comes first and
/// among the first three, what is taken for what, false alarms, and whether chances are what they say.
/// </summary>
internal static class DiagnosisCampaign
{
    private const double FirstLimit = 0.80, ThreeLimit = 0.95, AlarmLimit = 0.01, CalibrationLimit = 0.05;

    /// <summary>The seed of the figures in docs/method/diagnosis.md; the likelihoods were worked out on others (1 to 4).</summary>
    internal const ulong ReportedSeed = 20261;

    internal static int Run(int cases, ulong seed)
    {
        Console.WriteLine($"Diagnosis: {cases} cases a cause, healthy trucks {HealthyFactor} times as many, seed {seed}.");
        var tallies = new List<CauseTally>();
        var clock = new Stopwatch();
        var sheets = 0;
        var calibration = new Reliability();
        var bare = new BareSheets();
        foreach (var facts in CauseTable.All)
        {
            var tally = new CauseTally(facts.Cause);
            var count = facts.Cause is Cause.NothingWrong ? HealthyFactor * cases : cases;
            var situations = PracticeCase.Situations(facts.Cause);
            for (var i = 0; i < count; i++)
            {
                var stream = ((ulong)facts.Cause * 1_000_000) + (ulong)i + 1;
                var one = PracticeCase.Draw(facts.Cause, seed, stream);
                clock.Start();
                var report = Diagnose.Of(one.Input);
                clock.Stop();
                sheets++;
                var effect = one.Effect(seed, stream);
                tally.Add(report, effect);
                bare.Add(one, effect);
                // Weighed as often as it is taken to be: each kind of test alike, and within it by the priors.
                calibration.Add(report, facts.Cause, CauseTable.Priors(one.Setup.Situation)[(int)facts.Cause] * situations.Count / count / 4);
            }

            tallies.Add(tally);
        }

        var good = Print(tallies, calibration, clock.Elapsed.TotalMilliseconds / sheets);
        bare.Print();
        good &= DiagnosisNextTests.Run(Math.Max(1, cases / 5), seed);
        return good ? 0 : 1;
    }

    private const int HealthyFactor = 4;

    private static bool Print(List<CauseTally> tallies, Reliability calibration, double milliseconds)
    {
        Console.WriteLine();
        Console.WriteLine($"{"cause",-18} {"large",6} {"first",7} {"three",7} {"all 1st",8}   taken for (share of the large ones)");
        foreach (var t in tallies)
            Console.WriteLine(
                $"{CauseTable.Of(t.Cause).Code,-18} {t.Large,6} {t.First,7:P1} {t.Three,7:P1} {t.AllFirst,8:P1}   {t.TakenFor()}");
        var listed = tallies.Where(t => t.Cause is not (Cause.NothingWrong or Cause.SomethingElse) && t.Large > 0).ToList();
        double large = listed.Sum(t => t.Large), first = listed.Sum(t => t.First * t.Large) / large, three = listed.Sum(t => t.Three * t.Large) / large;
        var alarm = tallies[0].Alarms;
        var ece = calibration.Error();
        Console.WriteLine();
        calibration.Print();
        Console.WriteLine();
        Console.WriteLine($"Large effects (more than twice their expanded uncertainty), {large} cases of {listed.Count} causes:");
        var good = Held("right cause first", first, first >= FirstLimit, $"at least {FirstLimit:P0}");
        good &= Held("right cause in the first three", three, three >= ThreeLimit, $"at least {ThreeLimit:P0}");
        good &= Held("false alarm on healthy trucks", alarm, alarm <= AlarmLimit, $"at most {AlarmLimit:P0}");
        good &= Held("expected calibration error", ece, ece <= CalibrationLimit, $"at most {CalibrationLimit}");
        Console.WriteLine($"time per sheet: {milliseconds:0.00} ms on this machine");
        return good;
    }

    private static bool Held(string what, double value, bool held, string limit)
    {
        Console.WriteLine($"{what,-34} {value,8:P2}   limit {limit}: {(held ? "held" : "NOT HELD")}");
        return held;
    }
}

/// <summary>How the cases of one cause came out.</summary>
internal sealed class CauseTally(Cause cause)
{
    private readonly Dictionary<string, int> takenFor = new(StringComparer.Ordinal);
    private int all, allFirst, first, three, alarms;

    internal Cause Cause => cause;

    internal int Large { get; private set; }

    internal double First => Large == 0 ? 0 : (double)first / Large;

    internal double Three => Large == 0 ? 0 : (double)three / Large;

    internal double AllFirst => all == 0 ? 0 : (double)allFirst / all;

    /// <summary>Share in which a cause was named.</summary>
    internal double Alarms => all == 0 ? 0 : (double)alarms / all;

    internal void Add(DiagnosisReport report, double effect)
    {
        all++;
        if (report.Causes[0].Facts.Cause == cause) allFirst++;
        if (report.NothingWrong < Diagnose.AlarmBelow) alarms++;
        if (effect <= 2) return;
        Large++;
        if (report.Causes[0].Facts.Cause == cause) first++;
        else takenFor[report.Causes[0].Facts.Code] = takenFor.GetValueOrDefault(report.Causes[0].Facts.Code) + 1;
        if (report.Causes.Take(3).Any(c => c.Facts.Cause == cause)) three++;
    }

    internal string TakenFor() => string.Join(
        ", ", takenFor.OrderByDescending(t => t.Value).Take(4).Select(t => $"{t.Key} {(double)t.Value / Large:P0}"));
}

/// <summary>
/// The same sheets with nothing beside them but earlier constants: no sisters, no register, no events. Printed, not held to a limit.
/// </summary>
internal sealed class BareSheets
{
    private int large, first, three, healthy, alarms;

    internal void Add(PracticeCase one, double effect)
    {
        var cause = one.Setup.Cause;
        if (cause is Cause.SomethingElse || (cause is not Cause.NothingWrong && effect <= 2)) return;
        var report = Diagnose.Of(one.Input with { Sisters = [], Facts = new() { OnTheRoad = one.Input.Facts.OnTheRoad } });
        if (cause is Cause.NothingWrong)
        {
            healthy++;
            if (report.NothingWrong < Diagnose.AlarmBelow) alarms++;
            return;
        }

        large++;
        if (report.Causes[0].Facts.Cause == cause) first++;
        if (report.Causes.Take(3).Any(c => c.Facts.Cause == cause)) three++;
    }

    internal void Print() => Console.WriteLine(
        $"bare sheets (no sisters, register, events): first {(double)first / large:P1}, in three {(double)three / large:P1}, "
        + $"false alarm {(double)alarms / healthy:P2}; no limit");
}

/// <summary>Whether a chance of so much comes true so often.</summary>
internal sealed class Reliability
{
    private const int Bins = 10;
    private readonly double[] weight = new double[Bins], said = new double[Bins], true_ = new double[Bins];
    private readonly double[] eachWeight = new double[Bins], eachSaid = new double[Bins], eachTrue = new double[Bins];

    internal void Add(DiagnosisReport report, Cause truth, double w)
    {
        Put(weight, said, true_, report.Causes[0].Chance, report.Causes[0].Facts.Cause == truth, w);
        foreach (var cause in report.Causes)
            if (cause.Chance >= 0.01) Put(eachWeight, eachSaid, eachTrue, cause.Chance, cause.Facts.Cause == truth, w);
    }

    private static void Put(double[] weights, double[] chances, double[] trues, double chance, bool came, double w)
    {
        var bin = Math.Min(Bins - 1, (int)(chance * Bins));
        weights[bin] += w;
        chances[bin] += w * chance;
        trues[bin] += came ? w : 0;
    }

    /// <summary>Mean distance of chance and frequency of the first cause, weighed by how often.</summary>
    internal double Error() => Enumerable.Range(0, Bins).Sum(b => Math.Abs(said[b] - true_[b])) / weight.Sum();

    internal void Print()
    {
        Console.WriteLine("Reliability: chance said, how often it was true (cases weighed by their priors)");
        Console.WriteLine($"{"",-12} {"first cause",30} {"every cause with 1 % or more",34}");
        Console.WriteLine($"{"chance",-12} {"share",10} {"said",9} {"true",9} {"share",14} {"said",9} {"true",9}");
        for (var b = 0; b < Bins; b++)
            Console.WriteLine(
                $"{b * 10,3} to {(b + 1) * 10,3} % {weight[b] / weight.Sum(),10:P2} {Mean(said, weight, b),9:P1} {Mean(true_, weight, b),9:P1}"
                + $" {eachWeight[b] / eachWeight.Sum(),14:P2} {Mean(eachSaid, eachWeight, b),9:P1} {Mean(eachTrue, eachWeight, b),9:P1}");
    }

    private static double Mean(double[] of, double[] weights, int bin) => weights[bin] == 0 ? 0 : of[bin] / weights[bin];
}
