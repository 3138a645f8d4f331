using System.Globalization;

namespace Lanewright.Core.Text;

/// <summary>Common fractions: <c>1/2</c>, <c>1 1/2</c>, <c>1-1/2</c>, <c>½</c> and <c>1½</c>.</summary>
internal static class NumberFraction
{
    private const int MostDigits = 4;

    /// <summary>
    /// The value of the whole part and the fraction that follows it at <paramref name="at"/>, and where it ends; null
    /// when none follows. <paramref name="whole"/> is null when nothing precedes the fraction.
    /// </summary>
    internal static (double Value, int End)? Take(ReadOnlySpan<char> text, IEnumerable<string>? whole, int at)
    {
        var before = whole is null ? 0 : whole.Select(NumberReader.Parse).FirstOrDefault(double.NaN);
        if (double.IsNaN(before))
            return null;
        // 1/2: what was taken for the whole part is the numerator.
        if (whole is not null && at < text.Length && IsStroke(text[at]))
            return Denominator(text, at + 1) is { } under ? (before / under.Value, under.End) : null;
        var start = NumberReader.SkipSpaces(text, at);
        if (start < text.Length && Vulgar(text[start]) is { } vulgar)
            return (before + vulgar, start + 1);
        if (whole is null)
            return null;
        if (start == at && start < text.Length && text[start] == '-')
            start++;
        if (start == at)
            return null;
        return Digits(text, start) is { } over && over.End < text.Length && IsStroke(text[over.End])
            && Denominator(text, over.End + 1) is { } below && over.Value < below.Value
                ? (before + ((double)over.Value / below.Value), below.End)
                : null;
    }

    internal static bool IsVulgar(char letter) => Vulgar(letter) is not null;

    private static bool IsStroke(char letter) => letter is '/' or '\u2044' or '\u2215';

    private static (int Value, int End)? Denominator(ReadOnlySpan<char> text, int at) =>
        Digits(text, at) is { Value: > 0 } found ? found : null;

    private static (int Value, int End)? Digits(ReadOnlySpan<char> text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
            end++;
        return end == at || end - at > MostDigits
            ? null
            : (int.Parse(text[at..end], NumberStyles.None, CultureInfo.InvariantCulture), end);
    }

    private static double? Vulgar(char letter) => letter switch
    {
        '¼' => 1.0 / 4,
        '½' => 1.0 / 2,
        '¾' => 3.0 / 4,
        '⅓' => 1.0 / 3,
        '⅔' => 2.0 / 3,
        '⅕' => 1.0 / 5,
        '⅛' => 1.0 / 8,
        '⅜' => 3.0 / 8,
        '⅝' => 5.0 / 8,
        '⅞' => 7.0 / 8,
        _ => null,
    };
}
