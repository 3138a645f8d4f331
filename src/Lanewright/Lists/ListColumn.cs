using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Office;

namespace Lanewright.Lists;

/// <summary>A column of a list.</summary>
/// <param name="Path">The field.</param>
/// <param name="Unit">Unit of the numbers that have none of their own; empty for none.</param>
internal sealed record ListColumn(string Path, string Unit)
{
    /// <summary>A cell with the unit of its column.</summary>
    internal string Text(string cell) => Unit.Length > 0 && cell.Length > 0 && char.IsAsciiDigit(cell[^1]) ? $"{cell} {Unit}" : cell;

    /// <summary>The columns that headings name, or what is wrong with them.</summary>
    internal static (List<ListColumn?>? Columns, Finding? Problem) Read(IReadOnlyList<string> headings, RegisterKind kind)
    {
        var columns = new List<ListColumn?>();
        foreach (var heading in headings)
        {
            var (name, unit) = Parts(heading);
            if (name.Length == 0 || string.Equals(name, ListFile.Reason, StringComparison.OrdinalIgnoreCase))
            {
                columns.Add(null);
                continue;
            }

            var field = kind.Fields.FirstOrDefault(one => string.Equals(one.Path, name, StringComparison.OrdinalIgnoreCase));
            if (field is null)
                return (null, RegisterFindings.UnknownHeading.At(
                    "", Read(name), FindingValue.Text("closest", Closest(name, kind)), Place.Count("line", 1)));
            if (columns.Any(column => column?.Path == field.Path)) return (null, RegisterFindings.HeadingTwice.At("", Read(name)));
            columns.Add(new(field.Path, unit));
        }

        return columns.Any(column => column?.Path == kind.Key)
            ? (columns, null)
            : (null, RegisterFindings.KeyMissing.At("", Read(kind.Key)));
    }

    private static (string Name, string Unit) Parts(string heading)
    {
        var text = heading.Trim();
        var open = text.IndexOf('(', StringComparison.Ordinal);
        return open > 0 && text.EndsWith(')') ? (text[..open].Trim(), text[(open + 1)..^1].Trim()) : (text, "");
    }

    private static string Closest(string name, RegisterKind kind)
    {
        var close = Nearest.Names(name, [.. kind.Fields.Select(field => field.Path)]);
        return close.Length > 0 ? close : string.Join(", ", kind.Fields.Select(field => field.Path));
    }

    private static FindingValue Read(string text) => FindingValue.Text("read", Excerpt.Of(text));
}
