using System.Globalization;
using System.Text;

namespace Lanewright.Core.Text;

/// <summary>A short, printable piece of a text that somebody typed, fit to be shown in a finding.</summary>
public static class Excerpt
{
    private const char Replacement = '\uFFFD';

    /// <summary>
    /// The text itself when it is short; otherwise its beginning with an ellipsis. Line ends become spaces, and
    /// characters that cannot be printed or that change the direction of writing become U+FFFD.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="length">Longest result, in characters, the ellipsis not counted; at least 1.</param>
    public static string Of(ReadOnlySpan<char> text, int length = 60)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        var shown = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (shown.Length + rune.Utf16SequenceLength > length) return shown.Append('…').ToString();
            if (rune.Value is '\r' or '\n' or '\t') shown.Append(' ');
            else if (IsPrintable(rune)) shown.Append(rune);
            else shown.Append(Replacement);
        }

        return shown.ToString();
    }

    /// <summary>
    /// Whether a character can be shown without harm: neither a control nor a format character, nor a separator of
    /// lines. The two joiners U+200C and U+200D are letters' own business in several scripts and in emoji.
    /// </summary>
    internal static bool IsPrintable(Rune rune) =>
        rune.Value is 0x200C or 0x200D
        || Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
