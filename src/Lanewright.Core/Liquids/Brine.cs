namespace Lanewright.Core.Liquids;

/// <summary>Arithmetic of brine by mass, since volumes do not add up; and how much sodium chloride water takes.</summary>
public static class Brine
{
    /// <summary>Strength at 100 degrees of a salometer, unless the instrument says otherwise (26.4 % and 26.5 % are met too).</summary>
    public const double FullSalometer = 0.26395;

    /// <summary>
    /// The strength of a saturated solution of sodium chloride: 0.26218 + 7.2e-5 t + 1.06e-6 t² with t in °C (Chou 1987, as an
    /// open simulator of reservoirs writes it).
    /// </summary>
    /// <returns>The mass fraction; null outside 0 to 100 °C. Below 0.1 °C another solid comes out (from memory).</returns>
    public static double? Solubility(double kelvins)
    {
        var t = kelvins - 273.15;
        return t is >= -1e-9 and <= 100 ? 0.26218 + (7.2e-5 * t) + (1.06e-6 * t * t) : null;
    }

    /// <summary>Water to add to a mass of brine, kg: m (w1 / w2 - 1).</summary>
    public static double WaterToAdd(double mass, double from, double to) => mass * ((from / to) - 1);

    /// <summary>Delivered salt that holds a mass of pure dry salt.</summary>
    /// <param name="pure">Pure salt wanted, kg.</param>
    /// <param name="purity">Share of it in the dry delivery, above 0 up to 1.</param>
    /// <param name="moistureOfDry">Water by mass of the dry delivery.</param>
    public static DampSalt Delivered(double pure, double purity, double moistureOfDry)
    {
        var dry = pure / purity;
        return new(dry * (1 + moistureOfDry), dry * moistureOfDry, dry - pure);
    }

    /// <summary>
    /// Delivered salt to add to a mass of brine, kg: m (w2 - w1) / (s - w2 (1 - i)) with the shares s of pure salt and i of what
    /// does not dissolve in it. The water that it brings is counted; the strength is that of the liquid without the insolubles.
    /// </summary>
    /// <returns>The mass; null when the salt holds too much water to reach the strength.</returns>
    public static double? DeliveredToAdd(double mass, double from, double to, double purity, double moistureOfDry)
    {
        var gain = Gain(to, purity, moistureOfDry);
        return gain > 0 ? mass * (to - from) / gain : null;
    }

    /// <summary>What a mass of delivered salt brings beyond the wanted strength, by that mass.</summary>
    internal static double Gain(double to, double purity, double moistureOfDry) =>
        (purity - (to * (purity + moistureOfDry))) / (1 + moistureOfDry);

    /// <summary>Two solutions poured together: strengths by salt, by mass.</summary>
    public static (double First, double Second) Blend(double firstMass, double firstStrength, double secondMass, double secondStrength)
    {
        var total = firstMass + secondMass;
        return (firstMass * firstStrength / total, secondMass * secondStrength / total);
    }
}

/// <summary>Salt as it is delivered.</summary>
/// <param name="Mass">All of it, kg.</param>
/// <param name="Water">Water in it, kg.</param>
/// <param name="Insoluble">Neither salt nor water, kg.</param>
public readonly record struct DampSalt(double Mass, double Water, double Insoluble);
