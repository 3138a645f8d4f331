using Lanewright.Core.Liquids;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>Chloride in what was spread, by atomic masses (docs/method/season-report.md).</summary>
public static class Chloride
{
    // Conventional atomic masses, IUPAC 2021 abridged.
    private const double Sodium = 22.990;
    private const double Chlorine = 35.45;
    private const double Calcium = 40.078;
    private const double Magnesium = 24.305;

    /// <summary>Mass of chloride in a unit mass of a dry, pure salt; 0 for one without chloride.</summary>
    public static double Share(SaltKind salt) => salt switch
    {
        SaltKind.SodiumChloride => Chlorine / (Sodium + Chlorine),
        SaltKind.CalciumChloride => 2 * Chlorine / (Calcium + (2 * Chlorine)),
        SaltKind.MagnesiumChloride => 2 * Chlorine / (Magnesium + (2 * Chlorine)),
        _ => 0,
    };

    /// <summary>Chloride in a mass of damp salt, kg.</summary>
    /// <param name="mass">As spread, with its water, kg.</param>
    /// <param name="salt">The salt.</param>
    /// <param name="moisture">Water as a share of the whole, 0 or more and below 1.</param>
    /// <param name="purity">Salt as a share of what is not water, above 0 and at most 1.</param>
    public static Measured InSalt(Measured mass, SaltKind salt, double moisture, double purity)
    {
        if (!(moisture is >= 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(moisture), moisture, "Must be 0 or more and below 1.");
        if (!(purity is > 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(purity), purity, "Must be above 0 and at most 1.");
        return mass * (Share(salt) * (1 - moisture) * purity);
    }

    /// <summary>
    /// What a season of a spreader no longer puts down since its calibration, kg: asked x (before - after); negative when it had put
    /// down too little.
    /// </summary>
    /// <param name="asked">What is asked of it in a season, kg.</param>
    /// <param name="before">Delivered by asked before.</param>
    /// <param name="after">Delivered by asked since.</param>
    public static Measured Saved(Measured asked, Measured before, Measured after) => asked * (before - after);
}
