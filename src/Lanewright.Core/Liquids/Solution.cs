using Lanewright.Core.Statistics;

namespace Lanewright.Core.Liquids;

/// <summary>
/// Density of salt solutions by the model of Laliberté and Cooper (2004) with the coefficients of 2009, and strength from
/// density. Strengths are mass fractions, temperatures K, densities kg/m³. Sources and how far tables differ:
/// docs/method/liquids.md.
/// </summary>
public static class Solution
{
    /// <summary>Least temperature answered, K (-25 °C): a spreader's tank is not colder.</summary>
    public const double Coldest = 248.15;

    /// <summary>Highest temperature answered, K (60 °C).</summary>
    public const double Warmest = 333.15;

    /// <summary>The highest strength answered for a salt.</summary>
    public static double MostStrength(SaltKind salt) => DensityModel.Of(salt)?.MostStrength ?? 0;

    /// <summary>Density of one salt's solution; null outside the range answered.</summary>
    public static double? Density(SaltKind salt, double strength, double kelvins) => Density([(salt, strength)], kelvins);

    /// <summary>Density of a solution of several salts; null outside the range answered.</summary>
    public static double? Density(ReadOnlySpan<(SaltKind Salt, double Strength)> salts, double kelvins)
    {
        if (!(kelvins >= Coldest && kelvins <= Warmest)) return null;
        var t = kelvins - 273.15;
        var total = 0.0;
        foreach (var (salt, strength) in salts)
        {
            if (!(strength >= 0 && strength <= MostStrength(salt))) return null;
            total += strength;
        }

        var volume = (1 - total) / WaterDensity(t);
        foreach (var (salt, strength) in salts)
        {
            if (DensityModel.Of(salt) is { } model && strength > 0) volume += strength / Apparent(model, total, t);
        }

        return 1 / volume;
    }

    /// <summary>How far the model may be from the truth, plus or minus, kg/m³.</summary>
    public static double PlusMinus(SaltKind salt, double kelvins)
    {
        if (DensityModel.Of(salt) is not { } model) return 0.2;
        return model.PlusMinus + (model.PerDegree * Math.Max(0, model.Coldest + 273.15 - kelvins));
    }

    /// <summary>Whether the model is used below the temperatures it was fitted to.</summary>
    public static bool IsExtrapolated(SaltKind salt, double kelvins) =>
        DensityModel.Of(salt) is { } model && kelvins < model.Coldest + 273.15 - 1e-9;

    /// <summary>The strength with a density; null when no strength in range has it. The inverse of <see cref="Density(SaltKind, double, double)"/>.</summary>
    public static double? Strength(SaltKind salt, double density, double kelvins)
    {
        double low = 0, high = MostStrength(salt);
        if (Density(salt, low, kelvins) is not { } least || Density(salt, high, kelvins) is not { } most) return null;
        // A hydrometer in plain water may read a little low: that is no salt, not a wrong reading.
        if (density < least) return density >= least - 1 ? 0 : null;
        if (!(density <= most)) return null;
        // Density grows steadily with strength, so halving finds the only one.
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (Density(salt, middle, kelvins)!.Value < density) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    /// <summary>By how much density grows with strength, kg/m³ for each unit of mass fraction.</summary>
    internal static double ByStrength(SaltKind salt, double strength, double kelvins)
    {
        const double Step = 1e-5;
        var low = Math.Max(0, strength - Step);
        var high = Math.Min(MostStrength(salt), strength + Step);
        return (Density(salt, high, kelvins)!.Value - Density(salt, low, kelvins)!.Value) / (high - low);
    }

    /// <summary>By how much density grows with temperature, kg/m³ per K.</summary>
    internal static double ByTemperature(SaltKind salt, double strength, double kelvins)
    {
        const double Step = 0.01;
        var low = Math.Max(Coldest, kelvins - Step);
        var high = Math.Min(Warmest, kelvins + Step);
        return (Density(salt, strength, high)!.Value - Density(salt, strength, low)!.Value) / (high - low);
    }

    /// <summary>Water as the model takes it, kg/m³, at °C; agrees with <see cref="Water"/> within 0.01 from 0 to 40 °C and continues below.</summary>
    public static double WaterDensity(double celsius)
    {
        var t = celsius;
        var sum = (-2.8054253e-10 * t) + 1.0556302e-7;
        sum = (sum * t) - 4.6170461e-5;
        sum = (sum * t) - 0.0079870401;
        sum = (sum * t) + 16.945176;
        return ((sum * t) + 999.83952) / (1 + (0.01687985 * t));
    }

    /// <summary>Apparent density of a salt in solution, kg/m³.</summary>
    /// <param name="salt">Which; not water.</param>
    /// <param name="total">Mass fraction of all salts together.</param>
    /// <param name="celsius">Temperature, °C.</param>
    public static double Apparent(SaltKind salt, double total, double celsius) =>
        DensityModel.Of(salt) is { } model
            ? Apparent(model, total, celsius)
            : throw new ArgumentOutOfRangeException(nameof(salt), salt, "Water has no salt.");

    private static double Apparent(DensityModel model, double total, double t)
    {
        var bracket = t + model.C4;
        return ((model.C0 * total) + model.C1) * Elementary.Exp(1e-6 * bracket * bracket)
            / (total + model.C2 + (model.C3 * t));
    }
}
