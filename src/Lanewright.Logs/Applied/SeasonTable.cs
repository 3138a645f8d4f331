using System.Text;
using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Applied;

/// <summary>One of the small tables of a season (docs/formats/season.md): CSV with names in the first row, values in SI.</summary>
public sealed class SeasonTable
{
    private const long MostBytes = 200_000_000;

    private readonly string file;
    private readonly List<string> names;
    private readonly List<(int Line, List<string> Fields)> rows;

    private SeasonTable(string file, List<string> names, List<(int Line, List<string> Fields)> rows)
    {
        this.file = file;
        this.names = names;
        this.rows = rows;
    }

    /// <summary>How many rows there are.</summary>
    public int Count => rows.Count;

    /// <summary>Reads a table.</summary>
    /// <exception cref="LogException">It cannot be read, a column is missing, or a row has another number of fields.</exception>
    public static SeasonTable Read(string path, params string[] needed)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(needed);
        var name = Path.GetFileName(path);
        string[] lines;
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes }) throw new LogException($"{name} is longer than {MostBytes / 1_000_000} MB.");
            lines = File.ReadAllLines(path, Encoding.UTF8);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Excerpt.Of(path, 200)} could not be read: {wrong.Message}", wrong);
        }

        if (lines.Length == 0) throw new LogException($"{name} is empty; a row of names was expected.");
        var names = Fields(lines[0], name, 1);
        foreach (var one in needed)
            if (!names.Contains(one)) throw new LogException($"{name}: the column '{one}' was expected; it has {Excerpt.Of(string.Join(", ", names), 300)}.");
        var rows = new List<(int, List<string>)>();
        for (var i = 1; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i])) continue;
            var fields = Fields(lines[i], name, i + 1);
            if (fields.Count != names.Count) throw new LogException($"{name}, line {i + 1}: {fields.Count} fields were read; {names.Count} were expected.");
            rows.Add((i + 1, fields));
        }

        return new(name, names, rows);
    }

    /// <summary>A text; empty when the column is missing.</summary>
    public string Text(int row, string column) => names.IndexOf(column) is var at and >= 0 ? rows[row].Fields[at].Trim() : "";

    /// <summary>A text that must be there.</summary>
    /// <exception cref="LogException">It is empty.</exception>
    public string Needed(int row, string column) => Text(row, column) is { Length: > 0 } text ? text : throw Wrong(row, column, "a value");

    /// <summary>A number; null when the field is empty or the column missing.</summary>
    /// <exception cref="LogException">It is none, or outside of the limits.</exception>
    public double? Number(int row, string column, double least = double.NegativeInfinity, double most = double.PositiveInfinity)
    {
        if (Text(row, column) is not { Length: > 0 } text) return null;
        return QuantityText.ReadNumber(text, TextCulture.Invariant).TryGet(out var value) && value >= least && value <= most
            ? value : throw Wrong(row, column, $"a number from {least} to {most} with a decimal point");
    }

    /// <summary>A moment in UTC; null when the field is empty.</summary>
    /// <exception cref="LogException">It is none.</exception>
    public DateTimeOffset? Moment(int row, string column)
    {
        if (Text(row, column) is not { Length: > 0 } text) return null;
        if (!TimePattern.TryRead("iso", out var iso) || !iso.TryParse(Encoding.UTF8.GetBytes(text), out var micros, out var offset) || offset is not { } minutes)
            throw Wrong(row, column, "a moment in UTC, such as 2026-12-03T06:15:00Z");
        return DateTimeOffset.UnixEpoch.AddTicks((micros - (minutes * 60_000_000L)) * 10);
    }

    /// <summary>What is wrong with a field.</summary>
    public LogException Wrong(int row, string column, Phrase expected) =>
        new($"{file}, line {rows[row].Line}, {column}: '{Excerpt.Of(Text(row, column))}' was read; expected {expected}.");

    private static List<string> Fields(string line, string file, int number)
    {
        var fields = new List<string>();
        for (var at = 0; at <= line.Length; at++)
        {
            if (at < line.Length && line[at] == '"')
            {
                var field = new StringBuilder();
                for (at++; ; at++)
                {
                    if (at >= line.Length) throw new LogException($"{file}, line {number}: a quote is not closed on its line.");
                    if (line[at] != '"') field.Append(line[at]);
                    else if (at + 1 < line.Length && line[at + 1] == '"') field.Append(line[++at]);
                    else break;
                }

                at++;
                if (at < line.Length && line[at] != ',') throw new LogException($"{file}, line {number}: text stands behind a closed quote.");
                fields.Add(field.ToString());
            }
            else
            {
                var end = line.IndexOf(',', at);
                if (end < 0) end = line.Length;
                fields.Add(line[at..end]);
                at = end;
            }
        }

        return fields;
    }
}
