using System.Globalization;

namespace Lanewright.Storage.Entries;

/// <summary>
/// Moments as texts: ISO 8601 in UTC, <c>2026-11-25T10:12:13.123Z</c>, with milliseconds, or seven digits where there is
/// something finer.
/// </summary>
public static class Moments
{
    private static readonly string[] InUtc =
        ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", "yyyy-MM-dd'T'HH:mm:ss'Z'", "yyyy-MM-dd'T'HH:mm'Z'"];

    private static readonly string[] WithOffset =
        ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mmzzz"];

    /// <summary>The moment as text.</summary>
    public static string Write(DateTimeOffset moment) => moment.UtcDateTime.ToString(
        moment.UtcTicks % TimeSpan.TicksPerMillisecond == 0
            ? "yyyy-MM-dd'T'HH:mm:ss.fff'Z'"
            : "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'",
        CultureInfo.InvariantCulture);

    /// <summary>The moment of a text with Z or an offset such as -05:00, in UTC; null for any other text.</summary>
    public static DateTimeOffset? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var formats = text.EndsWith('Z') ? InUtc
            : text.Length > 6 && text[^6] is '+' or '-' && text[^3] == ':' ? WithOffset
            : null;
        return formats is not null
            && DateTimeOffset.TryParseExact(
                text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var moment)
            ? moment.ToUniversalTime()
            : null;
    }
}
