namespace Lanewright.Print;

/// <summary>
/// A row of characters with the runs' deviations as marks around the result: <c>o</c> is a run, <c>|</c> the result,
/// <c>[</c> and <c>]</c> the interval.
/// </summary>
internal static class DotPlot
{
    private const int HalfWidth = 24;

    /// <summary>The largest deviation that the axis must reach, as a share.</summary>
    internal static double Reach(IEnumerable<double> deviations, double interval)
    {
        var reach = Math.Max(interval, 1e-4);
        foreach (var d in deviations)
            reach = Math.Max(reach, Math.Abs(d));
        return reach * 1.05;
    }

    internal static string Row(double? deviation, double interval, double reach)
    {
        var row = new char[(2 * HalfWidth) + 1];
        Array.Fill(row, ' ');
        row[HalfWidth] = '|';
        row[At(-interval, reach)] = '[';
        row[At(interval, reach)] = ']';
        if (deviation is { } d) row[At(d, reach)] = 'o';
        return new string(row);
    }

    private static int At(double deviation, double reach) =>
        Math.Clamp((int)Math.Round(HalfWidth * (1 + (deviation / reach))), 0, 2 * HalfWidth);
}
