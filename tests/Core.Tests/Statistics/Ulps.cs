using System.Globalization;

namespace Lanewright.Core.Tests.Statistics;

/// <summary>Distances between doubles in units in the last place, and relative comparison.</summary>
internal static class Ulps
{
    internal static long Between(double left, double right) => Math.Abs(Ordered(left) - Ordered(right));

    internal static void AssertWithin(long most, double expected, double actual, double at)
    {
        if (double.IsNaN(expected) && double.IsNaN(actual))
            return;
        if (expected == 0 && actual == 0)
        {
            Assert.Equal(double.IsNegative(expected), double.IsNegative(actual));
            return;
        }

        // An infinity is one step beyond the greatest number here too.
        if (double.IsNaN(expected) || double.IsNaN(actual) || Between(expected, actual) > most)
        {
            Assert.Fail(string.Create(
                CultureInfo.InvariantCulture, $"at {at:R}: expected {expected:R}, was {actual:R}"));
        }
    }

    internal static void AssertRelative(double tolerance, double expected, double actual)
    {
        if (expected == actual)
            return;
        var error = Math.Abs(actual - expected) / Math.Abs(expected);
        if (!(error <= tolerance))
        {
            Assert.Fail(string.Create(
                CultureInfo.InvariantCulture, $"expected {expected:R}, was {actual:R}, relative error {error:E2}"));
        }
    }

    private static long Ordered(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(value);
        return bits < 0 ? long.MinValue - bits : bits;
    }
}
