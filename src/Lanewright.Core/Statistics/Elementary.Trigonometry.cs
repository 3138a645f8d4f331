namespace Lanewright.Core.Statistics;

public static partial class Elementary
{
    private const double PiOver4 = 0.7853981633974483;
    private const double PiOver2High = 1.5707963267948966;
    private const double PiOver2Low = 6.123233995736766e-17;

    // The binary digits of 2/pi after the point, behind one word of zeros; computed from Machin's formula.
    private static ReadOnlySpan<ulong> TwoOverPi =>
    [
        0,
        0xA2F9836E4E441529, 0xFC2757D1F534DDC0, 0xDB6295993C439041, 0xFE5163ABDEBBC561,
        0xB7246E3A424DD2E0, 0x06492EEA09D1921C, 0xFE1DEB1CB129A73E, 0xE88235F52EBB4484,
        0xE99C7026B45F7E41, 0x3991D639835339F4, 0x9C845F8BBDF9283B, 0x1FF897FFDE05980F,
        0xEF2F118B5A0A6D1F, 0x6D367ECF27CB09B7, 0x4F463F669E5FEA2D, 0x7527BAC7EBE5F17B,
        0x3D0739F78A5292EA, 0x6BFB5FB11F8D5D08, 0x56033046FC7B6BAB, 0xF0CFBC209AF4361D,
    ];

    /// <summary>The sine of an angle in radians, any finite size; NaN for infinities and NaN.</summary>
    public static double Sin(double x)
    {
        if (!double.IsFinite(x))
            return double.NaN;
        var magnitude = Math.Abs(x);
        if (magnitude < 1e-9)
            return x;
        var quadrant = 0;
        var low = 0.0;
        var r = magnitude <= PiOver4 ? magnitude : ReduceAngle(magnitude, out low, out quadrant);
        var value = (quadrant & 1) == 0 ? SinKernel(r, low) : CosKernel(r, low);
        return (quadrant & 2) != 0 != x < 0 ? -value : value;
    }

    /// <summary>The cosine of an angle in radians, any finite size; NaN for infinities and NaN.</summary>
    public static double Cos(double x)
    {
        if (!double.IsFinite(x))
            return double.NaN;
        var magnitude = Math.Abs(x);
        var quadrant = 0;
        var low = 0.0;
        var r = magnitude <= PiOver4 ? magnitude : ReduceAngle(magnitude, out low, out quadrant);
        var value = (quadrant & 1) == 0 ? CosKernel(r, low) : SinKernel(r, low);
        return ((quadrant + 1) & 2) != 0 ? -value : value;
    }

    /// <summary>
    /// x = (quadrant + 4 n) pi/2 + r + low with |r| up to pi/4. Whole-number arithmetic on the digits of 2/pi keeps
    /// 137 bits of the fraction, while no double comes closer than 2^-62 to a multiple of pi/2
    /// (M. H. Payne and R. N. Hanek, "Radian reduction for trigonometric functions", SIGNUM Newsletter 18, 1983).
    /// </summary>
    private static double ReduceAngle(double x, out double low, out int quadrant)
    {
        var bits = BitConverter.DoubleToInt64Bits(x);
        var mantissa = (ulong)(bits & 0x000FFFFFFFFFFFFF) | 0x0010000000000000;
        var exponent = (int)(bits >> 52) - 1075;

        // Digits of 2/pi before this place only add multiples of 4 to the product.
        var start = exponent - 2 + 64;
        var word = start >> 6;
        var shift = start & 63;
        var high = Window(word, shift);
        var middle = Window(word + 1, shift);
        var last = Window(word + 2, shift);

        var product0 = (UInt128)mantissa * last;
        var product1 = ((UInt128)mantissa * middle) + (product0 >> 64);
        var top = (mantissa * high) + (ulong)(product1 >> 64);

        quadrant = (int)(top >> 62);
        var fraction = (new UInt128(top, (ulong)product1) << 2) | ((ulong)product0 >> 62);
        var negative = (ulong)(fraction >> 127) != 0;
        if (negative)
        {
            quadrant++;
            fraction = UInt128.Zero - fraction;
        }

        var zeros = (int)UInt128.LeadingZeroCount(fraction);
        fraction <<= zeros;
        var leading = (double)(ulong)(fraction >> 75);
        var rest = (double)(ulong)(fraction >> 11) * (1 / 18446744073709551616.0);
        var unit = PowerOfTwo(-53 - zeros) * (negative ? -1 : 1);
        var product = DoubleDouble.TwoProduct(leading, PiOver2High, out var error);
        var r = DoubleDouble.QuickTwoSum(product, error + (leading * PiOver2Low) + (rest * PiOver2High), out low);
        low *= unit;
        return r * unit;
    }

    private static ulong Window(int word, int shift) => shift == 0
        ? TwoOverPi[word]
        : (TwoOverPi[word] << shift) | (TwoOverPi[word + 1] >> (64 - shift));

    private static double SinKernel(double r, double low)
    {
        var s = r * r;
        var series = -1 / 6.0 + (s * (1 / 120.0 + (s * (-1 / 5040.0 + (s * (1 / 362880.0 + (s * (-1 / 39916800.0
            + (s * (1 / 6227020800.0 + (s * (-1 / 1307674368000.0 + (s * (1 / 355687428096000.0))))))))))))));
        return r + ((r * s * series) + (low * (1 - (0.5 * s))));
    }

    private static double CosKernel(double r, double low)
    {
        var s = r * r;
        var series = 1 / 24.0 + (s * (-1 / 720.0 + (s * (1 / 40320.0 + (s * (-1 / 3628800.0 + (s * (1 / 479001600.0
            + (s * (-1 / 87178291200.0 + (s * (1 / 20922789888000.0 + (s * (-1 / 6402373705728000.0))))))))))))));
        var half = 0.5 * s;
        var leading = 1 - half;
        return leading + (((1 - leading) - half) + ((s * s * series) - (r * low)));
    }
}
