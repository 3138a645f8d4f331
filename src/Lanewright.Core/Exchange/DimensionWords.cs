using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>What a dimension is called in a sentence, with its article.</summary>
internal static class DimensionWords
{
    internal static Phrase Of(Dimension dimension) => dimension switch
    {
        Dimension.Fraction => "a share or percentage",
        Dimension.Pulses => "a number of pulses",
        Dimension.Revolutions => "a number of revolutions",
        Dimension.Mass => "a mass",
        Dimension.Length => "a length",
        Dimension.Area => "an area",
        Dimension.Volume => "a volume",
        Dimension.Time => "a time span",
        Dimension.Speed => "a speed",
        Dimension.Density => "a density",
        Dimension.MassFlow => "a mass per time",
        Dimension.VolumeFlow => "a volume per time",
        Dimension.RotationalSpeed => "a rotational speed",
        Dimension.Temperature => "a temperature",
        Dimension.LaneRate => "a mass per length of lane",
        Dimension.AreaRate => "a mass per area of road",
        Dimension.LiquidLaneRate => "a liquid volume per length of lane",
        Dimension.LiquidAreaRate => "a liquid volume per area of road",
        Dimension.LiquidPerMass => "a liquid volume per mass of material",
        Dimension.PulsesPerMass => "pulses per mass",
        Dimension.MassPerPulse => "a mass per pulse",
        Dimension.PulsesPerVolume => "pulses per volume",
        Dimension.PulsesPerLength => "pulses per distance",
        Dimension.PulsesPerRevolution => "pulses per revolution",
        Dimension.MassPerRevolution => "a mass per revolution",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "This dimension has no words yet."),
    };

    /// <summary>Up to four units of a dimension by their symbols, the one offered first in front.</summary>
    internal static string Units(Dimension dimension) =>
        string.Join(", ", Quantities.Units.Of(dimension).Take(4).Select(unit => unit.Symbol));
}
