namespace Lanewright.Logs.Rows;

/// <summary>Rows by columns. What is not known is NaN, or -1 for names. Filled by several threads, each in its own part.</summary>
internal sealed class LogRows(int capacity)
{
    internal int Capacity { get; } = capacity;

    /// <summary>Line in the file, from 1.</summary>
    internal int[] Line { get; } = new int[capacity];

    /// <summary>Where the row's text begins and how long it is.</summary>
    internal int[] Begin { get; } = new int[capacity];

    internal int[] Length { get; } = new int[capacity];

    /// <summary>Number of spreader and depot.</summary>
    internal int[] Unit { get; } = new int[capacity];

    /// <summary>Microseconds since 1970, UTC.</summary>
    internal long[] At { get; } = new long[capacity];

    /// <summary>What the column of counts says: running or of the interval; pulses, turns or kilograms.</summary>
    internal double[] Reading { get; } = new double[capacity];

    /// <summary>What the column of distance says, metres.</summary>
    internal double[] Odometer { get; } = new double[capacity];

    /// <summary>Metres per second.</summary>
    internal double[] Speed { get; } = new double[capacity];

    /// <summary>Wanted kilograms per metre driven.</summary>
    internal double[] Target { get; } = new double[capacity];

    internal double[] Latitude { get; } = new double[capacity];

    internal double[] Longitude { get; } = new double[capacity];

    internal int[] Route { get; } = new int[capacity];

    internal int[] Material { get; } = new int[capacity];

    internal int[] Segment { get; } = new int[capacity];

    /// <summary>Length of the interval that ends with the row, seconds; NaN when it has no beginning.</summary>
    internal double[] Seconds { get; } = new double[capacity];

    /// <summary>Counts in the interval; NaN when not known.</summary>
    internal double[] Counts { get; } = new double[capacity];

    /// <summary>Distance in the interval, metres; NaN when not known.</summary>
    internal double[] Metres { get; } = new double[capacity];

    /// <summary>A pause longer than the longest interval lies before the row.</summary>
    internal bool[] Gap { get; } = new bool[capacity];

    /// <summary>The counter began again within the interval.</summary>
    internal bool[] Reset { get; } = new bool[capacity];
}
