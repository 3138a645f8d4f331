using Lanewright.Core.Statistics;
using static Lanewright.Core.Diagnosis.Cause;

namespace Lanewright.Core.Diagnosis;

/// <summary>A cheap test that may show a cause.</summary>
/// <param name="Code">Its word in files.</param>
/// <param name="Minutes">What it takes (common practice, no source).</param>
/// <param name="How">What to do.</param>
/// <param name="Shows">Chance that it shows something wrong, by the cause that is there; what is not listed shows by
/// <see cref="NextTests.FalseSign"/>.</param>
public sealed record NextTest(string Code, double Minutes, string How, IReadOnlyDictionary<Cause, double> Shows)
{
    /// <summary>Chance that it shows something wrong.</summary>
    public double ChanceUnder(Cause cause) => Shows.TryGetValue(cause, out var chance) ? chance : NextTests.FalseSign;
}

/// <summary>A test with what it is worth now.</summary>
/// <param name="Test">The test.</param>
/// <param name="Bits">Information to expect from it.</param>
public sealed record AdvisedTest(NextTest Test, double Bits)
{
    /// <summary>Bits for each minute of work.</summary>
    public double BitsByMinute => Bits / Test.Minutes;
}

/// <summary>The tests there are, and which of them brings most for its time.</summary>
public static class NextTests
{
    /// <summary>Chance that a test shows something wrong although its causes are not there (common practice, no source).</summary>
    public const double FalseSign = 0.03;

    /// <summary>All tests; chances and minutes are ours (common practice, no source).</summary>
    public static IReadOnlyList<NextTest> All { get; } =
    [
        Make("known-weight", 5, "Put a known weight near the load used on the scale and read it.",
            (ScaleOff, 0.95), (ScaleDivision, 0.5), (MassUnit, 0.9)),
        Make("small-weight", 3, "Add one division's weight to the loaded scale: does the display follow?", (ScaleDivision, 0.95)),
        Make("empty-container", 3, "Weigh an empty container and hold it against the tares on the sheet.", (TareForgotten, 0.97)),
        Make("paper", 3, "Hold every typed number against the paper or the picture of the display.",
            (DigitsSwapped, 0.95), (DigitDropped, 0.97), (ContainerMissing, 0.6), (MassUnit, 0.7), (TonKind, 0.8), (TareForgotten, 0.5)),
        Make("count-containers", 2, "Count the containers that were filled, and those on the sheet.", (ContainerMissing, 0.95)),
        Make("hand-turn", 8, "Locked out, turn the shaft ten times by hand and read the counter.",
            (PulsesDoubled, 0.98), (WrongTeeth, 0.98), (PulsesMissed, 0.5)),
        Make("sensor-gap", 6, "Locked out, look at the sensor: gap, dirt, cable, loose wheel.", (PulsesMissed, 0.85), (PulsesDoubled, 0.3)),
        Make("level-pail", 8, "Weigh a level pail of the material and hold it against the last one written down.", (MaterialChanged, 0.9)),
        Make("measure-gate", 4, "Measure the gate opening with a rule, on both sides.", (GateMoved, 0.95)),
        Make("look-at-feeder", 12, "Locked out, measure flights or bars and look at chain tension.", (Wear, 0.85), (Slip, 0.5), (FeederDead, 0.6)),
        Make("watch-outlets", 3, "From a safe distance, watch whether every outlet delivers.", (FeederDead, 0.97), (Bridging, 0.3)),
        Make("look-around", 3, "Look at the ground around the containers.", (Spill, 0.85), (RunOn, 0.3)),
        Make("start-stop", 6, "Start and stop at once, and weigh what falls.", (RunOn, 0.95)),
        Make("run-again", 10, "Do one more run straight after the last.", (Unprimed, 0.9), (Bridging, 0.4), (ContainerMissing, 0.5), (DigitsSwapped, 0.5)),
        Make("look-in-hopper", 5, "Feeder off and locked out, look into the hopper from outside: holes, lumps, level.", (Bridging, 0.85), (HopperHead, 0.6)),
        Make("fill-up", 20, "Fill the hopper up and do one more run.", (HopperHead, 0.93), (Bridging, 0.3)),
        Make("slow-and-fast", 15, "One run at the lowest and one at the highest setting in use.", (Slip, 0.92), (PulsesMissed, 0.4), (FlowLimit, 0.7), (ValveShift, 0.5)),
        Make("shaft-by-setting", 10, "Count turns for a minute at three settings, the lowest and the highest among them.",
            (FlowLimit, 0.93), (ValveShift, 0.9), (MotorLeak, 0.85), (EngineSlow, 0.7), (ColdOil, 0.3)),
        Make("warm-up", 20, "Warm the hydraulics up and do the first run again.", (ColdOil, 0.95), (MotorLeak, 0.4)),
        Make("engine-speed", 5, "Read the engine's speed during a run and bring it to the usual one.", (EngineSlow, 0.95), (FlowLimit, 0.3)),
        Make("valve-creep", 6, "Raise the setting from zero until the shaft begins to turn.", (ValveShift, 0.92)),
        Make("hot-slow-run", 15, "With warm oil, count turns at the lowest setting, twice ten minutes apart.", (MotorLeak, 0.9)),
        Make("read-controller", 3, "Read constant and trim in the controller.", (ConstantLost, 0.97)),
        Make("measured-mile", 15, "Drive a measured mile and read the controller's distance.", (SpeedConstant, 0.96), (SpeedFrozen, 0.7)),
        Make("watch-speed", 6, "Watch the controller's speed against the truck's own while somebody else drives.", (SpeedFrozen, 0.97), (SpeedConstant, 0.4)),
        Make("read-order", 4, "Read the order again: per lane or two lanes, one way or round trip, width, miles, units of the rate.",
            (LaneConvention, 0.93), (RoadWidth, 0.93), (MileKilometre, 0.95), (RateUnit, 0.95), (TonKind, 0.5)),
        Make("read-ticket", 2, "Read on the ticket which ton it prints.", (TonKind, 0.95)),
        Make("fuel-gauge", 3, "Read the fuel gauge before and after, or reckon from the hours.", (FuelBurnt, 0.85)),
        Make("ask-crew", 2, "Ask who sat in the truck at each weighing.", (PersonChanged, 0.9)),
    ];

    /// <summary>The tests by what they bring for each minute, best first; those that bring next to nothing are left out.</summary>
    /// <param name="chances">The chance of each cause, in the order of <see cref="Cause"/>.</param>
    /// <param name="done">Codes of tests that are done.</param>
    public static IReadOnlyList<AdvisedTest> Advise(IReadOnlyList<double> chances, IReadOnlyCollection<string>? done = null) =>
    [
        .. All.Where(t => done?.Contains(t.Code) is not true).Select(t => new AdvisedTest(t, Expected(t, chances)))
            .Where(a => a.Bits > 0.001).OrderByDescending(a => a.BitsByMinute),
    ];

    /// <summary>The chances after a test.</summary>
    /// <param name="chances">Before.</param>
    /// <param name="test">The test.</param>
    /// <param name="showed">Whether it showed something wrong.</param>
    public static double[] After(IReadOnlyList<double> chances, NextTest test, bool showed)
    {
        ArgumentNullException.ThrowIfNull(chances);
        ArgumentNullException.ThrowIfNull(test);
        var after = new double[chances.Count];
        var sum = 0.0;
        for (var i = 0; i < after.Length; i++)
        {
            var shows = test.ChanceUnder((Cause)i);
            sum += after[i] = chances[i] * (showed ? shows : 1 - shows);
        }

        for (var i = 0; i < after.Length; i++) after[i] /= sum;
        return after;
    }

    /// <summary>Entropy of the chances in bits.</summary>
    public static double Entropy(IReadOnlyList<double> chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        var sum = 0.0;
        foreach (var p in chances)
            if (p > 0) sum -= p * Elementary.Log(p);
        return sum / Elementary.Log(2);
    }

    private static double Expected(NextTest test, IReadOnlyList<double> chances)
    {
        var shows = 0.0;
        for (var i = 0; i < chances.Count; i++) shows += chances[i] * test.ChanceUnder((Cause)i);
        return Entropy(chances) - (shows * Entropy(After(chances, test, true))) - ((1 - shows) * Entropy(After(chances, test, false)));
    }

    private static NextTest Make(string code, double minutes, string how, params (Cause Cause, double Chance)[] shows) =>
        new(code, minutes, how, shows.ToDictionary(s => s.Cause, s => s.Chance));
}
