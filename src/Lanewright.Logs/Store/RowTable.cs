using System.Text;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>The columns of rows as they are stored, and the statements that write and read them.</summary>
internal static class RowTable
{
    /// <summary>Tables with the names that rows hold numbers of.</summary>
    internal static void WriteNames(Engine engine, LogNameBook book)
    {
        engine.Run("CREATE OR REPLACE TABLE names (id INTEGER, name VARCHAR)");
        engine.Run("CREATE OR REPLACE TABLE units (id INTEGER, depot VARCHAR, spreader VARCHAR)");
        Insert(engine, "names", book.Names.All.Select((name, i) => $"({i}, {Engine.Text(name)})"));
        Insert(engine, "units", book.Units.Select((unit, i) => $"({i}, {Engine.Text(book.Names.All[unit.Depot])}, {Engine.Text(book.Names.All[unit.Spreader])})"));
    }

    /// <summary>Writes the table <c>part</c> as Parquet, a folder for each season, depot and spreader.</summary>
    internal static string Copy(string folder, string zone, string file) =>
        $"""
        COPY (
            SELECT part.season::VARCHAR || '-' || lpad(((part.season + 1) % 100)::VARCHAR, 2, '0') AS season, units.depot AS depot, units.spreader AS spreader,
                moment, seconds, counts, reading, metres, odometer, speed, target, latitude, longitude, gap, reset,
                route.name AS route, material.name AS material, segment.name AS segment,
                {Engine.Text(zone)} AS zone, {Engine.Text(file)} AS file, line
            FROM part
            JOIN units ON units.id = part.unit
            LEFT JOIN names route ON route.id = part.route
            LEFT JOIN names material ON material.id = part.material
            LEFT JOIN names segment ON segment.id = part.segment
        ) TO {Engine.Text(folder)} (FORMAT parquet, COMPRESSION zstd, PARTITION_BY (season, depot, spreader))
        """;

    /// <summary>Reads stored files, season, depot and spreader as texts.</summary>
    internal static string Read(IEnumerable<string> files) =>
        $"read_parquet({Engine.List(files)}, hive_partitioning = true, hive_types_autocast = false)";

    /// <summary>Rows with the segments that a map found for them, where it found one.</summary>
    internal static string WithSegments(string source, IEnumerable<string> segments) =>
        $"(SELECT x.* REPLACE (coalesce(y.segment, x.segment) AS segment) FROM {source} x LEFT JOIN {Read(segments)} y USING (season, depot, spreader, moment))";

    private static void Insert(Engine engine, string table, IEnumerable<string> values)
    {
        foreach (var some in values.Chunk(1000))
            engine.Run(new StringBuilder("INSERT INTO ").Append(table).Append(" VALUES ").AppendJoin(", ", some).ToString());
    }
}
