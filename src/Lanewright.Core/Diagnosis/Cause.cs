namespace Lanewright.Core.Diagnosis;

/// <summary>What can stand behind an odd number, "nothing wrong" and "something else" included.</summary>
public enum Cause
{
    /// <summary>The truck is as it was; the runs differ by chance.</summary>
    NothingWrong,

    /// <summary>Something is wrong that is none of the causes listed.</summary>
    SomethingElse,

    /// <summary>Kilograms read as pounds, or the reverse.</summary>
    MassUnit,

    /// <summary>Short, long and metric tons mixed up.</summary>
    TonKind,

    /// <summary>The weight of the containers not taken off.</summary>
    TareForgotten,

    /// <summary>A container of a run not weighed or not written down.</summary>
    ContainerMissing,

    /// <summary>Two neighbouring digits of a reading swapped.</summary>
    DigitsSwapped,

    /// <summary>A digit of a count or a time dropped at the end.</summary>
    DigitDropped,

    /// <summary>Somebody sat in the truck at one weighing and not at the other.</summary>
    PersonChanged,

    /// <summary>Fuel burnt between the weighings counted as material.</summary>
    FuelBurnt,

    /// <summary>The scale is out of tolerance.</summary>
    ScaleOff,

    /// <summary>The scale shows coarser steps than the sheet says.</summary>
    ScaleDivision,

    /// <summary>Material fell beside the containers.</summary>
    Spill,

    /// <summary>Material runs on after the count stops.</summary>
    RunOn,

    /// <summary>The feeder was empty when the first run began.</summary>
    Unprimed,

    /// <summary>Material hangs in the hopper: bridging, frozen lumps.</summary>
    Bridging,

    /// <summary>Each pulse counted twice.</summary>
    PulsesDoubled,

    /// <summary>The sensor misses pulses.</summary>
    PulsesMissed,

    /// <summary>Another number of teeth on the sensor wheel than before.</summary>
    WrongTeeth,

    /// <summary>One of two feeders stands still.</summary>
    FeederDead,

    /// <summary>The gate stands elsewhere than when the constant was found.</summary>
    GateMoved,

    /// <summary>The material differs: pile, grade, moisture, density.</summary>
    MaterialChanged,

    /// <summary>The feeder wears from season to season.</summary>
    Wear,

    /// <summary>Chain or material slips more the faster the feeder turns.</summary>
    Slip,

    /// <summary>Less is fed as the hopper empties.</summary>
    HopperHead,

    /// <summary>The hydraulics give no more above a demand.</summary>
    FlowLimit,

    /// <summary>The oil was cold and became warm.</summary>
    ColdOil,

    /// <summary>The engine ran slower than when the delivery was found.</summary>
    EngineSlow,

    /// <summary>The hydraulic motor leaks inside.</summary>
    MotorLeak,

    /// <summary>The valve opens at another setting than before.</summary>
    ValveShift,

    /// <summary>The controller works with another constant than the one believed, or a trim was lost.</summary>
    ConstantLost,

    /// <summary>The controller does not follow the truck's speed.</summary>
    SpeedFrozen,

    /// <summary>The controller's distance is wrong: tyre, axle or sensor changed.</summary>
    SpeedConstant,

    /// <summary>One lane taken for two, or there and back for one way.</summary>
    LaneConvention,

    /// <summary>The width factor of the road forgotten or used twice.</summary>
    RoadWidth,

    /// <summary>Miles taken for kilometres, or the reverse.</summary>
    MileKilometre,

    /// <summary>Pounds per mile taken for kilograms per kilometre, or the reverse.</summary>
    RateUnit,
}

/// <summary>What kind of test a sheet is, as far as causes go.</summary>
[Flags]
public enum TestSituation
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>A drop test by count: pulses or turns.</summary>
    CountedDrop = 1,

    /// <summary>A drop test by time, a delivery at a drive setting.</summary>
    TimedDrop = 2,

    /// <summary>A check, truck standing, of what the controller says it delivered.</summary>
    StandingCheck = 4,

    /// <summary>A check on the road: what was asked by rate and distance, against what left the truck.</summary>
    RoadCheck = 8,

    /// <summary>Weighed in containers or as one catch.</summary>
    Standing = CountedDrop | TimedDrop | StandingCheck,

    /// <summary>All.</summary>
    All = Standing | RoadCheck,
}
