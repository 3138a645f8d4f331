namespace Lanewright.Core.Practice;

/// <summary>
/// Everything that can be wrong with a practice spreader, its scale and its paper, each a dial of its own. As made, nothing is
/// wrong. Shares are parts of the whole, masses in kg.
/// </summary>
public sealed record FaultDials
{
    /// <summary>Error of the scale in proportion to the load.</summary>
    public double ScaleGain { get; init; }

    /// <summary>Error of the scale at every load, kg.</summary>
    public double ScaleOffset { get; init; }

    /// <summary>Change of the gain from the first run to the last.</summary>
    public double ScaleDrift { get; init; }

    /// <summary>The scale's real division by the one on its plate.</summary>
    public int CoarserDivision { get; init; } = 1;

    /// <summary>Bulk density by the one at the last calibration: grade, moisture, compaction.</summary>
    public double Density { get; init; } = 1;

    /// <summary>Share by which the feed has fallen when all that is dropped in the session has left the hopper.</summary>
    public double HeadLoss { get; init; }

    /// <summary>Loss by wear in a season, as a logarithm.</summary>
    public double WearBySeason { get; init; }

    /// <summary>Share lost by slip at full drive; in proportion below.</summary>
    public double Slip { get; init; }

    /// <summary>Share of the feeders that turn.</summary>
    public double FeedersTurning { get; init; } = 1;

    /// <summary>Gate opening by the one at the last calibration.</summary>
    public double Gate { get; init; } = 1;

    /// <summary>Mass that the feeder takes before any comes out of the first run.</summary>
    public double Priming { get; init; }

    /// <summary>Mass that comes after the count has stopped.</summary>
    public double RunOn { get; init; }

    /// <summary>Share that falls beside, and how that varies from run to run as a share of it.</summary>
    public double Spill { get; init; }

    /// <summary>See <see cref="Spill"/>.</summary>
    public double SpillVaries { get; init; }

    /// <summary>Shares that bridging takes from runs, by their place; others are whole.</summary>
    public IReadOnlyDictionary<int, double> Bridged { get; init; } = new Dictionary<int, double>();

    /// <summary>Share of pulses missed at full drive; half of it at standstill.</summary>
    public double PulsesMissed { get; init; }

    /// <summary>Times that each pulse is counted.</summary>
    public double PulsesCounted { get; init; } = 1;

    /// <summary>Teeth on the wheel by those in the register.</summary>
    public double Teeth { get; init; } = 1;

    /// <summary>Setting above which the hydraulics give no more.</summary>
    public double FlowLimit { get; init; } = 1;

    /// <summary>Share of shaft speed missing in the first run because the oil is cold.</summary>
    public double ColdOil { get; init; }

    /// <summary>Engine speed by the usual one.</summary>
    public double Engine { get; init; } = 1;

    /// <summary>Shaft speed lost in the motor's leak when warm, as a share of full speed.</summary>
    public double Leak { get; init; }

    /// <summary>Loss of shaft speed because the valve opens later, as a share of full speed; below 0 when it opens earlier.</summary>
    public double ValveShift { get; init; }

    /// <summary>Constant in the controller by the one believed.</summary>
    public double ConstantInController { get; init; } = 1;

    /// <summary>Speed at which the controller's speed stands still, m/s; 0 when it follows.</summary>
    public double SpeedStuck { get; init; }

    /// <summary>Distance that the controller counts by the true one.</summary>
    public double Distance { get; init; } = 1;

    /// <summary>Delivered mass as written by the one that was asked for: lanes, widths, miles, tons.</summary>
    public double Said { get; init; } = 1;

    /// <summary>Weights as written by what was weighed: kilograms and pounds mixed up.</summary>
    public double MassUnit { get; init; } = 1;

    /// <summary>Runs whose empty weights are left out; -1 stands for all of them.</summary>
    public int? TareForgotten { get; init; }

    /// <summary>The run of which a container is not written down.</summary>
    public int? ContainerMissing { get; init; }

    /// <summary>Whether two digits of a reading are swapped.</summary>
    public bool DigitsSwapped { get; init; }

    /// <summary>The run whose count lost its last digit.</summary>
    public int? DigitDropped { get; init; }

    /// <summary>The run before or after which a person got in (above 0) or out (below 0).</summary>
    public int? PersonRun { get; init; }

    /// <summary>That person, kg; below 0 the truck seems to have lost less.</summary>
    public double Person { get; init; }

    /// <summary>Fuel burnt in each run and not taken off.</summary>
    public double Fuel { get; init; }
}
