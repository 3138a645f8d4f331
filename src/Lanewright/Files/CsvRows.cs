using System.Globalization;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Files;

/// <summary>Gives each row of a sheet in CSV its meaning: a field, the heading of a table, or an item of one.</summary>
internal sealed class CsvRows(IReadOnlyList<CsvTable> tables)
{
    private readonly FieldPlaces places = new();
    private readonly Dictionary<(string Word, string Name), string> items = [];
    private readonly Dictionary<string, int> counts = new(StringComparer.Ordinal);
    private CsvTable? table;
    private IReadOnlyList<Column> columns = [];
    private bool isFirst = true;

    internal void Take(IReadOnlyList<string> row, int line)
    {
        var count = row.Count;
        while (count > 0 && row[count - 1].Length == 0) count--;
        var cells = row.Take(count).ToList();
        var declares = isFirst && count == 1 && string.Equals(row[0], "sep=", StringComparison.OrdinalIgnoreCase);
        isFirst = false;
        if (declares) return;

        if (cells.Count == 0) table = null;
        else if (Heading(cells[0]) is { } heading && cells.Count > 1) Begin(heading, cells, line);
        else if (table is not null) Item(table, cells, line);
        else Field(cells, line);
    }

    internal SheetTree Build() => places.Build();

    private CsvTable? Heading(string cell) =>
        tables.FirstOrDefault(one => string.Equals(one.Word, cell, StringComparison.OrdinalIgnoreCase));

    private void Begin(CsvTable heading, List<string> cells, int line)
    {
        table = heading;
        columns = [.. cells.Skip(1).Select(cell => ReadColumn(cell, line))];
    }

    private Column ReadColumn(string cell, int line)
    {
        var open = cell.IndexOf('(', StringComparison.Ordinal);
        var hasUnit = open > 0 && cell.EndsWith(')');
        var name = (hasUnit ? cell[..open] : cell).Trim();
        var steps = FieldPath.Read(name);
        if (steps is null && name.Length > 0) Report(ReadFindings.CsvName, line, "name", name);
        return new Column(name, steps, hasUnit ? cell[(open + 1)..^1].Trim() : "");
    }

    private void Item(CsvTable of, List<string> cells, int line)
    {
        var item = of.Under is null ? Owner(of, cells[0]) : Owned(of, of.Under, cells[0], line);
        if (item is null) return;
        places.Put(item, FieldPath.Read(item)!, new FieldPlaces.Spot(NodeKind.Map, line));
        if (of.Under is null && cells[0].Length > 0) Put($"{item}.{of.Label}", cells[0], line);
        for (var i = 1; i < cells.Count; i++)
        {
            var cell = cells[i];
            if (cell.Length == 0) continue;
            var column = i <= columns.Count ? columns[i - 1] : default;
            if (string.IsNullOrEmpty(column.Name)) Report(ReadFindings.CsvSurplus, line, "cell", cell);
            else if (column.Steps is not null) Put($"{item}.{column.Name}", WithUnit(cell, column.Unit), line);
        }
    }

    // An item of a list at the root; rows below may name it by its first cell.
    private string Owner(CsvTable of, string name)
    {
        var item = $"{of.List}[{places.Count(of.List).ToString(CultureInfo.InvariantCulture)}]";
        items[(of.Word, name)] = item;
        return item;
    }

    private string? Owned(CsvTable of, string under, string name, int line)
    {
        if (!items.TryGetValue((under, name), out var owner))
        {
            Report(ReadFindings.CsvOwner, line, "name", name);
            return null;
        }

        var list = $"{owner}.{of.List}";
        var count = counts.GetValueOrDefault(list);
        counts[list] = count + 1;
        return $"{list}[{count.ToString(CultureInfo.InvariantCulture)}]";
    }

    private void Field(List<string> cells, int line)
    {
        // A value such as 3,021 that was not put in quotes falls apart into two cells; its second half begins with a
        // digit, which no unit does.
        var hasUnit = cells.Count == 3 && EndsWithDigit(cells[1]) && !char.IsAsciiDigit(cells[2][0]);
        if (cells.Count > 2 && !hasUnit) Report(ReadFindings.CsvSurplus, line, "cell", cells[2]);
        else Put(cells[0], cells.Count == 1 ? "" : WithUnit(cells[1], hasUnit ? cells[2] : ""), line);
    }

    private void Put(string path, string value, int line)
    {
        if (FieldPath.Read(path) is { } steps)
            places.Put(path, steps, new FieldPlaces.Spot(value.Length == 0 ? NodeKind.Null : NodeKind.Text, line, value));
        else
            Report(ReadFindings.CsvName, line, "name", path);
    }

    private static string WithUnit(string value, string unit) =>
        unit.Length > 0 && EndsWithDigit(value) ? $"{value} {unit}" : value;

    private static bool EndsWithDigit(string value) => value.Length > 0 && char.IsAsciiDigit(value[^1]);

    private void Report(FindingKind kind, int line, string name, string word) =>
        places.Report(kind.At("", [FindingValue.Text(name, Excerpt.Of(word)), .. Place.Of(line, 0)]));

    private readonly record struct Column(string Name, IReadOnlyList<PathStep>? Steps, string Unit);
}
