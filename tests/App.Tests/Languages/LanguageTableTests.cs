using System.Text.RegularExpressions;
using Lanewright.Core.Text;

namespace Lanewright.App.Tests.Languages;

/// <summary>The tables of the languages against the texts of the program.</summary>
[Trait("culture", "own")]
public sealed partial class LanguageTableTests
{
    public static TheoryData<string> Others => [.. Language.All.Skip(1).Select(language => language.Code)];

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_text_stands_in_the_table_and_no_other(string code)
    {
        var table = TableOf(code);
        Assert.True(Spoken.Keys.Count > 100);
        var missing = Spoken.Keys.Where(key => !table.ContainsKey(key)).ToList();
        if (Environment.GetEnvironmentVariable("LANEWRIGHT_MISSING_WORDS") is { Length: > 0 } file) File.WriteAllLines($"{file}.{code}", missing);
        Assert.True(missing.Count == 0, $"{code}.json lacks {missing.Count}:\n{string.Join('\n', missing)}");
        var unused = table.Keys.Where(key => !IsUsed(key)).ToList();
        Assert.True(unused.Count == 0, $"{code}.json has {unused.Count} that nothing says:\n{string.Join('\n', unused)}");
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void A_translation_has_the_places_of_its_text_and_is_one(string code)
    {
        var wrong = new List<string>();
        foreach (var (english, own) in TableOf(code))
        {
            if (string.IsNullOrWhiteSpace(own)) wrong.Add($"empty: {english}");
            else if (!Places(english).SetEquals(Places(own))) wrong.Add($"places differ: {english} -> {own}");
            else if (english.Count(letter => letter == '[') != own.Count(letter => letter == '[')) wrong.Add($"[parts] differ: {english} -> {own}");
            else if (own == english && !Same.Contains(english) && Spoken.IsProse(english)) wrong.Add($"not translated: {english}");
            else if (IsPlural(english) != IsPlural(own) && IsPlural(own)) wrong.Add($"has two forms: {english} -> {own}");
            else if (char.IsWhiteSpace(english[^1]) != char.IsWhiteSpace(own[^1]) || char.IsWhiteSpace(english[0]) != char.IsWhiteSpace(own[0]))
                wrong.Add($"blank at an end: {english} -> {own}");
        }

        Assert.True(wrong.Count == 0, $"{code}.json:\n{string.Join('\n', wrong)}");
    }

    [Fact]
    public void No_text_is_put_together_without_the_tables()
    {
        var past = Spoken.All
            .Where(literal => Spoken.IsPiece(literal) && IsSaid(literal) && !Exceptions.IsExcepted(literal))
            .Select(literal => $"{literal.Type}: {literal.Text}").Distinct().ToList();
        Assert.True(past.Count == 0, string.Join('\n', past));
    }

    [Fact]
    public void The_pages_of_the_yard_say_nothing_past_the_tables()
    {
        var past = new List<string>();
        foreach (var file in YardTexts.Files.Where(file => !YardTexts.Machinery.Contains(Path.GetFileName(file))))
        {
            foreach (Match match in Quoted().Matches(YardTexts.Rest(File.ReadAllText(file))))
                if (Sentence().IsMatch(match.Value) && !YardTexts.NotSaid.Contains(match.Value)) past.Add($"{Path.GetFileName(file)}: {match.Value}");
        }

        Assert.True(past.Count == 0, string.Join('\n', past));
    }

    [GeneratedRegex(@"'[^'\n]*'|`[^`]*`")]
    private static partial Regex Quoted();

    // Begins like a sentence, or has several words with a mark between or after them.
    [GeneratedRegex(@"^['`](\p{Lu}\p{Ll}+[ .:?!,]|\p{Lu}\p{Ll}+['`]$|[^/#\[]*\p{Ll}{2,}[.,:?!] |[^/#\[=]*\p{Ll}{2,}[.?!]['`]$)")]
    private static partial Regex Sentence();

    // Equal in the languages and right so.
    private static readonly HashSet<string> Same = new(StringComparer.Ordinal) { "yes, no", "PDF, A4", "Windows, Mac, Linux" };

    private static IReadOnlyDictionary<string, string> TableOf(string code)
    {
        Spoken.BringTables();
        return Language.All.Single(language => language.Code == code).Table;
    }

    private static readonly HashSet<string> Literally = [.. Spoken.All.Select(literal => literal.Text)];

    private static bool IsUsed(string key) => Spoken.Keys.Contains(key) || Literally.Contains(key);

    private static bool IsPlural(string text) => text.Contains('|', StringComparison.Ordinal);

    private static HashSet<string> Places(string text) => [.. Place().Matches(text).Select(match => match.Value)];

    private static bool IsSaid(Literal literal) => literal.Use is Use.Markup
        ? MarkupText.Of(literal.Text).Any(text => text.Any(char.IsLetter) && !Exceptions.IsName(text))
        : Words().IsMatch(literal.Text);

    // Not a path such as runs[ nor a mark such as ": ".
    [GeneratedRegex(@"\p{L}{2,}[,.:;?]? |[ >(]\p{L}{2,}")]
    private static partial Regex Words();

    [GeneratedRegex(@"\{\w+(:\w+)?\}")]
    private static partial Regex Place();
}
