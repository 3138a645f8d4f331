using System.Globalization;
using System.Text;
using System.Text.Json;
using Lanewright.Logs.Applied;
using Lanewright.Office;

namespace Lanewright.Season;

/// <summary>A table that goes out as CSV or JSON: numbers in SI, days as 2026-12-03, empty for not known.</summary>
internal sealed class SeasonPaper(params string[] columns)
{
    private readonly List<object?[]> rows = [];

    internal void Add(params object?[] cells) => rows.Add(cells);

    /// <summary>The columns of a table whose first holds texts and whose others hold numbers.</summary>
    internal IReadOnlyList<TableColumn> Columns() => [.. columns.Select((name, i) => new TableColumn(name, i == 0))];

    /// <summary>Numbers stand as they are; only texts are kept from being formulas.</summary>
    internal string Csv() =>
        string.Concat(rows.Select(row => string.Join(',', row.Select(Cell)) + "\r\n").Prepend(OfficeCsv.Line(columns)));

    internal string Json(string name, IEnumerable<RefusedRow> refused)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new() { Indented = true }))
        {
            writer.WriteStartObject();
            writer.WriteStartArray(name);
            foreach (var row in rows)
            {
                writer.WriteStartObject();
                for (var i = 0; i < columns.Length; i++)
                {
                    switch (row[i])
                    {
                        case null: writer.WriteNull(columns[i]); break;
                        case double number: writer.WriteNumber(columns[i], number); break;
                        case int number: writer.WriteNumber(columns[i], number); break;
                        default: writer.WriteString(columns[i], Text(row[i])); break;
                    }
                }

                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartArray("refused");
            foreach (var one in refused) writer.WriteStringValue(one.ToString());
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static string Cell(object? cell) => cell is string text ? OfficeCsv.Line([text])[..^2] : Text(cell);

    private static string Text(object? cell) => cell switch
    {
        null => "",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString()!,
    };
}
