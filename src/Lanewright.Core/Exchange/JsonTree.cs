using System.Text.Json;
using System.Text;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Takes apart a text in JSON (RFC 8259). Comments and a comma after the last item are allowed, because people write
/// sheets by hand; a byte order mark at the start is skipped, because editors put it there. Numbers stay as written.
/// </summary>
public static class JsonTree
{
    private static readonly JsonReaderOptions Options = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        // The tree's builder answers depth with a finding of its own before the reader's limit is reached.
        MaxDepth = SheetLimits.Depth + 8,
    };

    /// <summary>The tree of a text; whatever is wrong with the text is a finding, never an exception.</summary>
    public static SheetTree Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (SheetText.Oversize(text) is { } tooLarge) return SheetTree.Refused(tooLarge);
        return SheetText.Encode(text, out var utf8) is { } badCharacters
            ? SheetTree.Refused(badCharacters)
            : Read(utf8);
    }

    /// <summary>The tree of a text in UTF-8; whatever is wrong with it is a finding, never an exception.</summary>
    public static SheetTree Read(ReadOnlyMemory<byte> utf8)
    {
        if ((SheetText.Oversize(utf8.Length) ?? SheetText.BadUtf8(utf8.Span)) is { } refusal)
            return SheetTree.Refused(refusal);

        var text = utf8.Span;
        if (text.StartsWith(Encoding.UTF8.Preamble)) text = text[Encoding.UTF8.Preamble.Length..];
        if (text.IndexOfAnyExcept(" \t\r\n"u8) < 0) return SheetTree.Refused(ReadFindings.Empty.At(""));

        var builder = new SheetTreeBuilder();
        var place = new Utf8Place();
        var reader = new Utf8JsonReader(text, Options);
        try
        {
            while (!builder.Stopped && reader.Read())
            {
                place.MoveTo(text, (int)reader.TokenStartIndex);
                Take(ref reader, builder, place.Line, place.Column);
            }
        }
        catch (JsonException error)
        {
            // The reader counts lines and bytes from 0, and only \n ends a line.
            builder.Refuse(Broken(text, error.LineNumber ?? 0, error.BytePositionInLine ?? 0));
        }
        catch (InvalidOperationException)
        {
            // An escape such as \ud800 stands for half a character; the reader finds out when asked for the text.
            builder.Refuse(ReadFindings.BadCharacters.At("", Place.Of(place.Line, place.Column)));
        }

        return builder.Build();
    }

    private static void Take(ref Utf8JsonReader reader, SheetTreeBuilder builder, int line, int column)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                builder.Map(line, column);
                break;
            case JsonTokenType.StartArray:
                builder.List(line, column);
                break;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                builder.End();
                break;
            case JsonTokenType.PropertyName:
                builder.Name(reader.GetString()!, line, column);
                break;
            case JsonTokenType.String:
                builder.Scalar(NodeKind.Text, reader.GetString()!, line, column);
                break;
            case JsonTokenType.Number:
                builder.Scalar(NodeKind.Number, Encoding.UTF8.GetString(reader.ValueSpan), line, column);
                break;
            case JsonTokenType.True or JsonTokenType.False:
                builder.Scalar(
                    NodeKind.Flag, reader.TokenType == JsonTokenType.True ? "true" : "false", line, column);
                break;
            case JsonTokenType.Null:
                builder.Scalar(NodeKind.Null, "", line, column);
                break;
        }
    }

    private static Finding Broken(ReadOnlySpan<byte> text, long lineNumber, long byteInLine)
    {
        var at = 0;
        for (var line = 0L; line < lineNumber; line++)
        {
            var end = text[at..].IndexOf((byte)'\n');
            if (end < 0) break;
            at += end + 1;
        }

        at = (int)Math.Min(at + byteInLine, text.Length);
        var place = new Utf8Place();
        place.MoveTo(text, at);
        var values = Place.Of(place.Line, place.Column);
        if (text[at..].IndexOfAnyExcept(" \t\r\n"u8) < 0) return ReadFindings.CutOff.At("", values);

        var near = Encoding.UTF8.GetString(text.Slice(at, Math.Min(text.Length - at, 100)));
        return ReadFindings.JsonSyntax.At("", [FindingValue.Text("near", Excerpt.Of(near, 20)), .. values]);
    }
}
