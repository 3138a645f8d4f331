using System.Globalization;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Rows;

/// <summary>A winter season, named by its two years, such as 2026-27. It begins at 00:00 UTC of the first day of a month.</summary>
internal static class LogSeason
{
    /// <summary>2000-01-01, microseconds since 1970.</summary>
    internal const long Earliest = 946_684_800_000_000;

    /// <summary>2100-01-01.</summary>
    internal const long Latest = 4_102_444_800_000_000;

    internal static string Name(int year) => string.Create(CultureInfo.InvariantCulture, $"{year:0000}-{(year + 1) % 100:00}");

    /// <summary>The first moment of the season of a year.</summary>
    internal static long Begin(int year, int month) => (new DateTime(year, month, 1).Ticks - DateTime.UnixEpoch.Ticks) / 10;

    /// <summary>The year with which the season of a moment begins.</summary>
    internal static int YearOf(long at, int month)
    {
        var day = new DateTime(DateTime.UnixEpoch.Ticks + (at * 10));
        return day.Month >= month ? day.Year : day.Year - 1;
    }

    /// <summary>The first year of a season's name.</summary>
    /// <exception cref="LogException">It is none.</exception>
    internal static int Year(string name)
    {
        if (name.Length == 7 && name[4] == '-' && int.TryParse(name.AsSpan(0, 4), NumberStyles.None, CultureInfo.InvariantCulture, out var year)
            && year is >= 2000 and < 2100 && Name(year) == name) return year;
        throw new LogException($"'{Excerpt.Of(name)}' was read as a season; expected two years, such as 2026-27.");
    }
}
