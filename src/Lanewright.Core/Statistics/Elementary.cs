namespace Lanewright.Core.Statistics;

/// <summary>
/// Exponential, logarithm, power, sine and cosine that give the same bits on every machine and in the browser,
/// because they use only + - * / and the fused multiply-add, which IEEE 754 defines to the last bit. The error is
/// below one unit in the last place (<c>docs/method/statistics.md</c>); special values follow IEEE 754-2019
/// section 9.2, as <see cref="Math"/> does.
/// </summary>
public static partial class Elementary
{
    private const double InverseLn2 = 1.4426950408889634;

    // ln 2 in two parts; the first has 42 bits, so that its product with an exponent is exact.
    private const double Ln2High = 0.6931471805598903;
    private const double Ln2Low = 5.497923018708371e-14;

    /// <summary>e to the power <paramref name="x"/>. Infinite above 709.78, 0 below -745.13, NaN for NaN.</summary>
    public static double Exp(double x) => ExpOfSum(x, 0);

    /// <summary>e to the power <paramref name="x"/>, less 1, with full relative accuracy near x = 0.</summary>
    public static double Expm1(double x)
    {
        if (double.IsNaN(x) || x == 0)
            return x;
        if (x > 709.8)
            return double.PositiveInfinity;
        if (x < -40)
            return -1;
        var fraction = ExpFraction(x, 0, out var rest, out var exponent);
        if (exponent == 0)
            return fraction + rest;
        if (exponent > 60)
            return Scale(1 + (fraction + rest), exponent);
        var power = Scale(1, exponent);
        // (power - 1) is exact or its loss is below the last bit of the result.
        return (power - 1) + ((power * fraction) + (power * rest));
    }

    /// <summary>The natural logarithm. NaN below 0, minus infinity at 0.</summary>
    public static double Log(double x)
    {
        if (double.IsNaN(x) || double.IsPositiveInfinity(x))
            return x;
        if (x <= 0)
            return x == 0 ? double.NegativeInfinity : double.NaN;
        return LogParts(x, out _);
    }

    /// <summary>The natural logarithm of 1 + <paramref name="x"/>, with full relative accuracy near x = 0. NaN below
    /// -1, minus infinity at -1.</summary>
    public static double Log1p(double x)
    {
        if (double.IsNaN(x) || double.IsPositiveInfinity(x) || Math.Abs(x) < 1e-16)
            return x;
        if (x <= -1)
            return x == -1 ? double.NegativeInfinity : double.NaN;
        var sum = DoubleDouble.TwoSum(1, x, out var error);
        var high = LogParts(sum, out var low);
        var correction = error / sum;
        return high + (low + (correction - (0.5 * correction * correction)));
    }

    /// <summary>
    /// <paramref name="x"/> to the power <paramref name="y"/>. A negative x needs a whole y (else NaN); x to the 0 and
    /// 1 to the y are 1 even for NaN, as IEEE 754 says.
    /// </summary>
    public static double Pow(double x, double y)
    {
        if (y == 0 || x == 1)
            return 1;
        if (double.IsNaN(x) || double.IsNaN(y))
            return double.NaN;
        var magnitude = Math.Abs(x);
        if (double.IsInfinity(y))
        {
            if (magnitude == 1)
                return 1;
            return magnitude > 1 == y > 0 ? double.PositiveInfinity : 0;
        }

        var whole = Math.Floor(y) == y;
        // Every double from 2^53 on is even.
        var odd = whole && Math.Abs(y) < 9007199254740992 && Math.Floor(y / 2) * 2 != y;
        var sign = odd && double.IsNegative(x) ? -1.0 : 1.0;
        if (magnitude == 0 || double.IsInfinity(magnitude))
            return magnitude == 0 == y > 0 ? sign * 0 : sign * double.PositiveInfinity;
        if (x < 0 && !whole)
            return double.NaN;
        return sign * PowPositive(magnitude, y);
    }

    private static double PowPositive(double x, double y)
    {
        var high = LogParts(x, out var low);
        var product = y * high;
        if (product > 800)
            return double.PositiveInfinity;
        if (product < -800)
            return 0;
        if (Math.Abs(product) < 1e-18)
            return 1;
        return ExpOfSum(product, Math.FusedMultiplyAdd(y, high, -product) + (y * low));
    }

    /// <summary>e to the power <paramref name="x"/> + <paramref name="tail"/>, the tail far smaller than x.</summary>
    internal static double ExpOfSum(double x, double tail)
    {
        if (double.IsNaN(x))
            return x;
        if (x > 710)
            return double.PositiveInfinity;
        if (x < -746)
            return 0;
        var fraction = ExpFraction(x, tail, out var rest, out var exponent);
        return Scale(1 + (fraction + rest), exponent);
    }

    /// <summary>
    /// e^(x + tail) = 2^exponent (1 + fraction + rest): x less the nearest multiple of ln 2, then Taylor's series to
    /// the 13th power, whose remainder is below 5e-18 for |fraction| up to (ln 2)/2.
    /// </summary>
    private static double ExpFraction(double x, double tail, out double rest, out int exponent)
    {
        var multiple = Math.Floor((x * InverseLn2) + 0.5);
        var high = x - (multiple * Ln2High);
        var low = tail - (multiple * Ln2Low);
        var r = high + low;
        var lost = (high - r) + low;
        var s = r * r;
        var even = 1 / 2.0 + (s * (1 / 24.0 + (s * (1 / 720.0 + (s * (1 / 40320.0
            + (s * (1 / 3628800.0 + (s * (1 / 479001600.0))))))))));
        var odd = 1 / 6.0 + (s * (1 / 120.0 + (s * (1 / 5040.0 + (s * (1 / 362880.0
            + (s * (1 / 39916800.0 + (s * (1 / 6227020800.0))))))))));
        rest = (s * (even + (r * odd))) + (lost + (lost * r));
        exponent = (int)multiple;
        return r;
    }

    /// <summary>value times 2^exponent, rounded once even when the result is subnormal.</summary>
    private static double Scale(double value, int exponent)
    {
        if (exponent > 1023)
            return value * PowerOfTwo(1023) * PowerOfTwo(exponent - 1023);
        if (exponent < -1021)
            return value * PowerOfTwo(exponent + 600) * PowerOfTwo(-600);
        return value * PowerOfTwo(exponent);
    }

    private static double PowerOfTwo(int exponent) => BitConverter.Int64BitsToDouble((long)(exponent + 1023) << 52);
}
