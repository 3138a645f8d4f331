using System.Globalization;
using System.Text;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Store;

/// <summary>A row's place, as a map needs it.</summary>
/// <param name="Moment">Microseconds since 1970, UTC; with the spreader it names the row.</param>
/// <param name="Latitude">Degrees, WGS 84.</param>
/// <param name="Longitude">Degrees, WGS 84.</param>
/// <param name="Gap">A gap lies before the row.</param>
public readonly record struct TrackPoint(long Moment, double Latitude, double Longitude, bool Gap);

/// <summary>A row and the road segment that a map found for it.</summary>
/// <param name="Moment">The row's moment, microseconds since 1970, UTC.</param>
/// <param name="Segment">Identity of the segment.</param>
public readonly record struct SegmentMatch(long Moment, string Segment);

/// <summary>The spreaders of a season in the logs.</summary>
/// <param name="Season">Such as 2026-27.</param>
/// <param name="Depot">Its depot.</param>
/// <param name="Spreader">Its name.</param>
public sealed record LoggedSpreader(string Season, string Depot, string Spreader);

/// <summary>
/// Road segments that a map found for stored rows. They stand beside the rows and not in them: rows are copies of what a log said, and a
/// better map may give other segments. One file for each season, depot and spreader, in folders like those of the rows.
/// </summary>
public static class MatchedSegments
{
    /// <summary>Every season, depot and spreader there is, in order.</summary>
    /// <param name="files">Files of rows, as <see cref="LogFolder.Files"/> names them.</param>
    public static IReadOnlyList<LoggedSpreader> Spreaders(IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var found = new List<LoggedSpreader>();
        if (files.Count == 0) return found;
        using var engine = Engine.OpenForReading();
        engine.Ask(
            $"SELECT DISTINCT season, depot, spreader FROM {RowTable.Read(files)} ORDER BY ALL",
            row => found.Add(new(row.GetString(0), row.GetString(1), row.GetString(2))));
        return found;
    }

    /// <summary>The track of a spreader in a season, in order of time; rows without a place left out.</summary>
    /// <param name="files">Files of rows, as <see cref="LogFolder.Files"/> names them.</param>
    /// <param name="spreader">The spreader.</param>
    public static IReadOnlyList<TrackPoint> Track(IReadOnlyList<string> files, LoggedSpreader spreader)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(spreader);
        var points = new List<TrackPoint>();
        if (files.Count == 0) return points;
        using var engine = Engine.OpenForReading();
        engine.Ask(
            $"""
            SELECT epoch_us(moment), latitude, longitude, gap FROM {RowTable.Read(files)}
            WHERE season = {Engine.Text(spreader.Season)} AND depot = {Engine.Text(spreader.Depot)} AND spreader = {Engine.Text(spreader.Spreader)}
                AND latitude IS NOT NULL AND longitude IS NOT NULL
            ORDER BY moment
            """,
            row => points.Add(new(row.GetInt64(0), row.GetDouble(1), row.GetDouble(2), row.GetBoolean(3))));
        return points;
    }

    /// <summary>Keeps the segments of a spreader's rows; those of an earlier map are replaced.</summary>
    /// <exception cref="LogException">They cannot be written.</exception>
    public static void Write(LogFolder folder, LoggedSpreader spreader, IReadOnlyList<SegmentMatch> matches)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(spreader);
        ArgumentNullException.ThrowIfNull(matches);
        var place = Path.Combine(folder.Segments, RowTable.Folder(spreader.Season, spreader.Depot, spreader.Spreader));
        var to = Path.Combine(place, "segments.parquet");
        try
        {
            Directory.CreateDirectory(place);
            using var engine = Engine.OpenForReading();
            engine.Run("CREATE TABLE matches (moment TIMESTAMPTZ, segment VARCHAR)");
            foreach (var some in matches.Chunk(2000))
            {
                var values = new StringBuilder();
                foreach (var (moment, segment) in some)
                    values.Append(values.Length == 0 ? "" : ", ").Append(CultureInfo.InvariantCulture, $"(make_timestamptz({moment}::BIGINT), {Engine.Text(segment)})");
                engine.Run("INSERT INTO matches VALUES " + values);
            }

            engine.Run($"COPY matches TO {Engine.Text(to + ".draft")} (FORMAT parquet, COMPRESSION zstd)");
            File.Move(to + ".draft", to, overwrite: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"Segments could not be kept in {Excerpt.Of(place, 200)}: {wrong.Message}", wrong);
        }
    }

    /// <summary>Files of segments.</summary>
    public static IReadOnlyList<string> Files(LogFolder folder) =>
        Directory.Exists((folder ?? throw new ArgumentNullException(nameof(folder))).Segments) ? [.. Directory.EnumerateFiles(folder.Segments, "segments.parquet", SearchOption.AllDirectories).Order(StringComparer.Ordinal)] : [];
}
