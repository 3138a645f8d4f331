using CsvHelper;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Files;

/// <summary>
/// Takes apart a sheet written by hand in a spreadsheet and saved as CSV. A row is a field: its path, its value and, if
/// wanted, its unit in a cell of its own. A row whose first cell is a table's word starts a table: its further cells
/// name the fields of an item, a unit may follow in parentheses, and each row below is one item until a row is empty.
/// Comma, semicolon and tab separate cells; rows that begin with # are comments. See docs/formats/csv.md.
/// </summary>
public static class CsvTree
{
    /// <summary>The tables of a drop test's sheet.</summary>
    public static IReadOnlyList<CsvTable> DropTestTables { get; } =
        [new("run", "runs", "id"), new("container", "containers", "", Under: "run")];

    /// <summary>The tree of a text; whatever is wrong with the text is a finding, never an exception.</summary>
    public static SheetTree Read(string text, IReadOnlyList<CsvTable> tables)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tables);
        if ((SheetText.Oversize(text) ?? SheetText.HalfCharacter(text)) is { } refusal) return SheetTree.Refused(refusal);

        text = text.TrimStart('\uFEFF');
        Finding? badQuotes = null;
        var rows = new CsvRows(tables);
        var options = new CsvReaderOptions
        {
            Separator = CsvSeparator.Of(text),
            HasHeader = false,
            SkipEmptyLines = false,
            CommentPrefix = '#',
            TrimWhitespace = true,
            TrimInsideQuotes = true,
            TrackLineNumbers = true,
            OnMalformedRecord = bad => badQuotes ??= Quotes(bad),
        };
        using var reader = CsvReader.FromText(text, options);
        while (reader.Read())
        {
            if (badQuotes is not null) return SheetTree.Refused(badQuotes);
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i);
            rows.Take(cells, (int)reader.LineNumber);
        }

        return badQuotes is null ? rows.Build() : SheetTree.Refused(badQuotes);
    }

    /// <summary>
    /// A quote inside a cell without quotes is an inch mark and stands; any other loses track of the cells. Only the
    /// first in a record is told, so a record of several lines is never taken for one with an inch mark.
    /// </summary>
    private static Finding? Quotes(CsvMalformedRecord bad) =>
        bad.Reason == CsvMalformedReason.StrayQuote && !bad.RawRecord.Contains('\n')
            ? null
            : ReadFindings.CsvQuotes.At(
                "", [FindingValue.Text("near", Excerpt.Of(bad.RawRecord, 30)), .. Place.Of((int)bad.LineNumber, 0)]);
}
