namespace Lanewright.Core.Statistics;

/// <summary>
/// A number kept as the unevaluated sum of two doubles, about 31 decimal digits; plain finite arithmetic only. Used
/// where a certified result needs more digits on the way than a double holds.
/// </summary>
/// <remarks>
/// Error-free sum and product: T. J. Dekker, "A floating-point technique for extending the available precision",
/// Numerische Mathematik 18 (1971); D. E. Knuth, The Art of Computer Programming 2, section 4.2.2.
/// </remarks>
internal readonly struct DoubleDouble
{
    internal DoubleDouble(double high, double low = 0)
    {
        High = high;
        Low = low;
    }

    internal double High { get; }

    internal double Low { get; }

    internal double ToDouble() => High + Low;

    public static implicit operator DoubleDouble(double value) => new(value);

    public static DoubleDouble operator -(DoubleDouble value) => new(-value.High, -value.Low);

    public static DoubleDouble operator +(DoubleDouble left, DoubleDouble right)
    {
        var high = TwoSum(left.High, right.High, out var highError);
        var low = TwoSum(left.Low, right.Low, out var lowError);
        high = QuickTwoSum(high, highError + low, out var rest);
        high = QuickTwoSum(high, rest + lowError, out rest);
        return new(high, rest);
    }

    public static DoubleDouble operator -(DoubleDouble left, DoubleDouble right) => left + -right;

    public static DoubleDouble operator *(DoubleDouble left, DoubleDouble right)
    {
        var high = TwoProduct(left.High, right.High, out var error);
        error += (left.High * right.Low) + (left.Low * right.High);
        high = QuickTwoSum(high, error, out var rest);
        return new(high, rest);
    }

    public static DoubleDouble operator /(DoubleDouble left, DoubleDouble right)
    {
        var first = left.High / right.High;
        var rest = left - (right * first);
        var second = rest.High / right.High;
        rest -= right * second;
        var third = rest.High / right.High;
        var high = QuickTwoSum(first, second, out var low);
        return new DoubleDouble(high, low) + third;
    }

    /// <summary>The square root of a number that is not negative.</summary>
    internal static DoubleDouble Sqrt(DoubleDouble value)
    {
        if (value.High <= 0)
            return 0;
        DoubleDouble root = Math.Sqrt(value.High);
        // One Newton step doubles the digits.
        return root + new DoubleDouble((value - (root * root)).High / (2 * root.High));
    }

    /// <summary>The rounded sum, and what the rounding lost, exactly.</summary>
    internal static double TwoSum(double left, double right, out double error)
    {
        var sum = left + right;
        var part = sum - left;
        error = (left - (sum - part)) + (right - part);
        return sum;
    }

    /// <summary>As <see cref="TwoSum"/>, for a left term that is at least as large as the right one.</summary>
    internal static double QuickTwoSum(double left, double right, out double error)
    {
        var sum = left + right;
        error = right - (sum - left);
        return sum;
    }

    /// <summary>The rounded product, and what the rounding lost, exactly (unless it underflows).</summary>
    internal static double TwoProduct(double left, double right, out double error)
    {
        var product = left * right;
        error = Math.FusedMultiplyAdd(left, right, -product);
        return product;
    }
}
