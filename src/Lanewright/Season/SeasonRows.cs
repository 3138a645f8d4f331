using System.Globalization;
using System.Text;
using CsvHelper;
using Lanewright.Core.Text;
using Lanewright.Files;

namespace Lanewright.Season;

/// <summary>A row that was not taken, with its reason.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line in it, from 1; 0 for the whole file.</param>
/// <param name="Reason">Which column, what was read, what was expected.</param>
internal sealed record RefusedRow(string File, int Line, Phrase Reason)
{
    /// <summary>Whether the whole file could not be read.</summary>
    internal bool IsFile { get; init; }

    /// <summary>The row and its reason, for a reader of any language.</summary>
    internal Phrase Said => Line == 0 ? (Phrase)$"{File}: {Reason}" : $"{File}, line {Line}: {Reason}";

    /// <summary>The same in English, for machines.</summary>
    public override string ToString() => Said.ToString();
}

/// <summary>A row of a table; what cannot be read makes the row a refused one.</summary>
internal sealed class SeasonRow(Func<string, string> cell, TextCulture culture)
{
    internal Phrase? Reason { get; private set; }

    internal string Text(string column) => cell(column);

    internal string Needed(string column)
    {
        var text = cell(column);
        if (text.Length == 0) Reason ??= $"{column} is empty; a text was expected.";
        return text;
    }

    /// <summary>A number from <paramref name="least"/> on; <paramref name="otherwise"/> for an empty cell, and without that the
    /// cell must not be empty.</summary>
    internal double Number(string column, double least, double? otherwise = null, double most = 1e12)
    {
        var text = cell(column);
        if (text.Length == 0 && otherwise is { } value) return value;
        if (QuantityText.ReadNumber(text, culture).TryGet(out var number) && number >= least && number <= most) return number;
        Reason ??= $"{column}: '{Excerpt.Of(text)}' was read; a number from {Plain(least)} to {Plain(most)} was expected.";
        return least;
    }

    internal DateTimeOffset Moment(string column)
    {
        var text = cell(column);
        if (DateTimeOffset.TryParseExact(
            text, ["yyyy-MM-dd'T'HH:mm:ss'Z'", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", "yyyy-MM-dd'T'HH:mm'Z'"], CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)) return at;
        Reason ??= $"{column}: '{Excerpt.Of(text)}' was read; a moment in UTC such as 2026-12-03T06:15:00Z was expected.";
        return default;
    }

    internal T Word<T>(string column, params (string Text, T Value)[] words)
    {
        var text = cell(column);
        foreach (var (word, value) in words)
            if (word == text) return value;
        Reason ??= $"{column}: '{Excerpt.Of(text)}' was read; one of {string.Join(", ", words.Select(word => word.Text))} was expected.";
        return words[0].Value;
    }

    internal void Refuse(Phrase reason) => Reason ??= reason;

    private static string Plain(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}

/// <summary>Reads one of the tables of a season (docs/formats/season.md).</summary>
internal static class SeasonRows
{
    private const int MostBytes = 50 * 1024 * 1024;

    /// <summary>The rows that could be read; the others go to <paramref name="refused"/>. A file that cannot be read at all is one
    /// refused row of line 0.</summary>
    internal static List<T> Read<T>(string path, TextCulture culture, List<RefusedRow> refused, IReadOnlyList<string> needed, Func<SeasonRow, T> make)
    {
        var file = Path.GetFileName(path);
        var rows = new List<T>();
        if (Content(path, file, refused) is not { } text) return rows;
        Phrase? quotes = null;
        using var reader = CsvReader.FromText(text, new()
        {
            Separator = CsvSeparator.Of(text),
            HasHeader = false,
            SkipEmptyLines = true,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            OnMalformedRecord = bad => quotes ??= bad.Reason == CsvMalformedReason.StrayQuote && !bad.RawRecord.Contains('\n')
                ? null
                : (Phrase)$"quotation marks near '{Excerpt.Of(bad.RawRecord, 30)}' are not closed.",
        });
        Dictionary<string, int>? places = null;
        while (reader.Read())
        {
            if (quotes is not null)
            {
                refused.Add(new(file, (int)reader.LineNumber, quotes));
                return rows;
            }

            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i) ?? "";
            if (cells.All(string.IsNullOrWhiteSpace)) continue;
            if (places is null)
            {
                places = new(StringComparer.Ordinal);
                for (var i = 0; i < cells.Length; i++) places.TryAdd(cells[i].TrimStart('\uFEFF'), i);
                if (needed.FirstOrDefault(name => !places.ContainsKey(name)) is not { } missing) continue;
                refused.Add(new(file, 0, $"the column {missing} is missing; columns read: {Excerpt.Of(string.Join(", ", places.Keys), 200)}.") { IsFile = true });
                return rows;
            }

            var row = new SeasonRow(name => places.TryGetValue(name, out var at) && at < cells.Length ? cells[at] : "", culture);
            var made = make(row);
            if (row.Reason is { } reason) refused.Add(new(file, (int)reader.LineNumber, reason));
            else rows.Add(made);
        }

        if (quotes is not null) refused.Add(new(file, 0, quotes) { IsFile = true });
        return rows;
    }

    private static string? Content(string path, string file, List<RefusedRow> refused)
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes })
            {
                refused.Add(new(file, 0, "it is longer than 50 MB.") { IsFile = true });
                return null;
            }

            return new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(File.ReadAllBytes(path));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            refused.Add(new(file, 0, $"it could not be read: {wrong.Message}") { IsFile = true });
        }
        catch (DecoderFallbackException)
        {
            refused.Add(new(file, 0, "it holds bytes that are no text in UTF-8.") { IsFile = true });
        }

        return null;
    }
}
