namespace Lanewright.Core.Diagnosis;

/// <summary>
/// How large each effect is taken to be when it is there. The same ranges draw the practice spreader's faults, so that chances
/// can be held against a known truth. All are ours (common practice, no source) unless the facts behind them are named.
/// </summary>
public static class EffectRanges
{
    /// <summary>Change of a healthy spreader from season to season, standard deviation of its logarithm.</summary>
    public const double SeasonDrift = 0.01;

    /// <summary>Standard deviation of shaft speed from run to run, as a share.</summary>
    public const double ShaftScatter = 0.01;

    /// <summary>Standard uncertainty of shaft speed against the earlier one, common to the runs, as a share.</summary>
    public const double ShaftDrift = 0.015;

    /// <summary>Standard deviation of what a road check is asked for against what a good controller does: common, and by run.</summary>
    public const double RoadCommon = 0.01, RoadRun = 0.01;

    /// <summary>Scatter of one run, from least to most, on a logarithmic axis.</summary>
    public const double LeastScatter = 0.003, MostScatter = 0.03;

    /// <summary>Weight of an empty pail and of an empty bin, kg.</summary>
    public const double LeastPail = 0.9, MostPail = 1.5, LeastBin = 18, MostBin = 32;

    /// <summary>Share by which a scale out of tolerance is off.</summary>
    public const double LeastGain = 0.02, MostGain = 0.10;

    /// <summary>Share of the material that is spilt, and how it varies from run to run, as a share of it.</summary>
    public const double LeastSpill = 0.02, MostSpill = 0.15, SpillVaries = 0.4;

    /// <summary>Mass that runs on after the count stops, kg.</summary>
    public const double LeastRunOn = 1.5, MostRunOn = 12;

    /// <summary>Mass that fills an empty feeder, kg.</summary>
    public const double LeastPriming = 2, MostPriming = 25;

    /// <summary>Share that is missing in a run with bridging.</summary>
    public const double LeastBridging = 0.10, MostBridging = 0.60;

    /// <summary>Share of pulses missed at full drive.</summary>
    public const double LeastMissed = 0.03, MostMissed = 0.35;

    /// <summary>Change of density, moisture or grade. Loose to compacted salt alone is 16.7 % (Salt Institute figures,
    /// secondary), a wrong setting for the grade up to 40 % (NWSRG).</summary>
    public const double LeastMaterial = 0.03, MostMaterial = 0.30;

    /// <summary>Loss by wear in one season.</summary>
    public const double LeastWear = 0.02, MostWear = 0.07;

    /// <summary>Share lost by slip at full drive.</summary>
    public const double LeastSlip = 0.06, MostSlip = 0.40;

    /// <summary>Share by which the feed falls from the first run to the end of the last.</summary>
    public const double LeastHead = 0.04, MostHead = 0.25;

    /// <summary>Setting above which nothing more comes.</summary>
    public const double LeastLimit = 0.30, MostLimit = 0.75;

    /// <summary>Share of speed missing at the start with cold oil; it falls by this share of itself in each run.</summary>
    public const double LeastCold = 0.06, MostCold = 0.40, WarmsUpBy = 0.45;

    /// <summary>Engine speed by the earlier one.</summary>
    public const double SlowestEngine = 0.55, SlowEngine = 0.92;

    /// <summary>Shaft speed lost in the leak, as a share of full speed, and how much of it is there in the first run.</summary>
    public const double LeastLeak = 0.03, MostLeak = 0.15, LeakWhenCool = 0.5;

    /// <summary>Shift of the setting at which the valve opens.</summary>
    public const double LeastShift = 0.03, MostShift = 0.12;

    /// <summary>Constant in the controller by the one believed.</summary>
    public const double LeastLost = 0.04, MostLost = 0.60;

    /// <summary>Share by which the distance is off.</summary>
    public const double LeastDistance = 0.03, MostDistance = 0.20;

    /// <summary>A person, kg.</summary>
    public const double LeastPerson = 55, MostPerson = 120;

    /// <summary>Fuel burnt on the road, kg.</summary>
    public const double LeastFuel = 8, MostFuel = 60;

    /// <summary>Share by which a gate slips from its mark, when it does not stand at another mark.</summary>
    public const double LeastGateSlip = 0.04, MostGateSlip = 0.20;

    /// <summary>Chance that a moved gate stands at another mark.</summary>
    public const double GateAtMark = 0.7;

    /// <summary>Ratios of tons: long by short, metric by short, long by metric (exact, from the definitions of the units).</summary>
    public static IReadOnlyList<double> Tons { get; } = [1.12, 1.1023113109243878, 1.0160469088];

    /// <summary>Pounds in a kilogram (exact definition of the pound).</summary>
    public const double PoundsPerKilogram = 1 / 0.45359237;

    /// <summary>Kilometres in a mile (exact).</summary>
    public const double KilometresPerMile = 1.609344;

    /// <summary>Pounds per mile in a kilogram per kilometre (exact).</summary>
    public const double RateRatio = PoundsPerKilogram * KilometresPerMile;

    /// <summary>Numbers of teeth that sensor wheels are taken to have.</summary>
    public static IReadOnlyList<int> Teeth { get; } = [4, 6, 8, 10, 12, 15, 16, 20, 24, 30, 32, 36, 40, 48, 60];
}
