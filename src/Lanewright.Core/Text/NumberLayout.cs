using System.Globalization;
using System.Text;

namespace Lanewright.Core.Text;

/// <summary>Lays out digits with the culture's marks, without powers of ten for everyday sizes.</summary>
internal static class NumberLayout
{
    private const int LargestPlainExponent = 15;
    private const int SmallestPlainExponent = -7;

    internal static string Lay(DecimalDigits number, TextCulture culture)
    {
        var text = new StringBuilder(number.Negative && !number.IsZero ? "-" : "");
        if (!number.IsZero && number.Exponent is < SmallestPlainExponent or > LargestPlainExponent)
        {
            text.Append(number.Digits[0]);
            if (number.Digits.Length > 1)
                text.Append(culture.DecimalMark).Append(number.Digits, 1, number.Digits.Length - 1);
            return text.Append('e').Append(number.Exponent.ToString(CultureInfo.InvariantCulture)).ToString();
        }

        // Zeros before the first digit (0.05) or behind the last (1200) up to the decimal mark.
        var digits = number.Exponent < 0 ? new string('0', -number.Exponent) + number.Digits : number.Digits;
        var wholeLength = Math.Max(number.Exponent, 0) + 1;
        digits = digits.PadRight(wholeLength, '0');
        for (var i = 0; i < wholeLength; i++)
        {
            if (i > 0 && (wholeLength - i) % 3 == 0 && culture.GroupMark is { } group)
                text.Append(group);
            text.Append(digits[i]);
        }

        return digits.Length == wholeLength
            ? text.ToString()
            : text.Append(culture.DecimalMark).Append(digits, wholeLength, digits.Length - wholeLength).ToString();
    }
}
