using System.Globalization;
using System.Text;
using Lanewright.Core.Text;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>Keeps refused rows with their reasons, as CSV.</summary>
internal static class RefusedFile
{
    private const int MostText = 4096;

    /// <summary>A reason as one word, with the column it is about.</summary>
    internal static string Word(RefusedRow row) => row.Role is { } role && row.Why is not (Refusal.Duplicate or Refusal.SameMoment or Refusal.Late)
        ? $"{Word(row.Why)} ({Lower(role.ToString())})" : Word(row.Why);

    /// <summary>A reason of <see cref="Word(RefusedRow)"/>, as it is kept, with what was expected.</summary>
    internal static Phrase Said(string word) =>
        Enum.GetValues<Refusal>().FirstOrDefault(why => why is not Refusal.None && Word(why) == word.Split(' ')[0]) is var found and not Refusal.None
            ? $"{word}: {Expected(found)}" : word;

    internal static void Write(string path, string source, IReadOnlyList<RefusedRow> rows, byte[] text)
    {
        if (rows.Count == 0) return;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        using var writer = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        writer.NewLine = "\n";
        writer.WriteLine("file,line,reason,column,read,expected,text");
        foreach (var row in rows)
        {
            var raw = Encoding.UTF8.GetString(text, row.Begin, Math.Min(row.Length, MostText));
            if (row.Length > MostText) raw += $" … ({row.Length} bytes)";
            writer.WriteLine(string.Join(',', [
                Quoted(source), row.Line.ToString(CultureInfo.InvariantCulture), Word(row.Why), row.Role is { } role ? Lower(role.ToString()) : "",
                Quoted(row.Read), Quoted(Expected(row.Why).ToString()), Quoted(raw)]));
        }
    }

    private static string Quoted(string text) => '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';

    private static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Word(Refusal why) => why switch
    {
        Refusal.Fields => "fields",
        Refusal.Quote => "quote",
        Refusal.TooLong => "too-long",
        Refusal.Characters => "characters",
        Refusal.Empty => "empty",
        Refusal.Time => "time",
        Refusal.TimeSkipped => "time-skipped",
        Refusal.TimeTwice => "time-twice",
        Refusal.Season => "season",
        Refusal.Number => "number",
        Refusal.Range => "range",
        Refusal.Name => "name",
        Refusal.Duplicate => "duplicate",
        Refusal.SameMoment => "same-moment",
        Refusal.Late => "late",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };

    private static Phrase Expected(Refusal why) => why switch
    {
        Refusal.Fields => (Phrase)"as many fields as the row of names has",
        Refusal.Quote => "quotes around a whole field, closed on its line",
        Refusal.TooLong => $"at most {RowReader.LongestLine} bytes",
        Refusal.Characters => "text in UTF-8 without control characters",
        Refusal.Empty => "a value",
        Refusal.Time => "a time written as the profile's pattern says",
        Refusal.TimeSkipped => "a time that exists: clocks were set ahead",
        Refusal.TimeTwice => "a time that occurs once: clocks were set back; 'doubtfulTime' of the profile can say which is meant",
        Refusal.Season => "a time of the season asked for, from 2000 to 2099",
        Refusal.Number => "one number, written as the profile says",
        Refusal.Range => "a number that is possible for the column",
        Refusal.Name => "a name of at most 60 characters that can name a folder",
        Refusal.Duplicate => "a row that is not there yet",
        Refusal.SameMoment => "one row for a spreader and a moment",
        Refusal.Late => "a row later than those taken in: the counter ran on, so its counts are in a later row",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };
}
