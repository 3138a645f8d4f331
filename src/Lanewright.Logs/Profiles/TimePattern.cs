using System.Diagnostics.CodeAnalysis;

namespace Lanewright.Logs.Profiles;

/// <summary>How a time is written in a log.</summary>
public sealed class TimePattern
{
    /// <summary>What a pattern may be.</summary>
    public const string Expected = "iso, unix, unix-ms, or a pattern of yyyy yy MM M dd d HH H hh h mm ss f tt z with marks between";

    private readonly (char Kind, int Width)[] parts;

    private TimePattern(string text, (char Kind, int Width)[] parts)
    {
        Text = text;
        this.parts = parts;
    }

    /// <summary>The pattern as it was written.</summary>
    public string Text { get; }

    /// <summary>Reads a pattern; false when it is none.</summary>
    public static bool TryRead(string text, [NotNullWhen(true)] out TimePattern? pattern)
    {
        ArgumentNullException.ThrowIfNull(text);
        pattern = null;
        if (text is "iso" or "unix" or "unix-ms")
        {
            pattern = new(text, []);
            return true;
        }

        var parts = new List<(char Kind, int Width)>();
        for (var i = 0; i < text.Length;)
        {
            var end = i;
            while (end < text.Length && text[end] == text[i]) end++;
            var width = end - i;
            switch (text[i])
            {
                case 'y' when width is 2 or 4:
                case 'M' or 'd' or 'H' or 'h' or 'm' or 's' when width is 1 or 2:
                case 't' when width == 2:
                    parts.Add((text[i], width));
                    break;
                case 'f' or 'z':
                    parts.Add((text[i], 0));
                    break;
                case 'T' or '-' or '/' or '.' or ':' or ' ' or ',' or ';':
                    // A mark stands for itself, once for each time it is written.
                    for (var n = 0; n < width; n++) parts.Add(('\'', text[i]));
                    break;
                default:
                    return false;
            }

            i = end;
        }

        var kinds = parts.Where(p => p.Kind != '\'').Select(p => p.Kind).ToList();
        if (kinds.Count != kinds.Distinct().Count() || !kinds.Contains('y') || !kinds.Contains('M') || !kinds.Contains('d')
            || (kinds.Contains('h') != kinds.Contains('t')) || (kinds.Contains('h') == kinds.Contains('H')) || !kinds.Contains('m')) return false;
        pattern = new(text, [.. parts]);
        return true;
    }

    /// <summary>Reads a time; false when it is not written so, or is no time of the calendar.</summary>
    /// <param name="text">The field.</param>
    /// <param name="micros">Microseconds since 1970-01-01, by the clock that was written.</param>
    /// <param name="offset">Minutes ahead of UTC when the text says so; otherwise null, and the time is local.</param>
    internal bool TryParse(ReadOnlySpan<byte> text, out long micros, out int? offset)
    {
        offset = null;
        micros = 0;
        if (parts.Length > 0) return Parts(text, ref micros, ref offset);
        if (Text == "iso") return Iso(text, ref micros, ref offset);
        offset = 0;
        return Unix(text, Text == "unix" ? 1_000_000 : 1000, ref micros);
    }

    private static bool Unix(ReadOnlySpan<byte> text, long unit, ref long micros)
    {
        var at = 0;
        if (!Digits(text, ref at, 1, 14, out var whole) || whole > 99_999_999_999_999 / 1000 * 1000) return false;
        var part = 0L;
        if (at < text.Length && text[at] == '.')
        {
            at++;
            if (!Fraction(text, ref at, out part)) return false;
            part = part * unit / 1_000_000;
        }

        micros = (whole * unit) + part;
        return at == text.Length;
    }

    private static bool Iso(ReadOnlySpan<byte> text, ref long micros, ref int? offset)
    {
        if (Usual(text, ref micros, ref offset)) return true;
        var at = 0;
        if (!Digits(text, ref at, 4, 4, out var year) || !Mark(text, ref at, '-') || !Digits(text, ref at, 2, 2, out var month)
            || !Mark(text, ref at, '-') || !Digits(text, ref at, 2, 2, out var day)) return false;
        if (!Mark(text, ref at, 'T') && !Mark(text, ref at, ' ')) return false;
        if (!Digits(text, ref at, 2, 2, out var hour) || !Mark(text, ref at, ':') || !Digits(text, ref at, 2, 2, out var minute)) return false;
        long second = 0, fraction = 0;
        if (Mark(text, ref at, ':'))
        {
            if (!Digits(text, ref at, 2, 2, out second)) return false;
            if ((Mark(text, ref at, '.') || Mark(text, ref at, ',')) && !Fraction(text, ref at, out fraction)) return false;
        }

        if (at < text.Length && !Offset(text, ref at, ref offset)) return false;
        return at == text.Length && Join(year, month, day, hour, minute, second, fraction, ref micros);
    }

    // 2026-12-03T06:15:00Z, with or without the Z: most logs have nothing else.
    private static bool Usual(ReadOnlySpan<byte> text, ref long micros, ref int? offset)
    {
        if (text.Length is not (19 or 20) || text[4] != '-' || text[7] != '-' || text[10] is not ((byte)'T' or (byte)' ') || text[13] != ':' || text[16] != ':'
            || (text.Length == 20 && text[19] != 'Z')) return false;
        int hundreds = Two(text, 0), years = Two(text, 2), month = Two(text, 5), day = Two(text, 8), hour = Two(text, 11), minute = Two(text, 14), second = Two(text, 17);
        if ((hundreds | years | month | day | hour | minute | second) < 0 || !Join((hundreds * 100) + years, month, day, hour, minute, second, 0, ref micros)) return false;
        if (text.Length == 20) offset = 0;
        return true;
    }

    // Two digits as a number; negative when they are none.
    private static int Two(ReadOnlySpan<byte> text, int at)
    {
        uint tens = (uint)(text[at] - '0'), ones = (uint)(text[at + 1] - '0');
        return tens <= 9 && ones <= 9 ? (int)((tens * 10) + ones) : -1;
    }

    private bool Parts(ReadOnlySpan<byte> text, ref long micros, ref int? offset)
    {
        var at = 0;
        long year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0, fraction = 0;
        var afternoon = -1;
        foreach (var (kind, width) in parts)
        {
            var read = true;
            switch (kind)
            {
                case '\'': read = Mark(text, ref at, (char)width); break;
                case 'y':
                    read = Digits(text, ref at, width, width, out year);
                    if (width == 2) year += 2000;
                    break;
                case 'M': read = Digits(text, ref at, width, 2, out month); break;
                case 'd': read = Digits(text, ref at, width, 2, out day); break;
                case 'H' or 'h': read = Digits(text, ref at, width, 2, out hour); break;
                case 'm': read = Digits(text, ref at, width, 2, out minute); break;
                case 's': read = Digits(text, ref at, width, 2, out second); break;
                case 'f': read = Fraction(text, ref at, out fraction); break;
                case 'z': read = Offset(text, ref at, ref offset); break;
                default:
                    read = at + 2 <= text.Length && (text[at + 1] | 0x20) == 'm' && (text[at] | 0x20) is 'a' or 'p';
                    if (read) afternoon = (text[at] | 0x20) == 'p' ? 1 : 0;
                    at += 2;
                    break;
            }

            if (!read) return false;
        }

        if (afternoon >= 0)
        {
            if (hour is < 1 or > 12) return false;
            hour = (hour % 12) + (12 * afternoon);
        }

        return at == text.Length && Join(year, month, day, hour, minute, second, fraction, ref micros);
    }

    private static bool Join(long year, long month, long day, long hour, long minute, long second, long fraction, ref long micros)
    {
        if (year is < 1 or > 9999 || month is < 1 or > 12 || hour > 23 || minute > 59 || second > 59) return false;
        if (day < 1 || day > DateTime.DaysInMonth((int)year, (int)month)) return false;
        var ticks = new DateTime((int)year, (int)month, (int)day).Ticks - DateTime.UnixEpoch.Ticks;
        micros = (ticks / 10) + ((((hour * 60) + minute) * 60) + second) * 1_000_000 + fraction;
        return true;
    }

    private static bool Offset(ReadOnlySpan<byte> text, ref int at, ref int? offset)
    {
        if (Mark(text, ref at, 'Z'))
        {
            offset = 0;
            return true;
        }

        var minus = Mark(text, ref at, '-');
        if (!minus && !Mark(text, ref at, '+')) return false;
        if (!Digits(text, ref at, 2, 2, out var hours)) return false;
        Mark(text, ref at, ':');
        var minutes = 0L;
        if (at < text.Length && !Digits(text, ref at, 2, 2, out minutes)) return false;
        if (hours > 14 || minutes > 59) return false;
        offset = (int)((hours * 60) + minutes) * (minus ? -1 : 1);
        return true;
    }

    // One to nine digits after the mark, cut to millionths.
    private static bool Fraction(ReadOnlySpan<byte> text, ref int at, out long micros)
    {
        micros = 0;
        var digits = 0;
        for (; at < text.Length && (uint)(text[at] - '0') <= 9; at++, digits++)
            if (digits < 6) micros = (micros * 10) + (text[at] - '0');
        if (digits is 0 or > 9) return false;
        for (; digits < 6; digits++) micros *= 10;
        return true;
    }

    private static bool Mark(ReadOnlySpan<byte> text, ref int at, char mark)
    {
        if (at >= text.Length || text[at] != mark) return false;
        at++;
        return true;
    }

    private static bool Digits(ReadOnlySpan<byte> text, ref int at, int least, int most, out long value)
    {
        value = 0;
        var begin = at;
        for (; at < text.Length && at - begin < most && (uint)(text[at] - '0') <= 9; at++) value = (value * 10) + (text[at] - '0');
        return at - begin >= least;
    }
}
