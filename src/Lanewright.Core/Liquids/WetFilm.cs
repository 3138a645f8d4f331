namespace Lanewright.Core.Liquids;

/// <summary>
/// Salt in an even film of water, by equilibrium: w = S / (S + W), with S the salt and W the water in kg/m²; the film begins to
/// freeze at the freezing point of that strength (docs/method/film.md).
/// </summary>
public static class WetFilm
{
    /// <summary>Strength of the film, as a mass fraction.</summary>
    /// <param name="salt">kg/m², 0 or more.</param>
    /// <param name="water">kg/m², above 0 (1 mm of water is 1 kg/m²).</param>
    public static double Strength(double salt, double water) => salt / (salt + water);

    /// <summary>Salt that keeps a film liquid down to a temperature, kg/m²; null below what the salt can do, or where its freezing
    /// point is not known.</summary>
    /// <param name="salt">Which salt.</param>
    /// <param name="water">kg/m², above 0.</param>
    /// <param name="kelvins">Temperature of the pavement, K.</param>
    public static double? Needed(SaltKind salt, double water, double kelvins)
    {
        if (kelvins >= 273.15) return 0;
        var most = FreezingPoint.Eutectic(salt)?.Strength ?? 0;
        // The freezing point falls steadily up to the eutectic, so halving finds the strength.
        while (most > 0 && FreezingPoint.Of(salt, most) is null) most -= 0.001;
        if (!(most > 0) || FreezingPoint.Of(salt, most)!.Kelvins > kelvins) return null;
        double low = 0, high = most;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (FreezingPoint.Of(salt, middle) is { } point && point.Kelvins <= kelvins) high = middle;
            else low = middle;
        }

        return water * high / (1 - high);
    }
}
