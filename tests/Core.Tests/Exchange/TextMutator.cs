using System.Text;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>Damages texts in the ways that files are damaged: cut, doubled, swapped, mistyped, and filled with oddities.
/// The same seed gives the same texts.</summary>
public sealed class TextMutator(int seed)
{
    private static readonly string[] Oddities =
    [
        "\"", "'", "{", "}", "[", "]", ",", ":", ": ", ";", "\t", "\n", "\r", "\r\n", "\0", "\u0001", "#", "&a ", "*a", "!!x ",
        "---\n", "...\n", "- ", "? ", "| ", "> ", "%", "@", "`", "~", "null", "NaN", "-", "+", ".", "1e999", "0x1F",
        "\ud800", "\udc00", "\uFEFF", "\u2028", "\u202E", "é", "😀", "\\", "\\u", "\\ud83d", "//", "/*", "=", "<<: ",
        "[[[[[[[[[[[[[[[[[[[[", "{a: {a: {a: {a: ", "[0]", "a.b.c", "a[0].b", "a[999999999999].b", "\"\"\"",
    ];

    // System.Random with a seed keeps its sequence between versions of the framework; the tests depend on nothing more.
    private readonly Random random = new(seed);

    /// <summary>One to four pieces of damage to one of the texts.</summary>
    public string Next(IReadOnlyList<string> texts)
    {
        var text = new StringBuilder(texts[random.Next(texts.Count)]);
        for (var times = random.Next(1, 5); times > 0; times--) Damage(text);
        return text.ToString();
    }

    private void Damage(StringBuilder text)
    {
        var at = random.Next(text.Length + 1);
        var length = Math.Min(random.Next(1, 12), text.Length - at);
        switch (random.Next(7))
        {
            case 0:
                text.Remove(at, length);
                break;
            case 1:
                text.Insert(at, text.ToString(at, length));
                break;
            case 2:
                text.Insert(at, Oddities[random.Next(Oddities.Length)]);
                break;
            case 3 when length > 0:
                text[at] = (char)random.Next(0x20, 0x7F);
                break;
            case 4 when length > 0:
                text[at] = (char)random.Next(0x10000);
                break;
            case 5:
                text.Length = at;
                break;
            default:
                var piece = text.ToString(at, length);
                text.Remove(at, length).Insert(random.Next(text.Length + 1), piece);
                break;
        }
    }
}
