using System.Globalization;
using System.Text;

namespace Lanewright.Core.Text;

/// <summary>
/// Reads the number at the start of a text. A group is exactly three digits, so one point or comma is ambiguous only
/// when exactly three digits follow it and one to three, not beginning with 0, precede it. Such a mark is the culture's
/// decimal mark, or else the culture's group mark, or else both meanings are given.
/// </summary>
internal static class NumberReader
{
    /// <summary>The number's meanings, one or two, and where it ends; no meanings when it is not a number.</summary>
    internal readonly record struct Scan(IReadOnlyList<double> Values, int Length)
    {
        internal static Scan None => new([], 0);
    }

    internal static Scan Read(ReadOnlySpan<char> text, TextCulture culture)
    {
        var at = 0;
        var negative = false;
        if (text.Length > 0 && text[0] is '+' or '-' or '\u2212' or '\u2013')
        {
            negative = text[0] != '+';
            at = SkipSpaces(text, 1);
        }

        var body = NumberBody.Take(text, at);
        at = body.End;
        if (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '.' or ','))
            return Scan.None;
        var exponent = TakeExponent(text, ref at);
        var meanings = body.Meanings(culture).Select(digits => Parse(digits + exponent)).ToList();
        if (exponent.Length == 0 && body.IsEmpty | body.IsWhole
            && NumberFraction.Take(text, body.IsEmpty ? null : body.Meanings(culture), at) is { } fraction)
        {
            meanings = [fraction.Value];
            at = fraction.End;
        }

        if (meanings.Count == 0 || (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '.' or ',')))
            return Scan.None;
        return new([.. meanings.Select(value => negative && value != 0 ? -value : value)], at);
    }

    internal static bool Starts(char letter) => char.IsAsciiDigit(letter) || NumberFraction.IsVulgar(letter);

    internal static bool IsSpace(char letter) => letter is ' ' or '\t' or '\u00A0' or '\u2009' or '\u202F' or '\u2007';

    internal static int SkipSpaces(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && IsSpace(text[at]))
            at++;
        return at;
    }

    // The digits are checked before, so this cannot fail; a number too small to keep comes back as infinite, like one
    // too large, so that neither passes for a value.
    internal static double Parse(string digits)
    {
        var value = double.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture);
        var mantissa = digits.Split('e', 'E')[0];
        return value == 0 && mantissa.AsSpan().ContainsAnyInRange('1', '9') ? double.PositiveInfinity : value;
    }

    private static string TakeExponent(ReadOnlySpan<char> text, ref int at)
    {
        if (at == 0 || at + 1 >= text.Length || text[at] is not ('e' or 'E'))
            return "";
        var sign = text[at + 1] is '+' or '-' or '\u2212' ? 1 : 0;
        var end = at + 1 + sign;
        var digits = new StringBuilder(sign == 1 && text[at + 1] != '+' ? "e-" : "e");
        var first = end;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
            digits.Append(text[end++]);
        if (end == first)
            return "";
        at = end;
        return digits.ToString();
    }
}
