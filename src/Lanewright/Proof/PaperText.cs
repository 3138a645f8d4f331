using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Lanewright.Proof;

/// <summary>
/// The lines of text of a certificate as PDF, whatever was done to it since. It reads what this program writes (PDF 1.7, ISO
/// 32000-1, 9.4: strings in the fonts' own code), not every PDF; what it cannot read it leaves out. It takes a bounded time and space.
/// </summary>
internal static partial class PaperText
{
    private const int MostUnpacked = 32 * 1024 * 1024;
    private const int MostLines = 4000;

    // Codes 0x80 to 0x9F of WinAnsiEncoding (ISO 32000-1, annex D); a question mark where it has none.
    private const string Ansi = "€?‚ƒ„…†‡ˆ‰Š‹Œ?Ž??‘’“”•–—˜™š›œ?žŸ";

    /// <summary>The lines, in the order in which they stand in the file.</summary>
    internal static IReadOnlyList<string> Lines(byte[] pdf)
    {
        var streams = Streams(pdf);
        var letters = new Dictionary<int, string>();
        foreach (var map in streams.Where(stream => stream.Contains("begincmap", StringComparison.Ordinal)))
            foreach (Match range in Range().Matches(map))
                letters.TryAdd(Code(range.Groups[1].Value), ((char)Code(range.Groups[2].Value)).ToString());
        return
        [
            .. streams.SelectMany(stream => Shown().Matches(stream))
                .Select(shown => shown.Groups["hex"].Success ? Glyphs(shown.Groups["hex"].Value, letters) : Plain(shown.Groups["text"].Value)).Take(MostLines),
        ];
    }

    /// <summary>The language that the file names; empty for none.</summary>
    internal static string LanguageOf(byte[] pdf) => Named().Match(Encoding.Latin1.GetString(pdf)).Groups[1].Value;

    /// <summary>Whether its paper is A4.</summary>
    internal static bool IsA4(byte[] pdf) => pdf.AsSpan().IndexOf("/MediaBox[0 0 595"u8) >= 0;

    private static List<string> Streams(byte[] pdf)
    {
        List<string> found = [];
        var room = MostUnpacked;
        for (var at = 0; room > 0;)
        {
            var begin = pdf.AsSpan(at).IndexOf("stream"u8);
            if (begin < 0) break;
            begin += at + 6;
            while (begin < pdf.Length && pdf[begin] is (byte)'\r' or (byte)'\n') begin++;
            var length = pdf.AsSpan(begin).IndexOf("endstream"u8);
            if (length < 0) break;
            var text = Unpacked(pdf, begin, length, room);
            room -= text.Length;
            found.Add(text);
            at = begin + length + 9;
        }

        return found;
    }

    // As far as it can be unpacked: one altered byte spoils what comes after it, not what came before.
    private static string Unpacked(byte[] pdf, int begin, int length, int room)
    {
        var bytes = new byte[4096];
        var text = new StringBuilder();
        try
        {
            using var packed = new ZLibStream(new MemoryStream(pdf, begin, length), CompressionMode.Decompress);
            for (int read; text.Length < room && (read = packed.Read(bytes)) > 0;) text.Append(Encoding.Latin1.GetString(bytes, 0, read));
        }
        catch (InvalidDataException)
        {
            // What was unpacked until then is looked at.
        }

        return text.ToString();
    }

    private static string Glyphs(string hex, Dictionary<int, string> letters)
    {
        var text = new StringBuilder();
        for (var i = 0; i + 4 <= hex.Length; i += 4) text.Append(letters.GetValueOrDefault(Code(hex.Substring(i, 4)), "?"));
        return text.ToString();
    }

    private static string Plain(string text) => Escaped().Replace(text, match => match.Groups[1].Value is [>= '0' and <= '7', ..] octal
            ? ((char)(Convert.ToInt32(octal, 8) & 0xFF)).ToString()
            : match.Groups[1].Value).Select(letter => letter is >= '\u0080' and <= '\u009F' ? Ansi[letter - 0x80] : letter).Aggregate(
        new StringBuilder(), (all, letter) => all.Append(letter)).ToString();

    private static int Code(string hex) => int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"<([0-9A-Fa-f]{4})><[0-9A-Fa-f]{4}><([0-9A-Fa-f]{4})>")]
    private static partial Regex Range();

    [GeneratedRegex(@"\((?<text>(?:[^\\()]|\\[\s\S])*)\)\s*Tj|<(?<hex>[0-9A-Fa-f]+)>\s*Tj", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Shown();

    [GeneratedRegex(@"\\([0-7]{1,3}|[\s\S])")]
    private static partial Regex Escaped();

    [GeneratedRegex(@"/Lang\s*\(([A-Za-z-]{2,12})\)")]
    private static partial Regex Named();
}
