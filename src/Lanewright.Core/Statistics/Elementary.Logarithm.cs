namespace Lanewright.Core.Statistics;

public static partial class Elementary
{
    private const int FirstNode = 90;
    private const int LastNode = 182;

    /// <summary>
    /// ln x for a positive finite x as the sum of two doubles, relative error below 2^-66. x = 2^k m with m between
    /// 0.707 and 1.415; the table holds a short number c near 1/m and -ln c, so that ln x = k ln 2 - ln c + ln(1 + r)
    /// with r = m c - 1, |r| below 2^-7, for which ten terms of Mercator's series are enough.
    /// </summary>
    private static double LogParts(double x, out double low)
    {
        var bits = BitConverter.DoubleToInt64Bits(x);
        var k = (int)(bits >> 52) - 1023;
        if (k == -1023)
        {
            bits = BitConverter.DoubleToInt64Bits(x * 18014398509481984.0);
            k = (int)(bits >> 52) - 1023 - 54;
        }

        var m = BitConverter.Int64BitsToDouble((bits & 0x000FFFFFFFFFFFFF) | 0x3FF0000000000000);
        if (m > 1.4142)
        {
            m *= 0.5;
            k++;
        }

        ref readonly var node = ref LogTable.Nodes[(int)((m * 128) + 0.5) - FirstNode];
        var product = DoubleDouble.TwoProduct(m, node.Reciprocal, out var error);
        var r = DoubleDouble.QuickTwoSum(product - 1, error, out var rLow);
        var square = DoubleDouble.TwoProduct(r, r, out var squareLow);
        var odd = 1 / 3.0 + (square * (1 / 5.0 + (square * (1 / 7.0 + (square * (1 / 9.0 + (square * (1 / 11.0))))))));
        var even = 1 / 4.0 + (square * (1 / 6.0 + (square * (1 / 8.0 + (square * (1 / 10.0))))));
        var series = odd - (r * even);

        var sum = DoubleDouble.TwoSum(k * Ln2High, node.LogHigh, out var lost1);
        sum = DoubleDouble.TwoSum(sum, r, out var lost2);
        sum = DoubleDouble.TwoSum(sum, -0.5 * square, out var lost3);
        var small = rLow - (0.5 * squareLow) - (r * rLow) + (r * square * series);
        small += node.LogLow + (k * Ln2Low);
        return DoubleDouble.QuickTwoSum(sum, small + (lost1 + lost2 + lost3), out low);
    }

    private readonly record struct LogNode(double Reciprocal, double LogHigh, double LogLow);

    private static class LogTable
    {
        internal static readonly LogNode[] Nodes = Make();

        private static LogNode[] Make()
        {
            var nodes = new LogNode[LastNode - FirstNode + 1];
            for (var j = FirstNode; j <= LastNode; j++)
            {
                // A multiple of 1/512: short enough that its product with m is exact as two doubles.
                var reciprocal = Math.Floor((65536.0 / j) + 0.5) / 512;
                var log = -LogNearOne(reciprocal);
                nodes[j - FirstNode] = new(reciprocal, log.High, log.Low);
            }

            return nodes;
        }

        /// <summary>ln c = 2 (s + s^3/3 + s^5/5 + ...), s = (c - 1)/(c + 1), for c between 0.7 and 1.43.</summary>
        private static DoubleDouble LogNearOne(double c)
        {
            var s = new DoubleDouble(c - 1) / (c + 1);
            var square = s * s;
            DoubleDouble sum = 0;
            // |s| is below 0.18: 0.18^45 is below 2^-111.
            for (var n = 45; n >= 1; n -= 2)
                sum = (sum * square) + (new DoubleDouble(1) / n);
            return sum * s * 2;
        }
    }
}
