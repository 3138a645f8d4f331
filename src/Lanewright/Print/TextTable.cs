using System.Text;

namespace Lanewright.Print;

/// <summary>A small table for a terminal: columns as wide as they must be, numbers to the right.</summary>
internal sealed class TextTable(params (string Heading, bool ToTheRight)[] columns)
{
    private readonly List<string[]> rows = [];

    internal void Add(params string[] cells)
    {
        if (cells.Length != columns.Length)
            throw new ArgumentException("One cell for each column.", nameof(cells));
        rows.Add(cells);
    }

    internal IEnumerable<string> Lines(string indent = "  ")
    {
        var widths = new int[columns.Length];
        for (var c = 0; c < widths.Length; c++)
            widths[c] = Math.Max(columns[c].Heading.Length, rows.Count == 0 ? 0 : rows.Max(r => r[c].Length));
        if (columns.Any(c => c.Heading.Length > 0))
            yield return Line(indent, [.. columns.Select(c => c.Heading)], widths);
        foreach (var row in rows)
            yield return Line(indent, row, widths);
    }

    private string Line(string indent, string[] cells, int[] widths)
    {
        var line = new StringBuilder(indent);
        for (var c = 0; c < cells.Length; c++)
        {
            if (c > 0) line.Append("  ");
            line.Append(columns[c].ToTheRight ? cells[c].PadLeft(widths[c]) : cells[c].PadRight(widths[c]));
        }

        return line.ToString().TrimEnd();
    }
}
