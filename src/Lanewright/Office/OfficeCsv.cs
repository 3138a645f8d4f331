using System.Buffers;
using System.Globalization;
using System.Text;

namespace Lanewright.Office;

/// <summary>Tables as CSV (RFC 4180), for spreadsheets: in UTF-8 with its mark, which some of them need.</summary>
internal static class OfficeCsv
{
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\"\r\n;\t");

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789.");

    /// <summary>A download that is written row by row, however long it is.</summary>
    internal static IResult Answer(string name, Func<IAsyncEnumerable<string[]>> rows) => Results.Stream(
        async stream =>
        {
            var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            await using (writer)
            {
                await foreach (var row in rows()) await writer.WriteAsync(Line(row));
            }
        },
        "text/csv; charset=utf-8", name);

    internal static IResult Answer(string name, IEnumerable<string[]> rows) =>
        Results.File([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(string.Concat(rows.Select(Line)))], "text/csv; charset=utf-8", name);

    internal static string Line(IEnumerable<string> cells) => string.Join(',', cells.Select(Cell)) + "\r\n";

    /// <summary>A number for programs: with a point, without a unit; empty where there is none.</summary>
    internal static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";

    /// <summary>A cell of a file as the text it was made of: without the apostrophe that keeps it from being a formula.</summary>
    internal static string Unguarded(string cell) => cell.StartsWith('\'') && IsRun(cell.AsSpan(1)) ? cell[1..] : cell;

    // A cell that a spreadsheet would run as a formula, whatever apostrophes it has already; a plain negative number is none.
    private static bool IsRun(ReadOnlySpan<char> text)
    {
        var bare = text.TrimStart('\'');
        if (bare.Length > 1 && bare[0] == '-' && !bare[1..].ContainsAnyExcept(Digits)) return false;
        return bare.Length > 0 && bare[0] is '=' or '+' or '-' or '@' or '\t' or '\r';
    }

    private static string Cell(string text)
    {
        var safe = IsRun(text) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(Quoted) < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
