namespace Lanewright.Core.Statistics;

/// <summary>Fisher's F distribution of a ratio of two variances, degrees of freedom any positive real numbers or
/// infinite.</summary>
/// <remarks>Through the incomplete beta function: Abramowitz and Stegun 26.6.2.</remarks>
public static class FisherF
{
    /// <summary>The probability of a ratio up to <paramref name="f"/>; 0 for negative f.</summary>
    /// <param name="f">The ratio of the two variances.</param>
    /// <param name="nu1">Degrees of freedom of the variance above the line.</param>
    /// <param name="nu2">Degrees of freedom of the variance below the line.</param>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not above 0.</exception>
    public static double Cdf(double f, double nu1, double nu2)
    {
        Require.Positive(nu1);
        Require.Positive(nu2);
        if (double.IsNaN(f) || f <= 0)
            return double.IsNaN(f) ? f : 0;
        if (double.IsPositiveInfinity(f))
            return 1;
        if (double.IsInfinity(nu1) && double.IsInfinity(nu2))
            return f < 1 ? 0 : 1;
        if (double.IsInfinity(nu2))
            return ChiSquared.Cdf(nu1 * f, nu1);
        if (double.IsInfinity(nu1))
            return ChiSquared.Survival(nu2 / f, nu2);
        // Both parts of one, so that neither tail loses digits.
        var x = 1 / (1 + (nu2 / nu1 / f));
        var y = 1 / (1 + (nu1 * f / nu2));
        return SpecialFunctions.IncompleteBeta(nu1 / 2, nu2 / 2, x, y);
    }

    /// <summary>The probability of a ratio above <paramref name="f"/> (the p-value of a variance-ratio test), accurate
    /// in the upper tail. Arguments as for <see cref="Cdf"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not above 0.</exception>
    public static double Survival(double f, double nu1, double nu2) =>
        f <= 0 ? 1 - Cdf(f, nu1, nu2) : Cdf(1 / f, nu2, nu1);
}
