using System.Globalization;
using Lanewright.Core.Exchange;

namespace Lanewright.Storage.Entries;

/// <summary>
/// Moments as texts: ISO 8601 in UTC, <c>2026-11-25T10:12:13.123Z</c>, with milliseconds, or seven digits where there is
/// something finer.
/// </summary>
public static class Moments
{
    /// <summary>The moment as text.</summary>
    public static string Write(DateTimeOffset moment) => moment.UtcDateTime.ToString(
        moment.UtcTicks % TimeSpan.TicksPerMillisecond == 0
            ? "yyyy-MM-dd'T'HH:mm:ss.fff'Z'"
            : "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'",
        CultureInfo.InvariantCulture);

    /// <summary>The moment of a text with Z or an offset such as -05:00, in UTC; null for any other text.</summary>
    public static DateTimeOffset? Read(string text) => IsoText.Moment(text);
}
