using Lanewright.Logs.Profiles;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>A piece of a file that ends with a line.</summary>
/// <param name="From">Its first byte in the file.</param>
/// <param name="To">The first byte behind it.</param>
/// <param name="Length">How many bytes of it were read; fewer than it has when one line is longer than a piece.</param>
/// <param name="Line">Number of its first line, from 1.</param>
/// <param name="Lines">How many lines it has.</param>
/// <param name="Last">Whether the file ends here.</param>
internal readonly record struct FilePart(long From, long To, int Length, int Line, int Lines, bool Last);

/// <summary>Reads a file of lines piece by piece. Memory is bounded whatever the file holds.</summary>
internal sealed class PartFile : IDisposable
{
    private readonly FileStream file;
    private readonly int partBytes;
    private long at;
    private int line = 1;

    internal PartFile(string path, int partBytes)
    {
        file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
        this.partBytes = partBytes;
    }

    internal long Bytes => file.Length;

    public void Dispose() => file.Dispose();

    /// <summary>Reads the first line; the first piece then begins with the first row.</summary>
    /// <exception cref="LogException">The file cannot be one of lines in UTF-8, or is not of the profile.</exception>
    internal LogLayout Begin(LogProfile profile)
    {
        var head = new byte[RowReader.LongestLine + 5];
        var length = Fill(head, 0);
        if (length == 0) throw new LogException("The file is empty.");
        ReadOnlySpan<byte> text = head.AsSpan(0, length);
        if (text.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || text.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            throw new LogException("The file is UTF-16; UTF-8 was expected. Save it as UTF-8.");
        var mark = text.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0;
        text = text[mark..];
        var end = text.IndexOf((byte)'\n');
        if (end < 0 && text.Length > RowReader.LongestLine) throw new LogException($"The first line is longer than {RowReader.LongestLine} bytes; this is not a file of lines.");
        var first = end < 0 ? text : text[..end];
        var layout = LogLayout.Of(profile, first.TrimEnd((byte)'\r'));
        at = mark + (profile.Header ? (end < 0 ? text.Length : end + 1) : 0);
        line = profile.Header ? 2 : 1;
        return layout;
    }

    internal void GoTo(long toByte, int toLine)
    {
        at = toByte;
        line = toLine;
    }

    /// <summary>Reads the next piece.</summary>
    internal void Read(ref byte[] buffer, out FilePart part)
    {
        if (buffer.Length < partBytes) buffer = new byte[partBytes];
        var length = Fill(buffer.AsSpan(0, partBytes), at);
        var last = at + length >= file.Length;
        var to = at + length;
        if (!last)
        {
            var end = buffer.AsSpan(0, length).LastIndexOf((byte)'\n');
            if (end >= 0)
            {
                length = end + 1;
                to = at + length;
            }
            else
            {
                // One line fills it: as much as shows that it is too long, and on behind its end.
                length = RowReader.LongestLine + 1;
                to = EndOfLine(to);
            }

            last = to >= file.Length;
        }

        var lines = buffer.AsSpan(0, length).Count((byte)'\n');
        if (length > 0 && buffer[length - 1] != '\n') lines++;
        part = new(at, to, length, line, lines, last);
        at = to;
        line += lines;
    }

    private long EndOfLine(long from)
    {
        var some = new byte[65_536];
        for (var place = from; ;)
        {
            var read = Fill(some, place);
            if (read == 0) return place;
            var end = some.AsSpan(0, read).IndexOf((byte)'\n');
            if (end >= 0) return place + end + 1;
            place += read;
        }
    }

    private int Fill(Span<byte> buffer, long from)
    {
        file.Position = from;
        return file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
    }
}
