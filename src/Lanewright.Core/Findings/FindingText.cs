using System.Text;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Findings;

/// <summary>
/// Writes a finding as text, in the reader's units. A placeholder of the catalogue is <c>{name}</c> or
/// <c>{name:form}</c>; the forms are <c>percent</c>, <c>count</c> (a whole number) and a digit 1 to 9 (so many
/// significant digits). Two forms for one and for more are parted by <c>|</c>. Without a form, a number has the reader's
/// unit for its dimension and four significant digits, all digits before the decimal mark, and no zeros at the end; a plain
/// ratio is a plain number.
/// </summary>
public static class FindingText
{
    private const int Digits = 4;

    /// <summary>What was found.</summary>
    public static string Message(Finding finding, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return Fill(finding.Kind.Message, finding.Values, culture, units);
    }

    /// <summary>What to do about it.</summary>
    public static string Action(Finding finding, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return Fill(finding.Kind.Action, finding.Values, culture, units);
    }

    /// <summary>Where it is: the field's path, and line and column when they are known; empty when neither is.</summary>
    public static string Where(Finding finding, Language? language = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var speech = language ?? Language.English;
        var line = Find(finding.Values, "line") is { } l ? Whole(l.Si, TextCulture.Invariant) : null;
        var column = Find(finding.Values, "column") is { } c ? Whole(c.Si, TextCulture.Invariant) : null;
        var place = (line is null ? "" : speech.Say($"line {line}")) + (column is null ? "" : speech.Say($", column {column}"));
        // The one place that is put into words; the others are paths of fields.
        const string at = "runs at ";
        var field = finding.Field.StartsWith(at, StringComparison.Ordinal) ? speech.Say($"runs at {finding.Field[at.Length..]}") : finding.Field;
        return field.Length == 0 ? place
            : place.Length == 0 ? field
            : $"{field} ({place})";
    }

    /// <summary>
    /// Whether the finding has exactly the values that its kind's text asks for, line and column apart. A finding that
    /// does not is a programming mistake; it is still written, with a question mark for what is missing.
    /// </summary>
    public static bool IsComplete(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var wanted = Placeholders(finding.Kind).Select(placeholder => placeholder.Name).ToHashSet();
        return wanted.SetEquals(finding.Values.Select(value => value.Name).Where(name => name is not ("line" or "column")));
    }

    /// <summary>The placeholders in a kind's message and action, with their forms (empty for none).</summary>
    public static IReadOnlyList<(string Name, string Form)> Placeholders(FindingKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return [.. Split(kind.Message).Concat(Split(kind.Action)).Where(part => part.IsValue).Select(part => Named(part.Text))];
    }

    /// <summary>A text of the code in the reader's language, its placeholders filled; what is missing is a question mark.</summary>
    internal static string Fill(
        string template, IReadOnlyList<FindingValue> values, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(culture);
        ArgumentNullException.ThrowIfNull(units);
        var text = new StringBuilder();
        foreach (var (part, isValue) in Split(Form(culture.Language, culture.Language.Say(template), values)))
        {
            if (!isValue)
            {
                text.Append(part);
                continue;
            }

            var (name, form) = Named(part);
            text.Append(Find(values, name) is { } value ? Show(value, form, culture, units) : "?");
        }

        return text.ToString();
    }

    // One form for one and another for more, as in a phrase: the first number in the text decides.
    private static string Form(Language language, string text, IReadOnlyList<FindingValue> values)
    {
        var bar = text.IndexOf('|', StringComparison.Ordinal);
        if (bar < 0) return text;
        var first = Split(text[..bar]).Where(part => part.IsValue).Select(part => Find(values, Named(part.Text).Name)).FirstOrDefault(value => value is { Word: null, Term: null });
        return language.Form(text, first?.Si ?? double.NaN);
    }

    private static string Show(FindingValue value, string form, TextCulture culture, UnitPreferences units)
    {
        if (value.Term is not null) return culture.Say(value.Term);
        if (value.Word is not null) return value.Word;
        if (!double.IsFinite(value.Si)) return "?";

        if (form == "percent") return PercentText.Write(value.Si, culture);
        var unit = units[value.Dimension];
        if (form == "count") return Whole(value.Si, culture);
        if (value.Dimension == Dimension.Fraction)
            return Trimmed(value.Si, form, culture, number => QuantityText.WriteNumber(value.Si, culture, number));
        var shown = unit.FromSi(value.Si);
        return Trimmed(shown, form, culture, number => QuantityText.WriteValue(value.Si, unit, culture, number))
            + " " + QuantityText.Symbol(unit, culture);
    }

    private static string Trimmed(double shown, string form, TextCulture culture, Func<NumberForm, string> write)
    {
        if (form.Length == 1 && char.IsAsciiDigit(form[0])) return write(NumberForm.Significant(form[0] - '0'));
        if (Math.Abs(shown) >= 1000) return write(NumberForm.Decimals(0));

        var text = write(NumberForm.Significant(Digits));
        return text.Contains(culture.DecimalMark) ? text.TrimEnd('0').TrimEnd(culture.DecimalMark) : text;
    }

    private static string Whole(double value, TextCulture culture) =>
        QuantityText.WriteNumber(value, culture, NumberForm.Decimals(0));

    private static FindingValue? Find(IReadOnlyList<FindingValue> values, string name)
    {
        foreach (var value in values)
            if (value.Name == name) return value;
        return null;
    }

    private static (string Name, string Form) Named(string placeholder)
    {
        var colon = placeholder.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? (placeholder, "") : (placeholder[..colon], placeholder[(colon + 1)..]);
    }

    private static IEnumerable<(string Text, bool IsValue)> Split(string template)
    {
        var at = 0;
        while (at < template.Length)
        {
            var open = template.IndexOf('{', at);
            var close = open < 0 ? -1 : template.IndexOf('}', open);
            if (close < 0) break;
            yield return (template[at..open], false);
            yield return (template[(open + 1)..close], true);
            at = close + 1;
        }

        yield return (template[at..], false);
    }
}
