using static Lanewright.Core.Diagnosis.TestSituation;

namespace Lanewright.Core.Diagnosis;

/// <summary>What is known of a cause before any sheet is looked at.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Code">Its word in files; never changes.</param>
/// <param name="Prior">How common it is, relative to the others of one situation (common practice, no source).</param>
/// <param name="In">Situations in which it can show itself.</param>
/// <param name="Name">Its name in a few words.</param>
/// <param name="AlsoSeen">What else would be seen if it were true.</param>
public sealed record CauseFacts(
    Cause Cause, string Code, double Prior, TestSituation In, string Name, string AlsoSeen);

/// <summary>The one table of causes, with how common each is taken to be.</summary>
public static class CauseTable
{
    /// <summary>Chance that nothing is wrong with a truck that is tested (common practice, no source).</summary>
    public const double Healthy = 0.70;

    /// <summary>All causes in the order of <see cref="Cause"/>.</summary>
    public static IReadOnlyList<CauseFacts> All { get; } =
    [
        new(Cause.NothingWrong, "nothing-wrong", 0, TestSituation.All, "nothing wrong",
            "The next test gives the same within its interval."),
        new(Cause.SomethingElse, "something-else", 2, TestSituation.All, "something not in this list",
            "The runs do not follow any of the patterns listed."),
        new(Cause.MassUnit, "mass-unit", 4, Standing, "kilograms and pounds mixed up",
            "A container of known weight reads 2.2 times too much or too little against the unit written down."),
        new(Cause.TonKind, "ton-kind", 3, RoadCheck, "short, long or metric tons mixed up",
            "The ticket prints which ton it means; the ratio is one of 1.12, 1.102, 1.016 or its inverse."),
        new(Cause.TareForgotten, "tare-forgotten", 5, Standing, "weight of the containers not taken off",
            "An empty container on the scale shows its weight, not zero."),
        new(Cause.ContainerMissing, "container-missing", 4, Standing, "a container missing in a run",
            "That run has one container fewer than its count calls for."),
        new(Cause.DigitsSwapped, "digits-swapped", 4, TestSituation.All, "two digits swapped in a reading",
            "The paper or the picture of the display shows the other order."),
        new(Cause.DigitDropped, "digit-dropped", 3, Standing, "a digit missing at the end of a count",
            "The paper or the counter shows one digit more."),
        new(Cause.PersonChanged, "person-changed", 3, RoadCheck, "somebody got in or out between the weighings",
            "The difference is the weight of a person, whatever the size of the drop."),
        new(Cause.FuelBurnt, "fuel-burnt", 3, RoadCheck, "fuel burnt between the weighings",
            "The fuel gauge moved; the difference grows with the engine's hours, not with the drop."),
        new(Cause.ScaleOff, "scale-off", 4, TestSituation.All, "the scale is out of tolerance",
            "A known weight reads wrong by the same share; other trucks weighed on it are off alike."),
        new(Cause.ScaleDivision, "scale-division", 3, Standing, "the scale's division is not the one written",
            "Every reading ends in the same few digits; a small weight added does not change the display."),
        new(Cause.Spill, "spill", 5, Standing, "material fell beside the containers",
            "Material lies on the ground; with a tarpaulin the runs come out heavier."),
        new(Cause.RunOn, "run-on", 5, Standing, "material runs on after the count stops",
            "Short runs are heavier for their count than long ones; a stop alone drops material."),
        new(Cause.Unprimed, "unprimed", 6, Standing, "the feeder was empty when the first run began",
            "The first run is short; a run straight after another is not."),
        new(Cause.Bridging, "bridging", 6, Standing, "material hangs in the hopper",
            "Some runs are far short and the others right; the hopper shows a hole or lumps."),
        new(Cause.PulsesDoubled, "pulses-doubled", 3, CountedDrop | StandingCheck, "each pulse counted twice",
            "Turning the shaft once by hand gives twice the teeth of the wheel."),
        new(Cause.PulsesMissed, "pulses-missed", 5, CountedDrop | StandingCheck, "the sensor misses pulses",
            "Pulses for each turn are fewer than the teeth, and no whole number; worse when fast."),
        new(Cause.WrongTeeth, "wrong-teeth", 3, CountedDrop | StandingCheck, "another number of teeth on the sensor wheel",
            "Pulses for each turn are another whole number than before."),
        new(Cause.FeederDead, "feeder-dead", 3, TestSituation.All, "one of two feeders stands still",
            "Half the material for each turn; one outlet stays dry."),
        new(Cause.GateMoved, "gate-moved", 6, TestSituation.All, "the gate stands elsewhere than before",
            "Material for each turn follows the opening; the mark on the gate is off."),
        new(Cause.MaterialChanged, "material-changed", 10, TestSituation.All, "the material is not what it was",
            "Other trucks with the same pile are off alike; a level pail of it weighs otherwise."),
        new(Cause.Wear, "wear", 6, CountedDrop | StandingCheck, "the feeder wears",
            "Less for each turn with every season; flights or bars are worn."),
        new(Cause.Slip, "slip", 5, TestSituation.Standing, "slip grows with the speed of the feeder",
            "Less for each turn at high settings, right at low ones."),
        new(Cause.HopperHead, "hopper-head", 4, TestSituation.Standing, "less is fed as the hopper empties",
            "Each run is a little lighter for its count; after filling up it is as at first."),
        new(Cause.FlowLimit, "flow-limit", 6, TimedDrop, "the hydraulics give no more above a setting",
            "The shaft turns no faster above that setting; more engine speed helps."),
        new(Cause.ColdOil, "cold-oil", 6, TimedDrop, "the oil was cold",
            "The shaft turns faster from run to run until the oil is warm."),
        new(Cause.EngineSlow, "engine-slow", 5, TimedDrop, "the engine ran slower than before",
            "The shaft turns slower at every setting by the same share; more engine speed mends it."),
        new(Cause.MotorLeak, "motor-leak", 4, TimedDrop, "the hydraulic motor leaks inside",
            "The shaft loses most at low settings, and more as the oil warms."),
        new(Cause.ValveShift, "valve-shift", 4, TimedDrop, "the valve opens at another setting",
            "The setting at which the shaft begins to turn has moved."),
        new(Cause.ConstantLost, "constant-lost", 6, StandingCheck | RoadCheck, "the controller works with another constant or lost a trim",
            "Pulses divided by what it says it delivered is not the constant believed to be in it."),
        new(Cause.SpeedFrozen, "speed-frozen", 5, RoadCheck, "the controller does not follow the truck's speed",
            "Slow passes put down more for each mile than fast ones."),
        new(Cause.SpeedConstant, "speed-constant", 6, RoadCheck, "the controller's distance is wrong",
            "Over a measured mile the controller counts another distance."),
        new(Cause.LaneConvention, "lane-convention", 4, RoadCheck, "lane and two-lane, or one way and round trip, mixed up",
            "The ratio is 2 or a half, and the metering is right."),
        new(Cause.RoadWidth, "road-width", 3, RoadCheck, "the width factor of the road forgotten",
            "The ratio is 0.75 or its inverse, and the metering is right."),
        new(Cause.MileKilometre, "mile-kilometre", 3, RoadCheck, "miles and kilometres mixed up",
            "The ratio is 1.609 or its inverse, and the metering is right."),
        new(Cause.RateUnit, "rate-unit", 3, RoadCheck, "pounds per mile taken for kilograms per kilometre",
            "The ratio is 3.548 or its inverse, and the metering is right."),
    ];

    /// <summary>The facts of a cause.</summary>
    public static CauseFacts Of(Cause cause) => All[(int)cause];

    /// <summary>The cause with a code; null when there is none.</summary>
    public static CauseFacts? Find(string? code) =>
        All.FirstOrDefault(facts => string.Equals(facts.Code, code, StringComparison.OrdinalIgnoreCase));

    /// <summary>The chance of each cause before the sheet is looked at, in the order of <see cref="Cause"/>; sums to 1.</summary>
    public static double[] Priors(TestSituation situation)
    {
        var priors = new double[All.Count];
        var sum = 0.0;
        foreach (var facts in All)
            if ((facts.In & situation) != 0) sum += facts.Prior;
        foreach (var facts in All)
            priors[(int)facts.Cause] = (facts.In & situation) != 0 ? (1 - Healthy) * facts.Prior / sum : 0;
        priors[(int)Cause.NothingWrong] = Healthy;
        return priors;
    }
}
