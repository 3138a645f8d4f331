using System.Globalization;

namespace Lanewright.Core.Text;

/// <summary>
/// A number as decimal digits: the first digit counts 10^<paramref name="Exponent"/>. Rounding works on these digits,
/// half away from zero, so 1.005 becomes 1.01 as it would by hand, although its nearest double lies a little lower.
/// </summary>
/// <param name="Negative">Whether the number is below zero.</param>
/// <param name="Digits">One digit or more; the first is 0 only when the number is zero.</param>
/// <param name="Exponent">The power of ten of the first digit.</param>
internal readonly record struct DecimalDigits(bool Negative, string Digits, int Exponent)
{
    /// <summary>The power of ten of the last digit.</summary>
    internal int LastPlace => Exponent - Digits.Length + 1;

    internal bool IsZero => Digits.AsSpan().IndexOfAnyExcept('0') < 0;

    /// <summary>The shortest digits that are read as this double and no other.</summary>
    internal static DecimalDigits Of(double value) => Of(value.ToString("R", CultureInfo.InvariantCulture));

    /// <summary>The digits of a number written as <c>-123.45</c> or <c>-1.2345E+02</c>.</summary>
    internal static DecimalDigits Of(string number)
    {
        var negative = number[0] == '-';
        var parts = number[(negative ? 1 : 0)..].Split('E');
        var point = parts[0].IndexOf('.', StringComparison.Ordinal);
        var all = parts[0].Replace(".", "", StringComparison.Ordinal);
        var digits = all.TrimStart('0');
        if (digits.Length == 0)
            return new(false, "0", 0);
        var exponent = (point < 0 ? all.Length : point) - (all.Length - digits.Length) - 1;
        if (parts.Length > 1)
            exponent += int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return new(negative, digits.TrimEnd('0'), exponent);
    }

    /// <summary>Rounded so that the last digit counts 10^<paramref name="place"/>; zeros fill up to there.</summary>
    internal DecimalDigits RoundedTo(int place)
    {
        var keep = Exponent - place + 1;
        var zero = new DecimalDigits(false, "0", Math.Min(place, 0));
        if (keep < 0)
            return zero;
        if (keep >= Digits.Length)
            return this with { Digits = Digits.PadRight(keep, '0') };
        var kept = ("0" + Digits[..keep]).ToCharArray();
        if (Digits[keep] >= '5')
        {
            var at = kept.Length - 1;
            for (; kept[at] == '9'; at--)
                kept[at] = '0';
            kept[at]++;
        }

        return kept[0] != '0' ? new(Negative, new string(kept), Exponent + 1)
            : keep == 0 ? zero
            : this with { Digits = new string(kept, 1, keep) };
    }

    /// <summary>Rounded to so many digits from the first that is not zero.</summary>
    internal DecimalDigits RoundedToDigits(int count)
    {
        var rounded = RoundedTo(Exponent - count + 1);
        // 9.96 to two digits is 10, not 10.0.
        return rounded.Digits.Length > count ? rounded with { Digits = rounded.Digits[..count] } : rounded;
    }
}
