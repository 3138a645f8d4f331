using System.Text;
using CsvHelper;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Text;
using Lanewright.Files;
using Lanewright.Office;

namespace Lanewright.Lists;

/// <summary>A row of a list: where it stands, and its cells under their headings.</summary>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Cells">Its cells in order.</param>
/// <param name="Surplus">The first cell under no heading; null for none.</param>
internal sealed record ListRow(int Line, IReadOnlyList<string> Cells, string? Surplus);

/// <summary>A list of the register in CSV, taken apart.</summary>
/// <param name="Columns">The fields under which the cells stand; null for a column that is passed over.</param>
/// <param name="Headings">The headings as written.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Problem">What keeps the whole file from being used; null for nothing.</param>
internal sealed record ListFile(
    IReadOnlyList<ListColumn?> Columns, IReadOnlyList<string> Headings, IReadOnlyList<ListRow> Rows, Finding? Problem)
{
    /// <summary>Longest file: 5 MB.</summary>
    internal const int MostBytes = 5 * 1024 * 1024;

    /// <summary>Most rows.</summary>
    internal const int MostRows = 20_000;

    /// <summary>The column that the report of refused rows adds; passed over when the corrected report comes back.</summary>
    internal const string Reason = "reason";

    /// <summary>Takes a file apart; whatever is wrong with it is a finding, never an exception.</summary>
    internal static ListFile Read(byte[] bytes, RegisterKind kind)
    {
        if (bytes.Length > MostBytes)
            return Refused(RegisterFindings.ListTooLarge, Text("size", $"{bytes.Length / 1048576.0:0.0} MB"), Text("limit", "5 MB"));
        if (Decode(bytes) is not { } text) return Refused(ReadFindings.BadCharacters);
        if (text.Contains('\0', StringComparison.Ordinal)) return Refused(RegisterFindings.NotAText);
        return string.IsNullOrWhiteSpace(text) ? Refused(ReadFindings.Empty) : Read(text, kind);
    }

    private static ListFile Read(string text, RegisterKind kind)
    {
        Finding? quotes = null;
        var separator = CsvSeparator.Of(text);
        using var reader = CsvReader.FromText(text, new()
        {
            Separator = separator,
            HasHeader = false,
            SkipEmptyLines = true,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            OnMalformedRecord = bad => quotes ??= bad.Reason == CsvMalformedReason.StrayQuote && !bad.RawRecord.Contains('\n')
                ? null
                : ReadFindings.CsvQuotes.At("", [Text("near", Excerpt.Of(bad.RawRecord, 30)), .. Place.Of((int)bad.LineNumber, 0)]),
        });
        List<ListColumn?>? columns = null;
        string[] headings = [];
        var rows = new List<ListRow>();
        while (reader.Read())
        {
            if (quotes is not null) return new([], [], [], quotes);
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++) cells[i] = OfficeCsv.Unguarded(reader.GetString(i));
            if (cells.All(string.IsNullOrWhiteSpace)) continue;
            if (columns is null && CsvSeparator.Declared(text.AsSpan(0, Math.Min(5, text.Length))) is not null && headings.Length == 0
                && cells[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase)) continue;
            if (columns is null)
            {
                headings = cells;
                (columns, var wrong) = ListColumn.Read(cells, kind);
                if (wrong is not null) return new([], headings, [], wrong);
                continue;
            }

            if (rows.Count == MostRows) return Refused(RegisterFindings.TooManyRows, Place.Count("limit", MostRows));
            rows.Add(new((int)reader.LineNumber, cells, cells.Skip(columns.Count).FirstOrDefault(cell => cell.Length > 0)));
        }

        return quotes is not null || columns is null
            ? new([], headings, [], quotes ?? ReadFindings.Empty.At(""))
            : new(columns, headings, rows, null);
    }

    /// <summary>The text of bytes in UTF-8, or in UTF-16 with its mark; null when they are neither.</summary>
    private static string? Decode(byte[] bytes)
    {
        Encoding encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: true, throwOnInvalidBytes: true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: true, throwOnInvalidBytes: true),
            _ => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true),
        };
        try
        {
            return encoding.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    private static ListFile Refused(FindingKind kind, params FindingValue[] values) => new([], [], [], kind.At("", values));

    private static FindingValue Text(string name, string word) => FindingValue.Text(name, word);
}
