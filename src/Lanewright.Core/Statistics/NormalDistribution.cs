namespace Lanewright.Core.Statistics;

/// <summary>The standard normal distribution (mean 0, standard deviation 1).</summary>
public static class NormalDistribution
{
    private const double OneOverRoot2Pi = 0.3989422804014327;
    private const double RootHalf = 0.7071067811865476;

    /// <summary>The density at <paramref name="z"/>.</summary>
    public static double Pdf(double z) => OneOverRoot2Pi * ExpOfMinusHalfSquare(z);

    /// <summary>The probability of a value up to <paramref name="z"/>; relative error below 1e-14 in the lower tail
    /// too. Abramowitz and Stegun 26.2.29.</summary>
    public static double Cdf(double z) => z < 0 ? UpperTail(-z) : 1 - UpperTail(z);

    /// <summary>The probability of a value above <paramref name="z"/>, accurate in the upper tail.</summary>
    public static double Survival(double z) => Cdf(-z);

    /// <summary>
    /// The value that is not exceeded with probability <paramref name="p"/>; relative error below 1e-14. Minus infinity
    /// for 0, infinity for 1. The approximation of Abramowitz and Stegun 26.2.23, then Halley's iteration.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not between 0 and 1.</exception>
    public static double Quantile(double p)
    {
        Require.Probability(p);
        if (p == 0)
            return double.NegativeInfinity;
        if (p == 1)
            return double.PositiveInfinity;
        var tail = Math.Min(p, 1 - p);
        var z = QuantileOfUpperTail(tail, Math.Abs(p - 0.5));
        return p < 0.5 ? -z : z;
    }

    /// <summary>z at least 0 with upper tail <paramref name="tail"/>; <paramref name="central"/> is 1/2 - tail, given
    /// apart because near the centre it is the more exact of the two.</summary>
    private static double QuantileOfUpperTail(double tail, double central)
    {
        if (central == 0)
            return 0;
        var w = Math.Sqrt(-2 * Elementary.Log(tail));
        var z = w - ((2.515517 + (w * (0.802853 + (w * 0.010328))))
            / (1 + (w * (1.432788 + (w * (0.189269 + (w * 0.001308)))))));
        if (z < 0.05)
            z = central / OneOverRoot2Pi;
        // The start is good to 5e-4 and each step triples the digits.
        for (var step = 0; step < 2; step++)
        {
            var excess = z < 0.7
                ? central - (0.5 * SpecialFunctions.Erf(z * RootHalf))
                : UpperTail(z) - tail;
            var newton = excess / Pdf(z);
            z += newton / (1 - (0.5 * z * newton));
        }

        return z;
    }

    private static double UpperTail(double z)
    {
        if (double.IsNaN(z))
            return z;
        if (z < 0.71)
            return 0.5 - (0.5 * SpecialFunctions.Erf(z * RootHalf));
        return z > 40 ? 0 : 0.5 * ExpOfMinusHalfSquare(z) * SpecialFunctions.ScaledErfc(z * RootHalf);
    }

    private static double ExpOfMinusHalfSquare(double z)
    {
        if (Math.Abs(z) > 40)
            return 0;
        var square = DoubleDouble.TwoProduct(z, z, out var error);
        return Elementary.ExpOfSum(-0.5 * square, -0.5 * error);
    }
}
