using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Lanewright.Storage.Entries;

/// <summary>
/// The hash that chains entries: SHA-256 over UTF-8 lines, each ended by a line feed. A text's own backslashes and line
/// feeds are written \\ and \n, so that no two entries give the same lines. See docs/formats/entries.md.
/// </summary>
public static class EntryHash
{
    /// <summary>What stands as the previous hash of entry 1: sixty-four zeros.</summary>
    public static string First { get; } = new('0', 64);

    /// <summary>The hash of an entry as 64 lower-case hexadecimal digits.</summary>
    public static string Of(long number, DateTimeOffset received, string previousHash, EntryDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var text = new StringBuilder(512);
        Line(number.ToString(CultureInfo.InvariantCulture));
        Line(Moments.Write(received));
        Line(previousHash);
        Line(draft.Id);
        Line(draft.Kind);
        Line(draft.Subject);
        Line(draft.Person);
        Line(draft.Device);
        Line(draft.Seq.ToString(CultureInfo.InvariantCulture));
        Line(Moments.Write(draft.At));
        Line(draft.Zone);
        Line(draft.Parent ?? "");
        Line(draft.Why ?? "");
        Line(draft.Payload);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));

        void Line(string line)
        {
            if (line.AsSpan().IndexOfAny('\\', '\n') >= 0)
                line = line.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal);
            text.Append(line).Append('\n');
        }
    }

    /// <summary>The hash an entry should have.</summary>
    public static string Of(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Of(entry.Number, entry.Received, entry.PreviousHash, entry);
    }
}
