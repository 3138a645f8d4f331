using System.Reflection;

namespace Lanewright.Core.Text;

/// <summary>
/// A language in which the program speaks. The English text in the code is the key; what it is in another language stands
/// in that language's table, <c>Text/Languages/</c>. A text that a table does not have stays English, and a test says so.
/// </summary>
public sealed class Language
{
    private volatile Known? known;

    private Language(string code, string name)
    {
        Code = code;
        Name = name;
    }

    /// <summary>English, the language of the code.</summary>
    public static Language English { get; } = new("en", "English");

    /// <summary>French.</summary>
    public static Language French { get; } = new("fr", "Français");

    /// <summary>Finnish.</summary>
    public static Language Finnish { get; } = new("fi", "Suomi");

    /// <summary>Every language, English first.</summary>
    public static IReadOnlyList<Language> All { get; } = [English, French, Finnish];

    /// <summary>The two letters of ISO 639-1.</summary>
    public string Code { get; }

    /// <summary>What the language calls itself.</summary>
    public string Name { get; }

    /// <summary>The table, by the English text; empty for English.</summary>
    public IReadOnlyDictionary<string, string> Table
    {
        get
        {
            if (this == English) return LanguageTable.Empty;
            var count = LanguageTable.Count;
            if (known is { } read && read.Count == count) return read.Table;
            var table = LanguageTable.Of(Code, count);
            known = new(count, table);
            return table;
        }
    }

    /// <summary>Adds the tables of assemblies that say texts of their own, named like Core's: <c>fr.json</c> among the assembly's resources.</summary>
    /// <param name="assemblies">Each is asked for, and so loaded, only when another language than English is spoken.</param>
    public static void AddTables(params ReadOnlySpan<Func<Assembly>> assemblies) => LanguageTable.Add(assemblies);

    /// <summary>The language of a code such as <c>fr</c> or of a tag that begins with it, such as <c>fr-CA</c>.</summary>
    public static bool TryFind(string? code, out Language language)
    {
        foreach (var known in All)
        {
            if (code is null || !code.StartsWith(known.Code, StringComparison.OrdinalIgnoreCase)) continue;
            if (code.Length > known.Code.Length && code[known.Code.Length] != '-') continue;
            language = known;
            return true;
        }

        language = English;
        return false;
    }

    /// <summary>The text in this language; the text itself where the table does not have it.</summary>
    /// <param name="english">A text of the code; never something that a person typed.</param>
    public string Say(string english) => Table.TryGetValue(english, out var own) ? own : english;

    /// <summary>Of a text's two forms, parted by <c>|</c>, the one for so many; a text without a bar as it is.</summary>
    internal string Form(string text, double count)
    {
        var bar = text.IndexOf('|', StringComparison.Ordinal);
        if (bar < 0) return text;
        // French has the first form for nothing as well: zéro essai, un essai, deux essais.
        return count == 1 || (count == 0 && this == French) ? text[..bar] : text[(bar + 1)..];
    }

    /// <summary>The phrase in this language, its places filled.</summary>
    public string Say(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.In(this);
    }

    /// <inheritdoc/>
    public override string ToString() => Code;

    // What was read, and from how many assemblies.
    private sealed record Known(int Count, IReadOnlyDictionary<string, string> Table);
}
