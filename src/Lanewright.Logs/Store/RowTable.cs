namespace Lanewright.Logs.Store;

/// <summary>The columns of rows as they are stored, and the statements that write and read them.</summary>
internal static class RowTable
{
    /// <summary>Writes rows of one season and spreader as Parquet.</summary>
    internal static string Copy(string feed, string path, string zone, string file) =>
        $"COPY (SELECT * EXCLUDE (line), {Engine.Text(zone)} AS zone, {Engine.Text(file)} AS file, line FROM {feed}) TO {Engine.Text(path)} (FORMAT parquet, COMPRESSION zstd)";

    /// <summary>The folder of rows of a season and spreader, below that of all rows, with / between.</summary>
    internal static string Folder(string season, string depot, string spreader) =>
        $"season={Uri.EscapeDataString(season)}/depot={Uri.EscapeDataString(depot)}/spreader={Uri.EscapeDataString(spreader)}";

    /// <summary>Reads stored files, season, depot and spreader as texts.</summary>
    internal static string Read(IEnumerable<string> files) =>
        $"read_parquet({Engine.List(files)}, hive_partitioning = true, hive_types_autocast = false)";

    /// <summary>Rows with the segments that a map found for them, where it found one.</summary>
    internal static string WithSegments(string source, IEnumerable<string> segments) =>
        $"(SELECT x.* REPLACE (coalesce(y.segment, x.segment) AS segment) FROM {source} x LEFT JOIN {Read(segments)} y USING (season, depot, spreader, moment))";
}
