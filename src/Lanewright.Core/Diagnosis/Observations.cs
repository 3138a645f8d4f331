using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Diagnosis;

/// <summary>Everything that the causes are held against, worked out once for a sheet.</summary>
internal sealed class Observations
{
    private const double DefaultTiming = 0.3;

    private readonly DiagnosisInput input;

    private Observations(DiagnosisInput input, List<RunView> runs)
    {
        this.input = input;
        Runs = runs;
        Situation = SituationOf(input);
        CountedMass = Counted();
        PulsesPerTurn = Sensor();
        ShaftSpeed = Shaft();
        ControllerCount = Controller();
    }

    internal DiagnosisInput Input => input;

    internal TestSheet Sheet => input.Report.Sheet;

    internal SpreaderFacts Facts => input.Facts;

    internal List<RunView> Runs { get; }

    internal TestSituation Situation { get; }

    internal ConstantHistory History { get; private set; } = null!;

    /// <summary>Logarithm of mass for each count that the controller works with; null when not stated.</summary>
    internal double? Keyed { get; private set; }

    /// <summary>Mass for each count. Its reference comes from <see cref="History"/>, unless <see cref="Referred"/>.</summary>
    internal Channel CountedMass { get; }

    /// <summary>Whether the reference is already taken off <see cref="CountedMass"/>.</summary>
    internal bool Referred { get; private set; }

    /// <summary>Standard uncertainty of the reference when it is taken off.</summary>
    internal double ReferenceUncertainty { get; private set; }

    internal Channel? PulsesPerTurn { get; }

    internal Channel? ShaftSpeed { get; }

    internal Channel? ControllerCount { get; }

    /// <summary>The observations of a report; null when no run gave a ratio.</summary>
    internal static Observations? Of(DiagnosisInput input)
    {
        var runs = RunView.Of(input.Report);
        return runs.Count == 0 ? null : new(input, runs);
    }

    private static TestSituation SituationOf(DiagnosisInput input) => input.Report.Sheet switch
    {
        { Kind: TestKind.Verification } => input.Facts.OnTheRoad ? TestSituation.RoadCheck : TestSituation.StandingCheck,
        { Spreader.Form: ConstantForm.MassFlow } => TestSituation.TimedDrop,
        _ => TestSituation.CountedDrop,
    };

    // Mass for each count, as the form of the constant says it; the count itself for a delivery by time.
    private double? MassPerCount(double constant) => !(constant > 0) ? null
        : Sheet.Spreader.Form is ConstantForm.PulsesPerMass ? 1 / constant : constant;

    private Channel Counted()
    {
        Keyed = Sheet.Spreader.Current is { } current && MassPerCount(current) is { } k ? Elementary.Log(k) : null;
        var own = Runs.ConvertAll(r => r.Own).ToArray();
        var shared = SharedUncertainty();
        if (Situation is TestSituation.TimedDrop) return Timed(own, shared);
        History = ConstantHistory.Of(
            from e in input.Earlier
            let mass = MassPerCount(e.Value)
            where mass is not null && e.Uncertainty is >= 0 and < 1
            select (e.Day, mass.Value, e.Uncertainty), Sheet.Date);
        var byTurns = Sheet.Spreader.Form is ConstantForm.MassPerRevolution;
        var counts = Runs.ConvertAll(r => byTurns ? r.Turns : r.Pulses);
        if (counts.TrueForAll(c => c is not null))
        {
            return new(
                "mass for each count", [.. Runs.Zip(counts, (r, c) => (double?)Elementary.Log(r.Mass / c!.Value))], own, shared,
                1, byTurns ? 0 : -1, 0, 0, byTurns ? 0 : -1);
        }

        // A check without counts: what was weighed by what was said, which rests on the constant in the controller.
        var values = Runs.ConvertAll(r => r.Delivered is { } d ? (double?)Elementary.Log(r.Mass / d) : null);
        if (History.Count > 0 && Keyed is { } keyed)
            values = values.ConvertAll(v => v + keyed);
        else
            Keyed = 0;
        var road = Situation is TestSituation.RoadCheck;
        return new(
            "weighed by delivered", [.. values],
            [.. own.Select(u => road ? Math.Sqrt((u * u) + (EffectRanges.RoadRun * EffectRanges.RoadRun)) : u)],
            road ? Math.Sqrt((shared * shared) + (EffectRanges.RoadCommon * EffectRanges.RoadCommon)) : shared, 1, -1, 0, -1, 0);
    }

    // A delivery by time: with turns, the mass for each turn; the shaft's speed is then a channel of its own.
    private Channel Timed(double[] own, double shared)
    {
        History = ConstantHistory.Of([], Sheet.Date);
        Referred = true;
        var latest = input.Earlier.Count == 0 ? default : input.Earlier.Max(e => e.Day);
        var known = input.Earlier.Where(e => e.Day == latest && e.Value > 0).ToList();
        ReferenceUncertainty = known.Count == 0
            ? 1
            : Math.Sqrt(known.Max(e => e.Uncertainty * e.Uncertainty) + (EffectRanges.SeasonDrift * EffectRanges.SeasonDrift));
        var withTurns = Runs.TrueForAll(r => r is { Turns: not null, Seconds: not null }
            && (known.Count == 0 || (r.Share is { } s && SpeedAt(s) is not null)));
        var first = Runs[0].Run.Setting;
        var values = Runs.ConvertAll(r =>
        {
            if (r.Seconds is not { } seconds) return null;
            double? speed = r.Share is { } share && SpeedAt(share) is { } at ? Elementary.Log(at) : null;
            if (known.Count > 0)
            {
                if (known.Find(e => SameSetting(e.Setting, r.Run.Setting)) is not { } e) return null;
                var value = Elementary.Log(r.Mass / seconds / e.Value);
                return withTurns ? value - (Elementary.Log(r.Turns!.Value / seconds) - speed!.Value) : value;
            }

            // Nothing earlier: the runs can only be held against each other.
            if (withTurns) return Elementary.Log(r.Mass / r.Turns!.Value);
            if (speed is { } v) return Elementary.Log(r.Mass / seconds) - v;
            return SameSetting(r.Run.Setting, first) ? (double?)Elementary.Log(r.Mass / seconds) : null;
        });
        return withTurns
            ? new(
                "mass for each turn", [.. values], [.. own.Zip(Runs, (u, r) => Math.Sqrt((u * u) + CountVariance(r.Turns!.Value)))], shared,
                1, 0, 0, 0, 0)
            : new(
                "mass by time", [.. values],
                [.. own.Select(u => Math.Sqrt((u * u) + (EffectRanges.ShaftScatter * EffectRanges.ShaftScatter)))],
                Math.Sqrt((shared * shared) + (EffectRanges.ShaftDrift * EffectRanges.ShaftDrift)), 1, 0, 1, 0, 0);
    }

    // A count cut off at both ends to its step: triangular.
    private double CountVariance(double turns)
    {
        var step = Sheet.RevolutionStep?.Si ?? 1;
        return step * step / (6 * turns * turns);
    }

    private static bool SameSetting(string a, string b) =>
        string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);

    // The part of the uncertainty that the runs have in common: the scale, the moisture.
    private double SharedUncertainty()
    {
        var worst = 0.0;
        foreach (var result in input.Report.Results)
        {
            var known = result.Estimate.Known.RelativeUncertainty;
            var own = 0.0;
            for (var i = 0; i < result.Runs.Count; i++)
                own += result.Estimate.Weights[i] * result.Estimate.Weights[i] * result.Runs[i].OwnUncertainty * result.Runs[i].OwnUncertainty;
            worst = Math.Max(worst, Math.Sqrt(Math.Max(0, (known * known) - own)));
        }

        return worst;
    }

    private Channel? Sensor()
    {
        if (Facts.Teeth is not > 0) return null;
        var values = Runs.ConvertAll(r => r is { Pulses: { } p, Turns: { } t } ? (double?)Elementary.Log(p / t / Facts.Teeth.Value) : null);
        var own = Runs.ConvertAll(r => r.Turns is { } t ? Math.Sqrt(CountVariance(t)) + 0.001 : 1);
        return Made(new("pulses for each turn", [.. values], [.. own], 0.002, 0, 1, 0, 0, 1));
    }

    private Channel? Shaft()
    {
        if (Facts.Shaft.Count == 0) return null;
        // Turns where they were counted; else pulses stand for them, if the teeth are known.
        var byTurns = Runs.TrueForAll(r => r.Turns is not null);
        if (!byTurns && Facts.Teeth is not > 0) return null;
        var values = Runs.ConvertAll(r =>
            r is { Seconds: { } s, Share: { } share } && SpeedAt(share) is { } known && (byTurns ? r.Turns : r.Pulses / Facts.Teeth) is { } turns
                ? (double?)Elementary.Log(turns / s / known)
                : null);
        var timing = Sheet.TimingUncertainty?.Si ?? DefaultTiming;
        var own = Runs.ConvertAll(r => r is { Seconds: { } s }
            ? Math.Sqrt((EffectRanges.ShaftScatter * EffectRanges.ShaftScatter) + (timing * timing / (s * s))
                + (byTurns ? CountVariance(r.Turns!.Value) : 0))
            : 1);
        return Made(new("speed of the shaft", [.. values], [.. own], EffectRanges.ShaftDrift, 0, byTurns ? 0 : 1, 1, 0, byTurns ? 0 : 1));
    }

    /// <summary>The earlier speed of the shaft at a setting, between known settings on a straight line; null beyond them.</summary>
    internal double? SpeedAt(double setting)
    {
        ShaftSpeed? below = null, above = null;
        foreach (var known in Facts.Shaft)
        {
            if (!(known.Turns > 0)) continue;
            if (known.Setting <= setting + 1e-9 && (below is null || known.Setting > below.Setting)) below = known;
            if (known.Setting >= setting - 1e-9 && (above is null || known.Setting < above.Setting)) above = known;
        }

        if (below is null || above is null) return null;
        var gap = above.Setting - below.Setting;
        return gap < 1e-9 ? below.Turns : below.Turns + ((above.Turns - below.Turns) * (setting - below.Setting) / gap);
    }

    private Channel? Controller()
    {
        if (Situation is not (TestSituation.StandingCheck or TestSituation.RoadCheck) || Keyed is not { } keyed
            || Sheet.Spreader.Form is not (ConstantForm.PulsesPerMass or ConstantForm.MassPerPulse))
            return null;
        var values = Runs.ConvertAll(r => r is { Pulses: { } p, Delivered: { } d } ? (double?)(Elementary.Log(p / d) + keyed) : null);
        var road = Situation is TestSituation.RoadCheck;
        var own = Runs.ConvertAll(r => road ? EffectRanges.RoadRun : 0.002 + (0.5 / (r.Pulses ?? 1)));
        return Made(new(
            "pulses for what was said to be delivered", [.. values], [.. own], road ? EffectRanges.RoadCommon : 0.002, 0, 0, 0, -1, 1));
    }

    private static Channel? Made(Channel channel) => channel.Count == 0 ? null : channel;
}
