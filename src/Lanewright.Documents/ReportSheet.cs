using Lanewright.Core.Text;

namespace Lanewright.Documents;

/// <summary>A report as a table: the page, the paper, the spreadsheet and the CSV are all made from this.</summary>
/// <param name="Word">Its place in addresses and file names.</param>
/// <param name="Title">Its title.</param>
/// <param name="About">What it shows, and from what, in a sentence or two.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, a cell for each column.</param>
public sealed record ReportSheet(
    string Word, string Title, string About, IReadOnlyList<ReportSheetColumn> Columns, IReadOnlyList<IReadOnlyList<ReportSheetCell>> Rows)
{
    /// <summary>The language that its texts are in.</summary>
    public TextCulture Culture { get; init; } = TextCulture.UnitedStates;

    /// <summary>A picture of it as SVG text, as Core's pictures are; empty for none.</summary>
    public string Picture { get; init; } = "";
}

/// <summary>A column of a report.</summary>
/// <param name="Heading">Its heading, with the unit of its numbers.</param>
/// <param name="IsNumber">Whether it holds numbers.</param>
/// <param name="Name">Its heading in English, by which programs know it in every language; empty where the heading is alike in all.</param>
public sealed record ReportSheetColumn(string Heading, bool IsNumber = false, string Name = "");

/// <summary>A cell of a report.</summary>
/// <param name="Text">As people read it.</param>
/// <param name="Number">The number in the column's unit, for a spreadsheet to compute with; null for words.</param>
public readonly record struct ReportSheetCell(string Text, double? Number = null)
{
    /// <summary>Words.</summary>
    public static implicit operator ReportSheetCell(string text) => new(text);
}
