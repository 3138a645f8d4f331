using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Liquids;

/// <summary>The air around a weighing.</summary>
public static class Air
{
    /// <summary>Density of the weights that a scale is adjusted with, by convention, kg/m³ (OIML D 28, from memory).</summary>
    public const double WeightDensity = 8000;

    /// <summary>Density of air in kg/m³ where nobody looked: between a warm day in the mountains and a cold one at the sea.</summary>
    public const double Usual = 1.2;

    /// <summary>How far it may be from <see cref="Usual"/>, plus or minus, kg/m³.</summary>
    public const double UsualPlusMinus = 0.2;

    /// <summary>
    /// Density in kg/m³, the approximation (0.34848 p - 0.009 h exp(0.061 t)) / (273.15 + t) with p in hPa, h in % and t in °C
    /// (CIPM's approximate form, from memory; a printed table of Z factors bears it out, see docs/method/liquids.md).
    /// </summary>
    /// <param name="kelvins">Temperature, K.</param>
    /// <param name="hectopascals">Pressure at the place, hPa, not reduced to sea level.</param>
    /// <param name="humidity">Relative humidity as a share.</param>
    /// <returns>The density; null outside -40 to 45 °C, 500 to 1100 hPa, 0 to 1.</returns>
    public static double? Density(double kelvins, double hectopascals, double humidity)
    {
        var t = kelvins - 273.15;
        if (!(t is >= -40 and <= 45 && hectopascals is >= 500 and <= 1100 && humidity is >= 0 and <= 1)) return null;
        return ((0.34848 * hectopascals) - (0.9 * humidity * Elementary.Exp(0.061 * t))) / kelvins;
    }

    /// <summary>
    /// Volume of a weighed liquid in m³: m (1 - a/b) / (d - a), with the densities of air a, weights b and liquid d. For water
    /// and a mass of 1 this is the Z factor of gravimetric calibration.
    /// </summary>
    /// <param name="net">What the scale shows, net, kg.</param>
    /// <param name="liquid">Density of the liquid, kg/m³; above the air's.</param>
    /// <param name="air">Density of the air, kg/m³.</param>
    public static Measured Volume(Measured net, Measured liquid, Measured air) =>
        net * (1 - (air / WeightDensity)) / (liquid - air);
}
