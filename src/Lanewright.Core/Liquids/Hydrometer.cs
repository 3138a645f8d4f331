namespace Lanewright.Core.Liquids;

/// <summary>A glass hydrometer, marked in specific gravity or in degrees of a salometer at one temperature.</summary>
/// <param name="ScaleKelvins">The temperature it is marked for, K, both of the liquid and of the water it is compared with.</param>
public sealed record Hydrometer(double ScaleKelvins)
{
    /// <summary>By how much the volume of glass grows, per K (from memory).</summary>
    public const double GlassExpansion = 25e-6;

    /// <summary>The usual temperature of the scale, 60 °F, in K.</summary>
    public const double SixtyFahrenheit = (60 + 459.67) * 5 / 9;

    /// <summary>What it is divided by: the water of its scale, kg/m³.</summary>
    public double Water => Solution.WaterDensity(ScaleKelvins - 273.15);

    /// <summary>Density of the liquid it floats in, kg/m³.</summary>
    /// <param name="specificGravity">What it shows.</param>
    /// <param name="kelvins">Temperature of liquid and glass, K.</param>
    public double Density(double specificGravity, double kelvins) =>
        specificGravity * Water / (1 + (GlassExpansion * (kelvins - ScaleKelvins)));

    /// <summary>What it shows in a liquid.</summary>
    public double Reading(double density, double kelvins) =>
        density * (1 + (GlassExpansion * (kelvins - ScaleKelvins))) / Water;

    /// <summary>Specific gravity at degrees of a salometer.</summary>
    /// <param name="degrees">Degrees, percent of <paramref name="full"/>.</param>
    /// <param name="full">Strength at 100 degrees.</param>
    /// <returns>Null outside the range of the density model.</returns>
    public double? SpecificGravity(double degrees, double full) =>
        Solution.Density(SaltKind.SodiumChloride, degrees / 100 * full, ScaleKelvins) / Water;
}
