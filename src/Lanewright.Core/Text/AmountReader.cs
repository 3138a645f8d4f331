using Lanewright.Core.Quantities;

namespace Lanewright.Core.Text;

/// <summary>
/// Reads a number and the unit behind it, or several of one dimension from large to small (<c>12 ft 6 in</c>), into
/// every meaning they may have. A unit of null stands for no unit.
/// </summary>
internal static class AmountReader
{
    /// <summary>Longer than any number with its unit; what is longer is not looked at.</summary>
    internal const int LongestText = 120;

    private const int LongestEcho = 40;

    // Hours, minutes and seconds; yards, feet and inches.
    private const int MostParts = 3;

    internal sealed record Meaning(double Value, Unit? Unit)
    {
        internal double Si => Unit is null ? Value : Unit.ToSi(Value);
    }

    internal readonly record struct Scan(IReadOnlyList<Meaning> Meanings, TextProblem Problem, string Read);

    internal static Scan Read(string? text, TextCulture culture)
    {
        var trimmed = (text ?? "").AsSpan().Trim();
        if (trimmed.IsEmpty)
            return Fail(TextProblem.Empty, trimmed);
        return trimmed.Length > LongestText
            ? Fail(TextProblem.TooLong, trimmed)
            : Read(trimmed, culture, MostParts);
    }

    /// <summary>The text as a reading gives it back: shortened, never cut inside a character of two parts.</summary>
    internal static string Echo(ReadOnlySpan<char> text)
    {
        if (text.Length <= LongestEcho)
            return text.ToString();
        var end = char.IsHighSurrogate(text[LongestEcho - 1]) ? LongestEcho - 1 : LongestEcho;
        return string.Concat(text[..end], "…");
    }

    private static Scan Read(ReadOnlySpan<char> text, TextCulture culture, int parts)
    {
        var number = NumberReader.Read(text, culture);
        if (number.Values.Count == 0)
            return Fail(TextProblem.NotANumber, text);
        var rest = text[number.Length..].Trim();
        if (number.Values.Any(value => !double.IsFinite(value)))
            return Fail(TextProblem.OutOfRange, text);
        if (rest.IsEmpty)
            return new([.. number.Values.Select(value => new Meaning(value, null))], TextProblem.None, Echo(text));
        if (!StartsLikeUnit(rest))
            return Fail(TextProblem.NotANumber, text);
        var units = UnitsOf(rest, culture);
        if (units.Count > 0)
            return Combine(number.Values, units, text);
        var meanings = parts == 1 ? [] : Sequence(number.Values, rest, culture, parts - 1);
        return meanings.Count > 0
            ? new(meanings, TextProblem.None, Echo(text))
            : Fail(TextProblem.UnknownUnit, rest);
    }

    // "12 ft 6 in": the unit ends before the first digit behind which a smaller amount can be read.
    private static List<Meaning> Sequence(
        IReadOnlyList<double> values, ReadOnlySpan<char> rest, TextCulture culture, int parts)
    {
        for (var cut = 1; cut < rest.Length; cut++)
        {
            if (!NumberReader.Starts(rest[cut]) || NumberReader.Starts(rest[cut - 1]) || EndsInMinus(rest[..cut]))
                continue;
            var units = UnitsOf(rest[..cut], culture);
            if (units.Count == 0)
                continue;
            var smaller = Read(rest[cut..], culture, parts).Meanings;
            var meanings = new List<Meaning>();
            foreach (var value in values)
            {
                foreach (var unit in units)
                    meanings.AddRange(smaller.Select(part => Join(value, unit, part)).OfType<Meaning>());
            }

            if (meanings.Count > 0)
                return meanings;
        }

        return [];
    }

    // A hyphen may join feet and inches (12'-6"), but one that stands apart is a minus.
    private static bool EndsInMinus(ReadOnlySpan<char> head)
    {
        var end = head.TrimEnd();
        return end[^1] is '-' or '\u2212' or '\u2013' && (end.Length == 1 || NumberReader.IsSpace(end[^2]));
    }

    // Only a whole number of the larger unit, and less than one more of it: 12 ft 6 in, not 1.5 ft 6 in nor 1 ft 13 in.
    private static Meaning? Join(double value, Unit unit, Meaning part)
    {
        if (part.Unit is null || part.Unit.Dimension != unit.Dimension || unit.Dimension == Dimension.Temperature)
            return null;
        var many = unit.Numerator * part.Unit.Denominator / (unit.Denominator * part.Unit.Numerator);
        if (many <= 1 || many != decimal.Truncate(many) || value != Math.Floor(value))
            return null;
        var share = part.Value / (double)many;
        if (share is < 0 or >= 1 || double.IsNegative(part.Value))
            return null;
        return new Meaning(value < 0 ? value - share : value + share, unit);
    }

    private static Scan Combine(IReadOnlyList<double> values, IReadOnlyList<Unit> units, ReadOnlySpan<char> text)
    {
        var meanings = new List<Meaning>();
        foreach (var value in values)
            meanings.AddRange(units.Select(unit => new Meaning(value, unit)));
        return new(meanings, TextProblem.None, Echo(text));
    }

    private static IReadOnlyList<Unit> UnitsOf(ReadOnlySpan<char> text, TextCulture culture) =>
        UnitSpelling.Meanings(text.ToString(), meanings => UnitWords.Narrow(meanings, culture));

    private static bool StartsLikeUnit(ReadOnlySpan<char> text) =>
        char.IsLetter(text[0]) || text[0] is '%' or '‰' or '°' or 'º' or '\'' or '"' or '#' or '\u2019' or '\u2032'
            or '\u201D' or '\u2033' or '℃' or '℉' or '/';

    private static Scan Fail(TextProblem problem, ReadOnlySpan<char> text) => new([], problem, Echo(text));
}
