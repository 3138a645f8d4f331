namespace Lanewright.Core.Statistics;

public static partial class SpecialFunctions
{
    private const double Tiny = 1e-300;
    private const double Precision = 1e-16;
    private const int MostTerms = 100_000;

    /// <summary>
    /// The regularised incomplete beta function I_x(a, b), x between 0 and 1, a and b above 0; relative error below
    /// 1e-12 for a and b up to 1e4. Abramowitz and Stegun 26.5; the continued fraction of A. R. DiDonato and
    /// A. H. Morris, ACM Transactions on Mathematical Software 18 (1992), equation 9.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double RegularizedIncompleteBeta(double a, double b, double x)
    {
        Require.Positive(a);
        Require.Positive(b);
        Require.Probability(x);
        return IncompleteBeta(a, b, x, 1 - x);
    }

    /// <summary>I_x(a, b) with y = 1 - x given apart, so that neither end of the range loses digits.</summary>
    internal static double IncompleteBeta(double a, double b, double x, double y)
    {
        if (x <= 0)
            return 0;
        if (y <= 0)
            return 1;
        if (a * y >= b * x)
            return LowerBeta(a, b, x, y);
        return 1 - LowerBeta(b, a, y, x);
    }

    private static double LowerBeta(double a, double b, double x, double y)
    {
        var factor = BetaFactor(a, b, x, y);
        if (factor == 0)
            return 0;
        return b * x <= 1 && x <= 0.7 ? factor * BetaSeries(a, b, x) / a : factor * BetaFraction(a, b, x, y);
    }

    /// <summary>1 + sum of (a + b)...(a + b + n - 1) / ((a + 1)...(a + n)) x^n: I_x(a, b) is x^a y^b / (a B(a, b))
    /// times this (Abramowitz and Stegun 26.5.4).</summary>
    internal static double BetaSeries(double a, double b, double x)
    {
        double term = 1, sum = 1;
        for (var n = 0; n < MostTerms; n++)
        {
            term *= (a + b + n) / (a + 1 + n) * x;
            sum += term;
            if (term <= Precision * sum)
                break;
        }

        return sum;
    }

    /// <summary>The continued fraction whose product with x^a y^b / B(a, b) is I_x(a, b), for x up to the mean
    /// a/(a + b).</summary>
    internal static double BetaFraction(double a, double b, double x, double y)
    {
        var lambda = (a * y) - (b * x);
        // Evaluated forwards after W. J. Lentz, Applied Optics 15 (1976), as modified by Thompson and Barnett.
        var value = a / (a + 1) * (lambda + 1);
        var c = value;
        double d = 0;
        for (var n = 1; n < MostTerms; n++)
        {
            var twice = a + (2 * n);
            var numerator = (a + n - 1) / (twice - 1) * ((a + b + n - 1) / (twice - 1)) * (n * (b - n) * x * x);
            var denominator = n + (n * (b - n) * x / (twice - 1))
                + ((a + n) / (twice + 1) * (lambda + 1 + (n * (1 + y))));
            d = denominator + (numerator * d);
            d = 1 / (d == 0 ? Tiny : d);
            c = denominator + (numerator / c);
            if (c == 0)
                c = Tiny;
            var change = c * d;
            value *= change;
            if (Math.Abs(change - 1) <= 2 * Precision)
                break;
        }

        return 1 / value;
    }

    /// <summary>x^a y^b / B(a, b), from the distance to the mean so that large a and b lose no digits.</summary>
    private static double BetaFactor(double a, double b, double x, double y)
    {
        var lambda = (a * y) - (b * x);
        var exponent = PowerPart(a, x * ((a + b) / a), -lambda / a) + PowerPart(b, y * ((a + b) / b), lambda / b)
            + StirlingError(a + b) - StirlingError(a) - StirlingError(b);
        return 0.3989422804014327 * Math.Sqrt(a * (b / (a + b))) * Elementary.Exp(exponent);
    }

    /// <summary>a (ln r - e), where r is 1 + e and each is given apart because each is exact where the other is not.
    /// The linear terms of a beta factor's two parts cancel; that of the gamma factor belongs to it.</summary>
    private static double PowerPart(double a, double r, double e) =>
        e > -0.6 ? a * Log1pLessX(e) : a * (Elementary.Log(r) - e);

    /// <summary>
    /// The lower regularised incomplete gamma function P(a, x), a above 0, x from 0 on; relative error below 1e-12 for
    /// a up to 1e6. Series and continued fraction: Abramowitz and Stegun 6.5.29 and 6.5.31.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double RegularizedIncompleteGamma(double a, double x)
    {
        IncompleteGamma(a, x, out var lower, out _);
        return lower;
    }

    /// <summary>Both P(a, x) and 1 - P(a, x), the smaller with full relative accuracy.</summary>
    /// <returns>x^a e^-x / gamma(a), which is x times the density.</returns>
    internal static double IncompleteGamma(double a, double x, out double lower, out double upper)
    {
        Require.Positive(a);
        if (!(x >= 0))
            throw new ArgumentOutOfRangeException(nameof(x), x, "Must not be negative.");
        lower = x == 0 ? 0 : 1;
        upper = 1 - lower;
        if (x == 0 || double.IsPositiveInfinity(x))
            return 0;
        var factor = 0.3989422804014327 * Math.Sqrt(a)
            * Elementary.Exp(PowerPart(a, x / a, (x - a) / a) - StirlingError(a));
        if (x < a + 1)
        {
            lower = Math.Min(1, factor * GammaSeries(a, x) / a);
            upper = 1 - lower;
        }
        else
        {
            upper = factor * GammaFraction(a, x);
            lower = 1 - upper;
        }

        return factor;
    }

    private static double GammaSeries(double a, double x)
    {
        double term = 1, sum = 1;
        for (var n = 1; n < MostTerms; n++)
        {
            term *= x / (a + n);
            sum += term;
            if (term <= Precision * sum)
                break;
        }

        return sum;
    }

    private static double GammaFraction(double a, double x)
    {
        var denominator = x + 1 - a;
        var c = 1 / Tiny;
        var d = 1 / (denominator == 0 ? Tiny : denominator);
        var value = d;
        for (var n = 1; n < MostTerms; n++)
        {
            var numerator = n * (a - n);
            denominator += 2;
            d = denominator + (numerator * d);
            d = 1 / (d == 0 ? Tiny : d);
            c = denominator + (numerator / c);
            if (c == 0)
                c = Tiny;
            var change = c * d;
            value *= change;
            if (Math.Abs(change - 1) <= 2 * Precision)
                break;
        }

        return value;
    }
}
