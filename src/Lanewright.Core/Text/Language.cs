namespace Lanewright.Core.Text;

/// <summary>
/// A language in which the program speaks. The English text in the code is the key; what it is in another language stands
/// in that language's table, <c>Text/Languages/</c>. A text that a table does not have stays English, and a test says so.
/// </summary>
public sealed class Language
{
    private readonly Lazy<IReadOnlyDictionary<string, string>>? table;

    private Language(string code, string name, Func<IReadOnlyDictionary<string, string>>? read)
    {
        Code = code;
        Name = name;
        table = read is null ? null : new(read);
    }

    /// <summary>English, the language of the code.</summary>
    public static Language English { get; } = new("en", "English", null);

    /// <summary>French.</summary>
    public static Language French { get; } = new("fr", "Français", () => LanguageTable.Of("fr"));

    /// <summary>Finnish.</summary>
    public static Language Finnish { get; } = new("fi", "Suomi", () => LanguageTable.Of("fi"));

    /// <summary>Every language, English first.</summary>
    public static IReadOnlyList<Language> All { get; } = [English, French, Finnish];

    /// <summary>The two letters of ISO 639-1.</summary>
    public string Code { get; }

    /// <summary>What the language calls itself.</summary>
    public string Name { get; }

    /// <summary>The table, by the English text; empty for English.</summary>
    public IReadOnlyDictionary<string, string> Table => table?.Value ?? LanguageTable.Empty;

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
    public string Say(string english) => table is not null && table.Value.TryGetValue(english, out var own) ? own : english;

    /// <summary>The phrase in this language, its places filled.</summary>
    public string Say(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.In(this);
    }

    /// <inheritdoc/>
    public override string ToString() => Code;
}
