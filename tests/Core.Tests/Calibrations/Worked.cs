using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>Works a calibration's sheet out.</summary>
internal static class Worked
{
    /// <summary>The report of a sheet that can be used.</summary>
    internal static CalibrationReport Of(string json)
    {
        var reading = Reading(json);
        Assert.True(reading.IsUsable, string.Join("; ", reading.Findings.Select(f => $"{f.Field} {f.Code}")));
        return reading.Value!.Analyse();
    }

    internal static SheetReading<CalibrationSheet> Reading(string json)
    {
        var tree = JsonTree.Read(json);
        var kind = Calibration.KindOf(tree);
        Assert.NotNull(kind);
        return Calibration.Read(tree, kind);
    }
}
