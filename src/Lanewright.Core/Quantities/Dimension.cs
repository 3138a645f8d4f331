namespace Lanewright.Core.Quantities;

/// <summary>What kind of quantity a number is. Each dimension has one SI unit in which values are kept.</summary>
public enum Dimension
{
    /// <summary>A plain ratio; 1 is the whole (percent is a unit of it).</summary>
    Fraction,

    /// <summary>Counted events of a sensor; SI unit: one pulse.</summary>
    Pulses,

    /// <summary>Counted turns of a shaft; SI unit: one revolution.</summary>
    Revolutions,

    /// <summary>Mass; kilogram.</summary>
    Mass,

    /// <summary>Length; metre.</summary>
    Length,

    /// <summary>Area; square metre.</summary>
    Area,

    /// <summary>Volume; cubic metre.</summary>
    Volume,

    /// <summary>Elapsed time; second.</summary>
    Time,

    /// <summary>Speed; metre per second.</summary>
    Speed,

    /// <summary>Density, bulk density included; kilogram per cubic metre.</summary>
    Density,

    /// <summary>Mass per time; kilogram per second.</summary>
    MassFlow,

    /// <summary>Volume per time; cubic metre per second.</summary>
    VolumeFlow,

    /// <summary>Turns per time; revolution per second.</summary>
    RotationalSpeed,

    /// <summary>Temperature; kelvin.</summary>
    Temperature,

    /// <summary>Mass per length of one lane (lb/lane-mile, kg/lane-km); kilogram per metre of lane.</summary>
    LaneRate,

    /// <summary>Mass per area of road (g/m2); kilogram per square metre.</summary>
    AreaRate,

    /// <summary>Liquid volume per length of one lane (gal/lane-mile); cubic metre per metre of lane.</summary>
    LiquidLaneRate,

    /// <summary>Liquid volume per area of road (mL/m2); cubic metre per square metre.</summary>
    LiquidAreaRate,

    /// <summary>Liquid volume per mass of dry material (gal/ton); cubic metre per kilogram.</summary>
    LiquidPerMass,

    /// <summary>Sensor pulses per mass delivered; pulse per kilogram.</summary>
    PulsesPerMass,

    /// <summary>Mass delivered per sensor pulse; kilogram per pulse.</summary>
    MassPerPulse,

    /// <summary>Sensor pulses per liquid volume; pulse per cubic metre.</summary>
    PulsesPerVolume,

    /// <summary>Ground-speed sensor pulses per distance; pulse per metre.</summary>
    PulsesPerLength,

    /// <summary>Sensor pulses per turn of the metering shaft; pulse per revolution.</summary>
    PulsesPerRevolution,

    /// <summary>Mass delivered per turn of the metering shaft; kilogram per revolution.</summary>
    MassPerRevolution,
}
