using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>A row that is stored already, as far as what follows it or lies before it needs it.</summary>
/// <param name="At">Its moment.</param>
/// <param name="Seconds">Length of its interval; NaN when it has no beginning.</param>
/// <param name="Reading">What its column of counts said.</param>
/// <param name="Odometer">What its column of distance said; NaN when there is none.</param>
internal readonly record struct StoredRow(long At, double Seconds, double Reading, double Odometer);

/// <summary>
/// Puts rows in the order of their spreaders and times, refuses what is there already, and computes what happened in the
/// interval that ends with each row.
/// </summary>
internal sealed class Settling(LogProfile profile)
{
    private readonly bool running = profile.Find(LogRole.Counts)!.Running;
    private readonly bool odometerRuns = profile.Find(LogRole.Distance) is { Running: true };
    private readonly bool hasDistance = profile.Find(LogRole.Distance) is not null;
    private readonly double? rollover = profile.Find(LogRole.Counts) is { Rollover: { } at, Unit: var unit } ? unit?.ToSi(at) ?? at : null;

    /// <summary>Places of the rows that are taken in, in order; valid up to <see cref="Count"/>.</summary>
    internal int[] Order { get; private set; } = [];

    /// <summary>How many rows are taken in.</summary>
    internal int Count { get; private set; }

    internal List<RefusedRow> Refused { get; } = [];

    /// <summary>Orders rows by spreader and time, lines of one moment in their own order.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="parts">The parts of <paramref name="rows"/> that are filled.</param>
    /// <param name="units">How many spreaders there are.</param>
    /// <returns>Where the rows of each spreader begin in the order, and where the last ends.</returns>
    internal int[] Sort(LogRows rows, IReadOnlyList<(int From, int Count)> parts, int units)
    {
        var starts = new int[units + 1];
        foreach (var (from, count) in parts)
            for (var i = from; i < from + count; i++) starts[rows.Unit[i] + 1]++;
        for (var i = 0; i < units; i++) starts[i + 1] += starts[i];
        if (Order.Length < starts[units]) Order = new int[starts[units]];
        var next = starts[..units];
        foreach (var (from, count) in parts)
            for (var i = from; i < from + count; i++) Order[next[rows.Unit[i]]++] = i;
        var byTime = Comparer<int>.Create((a, b) => rows.At[a] != rows.At[b] ? rows.At[a].CompareTo(rows.At[b]) : a.CompareTo(b));
        for (var u = 0; u < units; u++)
            for (var i = starts[u] + 1; i < starts[u + 1]; i++)
                if (rows.At[Order[i]] < rows.At[Order[i - 1]])
                {
                    Array.Sort(Order, starts[u], starts[u + 1] - starts[u], byTime);
                    break;
                }

        return starts;
    }

    /// <summary>Settles the rows of every spreader.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="starts">What <see cref="Sort"/> gave.</param>
    /// <param name="stored">For each spreader, rows that are stored already, in order: those within the time of the new ones, and
    /// the one before; empty when there are none.</param>
    internal void Settle(LogRows rows, int[] starts, Func<int, ReadOnlySpan<StoredRow>> stored)
    {
        Refused.Clear();
        Count = 0;
        for (var u = 0; u < starts.Length - 1; u++)
            if (starts[u] < starts[u + 1]) Spreader(rows, Order.AsSpan(starts[u], starts[u + 1] - starts[u]), stored(u));
    }

    private void Spreader(LogRows rows, ReadOnlySpan<int> order, ReadOnlySpan<StoredRow> stored)
    {
        StoredRow? before = null;
        var next = 0;
        foreach (var i in order)
        {
            var at = rows.At[i];
            for (; next < stored.Length && stored[next].At < at; next++)
                if (before is null || stored[next].At > before.Value.At) before = stored[next];
            if (before is { } same && same.At == at)
            {
                Refuse(rows, i, same);
            }
            else if (next < stored.Length && stored[next].At == at)
            {
                Refuse(rows, i, stored[next]);
            }
            else if (running && next < stored.Length && stored[next].At - (stored[next].Seconds * 1e6) < at)
            {
                Refused.Add(new(rows.Line[i], Refusal.Late, LogRole.Time, rows.Begin[i], rows.Length[i], ""));
            }
            else
            {
                Interval(rows, i, before);
                before = new(at, rows.Seconds[i], rows.Reading[i], rows.Odometer[i]);
                Order[Count++] = i;
            }
        }
    }

    private void Refuse(LogRows rows, int i, StoredRow there) => Refused.Add(new(
        rows.Line[i], rows.Reading[i].Equals(there.Reading) && rows.Odometer[i].Equals(there.Odometer) ? Refusal.Duplicate : Refusal.SameMoment,
        LogRole.Time, rows.Begin[i], rows.Length[i], ""));

    private void Interval(LogRows rows, int i, StoredRow? before)
    {
        rows.Reset[i] = false;
        var seconds = before is { } earlier ? (rows.At[i] - earlier.At) / 1e6 : double.NaN;
        rows.Gap[i] = seconds > profile.LongestInterval;
        if (running)
        {
            rows.Counts[i] = before is { } last ? Step(rows, i, last.Reading) : double.NaN;
        }
        else
        {
            rows.Counts[i] = rows.Reading[i];
            if (rows.Gap[i]) seconds = double.NaN;
        }

        rows.Seconds[i] = seconds;
        rows.Metres[i] = odometerRuns
            ? before is { } mark && rows.Odometer[i] >= mark.Odometer ? rows.Odometer[i] - mark.Odometer : double.NaN
            : hasDistance ? rows.Odometer[i]
            : rows.Gap[i] ? double.NaN : rows.Speed[i] * seconds;
    }

    // A counter that stands lower than before has either passed its highest count or begun again; what it had counted between
    // the last reading and a new beginning is not known.
    private double Step(LogRows rows, int i, double last)
    {
        var step = rows.Reading[i] - last;
        if (step >= 0) return step;
        if (rollover is { } most && -step > most / 2 && last <= most) return step + most;
        rows.Reset[i] = true;
        return rows.Reading[i];
    }
}
