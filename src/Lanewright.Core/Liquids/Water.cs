namespace Lanewright.Core.Liquids;

/// <summary>Water without air in it.</summary>
public static class Water
{
    /// <summary>Least temperature of the formula, K (0 °C).</summary>
    public const double Coldest = 273.15;

    /// <summary>Highest temperature of the formula, K (40 °C).</summary>
    public const double Warmest = 313.15;

    /// <summary>
    /// Density in kg/m³: Tanaka and others, Metrologia 38 (2001) 301, as two open programs write it (docs/method/liquids.md).
    /// </summary>
    /// <param name="kelvins">Temperature, K.</param>
    /// <returns>The density; null outside 0 to 40 °C.</returns>
    public static double? Density(double kelvins)
    {
        if (!(kelvins >= Coldest - 1e-9 && kelvins <= Warmest + 1e-9)) return null;
        var t = kelvins - 273.15;
        var d = t - 3.983035;
        return 999.974950 * (1 - (d * d * (t + 301.797) / (522528.9 * (t + 69.34881))));
    }
}
