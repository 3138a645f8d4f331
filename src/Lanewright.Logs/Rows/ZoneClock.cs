using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>Local times of one zone as UTC. Remembers the quarter of an hour it was last asked about, since a zone changes only
/// between two of them. Belongs to one thread.</summary>
internal sealed class ZoneClock(TimeZoneInfo zone, DoubtfulTime doubtful)
{
    private const long Quarter = 15 * 60 * 1_000_000L;

    private long known = long.MinValue;
    private long offset;
    private Refusal refusal;

    /// <summary>Microseconds to take from the local time; or why there is no such moment.</summary>
    internal Refusal Offset(long localMicros, out long micros)
    {
        var quarter = Math.DivRem(localMicros, Quarter).Quotient;
        if (quarter != known) Learn(quarter);
        micros = offset;
        return refusal;
    }

    private void Learn(long quarter)
    {
        known = quarter;
        offset = 0;
        refusal = Refusal.None;
        var local = new DateTime(DateTime.UnixEpoch.Ticks + (quarter * Quarter * 10), DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(local))
        {
            refusal = Refusal.TimeSkipped;
        }
        else if (zone.IsAmbiguousTime(local))
        {
            if (doubtful is DoubtfulTime.Refuse) refusal = Refusal.TimeTwice;
            // The clock is ahead of UTC by more before it is set back.
            var offsets = zone.GetAmbiguousTimeOffsets(local);
            offset = (doubtful is DoubtfulTime.First ? offsets.Max() : offsets.Min()).Ticks / 10;
        }
        else
        {
            offset = zone.GetUtcOffset(local).Ticks / 10;
        }
    }
}
