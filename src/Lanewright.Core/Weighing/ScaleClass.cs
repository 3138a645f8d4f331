namespace Lanewright.Core.Weighing;

/// <summary>Accuracy class marked on a weighing instrument.</summary>
public enum ScaleClass
{
    /// <summary>No class is known; only a tolerance of its own can stand for it.</summary>
    None,

    /// <summary>Class III: platform, floor, hanging and forklift scales of commerce; on-board weighing up to 30,000 lb.</summary>
    III,

    /// <summary>Class III L: vehicle and axle-load scales (NIST Handbook 44 only).</summary>
    IIIL,

    /// <summary>Class IIII: ordinary accuracy, portable wheel-load weighers among others.</summary>
    IIII,
}

/// <summary>Which rules set the tolerance of a class.</summary>
public enum ScaleRules
{
    /// <summary>NIST Handbook 44, section 2.20 (United States), maintenance tolerances.</summary>
    Handbook44,

    /// <summary>OIML R 76-1, maximum permissible errors in service: twice those at initial verification.</summary>
    Oiml,
}

/// <summary>What kind of instrument it is; decides which cautions apply, never the arithmetic.</summary>
public enum ScaleKind
{
    /// <summary>Platform or bench scale.</summary>
    Platform,

    /// <summary>Floor scale.</summary>
    Floor,

    /// <summary>Pallet scale.</summary>
    Pallet,

    /// <summary>Forklift scale.</summary>
    Forklift,

    /// <summary>Hanging scale.</summary>
    Hanging,

    /// <summary>Vehicle scale.</summary>
    Vehicle,

    /// <summary>Portable wheel-load weighers.</summary>
    WheelLoad,
}
