using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Practice;

/// <summary>A scale of the demo world with the truth behind it.</summary>
/// <param name="Scale">As it is marked.</param>
/// <param name="Depot">Where it stands.</param>
/// <param name="Gain">Its true error in proportion to the load.</param>
internal sealed record PracticeScale(Scale Scale, string Depot, double Gain)
{
    /// <summary>What it shows for a load, kg.</summary>
    internal double Reads(double load)
    {
        var d = Scale.Division!.Value.Si;
        return Math.Round(load * (1 + Gain) / d) * d;
    }
}

/// <summary>A spreader of the demo world with the truth behind it.</summary>
internal sealed class PracticeSpreader
{
    internal required string Number { get; init; }

    internal required string Subject { get; init; }

    internal required string Depot { get; init; }

    internal required string Body { get; init; }

    internal required string Metering { get; init; }

    internal required bool Closed { get; init; }

    internal required bool Metric { get; init; }

    internal required string Material { get; init; }

    internal string Liquid { get; init; } = "";

    /// <summary>True pulses by mass (closed) or mass by time at half drive (open), SI.</summary>
    internal double Truth { get; set; }

    /// <summary>Scatter of one run, as a share.</summary>
    internal required double Scatter { get; init; }

    /// <summary>The value last keyed in, in the controller's unit; null before the first.</summary>
    internal double? Keyed { get; set; }

    /// <summary>How sure it was, plus or minus, as a share.</summary>
    internal double KeyedTo { get; set; }

    /// <summary>The day on which it was.</summary>
    internal DateOnly? KeyedDay { get; set; }

    internal Unit ControllerUnit => (Closed, Metric) switch
    {
        (true, false) => Units.PulsePerPound,
        (true, true) => Units.PulsePerKilogram,
        (false, false) => Units.PoundPerMinute,
        (false, true) => Units.KilogramPerMinute,
    };

    internal double Resolution => Closed ? (Metric ? 0.1 : 0.01) : 1;
}
