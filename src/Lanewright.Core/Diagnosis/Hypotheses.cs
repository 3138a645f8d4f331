using Lanewright.Core.Statistics;
using R = Lanewright.Core.Diagnosis.EffectRanges;

namespace Lanewright.Core.Diagnosis;

/// <summary>Every size and place of every cause that is considered for a sheet. Machine and material.</summary>
internal sealed partial class Hypotheses(Observations seen)
{
    private const int Sizes = 16;

    private int N => seen.Runs.Count;

    /// <summary>The hypotheses of a cause; their weights sum to 1, or there are none.</summary>
    internal IEnumerable<Hypothesis> Of(Cause cause) => cause switch
    {
        Cause.NothingWrong => [new(cause, 1, 0)],
        Cause.SomethingElse => Else(),
        Cause.MassUnit => Exact([R.PoundsPerKilogram], x => new(cause, 0.5, x) { Mass = All(Elementary.Log(x)) }),
        Cause.TonKind => Exact(R.Tons, x => Said(cause, x, 0.5 / R.Tons.Count)),
        Cause.TareForgotten => Tares(),
        Cause.ContainerMissing => Missing(),
        Cause.DigitsSwapped => Swapped(),
        Cause.DigitDropped => Dropped(),
        Cause.PersonChanged => Person(),
        Cause.FuelBurnt => Grid(R.LeastFuel, R.MostFuel).Select(f => Added(cause, f, run => f, 1.0 / Sizes)),
        Cause.ScaleOff => Signed(R.LeastGain, R.MostGain, (x, w) => new(cause, w, x) { Mass = All(Log1(x)), SisterScale = Log1(x) }),
        Cause.ScaleDivision => [new(cause, 1, 0)],
        Cause.Spill => Grid(R.LeastSpill, R.MostSpill).Select(f =>
            new Hypothesis(cause, 1.0 / Sizes, f) { Mass = All(Log1(-f)), Further = R.SpillVaries * f / (1 - f) }),
        Cause.RunOn => Grid(R.LeastRunOn, R.MostRunOn).Select(x => Added(cause, x, run => x, 1.0 / Sizes)),
        Cause.Unprimed => Grid(R.LeastPriming, R.MostPriming).Select(x => Added(cause, x, run => run == 0 ? -x : 0, 1.0 / Sizes)),
        Cause.Bridging => Bridging(),
        Cause.PulsesDoubled => [new(cause, 1, 2) { Pulses = All(Elementary.Log(2)) }],
        Cause.PulsesMissed => Grid(R.LeastMissed, R.MostMissed).Select(f =>
            new Hypothesis(cause, 1.0 / Sizes, f) { Pulses = Each(r => Log1(-f * (0.5 + (0.5 * Drive(r))))) }),
        Cause.WrongTeeth => Teeth(),
        Cause.FeederDead => seen.Facts.Feeders is 1 ? [] : [new(cause, 1, 0.5) { Mass = All(-Elementary.Log(2)) }],
        Cause.GateMoved => Gates(),
        Cause.MaterialChanged => Signed(
            R.LeastMaterial, R.MostMaterial, (x, w) => new(cause, w, x) { Mass = All(Log1(x)), SisterMaterial = Log1(x) }),
        Cause.Wear => Grid(R.LeastWear, R.MostWear).Select(x => new Hypothesis(cause, 1.0 / Sizes, x) { Slope = x }),
        Cause.Slip => Grid(R.LeastSlip, R.MostSlip).Select(x =>
            new Hypothesis(cause, 1.0 / Sizes, x) { Mass = Each(r => Log1(-x * Drive(r))) }),
        Cause.HopperHead => Grid(R.LeastHead, R.MostHead).Select(x =>
            new Hypothesis(cause, 1.0 / Sizes, x) { Mass = Each((_, i) => Log1(-x * Emptied(i))) }),
        Cause.FlowLimit => Limits(),
        Cause.ColdOil => Grid(R.LeastCold, R.MostCold).Select(x =>
            new Hypothesis(cause, 1.0 / Sizes, x) { Turns = Each((_, i) => Log1(-x * Elementary.Pow(1 - R.WarmsUpBy, i))) }),
        Cause.EngineSlow => Grid(R.SlowestEngine, R.SlowEngine).Select(x =>
            new Hypothesis(cause, 1.0 / Sizes, x) { Turns = All(Elementary.Log(x)), Engine = Elementary.Log(x) }),
        Cause.MotorLeak => Grid(R.LeastLeak, R.MostLeak).Select(x => new Hypothesis(cause, 1.0 / Sizes, x)
        {
            Turns = Each((r, i) => Lost(r, x * (R.LeakWhenCool + ((1 - R.LeakWhenCool) * i / Math.Max(1, N - 1))))),
        }),
        Cause.ValveShift => Signed(R.LeastShift, R.MostShift, (x, w) => new(cause, w, x) { Turns = Each((r, _) => Lost(r, x)) }),
        Cause.ConstantLost => Signed(R.LeastLost, R.MostLost, (x, w) => new(cause, w, x) { Delivered = All(-Log1(x)) }),
        Cause.SpeedFrozen => Frozen(),
        Cause.SpeedConstant => Signed(R.LeastDistance, R.MostDistance, (x, w) => new(cause, w, x) { Delivered = All(-Log1(x)) }),
        Cause.LaneConvention => Exact([2], x => Said(cause, x, 0.5)),
        Cause.RoadWidth => Exact([4 / 3.0], x => Said(cause, x, 0.5)),
        Cause.MileKilometre => Exact([R.KilometresPerMile], x => Said(cause, x, 0.5)),
        Cause.RateUnit => Exact([R.RateRatio], x => Said(cause, x, 0.5)),
        _ => [],
    };

    private static double Log1(double x) => Elementary.Log(Math.Max(1e-6, 1 + x));

    private double[] All(double value) => Enumerable.Repeat(value, N).ToArray();

    private double[] Each(Func<RunView, double> of) => seen.Runs.Select(of).ToArray();

    private double[] Each(Func<RunView, int, double> of) => seen.Runs.Select(of).ToArray();

    private static double Drive(RunView run) => run.Share ?? 0.5;

    /// <summary>Sizes from least to most, each with equal chance on a logarithmic axis.</summary>
    private static IEnumerable<double> Grid(double least, double most, int sizes = Sizes)
    {
        var step = Elementary.Log(most / least) / sizes;
        for (var i = 0; i < sizes; i++) yield return least * Elementary.Exp(step * (i + 0.5));
    }

    private static IEnumerable<Hypothesis> Signed(double least, double most, Func<double, double, Hypothesis> make) =>
        Grid(least, most, 2 * Sizes).SelectMany(x => new[] { make(x, 0.25 / Sizes), make(-x, 0.25 / Sizes) });

    private static IEnumerable<Hypothesis> Exact(IEnumerable<double> ratios, Func<double, Hypothesis> make) =>
        ratios.SelectMany(x => new[] { make(x), make(1 / x) });

    private Hypothesis Said(Cause cause, double ratio, double weight) =>
        new(cause, weight, ratio) { Delivered = All(Elementary.Log(ratio)) };

    // A mass that was weighed with the material of each run, or is missing from it.
    private Hypothesis Added(Cause cause, double effect, Func<int, double> kilograms, double weight, int run = -1) => new(cause, weight, effect)
    {
        Run = run,
        Mass = Each((r, i) => kilograms(i) == 0 ? 0 : Elementary.Log(r.Mass / Math.Max(0.02 * r.Mass, r.Mass - kilograms(i)))),
    };

    private IEnumerable<Hypothesis> Bridging()
    {
        var pairs = N > 2 ? N * (N - 1) / 2 : 0;
        foreach (var x in Grid(R.LeastBridging, R.MostBridging, 10))
            for (var j = 0; j < N; j++)
                yield return new(Cause.Bridging, (pairs > 0 ? 0.5 : 1) / 10 / N, x) { Run = j, Mass = Each((_, i) => i == j ? Log1(-x) : 0) };
        if (pairs == 0) yield break;
        foreach (var x in Grid(R.LeastBridging, R.MostBridging, 5))
            foreach (var y in Grid(R.LeastBridging, R.MostBridging, 5))
                for (var j = 0; j < N; j++)
                    for (var k = j + 1; k < N; k++)
                        yield return new(Cause.Bridging, 0.5 / 25 / pairs, (x + y) / 2)
                        {
                            Run = j, Mass = Each((_, i) => i == j ? Log1(-x) : i == k ? Log1(-y) : 0), Further = 0.02,
                        };
    }

    // Ratios of the wheel now by the wheel before: from the register, else from the pulses for each turn now, else any.
    private IEnumerable<Hypothesis> Teeth()
    {
        var now = seen.Runs is [{ Pulses: { } p, Turns: { } t }, ..] ? Math.Round(p / t) : (double?)null;
        var pairs =
            from before in seen.Facts.Teeth is { } known ? [known] : R.Teeth.Select(x => (double)x)
            from after in seen.Facts.Teeth is null && now is { } n ? [n] : R.Teeth.Select(x => (double)x)
            let ratio = after / before
            where Math.Abs(ratio - 1) > 0.02 && ratio is > 0.3 and < 3.2
            select ratio;
        var ratios = pairs.Distinct().ToList();
        return ratios.Select(ratio => new Hypothesis(Cause.WrongTeeth, 1.0 / ratios.Count, ratio) { Pulses = All(Elementary.Log(ratio)) });
    }

    private IEnumerable<Hypothesis> Gates()
    {
        if (seen.Facts is not { Gate: { } gate, Gates.Count: > 0 } facts) yield break;
        var marks = facts.Gates.Where(g => g > 0 && Math.Abs((g / gate) - 1) > 0.01).ToList();
        var atMark = marks.Count > 0 ? R.GateAtMark : 0;
        foreach (var mark in marks)
            yield return new(Cause.GateMoved, atMark / marks.Count, mark / gate) { Mass = All(Elementary.Log(mark / gate)) };
        foreach (var h in Signed(R.LeastGateSlip, R.MostGateSlip, (x, w) => new(Cause.GateMoved, w * (1 - atMark), 1 + x) { Mass = All(Log1(x)) }))
            yield return h;
    }

    // Emptied up to the middle of a run, as a share of all that was dropped.
    private double Emptied(int run)
    {
        double before = 0, all = 0;
        for (var i = 0; i < N; i++)
        {
            if (i < run) before += seen.Runs[i].Mass;
            all += seen.Runs[i].Mass;
        }

        return (before + (seen.Runs[run].Mass / 2)) / all;
    }

    private IEnumerable<Hypothesis> Limits()
    {
        foreach (var limit in Grid(R.LeastLimit, R.MostLimit))
            yield return new(Cause.FlowLimit, 1.0 / Sizes, limit)
            {
                Turns = Each(r => r.Share is { } s && s > limit && seen.SpeedAt(s) is { } there && SpeedBelow(limit) is { } most && most < there
                    ? Elementary.Log(most / there)
                    : 0),
            };
    }

    // The earlier speed at a setting that may lie below the lowest known one: on the line through the known ones.
    private double? SpeedBelow(double setting)
    {
        if (seen.SpeedAt(setting) is { } known) return known;
        var ordered = seen.Facts.Shaft.OrderBy(s => s.Setting).ToList();
        if (ordered.Count == 0 || !(setting < ordered[0].Setting)) return null;
        var slope = ordered.Count > 1 && ordered[^1].Setting > ordered[0].Setting
            ? (ordered[^1].Turns - ordered[0].Turns) / (ordered[^1].Setting - ordered[0].Setting)
            : ordered[0].Turns / ordered[0].Setting;
        return Math.Max(0.05 * ordered[0].Turns, ordered[0].Turns - (slope * (ordered[0].Setting - setting)));
    }

    // Shaft speed lost, given as a share of the speed at full drive.
    private double Lost(RunView run, double share)
    {
        if (run.Share is not { } s || seen.SpeedAt(s) is not { } known || FullSpeed() is not { } full) return 0;
        return Elementary.Log(Math.Max(0.05, 1 - (share * full / known)));
    }

    private double? FullSpeed()
    {
        var ordered = seen.Facts.Shaft.OrderBy(s => s.Setting).ToList();
        if (ordered.Count == 0) return null;
        var (low, high) = (ordered[0], ordered[^1]);
        return high.Setting - low.Setting < 1e-9
            ? high.Turns / high.Setting
            : high.Turns + ((high.Turns - low.Turns) / (high.Setting - low.Setting) * (1 - high.Setting));
    }

    private IEnumerable<Hypothesis> Frozen()
    {
        var speeds = seen.Runs.ConvertAll(r => r.Speed);
        if (!speeds.TrueForAll(s => s is not null) || speeds.Count < 2) yield break;
        double low = speeds.Min()!.Value, high = speeds.Max()!.Value;
        if (high / low < 1.05) yield break;
        // The speed it stands at is one near those driven.
        foreach (var stuck in Grid(0.6 * low, 1.5 * high, 3 * Sizes))
            yield return new(Cause.SpeedFrozen, 1.0 / (3 * Sizes), stuck) { Delivered = Each(r => -Elementary.Log(stuck / r.Speed!.Value)) };
    }

    private IEnumerable<Hypothesis> Else()
    {
        double[] shifts = [-0.4, -0.2, -0.1, 0, 0.1, 0.2, 0.4];
        double[] further = [0, 0.05, 0.15];
        foreach (var shift in shifts)
            foreach (var more in further)
                yield return new(Cause.SomethingElse, 1.0 / shifts.Length / further.Length, shift) { Mass = All(shift), Further = more };
    }
}
