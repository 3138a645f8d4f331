using System.Globalization;

namespace Lanewright.Benchmarks;

/// <summary>The plain table printed last.</summary>
internal sealed class FigureTable
{
    private readonly List<string[]> rows = [["what", "min", "median", "max", "ratio", "allocated"]];

    /// <summary>One row.</summary>
    /// <param name="what">What was timed.</param>
    /// <param name="seconds">Every counted run.</param>
    /// <param name="baselineMedian">Median of the row it is compared with, or null.</param>
    /// <param name="allocatedBytes">Memory allocated by one run, or null when not measured.</param>
    internal void Add(string what, IReadOnlyList<double> seconds, double? baselineMedian, long? allocatedBytes)
    {
        var median = Median(seconds);
        rows.Add(
        [
            what, Time(seconds.Min()), Time(median), Time(seconds.Max()),
            baselineMedian is { } b ? (median / b).ToString("0.00", CultureInfo.InvariantCulture) : "",
            allocatedBytes is { } bytes ? Bytes(bytes) : "",
        ]);
    }

    internal void Print()
    {
        var widths = Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        Console.WriteLine();
        Console.WriteLine(
            $"{Environment.ProcessorCount} processors, .NET {Environment.Version}, "
            + DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        foreach (var row in rows)
        {
            Console.WriteLine(
                row[0].PadRight(widths[0]) + string.Concat(row.Skip(1).Select((t, c) => "  " + t.PadLeft(widths[c + 1]))));
        }
    }

    internal static double Median(IReadOnlyList<double> values)
    {
        var sorted = values.Order().ToArray();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    private static string Time(double seconds) => seconds switch
    {
        < 1e-3 => (seconds * 1e6).ToString("0.0", CultureInfo.InvariantCulture) + " us",
        < 10 => (seconds * 1e3).ToString("0.0", CultureInfo.InvariantCulture) + " ms",
        _ => seconds.ToString("0.0", CultureInfo.InvariantCulture) + " s",
    };

    private static string Bytes(long bytes) => bytes < 1_000_000
        ? (bytes / 1e3).ToString("0.0", CultureInfo.InvariantCulture) + " kB"
        : (bytes / 1e6).ToString("0.0", CultureInfo.InvariantCulture) + " MB";
}
