using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;
using YamlDotNet.Core.Events;
using YamlDotNet.Core;

namespace Lanewright.Files;

/// <summary>
/// Takes apart a text in the part of YAML 1.2 that a sheet needs: groups, lists and scalars, in block or flow form, with
/// comments. Every scalar is a text as typed; only an unquoted blank, <c>~</c> or <c>null</c> is nothing. Anchors,
/// aliases, tags and several documents are refused: nobody needs them in a sheet, and an alias can make a small text
/// enormous.
/// </summary>
public static class YamlTree
{
    /// <summary>The tree of a text; whatever is wrong with the text is a finding, never an exception.</summary>
    public static SheetTree Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if ((SheetText.Oversize(text) ?? SheetText.HalfCharacter(text)) is { } refusal) return SheetTree.Refused(refusal);

        var builder = new SheetTreeBuilder();
        var reader = new YamlReader(builder);
        text = text.TrimStart('\uFEFF');
        var scanner = new Scanner(new StringReader(text), skipComments: true);
        var parser = new Parser(scanner);
        (Mark Start, Mark End)? broken = null;
        while (!builder.Stopped && Next(parser, scanner, out broken) is { } one) reader.Take(one);

        if (broken is { } range) builder.Refuse(Broken(text, range.Start, range.End));
        return builder.Build();
    }

    /// <summary>The next event; null at the end and where the text is broken.</summary>
    private static ParsingEvent? Next(Parser parser, Scanner scanner, out (Mark Start, Mark End)? broken)
    {
        broken = null;
        try
        {
            return parser.MoveNext() ? parser.Current : null;
        }
        catch (YamlException error)
        {
            // Some errors come without a place; the scanner knows how far it has come.
            broken = error.Start.Index > 0 ? (error.Start, error.End) : (scanner.CurrentPosition, scanner.CurrentPosition);
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException)
        {
            // The scanner answers some broken texts, such as an unclosed bracket before a name, with these.
            broken = (scanner.CurrentPosition, scanner.CurrentPosition);
        }

        return null;
    }

    private static Finding Broken(string text, Mark start, Mark end)
    {
        // Counted here, because at the end of the text the parser is a line ahead.
        var at = (int)Math.Min(start.Index, text.Length);
        var row = text.AsSpan(0, at).LastIndexOf('\n') + 1;
        var place = Place.Of(text.AsSpan(0, row).Count('\n') + 1, at - row + 1);
        if (text.AsSpan(row).TrimStart(' ').StartsWith("\t")) return ReadFindings.YamlTab.At("", place);
        if (text.AsSpan((int)Math.Min(end.Index, text.Length)).IsWhiteSpace()) return ReadFindings.CutOff.At("", place);

        var near = text.AsSpan(at);
        var nearEnd = near.IndexOfAny('\r', '\n');
        if (nearEnd > 0) near = near[..nearEnd];
        return ReadFindings.YamlSyntax.At("", [FindingValue.Text("near", Excerpt.Of(near.Trim(), 20)), .. place]);
    }
}
