namespace Lanewright.Core.Statistics;

/// <summary>The error function and the logarithm of the gamma function; same bits on every machine.</summary>
public static partial class SpecialFunctions
{
    private const double TwoOverRootPi = 1.1283791670955126;
    private const double HalfLn2Pi = 0.9189385332046728;

    /// <summary>
    /// The error function, (2/sqrt pi) times the integral of exp(-t^2) from 0 to <paramref name="x"/>; relative error
    /// below 1e-15. Series: Abramowitz and Stegun 7.1.5.
    /// </summary>
    public static double Erf(double x)
    {
        var magnitude = Math.Abs(x);
        if (magnitude < 0.5)
            return ErfSeries(x);
        var value = 1 - Erfc(magnitude);
        return x < 0 ? -value : value;
    }

    /// <summary>1 less the error function, with full relative accuracy (1e-15) in the upper tail.</summary>
    public static double Erfc(double x)
    {
        if (x < 0.5)
            return x > -0.5 ? 1 - ErfSeries(x) : 2 - Erfc(-x);
        if (x > 28)
            return 0;
        var square = DoubleDouble.TwoProduct(x, x, out var error);
        return Elementary.ExpOfSum(-square, -error) * ScaledErfc(x);
    }

    /// <summary>
    /// The natural logarithm of the gamma function for <paramref name="x"/> above 0; relative error below 1e-14, or
    /// absolute below 1e-14 near the zeros at 1 and 2. Stirling's series: Abramowitz and Stegun 6.1.41.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not above 0.</exception>
    public static double LogGamma(double x)
    {
        Require.Positive(x);
        if (double.IsPositiveInfinity(x))
            return x;
        return ((x - 0.5) * Elementary.Log(x)) - x + HalfLn2Pi + StirlingError(x);
    }

    /// <summary>
    /// ln gamma(x) - [(x - 1/2) ln x - x + (1/2) ln 2 pi]. From 10 on the series of Abramowitz and Stegun 6.1.41; below
    /// that by gamma(x + 1) = x gamma(x).
    /// </summary>
    internal static double StirlingError(double x)
    {
        var shift = 0.0;
        while (x < 10)
        {
            shift += ((x + 0.5) * Elementary.Log1p(1 / x)) - 1;
            x += 1;
        }

        var s = 1 / (x * x);
        return shift + ((1 / 12.0 - (s * (1 / 360.0 - (s * (1 / 1260.0 - (s * (1 / 1680.0 - (s * (1 / 1188.0
            - (s * (691 / 360360.0 - (s * (1 / 156.0 - (s * (3617 / 122400.0))))))))))))))) / x);
    }

    /// <summary>ln(1 + x) - x without the cancellation at small x, x above -1.</summary>
    internal static double Log1pLessX(double x)
    {
        if (Math.Abs(x) > 0.3)
            return Elementary.Log1p(x) - x;
        // With s = x/(2 + x): ln(1 + x) = 2 (s + s^3/3 + ...) and x = 2 s + x s.
        var s = x / (2 + x);
        var square = s * s;
        var series = 1 / 3.0 + (square * (1 / 5.0 + (square * (1 / 7.0 + (square * (1 / 9.0 + (square * (1 / 11.0
            + (square * (1 / 13.0 + (square * (1 / 15.0 + (square * (1 / 17.0 + (square / 19)))))))))))))));
        return s * ((2 * square * series) - x);
    }

    /// <summary>exp(x^2) erfc(x) for x from 0.5 on: a Chebyshev sum in (x - 4)/(x + 3), remainder 1e-18.</summary>
    internal static double ScaledErfc(double x)
    {
        var s = (x - 4) / (x + 3);
        var twice = 2 * s;
        double next = 0, afterNext = 0;
        var terms = ScaledErfcTerms;
        for (var n = terms.Length - 1; n >= 1; n--)
            (next, afterNext) = ((twice * next) - afterNext + terms[n], next);
        return ((s * next) - afterNext + terms[0]) / (x + 3);
    }

    // Chebyshev coefficients of (x + 3) exp(x^2) erfc(x) on x >= 0.5, computed in 60 digits at 48 Chebyshev points.
    private static ReadOnlySpan<double> ScaledErfcTerms =>
    [
        1.1524464011975497, -0.7520774257150896, 0.20027266807544394, -0.04260547909736576, 0.0068295045686714816,
        -0.0006913182204502768, 5.638199110659617e-06, 1.1014269903565408e-05, -1.3559965891164476e-06,
        -1.018301676780893e-07, 3.9064296956969565e-08, -7.440460510579276e-12, -1.0252307411489935e-09,
        3.839894117956319e-11, 2.914923574058876e-11, -1.5757236804853054e-12, -9.359859669085587e-13,
        4.5623603194493126e-14, 3.349998418368677e-14, -7.449265813067267e-16, -1.281287144602533e-15,
        -2.838815734098364e-17, 4.9520286791923116e-17, 4.172132918632426e-18,
    ];

    private static double ErfSeries(double x)
    {
        var s = x * x;
        double sum = 0;
        var terms = ErfTerms.Values;
        for (var n = terms.Length - 1; n >= 0; n--)
            sum = (sum * s) + terms[n];
        return x * sum;
    }

    private static class ErfTerms
    {
        /// <summary>(2/sqrt pi) (-1)^n / (n! (2 n + 1)).</summary>
        internal static readonly double[] Values = Make();

        private static double[] Make()
        {
            var values = new double[14];
            var factorial = 1.0;
            for (var n = 0; n < values.Length; n++)
            {
                if (n > 0)
                    factorial *= -n;
                values[n] = TwoOverRootPi / (factorial * ((2 * n) + 1));
            }

            return values;
        }
    }
}
