using System.Globalization;
using System.Text;

namespace Lanewright.Core.Text;

/// <summary>Lays out the plain digits of a number with the culture's marks, without powers of ten for everyday sizes.</summary>
internal static class NumberLayout
{
    private const int LargestPlainExponent = 15;
    private const int SmallestPlainExponent = -7;

    /// <summary>Lays out a number written as <c>-123.45</c> or <c>-1.2345E+02</c>.</summary>
    internal static string Lay(string number, TextCulture culture)
    {
        var negative = number[0] == '-';
        var parts = number[(negative ? 1 : 0)..].Split('E');
        var digits = parts[0];
        var exponent = parts.Length == 1 ? 0 : int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var text = new StringBuilder(negative && digits.AsSpan().ContainsAnyInRange('1', '9') ? "-" : "");
        if (exponent is < SmallestPlainExponent or > LargestPlainExponent)
        {
            return text.Append(digits.Replace('.', culture.DecimalMark)).Append('e')
                .Append(exponent.ToString(CultureInfo.InvariantCulture)).ToString();
        }

        var (whole, decimals) = Shift(digits, exponent);
        for (var i = 0; i < whole.Length; i++)
        {
            if (i > 0 && (whole.Length - i) % 3 == 0 && culture.GroupMark is { } group)
                text.Append(group);
            text.Append(whole[i]);
        }

        return decimals.Length == 0 ? text.ToString() : text.Append(culture.DecimalMark).Append(decimals).ToString();
    }

    private static (string Whole, string Decimals) Shift(string digits, int exponent)
    {
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var all = digits.Replace(".", "", StringComparison.Ordinal);
        point = (point < 0 ? all.Length : point) + exponent;
        if (point <= 0)
            return ("0", new string('0', -point) + all);
        return point >= all.Length
            ? (all + new string('0', point - all.Length), "")
            : (all[..point], all[point..]);
    }
}
