using Lanewright.Core.Season.Roads;
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
        var roads = RoadStore.Read(folder) ?? throw LacksRoads;
        return Write(to, roads, AppliedLedger.Compute(folder, OnRoads(question)), question.By);
    }

    /// <summary>Writes a ledger that was asked for by <see cref="OnRoads"/>.</summary>
    internal static int Write(Stream to, RoadNetwork roads, AppliedAnswer answer, AppliedBy by) =>
        AppliedFile.WriteGeoJson(to, roads, answer, by is AppliedBy.Segment ? null : by);

    /// <summary>The question with the road of each row.</summary>
    /// <exception cref="LogException">It is by day.</exception>
    internal static AppliedQuestion OnRoads(AppliedQuestion question) => question.By switch
    {
        AppliedBy.Day => throw new LogException("A map by day is not made; by storm, for one."),
        AppliedBy.Segment => question,
        _ => question with { With = [AppliedBy.Segment] },
    };

    internal static LogException LacksRoads => new("No roads are kept yet. Give some with 'lanewright logs match --roads'.");
}
