using Lanewright.Core.Quantities;

namespace Lanewright.Documents;

/// <summary>
/// The D-SI text of each dimension's SI unit (D-SI 2.1.0, doi 10.5281/zenodo.3366901). Pulses and turns are counts, so they are the
/// unit one.
/// </summary>
public static class SiUnits
{
    /// <summary>The text of the unit in which Core keeps values of a dimension.</summary>
    public static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Fraction or Dimension.Pulses or Dimension.Revolutions or Dimension.PulsesPerRevolution => @"\one",
        Dimension.Mass or Dimension.MassPerPulse or Dimension.MassPerRevolution => @"\kilogram",
        Dimension.Length => @"\metre",
        Dimension.Area => @"\metre\tothe{2}",
        Dimension.Volume => @"\metre\tothe{3}",
        Dimension.Time => @"\second",
        Dimension.Speed => @"\metre\second\tothe{-1}",
        Dimension.Density => @"\kilogram\metre\tothe{-3}",
        Dimension.MassFlow => @"\kilogram\second\tothe{-1}",
        Dimension.VolumeFlow => @"\metre\tothe{3}\second\tothe{-1}",
        Dimension.RotationalSpeed => @"\second\tothe{-1}",
        Dimension.Temperature => @"\kelvin",
        Dimension.LaneRate => @"\kilogram\metre\tothe{-1}",
        Dimension.AreaRate => @"\kilogram\metre\tothe{-2}",
        Dimension.LiquidLaneRate => @"\metre\tothe{2}",
        Dimension.LiquidAreaRate => @"\metre",
        Dimension.LiquidPerMass => @"\metre\tothe{3}\kilogram\tothe{-1}",
        Dimension.PulsesPerMass => @"\kilogram\tothe{-1}",
        Dimension.PulsesPerVolume => @"\metre\tothe{-3}",
        Dimension.PulsesPerLength => @"\metre\tothe{-1}",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "A dimension without a unit in D-SI."),
    };
}
