using System.Text;

namespace Lanewright.Core.Quantities;

/// <summary>Finds the units that a spelling may mean. Letter case, plurals, "per" and superscripts do not matter.
/// </summary>
internal static class UnitSpelling
{
    private static readonly Dictionary<string, List<Unit>> Words = BuildWords();
    private static readonly Dictionary<(Unit Top, Unit Bottom), Unit> Quotients =
        Units.All.Where(unit => unit.Top is not null).ToDictionary(unit => (unit.Top!, unit.Bottom!));

    private static readonly HashSet<Unit> Whole = [.. Units.All];

    /// <summary>
    /// Every unit the text may mean; none when it is not a unit. <paramref name="narrow"/> drops the meanings of a word
    /// that do not count where the text comes from.
    /// </summary>
    internal static IReadOnlyList<Unit> Meanings(string text, Func<IReadOnlyList<Unit>, IReadOnlyList<Unit>> narrow)
    {
        var spelled = Normalise(text);
        var stroke = spelled.IndexOf('/', StringComparison.Ordinal);
        if (stroke < 0)
            return narrow([.. Lookup(spelled).Where(Whole.Contains)]);
        var meanings = new List<Unit>();
        foreach (var top in narrow(Lookup(spelled[..stroke])))
        {
            foreach (var bottom in narrow(Lookup(spelled[(stroke + 1)..])))
            {
                if (Quotients.TryGetValue((top, bottom), out var unit))
                    meanings.Add(unit);
            }
        }

        return meanings;
    }

    // A few symbols differ by case alone ("T" the ton, "t" the tonne; "Mg" the megagram, "mg" the milligram), so the
    // spelling as it stands is looked up before its lower-case form.
    private static List<Unit> Lookup(string word) =>
        Words.TryGetValue(word, out var exact) ? exact
        : Words.TryGetValue(word.ToLowerInvariant(), out var lower) ? lower
        : [];

    private static Dictionary<string, List<Unit>> BuildWords()
    {
        var words = new Dictionary<string, List<Unit>>(StringComparer.Ordinal);
        Unit[] parts =
        [
            UnitParts.LaneMile, UnitParts.TwoLaneMile, UnitParts.LaneKilometre, UnitParts.TwoLaneKilometre,
            UnitParts.ThousandSquareFeet,
        ];
        foreach (var unit in Units.All.Concat(parts))
        {
            Add(Normalise(unit.Symbol).ToLowerInvariant(), unit);
            foreach (var spelling in unit.Spellings)
                Add(spelling is "T" or "Mg" ? spelling : Normalise(spelling).ToLowerInvariant(), unit);
        }

        return words;

        void Add(string word, Unit unit)
        {
            if (!words.TryGetValue(word, out var units))
                words.Add(word, units = []);
            if (!units.Contains(unit))
                units.Add(unit);
        }
    }

    // One spelling for what is typed in many ways: "lb per 1,000 sq. ft" becomes "lb/1000 sq ft".
    internal static string Normalise(string text)
    {
        var plain = new StringBuilder(text.Length + 8);
        foreach (var letter in text)
            plain.Append(Plain(letter));
        var tokens = plain.Replace("''", "\"").ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var joined = new StringBuilder(plain.Length);
        for (var i = 0; i < tokens.Length; i++)
        {
            var per = tokens[i].Equals("per", StringComparison.OrdinalIgnoreCase);
            if (per && i + 1 < tokens.Length && tokens[i + 1].ToLowerInvariant() is "cent" or "mille" or "mil")
                joined.Append("per").Append(tokens[++i]);
            else
                joined.Append(per ? "/" : tokens[i]);
            joined.Append(' ');
        }

        return joined.Replace(" /", "/").Replace("/ ", "/").ToString().Trim();
    }

    private static string Plain(char letter) => letter switch
    {
        '²' => "2",
        '³' => "3",
        '^' or '.' or ',' => "",
        '-' or '\u2010' or '\u2011' or '\u2013' or '\u2212' or '·' or '_' or '\u00A0'
            or '\u202F' or '\u2009' or '\t' => " ",
        '\u2032' or '\u2019' => "'",
        '\u2033' or '\u201D' => "\"",
        'º' => "°",
        '℃' => "°C",
        '℉' => "°F",
        'ℓ' => "l",
        '\u212A' => "K",
        '\u2044' or '\u2215' or '÷' => "/",
        // A Turkish keyboard makes these of i in capitals and of I in small letters.
        'İ' or 'ı' => "i",
        _ => letter.ToString(),
    };
}
