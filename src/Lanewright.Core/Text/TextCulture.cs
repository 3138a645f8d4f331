namespace Lanewright.Core.Text;

/// <summary>
/// How numbers are read and written: the decimal mark, the mark between groups of three digits, and the meaning of a
/// bare "ton" or "gal"; and the language of the words around them. Nothing is taken from the machine or the thread, so a
/// text has the same meaning everywhere.
/// </summary>
public sealed record TextCulture
{
    private const char NarrowNoBreakSpace = '\u202F';

    private TextCulture(
        string name, char decimalMark, char? groupMark, CustomaryUnits customaryUnits, Language? language = null)
    {
        Name = name;
        Language = language ?? Language.English;
        DecimalMark = decimalMark;
        GroupMark = groupMark;
        CustomaryUnits = customaryUnits;
    }

    /// <summary>Files and machines: decimal point, no groups.</summary>
    public static TextCulture Invariant { get; } = new("invariant", '.', null, CustomaryUnits.None);

    /// <summary>English, United States.</summary>
    public static TextCulture UnitedStates { get; } = new("en-US", '.', ',', CustomaryUnits.UnitedStates);

    /// <summary>English, United Kingdom.</summary>
    public static TextCulture UnitedKingdom { get; } = new("en-GB", '.', ',', CustomaryUnits.Imperial);

    /// <summary>German, Germany.</summary>
    public static TextCulture German { get; } = DecimalComma("de-DE");

    /// <summary>French, France.</summary>
    public static TextCulture French { get; } = DecimalComma("fr-FR", Language.French);

    /// <summary>French, Canada; a bare gallon or ton is asked about, for both meanings are met there.</summary>
    public static TextCulture CanadianFrench { get; } = DecimalComma("fr-CA", Language.French);

    /// <summary>Finnish, Finland.</summary>
    public static TextCulture Finnish { get; } = DecimalComma("fi-FI", Language.Finnish);

    /// <summary>Norwegian (bokmål), Norway.</summary>
    public static TextCulture Norwegian { get; } = DecimalComma("nb-NO");

    /// <summary>Turkish, Turkey.</summary>
    public static TextCulture Turkish { get; } = DecimalComma("tr-TR");

    /// <summary>Every culture.</summary>
    public static IReadOnlyList<TextCulture> All { get; } =
        [Invariant, UnitedStates, UnitedKingdom, German, French, CanadianFrench, Finnish, Norwegian, Turkish];

    /// <summary>The language and country, e.g. <c>en-US</c>.</summary>
    public string Name { get; }

    /// <summary>The mark before the decimals, point or comma.</summary>
    public char DecimalMark { get; }

    /// <summary>The mark written between groups of three digits, or null when groups are not written.</summary>
    public char? GroupMark { get; }

    /// <summary>What a bare "ton" or "gal" means.</summary>
    public CustomaryUnits CustomaryUnits { get; }

    /// <summary>The language of the words; a French or Finnish culture brings its own, every other one English.</summary>
    public Language Language { get; private init; }

    /// <summary>The same numbers with the words of another language.</summary>
    public TextCulture In(Language language)
    {
        ArgumentNullException.ThrowIfNull(language);
        return this with { Language = language };
    }

    /// <summary>A text of the code in the culture's language.</summary>
    public string Say(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.In(Language, DecimalMark);
    }

    /// <summary>The culture of that name, whatever the letter case; false when there is none.</summary>
    public static bool TryFind(string? name, out TextCulture culture)
    {
        foreach (var known in All)
        {
            if (!known.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
                continue;
            culture = known;
            return true;
        }

        culture = Invariant;
        return false;
    }

    /// <inheritdoc/>
    public override string ToString() => Name;

    private static TextCulture DecimalComma(string name, Language? language = null) =>
        new(name, ',', NarrowNoBreakSpace, CustomaryUnits.None, language);
}
