namespace Lanewright.Core.Statistics;

/// <summary>
/// Student's t distribution with any positive real number of degrees of freedom; infinitely many mean the standard
/// normal distribution.
/// </summary>
/// <remarks>Through the incomplete beta function: Abramowitz and Stegun 26.7.1 and 26.5.27.</remarks>
public static class StudentT
{
    private const double OneOverRootPi = 0.5641895835477563;

    // From here on t and z agree to the last bit of a double wherever the density is not 0.
    private const double PracticallyInfinite = 1e20;

    /// <summary>The density at <paramref name="t"/> with <paramref name="nu"/> degrees of freedom.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public static double Pdf(double t, double nu)
    {
        Require.Positive(nu);
        if (nu >= PracticallyInfinite)
            return NormalDistribution.Pdf(t);
        return double.IsNaN(t) ? t : Density(t, nu, DensityAtZero(nu));
    }

    /// <summary>The probability of a value up to <paramref name="t"/> with <paramref name="nu"/> degrees of freedom;
    /// relative error below 1e-13 in the lower tail too.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public static double Cdf(double t, double nu)
    {
        Require.Positive(nu);
        if (nu >= PracticallyInfinite)
            return NormalDistribution.Cdf(t);
        if (double.IsNaN(t))
            return t;
        if (double.IsInfinity(t))
            return t > 0 ? 1 : 0;
        var area = Area(Math.Abs(t), nu, DensityAtZero(nu), out _, out var isCentral);
        var tail = isCentral ? 0.5 - area : area;
        return t < 0 ? tail : isCentral ? 0.5 + area : 1 - tail;
    }

    /// <summary>
    /// The value that is not exceeded with probability <paramref name="p"/> with <paramref name="nu"/> degrees of
    /// freedom; relative error below 1e-12. For a two-sided coverage probability P ask for p = (1 + P)/2.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not between 0 and 1, or
    /// <paramref name="nu"/> is not above 0.</exception>
    public static double Quantile(double p, double nu)
    {
        Require.Probability(p);
        Require.Positive(nu);
        if (nu >= PracticallyInfinite || p is 0 or 1)
            return NormalDistribution.Quantile(p);
        var tail = Math.Min(p, 1 - p);
        var central = Math.Abs(p - 0.5);
        var t = nu switch
        {
            1 => tail < 0.25
                ? Elementary.Cos(Math.PI * tail) / Elementary.Sin(Math.PI * tail)
                : Elementary.Sin(Math.PI * central) / Elementary.Cos(Math.PI * central),
            2 => 2 * central / Math.Sqrt(2 * tail * (1 - tail)),
            _ => central == 0 ? 0 : Solve(tail, central, nu),
        };
        return p < 0.5 ? -t : t;
    }

    /// <summary>
    /// Halley's iteration on the area. Far from the root a Newton step in logarithms of tail and t is taken instead:
    /// the logarithm of the tail is concave in ln t, so those steps cannot run away.
    /// </summary>
    private static double Solve(double tail, double central, double nu)
    {
        var peak = DensityAtZero(nu);
        var t = Start(tail, central, nu, peak);
        for (var step = 0; step < 200; step++)
        {
            var area = Area(t, nu, peak, out var weight, out var isCentral);
            if (!(weight > 0) || double.IsInfinity(t))
                return t;
            var upper = isCentral ? 0.5 - area : area;
            if (Math.Abs(upper - tail) > 0.1 * tail)
            {
                t *= Elementary.Exp((Elementary.Log(upper) - Elementary.Log(tail)) * upper / weight);
                continue;
            }

            // Relative steps; the curvature of the area is -(nu + 1) t/(nu + t^2) times its slope.
            var newton = (isCentral ? central - area : area - tail) / weight;
            var halley = newton / (1 - (0.5 * newton * (nu + 1) / (1 + (nu / t / t))));
            t *= halley > -0.5 ? 1 + halley : 0.5;
            if (Math.Abs(halley) <= 1e-6)
                return t;
        }

        return t;
    }

    /// <summary>The smaller of two starts: the expansion about the normal quantile (Abramowitz and Stegun 26.7.5), good
    /// for many degrees of freedom, and the power law of the far tail, which is never below the root.</summary>
    private static double Start(double tail, double central, double nu, double peak)
    {
        var powerLaw = Math.Sqrt(nu) * Elementary.Pow(peak * Math.Sqrt(nu) / (nu * tail), 1 / nu);
        var z = -NormalDistribution.Quantile(tail);
        if (nu < 3)
            return tail > 0.3 ? Math.Min(central / peak, powerLaw) : powerLaw;
        var s = z * z;
        var g1 = z * (s + 1) / 4;
        var g2 = z * ((((5 * s) + 16) * s) + 3) / 96;
        var g3 = z * ((((((3 * s) + 19) * s) + 17) * s) - 15) / 384;
        return Math.Min(z + ((g1 + ((g2 + (g3 / nu)) / nu)) / nu), powerLaw);
    }

    /// <summary>
    /// For t from 0 on: the area between 0 and t near the centre, the area above t elsewhere, both without
    /// cancellation; and t times the density, which stays in range where the density alone would underflow.
    /// </summary>
    private static double Area(double t, double nu, double peak, out double weight, out bool isCentral)
    {
        var ratio = t / Math.Sqrt(nu);
        var square = ratio * ratio;
        var y = double.IsInfinity(square) ? 1 : square / (1 + square);
        weight = peak * Math.Sqrt(nu * y) * Elementary.Exp(-0.5 * nu * LogOnePlusSquare(ratio));
        isCentral = t * t <= 2 && y <= 0.5;
        return isCentral
            ? weight * SpecialFunctions.BetaSeries(0.5, nu / 2, y)
            : 0.5 * weight * SpecialFunctions.BetaFraction(nu / 2, 0.5, 1 / (1 + square), y);
    }

    private static double Density(double t, double nu, double peak) =>
        peak * Elementary.Exp(-0.5 * (nu + 1) * LogOnePlusSquare(t / Math.Sqrt(nu)));

    private static double LogOnePlusSquare(double ratio) => Math.Abs(ratio) < 1e150
        ? Elementary.Log1p(ratio * ratio)
        : 2 * Elementary.Log(Math.Abs(ratio));

    /// <summary>gamma((nu + 1)/2) / (gamma(nu/2) sqrt(nu pi)).</summary>
    private static double DensityAtZero(double nu)
    {
        var a = nu / 2;
        var ratio = 1.0;
        while (a < 10)
        {
            // gamma(a + 1/2)/gamma(a) is a/(a + 1/2) times the same ratio at a + 1.
            ratio *= a / (a + 0.5);
            a += 1;
        }

        var exponent = (a * SpecialFunctions.Log1pLessX(0.5 / a))
            + SpecialFunctions.StirlingError(a + 0.5) - SpecialFunctions.StirlingError(a);
        return ratio * Math.Sqrt(a / nu) * Elementary.Exp(exponent) * OneOverRootPi;
    }
}
