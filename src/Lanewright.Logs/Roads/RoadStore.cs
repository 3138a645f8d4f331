using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Logs.Store;

namespace Lanewright.Logs.Roads;

/// <summary>The roads that the logs are held against, kept beside them as GeoJSON: <c>logs/roads.geojson</c>.</summary>
public static class RoadStore
{
    /// <summary>The kept roads; null when there are none.</summary>
    /// <exception cref="LogException">They cannot be read.</exception>
    public static RoadNetwork? Read(LogFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return File.Exists(Place(folder)) ? new(RoadFile.Read(Place(folder)).Pieces) : null;
    }

    /// <summary>Keeps roads in place of those kept before.</summary>
    /// <exception cref="LogException">They cannot be written.</exception>
    public static void Write(LogFolder folder, IReadOnlyList<RoadPiece> pieces)
    {
        ArgumentNullException.ThrowIfNull(folder);
        var place = Place(folder);
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(place)!);
            using (var file = File.Create(place + ".draft")) GeoJson.Write(file, pieces);
            File.Move(place + ".draft", place, overwrite: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"Roads could not be kept in {Excerpt.Of(place, 200)}: {wrong.Message}", wrong);
        }
    }

    /// <summary>Where they are kept.</summary>
    public static string Place(LogFolder folder) => Path.Combine((folder ?? throw new ArgumentNullException(nameof(folder))).Root, "roads.geojson");
}
