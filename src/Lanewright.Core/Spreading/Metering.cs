using Lanewright.Core.Quantities;

namespace Lanewright.Core.Spreading;

/// <summary>
/// What a metering device delivers by its geometry: a first guess before a test and a cross-check after it, never a
/// calibration, for bulk density alone differs by a sixth between loose and compacted salt.
/// </summary>
public static class Metering
{
    /// <summary>
    /// Mass that an auger moves in one turn: pi/4 (D^2 - d^2) pitch x fill x density (the form of CEMA and ISO 7119,
    /// from secondary copies). An incline takes a further share, see <paramref name="fill"/>.
    /// </summary>
    /// <param name="diameter">Of the flight, D; above <paramref name="shaft"/>.</param>
    /// <param name="shaft">Diameter of the shaft, d; 0 or more.</param>
    /// <param name="pitch">Advance in one turn; above 0.</param>
    /// <param name="density">Bulk density.</param>
    /// <param name="fill">Share of the swept space that is filled, above 0 up to 1: near 1 for a flooded feeder (from
    /// memory), 0.15 to 0.45 for a conveyor, times the share that an incline leaves (secondary copies).</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static MassPerRevolution Auger(Length diameter, Length shaft, Length pitch, Density density, double fill = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(shaft.Si, nameof(shaft));
        Above(diameter.Si, shaft.Si, nameof(diameter));
        Above(pitch.Si, 0, nameof(pitch));
        Share(fill, nameof(fill));
        var area = Math.PI / 4 * ((diameter.Si * diameter.Si) - (shaft.Si * shaft.Si));
        return MassPerRevolution.FromSi(area * pitch.Si * fill * density.Si);
    }

    /// <summary>
    /// Mass flow of a chain or belt under a gate: width x gate opening x speed x fill x density (secondary copy of a
    /// conveyor's design sheet). Proportional to the opening only while the gate, not the hopper, limits the flow.
    /// </summary>
    /// <param name="width">Of the bed; above 0.</param>
    /// <param name="gate">Opening; above 0.</param>
    /// <param name="speed">Of the chain; above 0.</param>
    /// <param name="density">Bulk density.</param>
    /// <param name="fill">Share of the opening that is filled, above 0 up to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static MassFlow Gate(Length width, Length gate, Speed speed, Density density, double fill = 1)
    {
        Above(width.Si, 0, nameof(width));
        Above(gate.Si, 0, nameof(gate));
        Above(speed.Si, 0, nameof(speed));
        Share(fill, nameof(fill));
        return MassFlow.FromSi(width.Si * gate.Si * speed.Si * fill * density.Si);
    }

    /// <summary>
    /// Turns of a hydraulic motor: flow / displacement x volumetric efficiency (in US units 231 gpm / in3, the form
    /// printed by several sources on fluid power). The real speed is this or what the controller asks, the lower.
    /// </summary>
    /// <param name="flow">Oil that reaches the motor; 0 or more.</param>
    /// <param name="displacement">Oil for one turn; above 0.</param>
    /// <param name="efficiency">Share of the oil that turns the motor, above 0 up to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RotationalSpeed HydraulicMotor(VolumeFlow flow, Volume displacement, double efficiency = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(flow.Si, nameof(flow));
        Above(displacement.Si, 0, nameof(displacement));
        Share(efficiency, nameof(efficiency));
        return RotationalSpeed.FromSi(flow.Si / displacement.Si * efficiency);
    }

    /// <summary>
    /// Turns of a hydraulic motor that is asked for <paramref name="asked"/>: that, or what the oil of the pump at the engine's
    /// speed can drive, the lower. Above the lower of the two nothing is gained.
    /// </summary>
    /// <param name="asked">What valve and controller ask for; 0 or more.</param>
    /// <param name="pump">Oil that the pump moves in one turn of the engine, its drive ratio included; 0 or more.</param>
    /// <param name="engine">Engine speed; 0 or more.</param>
    /// <param name="displacement">Oil for one turn of the motor; above 0.</param>
    /// <param name="efficiency">Share of the oil that turns the motor, above 0 up to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RotationalSpeed MotorSpeed(
        RotationalSpeed asked, Volume pump, RotationalSpeed engine, Volume displacement, double efficiency = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(asked.Si, nameof(asked));
        ArgumentOutOfRangeException.ThrowIfNegative(pump.Si, nameof(pump));
        ArgumentOutOfRangeException.ThrowIfNegative(engine.Si, nameof(engine));
        var most = HydraulicMotor(VolumeFlow.FromSi(pump.Si * engine.Si), displacement, efficiency);
        return most.Si < asked.Si ? most : asked;
    }

    private static void Above(double value, double least, string name)
    {
        if (!(value > least)) throw new ArgumentOutOfRangeException(name, value, "Is too small.");
    }

    private static void Share(double value, string name)
    {
        if (!(value is > 0 and <= 1)) throw new ArgumentOutOfRangeException(name, value, "Must be above 0, at most 1.");
    }
}
