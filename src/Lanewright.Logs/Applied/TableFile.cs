using System.Text.Json;
using Lanewright.Core.Season.Roads;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;

namespace Lanewright.Logs.Applied;

/// <summary>A column of a table: its name, and whether it holds texts; otherwise numbers.</summary>
public sealed record TableColumn(string Name, bool IsText);

/// <summary>A table as Parquet or GeoJSON. Cells are texts, numbers, or null for not known.</summary>
public static class TableFile
{
    /// <summary>Writes Parquet: texts as UTF-8, numbers as double.</summary>
    /// <exception cref="LogException">The file cannot be written.</exception>
    public static void WriteParquet(string path, IReadOnlyList<TableColumn> columns, IEnumerable<IReadOnlyList<object?>> rows)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        using var engine = Engine.Open(Path.GetTempPath());
        engine.Run($"CREATE TABLE lines ({string.Join(", ", columns.Select(column => $"{Name(column.Name)} {(column.IsText ? "VARCHAR" : "DOUBLE")}"))})");
        foreach (var some in rows.Select(row => $"({string.Join(", ", row.Select(Cell))})").Chunk(500))
            engine.Run("INSERT INTO lines VALUES " + string.Join(", ", some));
        engine.Run($"COPY lines TO {Engine.Text(path)} (FORMAT parquet)");
    }

    /// <summary>
    /// Writes GeoJSON (RFC 7946): a feature for each row, with its cells as properties and the lines of its roads; a row without any has no
    /// geometry.
    /// </summary>
    public static void WriteGeoJson(
        Stream to, IReadOnlyList<TableColumn> columns, IEnumerable<(IReadOnlyList<object?> Cells, IReadOnlyList<IReadOnlyList<GeoPoint>> Lines)> rows)
    {
        ArgumentNullException.ThrowIfNull(to);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        using var json = new Utf8JsonWriter(to);
        json.WriteStartObject();
        json.WriteString("type", "FeatureCollection");
        json.WriteStartArray("features");
        foreach (var (cells, lines) in rows)
        {
            json.WriteStartObject();
            json.WriteString("type", "Feature");
            json.WriteStartObject("properties");
            for (var i = 0; i < columns.Count; i++)
            {
                json.WritePropertyName(columns[i].Name);
                if (cells[i] is string text) json.WriteStringValue(text);
                else if (cells[i] is double number && double.IsFinite(number)) json.WriteNumberValue(number);
                else json.WriteNullValue();
            }

            json.WriteEndObject();
            GeoJson.WriteGeometry(json, lines);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Name(string name) => '"' + name.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';

    private static string Cell(object? cell) => cell switch
    {
        string text => Engine.Text(text),
        double number => Engine.Number(number),
        _ => "NULL",
    };
}
