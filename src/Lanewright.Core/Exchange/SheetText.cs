using System.Globalization;
using System.Text;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>The checks that a text passes before any syntax is looked for.</summary>
public static class SheetText
{
    /// <summary>The finding for a text of so many bytes when it is longer than <see cref="SheetLimits.Bytes"/>;
    /// otherwise null.</summary>
    public static Finding? Oversize(long bytes) =>
        bytes <= SheetLimits.Bytes
            ? null
            : ReadFindings.TooLarge.At(
                "", FindingValue.Text("size", Megabytes(bytes)), FindingValue.Text("limit", Megabytes(SheetLimits.Bytes)));

    /// <summary>The same for a text that is in memory; measured as UTF-8.</summary>
    public static Finding? Oversize(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Oversize(text.Length > SheetLimits.Bytes ? text.Length : Encoding.UTF8.GetByteCount(text));
    }

    /// <summary>Where the bytes are not UTF-8; null when they are. UTF-16 is found here too.</summary>
    public static Finding? BadUtf8(ReadOnlySpan<byte> bytes)
    {
        if (System.Text.Unicode.Utf8.IsValid(bytes)) return null;

        var at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
            at += length;
        var place = new Utf8Place();
        place.MoveTo(bytes, at);
        return ReadFindings.BadCharacters.At("", Place.Of(place.Line, place.Column));
    }

    /// <summary>Where a text holds half of a character (a surrogate alone); null when it is whole.</summary>
    public static Finding? HalfCharacter(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (line, column, at) = (1, 1, 0);
        while (at < text.Length)
        {
            if (Rune.DecodeFromUtf16(text.AsSpan(at), out var rune, out var length) != System.Buffers.OperationStatus.Done)
                return ReadFindings.BadCharacters.At("", Place.Of(line, column));
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + 1);
            at += length;
        }

        return null;
    }

    /// <summary>The text in UTF-8, or the finding why it cannot be.</summary>
    internal static Finding? Encode(string text, out byte[] utf8)
    {
        var finding = HalfCharacter(text);
        utf8 = finding is null ? Encoding.UTF8.GetBytes(text) : [];
        return finding;
    }

    private static string Megabytes(long bytes)
    {
        var tenths = Math.Floor(((bytes * 10.0) / (1024 * 1024)) + 0.999_999) / 10;
        return string.Create(CultureInfo.InvariantCulture, $"{tenths:0.0} MB");
    }
}
