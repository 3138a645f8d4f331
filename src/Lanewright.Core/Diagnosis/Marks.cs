using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Diagnosis;

/// <summary>
/// What the sheet says beside its numbers: tares of zero, cold oil, a gate or an engine speed written down, what was done to the
/// spreader. Each has a chance under every cause (common practice, no source).
/// </summary>
internal static class Marks
{
    /// <summary>Chance that an event is in the register: when it belongs to the cause, and otherwise.</summary>
    internal const double EventOfCause = 0.5, EventOfOther = 0.04;

    /// <summary>Chance that all tares are zero, and some: when forgotten, and otherwise (zeroed with the container on).</summary>
    internal const double AllZeroForgotten = 0.7, AllZeroOther = 0.06, SomeZeroOther = 0.004;

    /// <summary>Chance that cold oil is written down: when it is the cause, and otherwise.</summary>
    internal const double ColdWritten = 0.6, ColdOther = 0.02;

    /// <summary>Chance that people or fuel are not stated: when they are the cause, and otherwise.</summary>
    internal const double SilentCause = 0.75, SilentOther = 0.2;

    /// <summary>Chance that another opening than usual is written down: when the gate moved, and otherwise.</summary>
    internal const double GateWritten = 0.25, GateOther = 0.003;

    /// <summary>Standard deviation of an engine speed read off, as a share.</summary>
    internal const double EngineReading = 0.03;

    /// <summary>Real division by the one written, each equally likely.</summary>
    internal static IReadOnlyList<int> Coarser { get; } = [2, 5, 10, 20];

    private static readonly string[] EventWords =
        ["hydraulics", "metering", "gate", "sensor", "tyres", "battery", "material", "supplier"];

    /// <summary>The words of the register's events that belong to a cause.</summary>
    internal static IReadOnlyList<string> EventsOf(Cause cause) => cause switch
    {
        Cause.GateMoved => ["gate"],
        Cause.MaterialChanged => ["material", "supplier"],
        Cause.WrongTeeth or Cause.PulsesDoubled or Cause.PulsesMissed => ["sensor"],
        Cause.FeederDead or Cause.Slip => ["metering"],
        Cause.FlowLimit or Cause.MotorLeak or Cause.ValveShift => ["hydraulics"],
        Cause.SpeedConstant or Cause.SpeedFrozen => ["tyres"],
        Cause.ConstantLost => ["battery"],
        _ => [],
    };

    /// <summary>The chance that an event is in the register under a cause.</summary>
    internal static double EventChance(Cause cause, string word)
    {
        var own = EventsOf(cause);
        return own.Contains(word) ? EventOfCause / own.Count : EventOfOther;
    }

    /// <summary>Logarithm of the chance of the marks that depend on the size of an effect.</summary>
    internal static double OfHypothesis(Observations seen, Hypothesis h) => Gate(seen, h) + Engine(seen, h);

    /// <summary>Logarithm of the chance of the marks that depend on the cause alone.</summary>
    internal static double OfCause(Observations seen, Cause cause)
    {
        var sum = Tares(seen, cause) + Lattice(seen, cause) + Oil(seen, cause) + Silence(seen, cause);
        foreach (var word in seen.Facts.EventsKnown ? EventWords : [])
        {
            var chance = EventChance(cause, word);
            sum += Elementary.Log(seen.Facts.Events.Contains(word, StringComparer.OrdinalIgnoreCase) ? chance : 1 - chance);
        }

        return sum;
    }

    private static double Tares(Observations seen, Cause cause)
    {
        int zero = seen.Runs.Sum(r => r.ZeroTares), all = seen.Runs.Sum(r => r.Tares);
        if (all == 0) return 0;
        var forgotten = cause is Cause.TareForgotten;
        var chance = zero == 0 ? (forgotten ? 1e-9 : 1 - AllZeroOther - SomeZeroOther)
            : zero == all ? (forgotten ? AllZeroForgotten : AllZeroOther)
            : forgotten ? 1 - AllZeroForgotten : SomeZeroOther;
        return Elementary.Log(chance);
    }

    /// <summary>The greatest multiple of the division on which all readings lie, among 1, 2, 5, 10, 20, 50, 100.</summary>
    internal static (int Multiple, int Readings) LatticeOf(TestSheet sheet)
    {
        if (sheet.Scale.Division is not { Si: > 0 } division) return (1, 0);
        var steps = sheet.Runs.SelectMany(r => r.Catch switch
        {
            ContainerCatch c => c.Containers.SelectMany(x => new[] { x.Gross.Si, x.Tare.Si }),
            WholeCatch c => [c.Gross.Si, c.Tare.Si],
            TruckCatch c => [c.Before.Si, c.After.Si],
            CountedCatch c => [c.Gross.Si, c.Tare.Si],
            _ => Enumerable.Empty<double>(),
        }).Where(x => x > 0).Select(x => x / division.Si).ToList();
        if (steps.Count == 0 || steps.Exists(s => Math.Abs(s - Math.Round(s)) > 0.01)) return (1, steps.Count);
        foreach (var multiple in (int[])[100, 50, 20, 10, 5, 2])
            if (steps.TrueForAll(s => Math.Abs(Math.Round(s) % multiple) < 0.5)) return (multiple, steps.Count);
        return (1, steps.Count);
    }

    private static double Lattice(Observations seen, Cause cause)
    {
        var (multiple, readings) = LatticeOf(seen.Sheet);
        if (cause is not Cause.ScaleDivision) return multiple == 1 ? 0 : -readings * Elementary.Log(multiple);
        if (multiple == 1) return -60;
        var chance = 0.0;
        foreach (var real in Coarser)
            if (multiple % real == 0) chance += Elementary.Exp(-readings * Elementary.Log(multiple / (double)real)) / Coarser.Count;
        return Elementary.Log(Math.Max(chance, 1e-26));
    }

    private static double Oil(Observations seen, Cause cause)
    {
        if (seen.Situation is not TestSituation.TimedDrop) return 0;
        var cold = seen.Runs.Exists(r => r.Run.Oil is OilState.Cold);
        var chance = cause is Cause.ColdOil ? ColdWritten : ColdOther;
        return Elementary.Log(cold ? chance : 1 - chance);
    }

    private static double Gate(Observations seen, Hypothesis h)
    {
        if (seen.Facts.Gate is not { } usual || seen.Runs.Select(r => r.Run.Gate?.Si).FirstOrDefault(g => g is > 0) is not { } written) return 0;
        var other = Math.Abs((written / usual) - 1) > 0.01;
        if (h.Cause is not Cause.GateMoved) return Elementary.Log(other ? GateOther : 1 - GateOther);
        if (!other) return Elementary.Log(1 - GateWritten);
        // Written to the nearest mark of a rule: off by 2 % or so.
        var off = ((written / usual / h.Effect) - 1) / 0.02;
        return Elementary.Log(GateWritten) - (0.5 * off * off);
    }

    private static double Engine(Observations seen, Hypothesis h)
    {
        if (seen.Situation is not TestSituation.TimedDrop || seen.Facts.EngineSpeed is not > 0) return 0;
        if (seen.Runs.Select(r => r.Run.EngineSpeed?.Si).FirstOrDefault(e => e is > 0) is not { } read) return 0;
        var off = (Elementary.Log(read / seen.Facts.EngineSpeed.Value) - h.Engine) / EngineReading;
        // Beyond five standard deviations it was noted wrongly.
        return Math.Max(-0.5 * off * off, -12.5);
    }

    private static double Silence(Observations seen, Cause cause)
    {
        if (!seen.Runs.Exists(r => r.Run.Catch is TruckCatch)) return 0;
        var people = seen.Runs.Exists(r => r.Run.Catch is TruckCatch { PeopleStated: false });
        var fuel = seen.Runs.Exists(r => r.Run.Catch is TruckCatch { FuelBurnt: null });
        return Said(people, cause is Cause.PersonChanged) + Said(fuel, cause is Cause.FuelBurnt);

        static double Said(bool silent, bool cause)
        {
            var chance = cause ? SilentCause : SilentOther;
            return Elementary.Log(silent ? chance : 1 - chance);
        }
    }
}
