using System.Text;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Rows;

/// <summary>
/// Numbers of a log. Plain digits with at most one decimal mark are read here, anything else by Core's reader; both give
/// the same value for the same text, which a test holds.
/// </summary>
internal static class LogNumber
{
    private const int MostDigits = 15;

    // 10^0 ... 10^15 are exact as doubles, and so is a whole number of 15 digits: one division rounds once, so the result is
    // the double nearest to the decimal text (W. D. Clinger, "How to read floating point numbers accurately", 1990).
    private static readonly double[] Tens =
        [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Reads a number; false when it is none, has two meanings, or has a unit.</summary>
    internal static bool TryRead(ReadOnlySpan<byte> text, TextCulture culture, out double value)
    {
        var mark = (byte)culture.DecimalMark;
        var at = 0;
        var negative = text.Length > 0 && text[0] == '-';
        if (negative) at = 1;
        long digits = 0;
        int count = 0, decimals = -1;
        for (; at < text.Length; at++)
        {
            var digit = (uint)(text[at] - '0');
            if (digit <= 9)
            {
                digits = (digits * 10) + digit;
                if (++count > MostDigits) return Slowly(text, culture, out value);
                if (decimals >= 0) decimals++;
            }
            else if (text[at] == mark && decimals < 0 && count > 0)
            {
                decimals = 0;
            }
            else
            {
                return Slowly(text, culture, out value);
            }
        }

        if (count == 0 || decimals == 0) return Slowly(text, culture, out value);
        value = decimals > 0 ? digits / Tens[decimals] : digits;
        if (negative && digits != 0) value = -value;
        return true;
    }

    private static bool Slowly(ReadOnlySpan<byte> text, TextCulture culture, out double value)
    {
        value = 0;
        return text.Length <= 200 && QuantityText.ReadNumber(Encoding.UTF8.GetString(text), culture).TryGet(out value) && double.IsFinite(value);
    }
}
