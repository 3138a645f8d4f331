using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;

namespace Lanewright.Season;

/// <summary>What was spread on each road, as GeoJSON.</summary>
internal static class AppliedMap
{
    /// <summary>Writes a file of it.</summary>
    /// <returns>Lines that lie on no kept road.</returns>
    /// <exception cref="LogException">No roads are kept, or the file cannot be written.</exception>
    internal static int Write(string path, LogFolder folder, AppliedQuestion question)
    {
        try
        {
            using var file = File.Create(path);
            return Write(file, folder, question);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Excerpt.Of(path, 200)} could not be written: {wrong.Message}", wrong);
        }
    }

    /// <summary>Writes it to a stream.</summary>
    internal static int Write(Stream to, LogFolder folder, AppliedQuestion question)
    {
        if (question.By is AppliedBy.Day) throw new LogException("A map by day is not made; by storm, for one.");
        var roads = RoadStore.Read(folder) ?? throw new LogException("No roads are kept yet. Give some with 'lanewright logs match --roads'.");
        var bySegment = question.By is AppliedBy.Segment;
        return AppliedFile.WriteGeoJson(
            to, roads, AppliedLedger.Compute(folder, bySegment ? question : question with { With = [AppliedBy.Segment] }), bySegment ? null : question.By);
    }
}
