namespace Lanewright.Core.Text;

/// <summary>The digits of a number and the marks between them, before anything is decided about the marks.</summary>
internal readonly struct NumberBody
{
    private readonly List<string> runs;
    private readonly List<char> marks;

    private NumberBody(List<string> runs, List<char> marks, int end)
    {
        this.runs = runs;
        this.marks = marks;
        End = end;
    }

    /// <summary>Where the body ends in the text.</summary>
    internal int End { get; }

    /// <summary>Whether there is no digit at all.</summary>
    internal bool IsEmpty => runs.TrueForAll(run => run.Length == 0);

    /// <summary>Whether the digits are a whole number, with or without groups, whatever the culture.</summary>
    internal bool IsWhole => marks.Count == 0 || (AllSame(marks.Count) && (marks.Count > 1 || marks[0] is ' ' or '\''));

    private const char Space = ' ';

    internal static NumberBody Take(ReadOnlySpan<char> text, int at)
    {
        var runs = new List<string> { TakeDigits(text, ref at) };
        var marks = new List<char>();
        while (at < text.Length)
        {
            var mark = text[at] switch
            {
                '.' or ',' => text[at],
                '\'' or '\u2019' => '\'',
                var letter when NumberReader.IsSpace(letter) => Space,
                _ => '\0',
            };
            var follows = CountDigits(text, at + 1);
            if (mark == '\0' || follows == 0)
                break;
            // A space or an apostrophe may also part a number from a fraction ("1 1/2") or feet from inches (12' 6").
            if (mark is Space or '\'' && (follows != 3 || runs[0].Length == 0 || Ends(text, at + 4)))
                break;
            marks.Add(mark);
            at++;
            runs.Add(TakeDigits(text, ref at));
        }

        // "5." and "5," at the end of a number say no more than 5.
        if (marks.Count == 0 && runs[0].Length > 0 && at < text.Length && text[at] is '.' or ','
            && (at + 1 == text.Length || NumberReader.IsSpace(text[at + 1])))
            at++;
        return new(runs, marks, at);
    }

    /// <summary>The number, or the two numbers, that the digits and marks may stand for, as plain digits with a point.
    /// </summary>
    internal IEnumerable<string> Meanings(TextCulture culture)
    {
        if (IsEmpty)
            return [];
        var whole = string.Concat(runs);
        if (marks.Count == 0)
            return [whole];
        var last = marks.Count - 1;
        var lastIsDecimal = marks[last] is '.' or ',';
        var decimals = string.Concat(runs.Take(runs.Count - 1)) + "." + runs[^1];
        if (marks.Count > 1)
        {
            return AllSame(marks.Count) ? (Grouped(runs.Count) ? [whole] : [])
                : AllSame(last) && lastIsDecimal && Grouped(runs.Count - 1) ? [decimals] : [];
        }

        if (!lastIsDecimal)
            return Grouped(2) ? [whole] : [];
        if (!Grouped(2) || marks[0] == culture.DecimalMark)
            return [decimals];
        return marks[0] == culture.GroupMark ? [whole] : [decimals, whole];
    }

    private bool AllSame(int count)
    {
        for (var i = 1; i < count; i++)
        {
            if (marks[i] != marks[0])
                return false;
        }

        return true;
    }

    // 1,250 and 1,250,000, but neither 0,250 nor 1234,567 nor 1,25,000.
    private bool Grouped(int count)
    {
        if (runs[0].Length is < 1 or > 3 || runs[0][0] == '0')
            return false;
        for (var i = 1; i < count; i++)
        {
            if (runs[i].Length != 3)
                return false;
        }

        return true;
    }

    private static bool Ends(ReadOnlySpan<char> text, int at) =>
        at < text.Length && text[at] is '/' or '\u2044' or '"' or '\u2033' or '\u201D';

    private static string TakeDigits(ReadOnlySpan<char> text, ref int at)
    {
        var count = CountDigits(text, at);
        at += count;
        return text.Slice(at - count, count).ToString();
    }

    private static int CountDigits(ReadOnlySpan<char> text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
            end++;
        return end - at;
    }
}
