using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Lanewright.Core.Text;

/// <summary>
/// A text of the code, kept until it is known in which language it is read. It is written like any text,
/// <c>"Net mass"</c> or <c>$"To reach {wanted}"</c>; its key in the languages' tables is the text with <c>{0}</c>,
/// <c>{1}</c> for the values, which another language may put in another order.
/// </summary>
/// <remarks>
/// A key with two forms parted by <c>|</c> has the first for one and the second for other numbers, by its first whole
/// number. A value that is itself a phrase is said in the reader's language too; every other text stands as it is.
/// </remarks>
[InterpolatedStringHandler]
public sealed class Phrase : IEquatable<Phrase>
{
    private readonly StringBuilder? building;
    private readonly List<object?>? values;
    private string? key;
    private int next;

    /// <summary>Called by the compiler for a text with values.</summary>
    /// <param name="literalLength">Characters outside of values.</param>
    /// <param name="formattedCount">How many values.</param>
    public Phrase(int literalLength, int formattedCount)
    {
        building = new(literalLength + (3 * formattedCount));
        values = new(formattedCount);
    }

    private Phrase(string key) => this.key = key;

    /// <summary>The text as it is in the tables.</summary>
    public string Key => key ??= building!.ToString();

    /// <summary>A text without values.</summary>
    public static implicit operator Phrase(string english) => new(english);

    /// <summary>A text without values, one that is data in the code.</summary>
    public static Phrase FromString(string english) => new(english);

    /// <summary>What a family of error sources is called; one that belongs to a scale names it.</summary>
    public static Phrase OfFamily(string family)
    {
        ArgumentNullException.ThrowIfNull(family);
        var end = family.LastIndexOf(": ", StringComparison.Ordinal);
        if (end < 6 || !family.StartsWith("scale ", StringComparison.Ordinal)) return family;
        var scale = family[6..end];
        return family[(end + 2)..] switch
        {
            "rounding of readings" => (Phrase)$"scale {scale}: rounding of readings",
            "error of each reading" => $"scale {scale}: error of each reading",
            "error in proportion to load" => $"scale {scale}: error in proportion to load",
            _ => family,
        };
    }

    /// <summary>Called by the compiler for the text between values.</summary>
    public void AppendLiteral(string literal)
    {
        ArgumentNullException.ThrowIfNull(literal);
        // The second form has the values of the first.
        if (literal.Contains('|', StringComparison.Ordinal)) next = 0;
        building!.Append(literal.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));
    }

    /// <summary>Called by the compiler for a value.</summary>
    public void AppendFormatted<T>(T value)
    {
        building!.Append('{').Append(next).Append('}');
        if (next++ == values!.Count) values.Add(value);
    }

    /// <summary>The text in a language, its places filled.</summary>
    public string In(Language language) => In(language, '.');

    /// <summary>The same with the decimal mark of a reader in the <see cref="Reading"/>s among its values.</summary>
    internal string In(Language language, char mark)
    {
        ArgumentNullException.ThrowIfNull(language);
        return values is null ? language.Say(Key) : Filled(language, mark, Form(language, language.Say(Key)));
    }

    /// <summary>The English text.</summary>
    public override string ToString() => In(Language.English);

    /// <summary>Whether both say the same in every language.</summary>
    public bool Equals(Phrase? other) => other is not null && Key == other.Key && ToString() == other.ToString();

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Phrase);

    /// <inheritdoc/>
    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);

    private string Filled(Language language, char mark, string text)
    {
        var filled = new StringBuilder();
        var at = 0;
        while (at < text.Length)
        {
            var letter = text[at++];
            if (letter is not ('{' or '}'))
            {
                filled.Append(letter);
            }
            else if (at < text.Length && text[at] == letter)
            {
                filled.Append(letter);
                at++;
            }
            else
            {
                var close = text.IndexOf('}', at);
                filled.Append(Shown(language, mark, values![int.Parse(text.AsSpan(at, close - at), CultureInfo.InvariantCulture)]));
                at = close + 1;
            }
        }

        return filled.ToString();
    }

    private string Form(Language language, string text) =>
        values!.Find(value => value is int or long) is { } number ? language.Form(text, Convert.ToDouble(number, CultureInfo.InvariantCulture)) : text;

    private static string Shown(Language language, char mark, object? value) => value switch
    {
        Phrase inner => inner.In(language, mark),
        Reading reading => reading.With(mark),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value?.ToString() ?? "",
    };
}
