using System.Globalization;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Calibrations;

/// <summary>Small things that the kinds share.</summary>
internal static class CalibrationText
{
    // Beyond this the runs of one quantity differ by more than spreaders, meters and courses usually do.
    private const double LargeSpread = 0.05;

    /// <summary>A whole number as a name.</summary>
    internal static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    /// <summary>Says how far the runs lie apart, and warns when that is much.</summary>
    internal static void Spread(CalibrationReport report, RatioEstimate estimate, string field)
    {
        if (estimate.Runs.Count < 2) return;
        var ratios = estimate.Runs.Select(run => run.Ratio).ToList();
        var spread = (ratios.Max() - ratios.Min()) / Math.Abs(estimate.Known.Value);
        if (spread > LargeSpread)
            report.Add(CalibrationFindings.RunsApart.At(field, FindingValue.Number("spread", spread, Dimension.Fraction)));
    }
}
