namespace Lanewright.Core.Statistics;

/// <summary>The chi-squared distribution with any positive real number of degrees of freedom.</summary>
/// <remarks>Through the incomplete gamma function: Abramowitz and Stegun 26.4.19.</remarks>
public static class ChiSquared
{
    /// <summary>The probability of a value up to <paramref name="x"/> with <paramref name="nu"/> degrees of freedom; 0
    /// for negative x. Relative error below 1e-12 for nu up to 1e6.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public static double Cdf(double x, double nu)
    {
        Require.Positive(nu);
        if (double.IsNaN(x))
            return x;
        SpecialFunctions.IncompleteGamma(nu / 2, Math.Max(0, x) / 2, out var lower, out _);
        return lower;
    }

    /// <summary>The probability of a value above <paramref name="x"/>, accurate in the upper tail.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nu"/> is not above 0.</exception>
    public static double Survival(double x, double nu)
    {
        Require.Positive(nu);
        if (double.IsNaN(x))
            return x;
        SpecialFunctions.IncompleteGamma(nu / 2, Math.Max(0, x) / 2, out _, out var upper);
        return upper;
    }

    /// <summary>
    /// The value that is not exceeded with probability <paramref name="p"/>; relative error below 1e-10. The
    /// Wilson-Hilferty start (Abramowitz and Stegun 26.4.17), then Newton's steps in logarithms inside a bracket.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not between 0 and 1, or
    /// <paramref name="nu"/> is not above 0 and finite.</exception>
    public static double Quantile(double p, double nu)
    {
        Require.Probability(p);
        Require.Positive(nu);
        if (double.IsPositiveInfinity(nu))
            throw new ArgumentOutOfRangeException(nameof(nu), nu, "Must be finite.");
        if (p is 0 or 1)
            return p == 0 ? 0 : double.PositiveInfinity;

        var a = nu / 2;
        var useLower = p <= 0.5;
        var target = useLower ? p : 1 - p;
        var x = Start(p, nu);
        double low = 0, high = double.PositiveInfinity;
        for (var step = 0; step < 500; step++)
        {
            // Smaller than any normal double: the answer is 0 to working precision.
            if (x < 1e-300)
                return x;
            var weight = SpecialFunctions.IncompleteGamma(a, x / 2, out var lower, out var upper);
            var area = useLower ? lower : upper;
            if (area < target == useLower)
                low = x;
            else
                high = x;
            var move = (Elementary.Log(target) - Elementary.Log(area)) * area / weight * (useLower ? 1 : -1);
            var next = x * Elementary.Exp(move);
            if (Math.Abs(move) <= 1e-9)
                return next;
            if (!(next > low && next < high))
                next = double.IsInfinity(high) ? 2 * x : low == 0 ? high / 2 : 0.5 * (low + high);
            x = next;
        }

        return x;
    }

    private static double Start(double p, double nu)
    {
        var a = nu / 2;
        var spread = 2 / (9 * nu);
        var root = 1 - spread + (NormalDistribution.Quantile(p) * Math.Sqrt(spread));
        if (root > 0.3)
            return nu * root * root * root;
        // The first term of the series: P is near (x/2)^a / gamma(a + 1) for small x.
        return 2 * Elementary.Exp((Elementary.Log(p) + SpecialFunctions.LogGamma(a + 1)) / a);
    }
}
