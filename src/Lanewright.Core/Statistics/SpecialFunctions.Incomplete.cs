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

    /// <summary>1 + sum of (a + b)...(a + b + n - 1) / ((a + 1)...(a + n)) x^n: I_x(a, b) is x^a y^b / (a B(a, b)) times
    /// this (Abramowitz and Stegun 26.5.4).</summary>
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
            var denominator = n + (n * (b - n) * x / (twice - 1)) + ((a + n) / (twice + 1) * (lambda + 1 + (n * (1 + y))));
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
        var exponent = PowerPart(a, x, -lambda / a, a + b) + PowerPart(b, y, lambda / b, a + b)
            + StirlingError(a + b) - StirlingError(a) - StirlingError(b);
        return 0.3989422804014327 * Math.Sqrt(a * (b / (a + b))) * Elementary.Exp(exponent);
    }

    /// <summary>a [ln(1 + e) - e] with 1 + e = x (a + b)/a; the two linear terms -lambda and lambda cancel.</summary>
    private static double PowerPart(double a, double x, double e, double sum) => e > -0.6
        ? a * Log1pLessX(e)
        : a * (Elementary.Log(x * (sum / a)) - e);
}
