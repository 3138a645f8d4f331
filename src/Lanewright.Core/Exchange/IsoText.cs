using System.Globalization;

namespace Lanewright.Core.Exchange;

/// <summary>Dates and moments in the one form that cannot be misread: ISO 8601's extended calendar form.</summary>
public static class IsoText
{
    private static readonly string[] WithOffset =
        ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mmzzz"];

    private static readonly string[] InUtc =
        ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", "yyyy-MM-dd'T'HH:mm:ss'Z'", "yyyy-MM-dd'T'HH:mm'Z'"];

    /// <summary>The date 2026-01-31; null for any other form.</summary>
    public static DateOnly? Date(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : null;

    /// <summary>
    /// The moment 2026-01-31T07:45:00-05:00 (RFC 3339, seconds and their fraction may be left out) in UTC; null for
    /// any other form, one without an offset included.
    /// </summary>
    public static DateTimeOffset? Moment(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        // The framework also takes offsets such as +5 and +0500; only +hh:mm is meant.
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
