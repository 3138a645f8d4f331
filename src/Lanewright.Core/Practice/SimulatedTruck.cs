using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>
/// A spreader whose truth is known: hopper, feeder, hydraulics, sensor and controller. Invented sizes; formulas and their sources
/// in docs/method/practice-spreader.md.
/// </summary>
public sealed record SimulatedTruck
{
    /// <summary>Whether a chain under a gate feeds; an auger otherwise.</summary>
    public required bool Chain { get; init; }

    /// <summary>Diameter of the auger's flight; or width of the chain's bed.</summary>
    public required Length Size { get; init; }

    /// <summary>Diameter of the auger's shaft; or opening of the gate at the last calibration.</summary>
    public required Length Second { get; init; }

    /// <summary>Pitch of the auger; or advance of the chain in one turn.</summary>
    public required Length Advance { get; init; }

    /// <summary>Number of feeders, 1 or 2.</summary>
    public int Feeders { get; init; } = 1;

    /// <summary>Bulk density at the last calibration, as it lies at the feeder.</summary>
    public required Density Density { get; init; }

    /// <summary>Pulses for a turn by the register.</summary>
    public required int Teeth { get; init; }

    /// <summary>Oil for a turn of the motor.</summary>
    public required Volume Displacement { get; init; }

    /// <summary>Oil for a turn of the engine.</summary>
    public required Volume Pump { get; init; }

    /// <summary>Engine speed in the yard.</summary>
    public required RotationalSpeed Engine { get; init; }

    /// <summary>Setting at which the valve begins to open, as a share.</summary>
    public double DeadBand { get; init; } = 0.08;

    /// <summary>Standard deviation of the mass of one run, as a share.</summary>
    public double Scatter { get; init; } = 0.01;

    /// <summary>Mass for one turn of all feeders at the last calibration.</summary>
    public double MassByTurn => Feeders * (Chain
        ? Metering.Gate(Size, Second, Speed.FromSi(Advance.Si), Density).Si
        : Metering.Auger(Size, Second, Advance, Density).Si);

    /// <summary>
    /// Turns by second: the valve passes its share of the pump's oil, the motor turns with what reaches it. Cold oil and the leak
    /// change as the session goes on.
    /// </summary>
    /// <param name="setting">Drive setting, 0 to 1.</param>
    /// <param name="dials">What is wrong.</param>
    /// <param name="run">Place of the run; the oil warms from run to run.</param>
    /// <param name="progress">How far the session is, 0 at the first run, 1 at the last.</param>
    public double Shaft(double setting, FaultDials dials, int run = 0, double progress = 0)
    {
        ArgumentNullException.ThrowIfNull(dials);
        var open = Math.Clamp(Math.Min(setting, dials.FlowLimit) - DeadBand, 0, 1) / (1 - DeadBand);
        var oil = VolumeFlow.FromSi(Pump.Si * Engine.Si * dials.Engine * open);
        var turns = Metering.HydraulicMotor(oil, Displacement).Si;
        var full = Metering.HydraulicMotor(VolumeFlow.FromSi(Pump.Si * Engine.Si), Displacement).Si;
        var leak = dials.Leak * (0.5 + (0.5 * progress));
        var cold = dials.ColdOil * Elementary.Pow(1 - Diagnosis.EffectRanges.WarmsUpBy, run);
        return Math.Max(0.01 * full, (turns - ((leak + dials.ValveShift) * full)) * (1 - cold));
    }
}

/// <summary>What one run did, and where the material went.</summary>
/// <param name="Turns">Turns of the shaft.</param>
/// <param name="Seconds">Length.</param>
/// <param name="Pulses">Pulses that the counter shows.</param>
/// <param name="Caught">Mass in the containers.</param>
/// <param name="Spilt">Mass beside them.</param>
/// <param name="Priming">Mass that stayed in the feeder.</param>
public sealed record RunTruth(double Turns, double Seconds, long Pulses, double Caught, double Spilt, double Priming)
{
    /// <summary>What left the hopper.</summary>
    public double Left => Caught + Spilt + Priming;
}

/// <summary>The hopper and feeder through a session of runs.</summary>
public sealed class SimulatedSession
{
    private const int Steps = 40;

    private readonly SimulatedTruck truck;
    private readonly FaultDials dials;
    private readonly double planned;
    private double toPrime;

    /// <summary>Begins a session with a full hopper.</summary>
    /// <param name="truck">The spreader.</param>
    /// <param name="dials">What is wrong with it.</param>
    /// <param name="planned">Mass that the session is to drop, kg.</param>
    /// <param name="load">Mass in the hopper, kg.</param>
    public SimulatedSession(SimulatedTruck truck, FaultDials dials, double planned, double load)
    {
        ArgumentNullException.ThrowIfNull(dials);
        (this.truck, this.dials, this.planned, Hopper) = (truck, dials, planned, load);
        Start = load;
        toPrime = dials.Priming;
    }

    /// <summary>Mass in the hopper at the start, kg.</summary>
    public double Start { get; }

    /// <summary>Mass in the hopper, kg.</summary>
    public double Hopper { get; private set; }

    /// <summary>One run, in steps, so that the feed follows the level in the hopper.</summary>
    /// <param name="place">Its place, from 0.</param>
    /// <param name="setting">Drive setting as a share, for slip and missed pulses.</param>
    /// <param name="turnsBySecond">Speed of the shaft.</param>
    /// <param name="seconds">Length.</param>
    /// <param name="scatter">Factor of this run's chance on the feed.</param>
    /// <param name="spill">How far the spill of this run is from the usual, in standard deviations.</param>
    /// <param name="phase">Where the sensor wheel stands, 0 to 1 pulse.</param>
    public RunTruth Run(int place, double setting, double turnsBySecond, double seconds, double scatter, double spill, double phase)
    {
        double turns = 0, caught = 0, spilt = 0, priming = 0;
        var bridged = dials.Bridged.TryGetValue(place, out var lost) ? 1 - lost : 1;
        var beside = Math.Clamp(dials.Spill * (1 + (dials.SpillVaries * spill)), 0, 0.9);
        for (var i = 0; i < Steps; i++)
        {
            var step = turnsBySecond * seconds / Steps;
            turns += step;
            Move(step * ByTurn(setting) * scatter * bridged);
        }

        Move(Math.Max(0, dials.RunOn));
        var seen = turns * truck.Teeth * dials.Teeth * dials.PulsesCounted * (1 - (dials.PulsesMissed * (0.5 + (0.5 * setting))));
        return new(turns, seconds, (long)Math.Floor(seen + phase), caught, spilt, priming);

        void Move(double mass)
        {
            mass = Math.Min(mass, Hopper);
            Hopper -= mass;
            var kept = Math.Min(toPrime, mass);
            toPrime -= kept;
            priming += kept;
            spilt += (mass - kept) * beside;
            caught += (mass - kept) * (1 - beside);
        }
    }

    // Mass for a turn now: density, gate, slip and the level in the hopper.
    private double ByTurn(double setting) => truck.MassByTurn * dials.Density * dials.Gate * dials.FeedersTurning
        * (1 - (dials.Slip * setting)) * (1 - (dials.HeadLoss * Math.Min(1, (Start - Hopper) / planned)));
}
