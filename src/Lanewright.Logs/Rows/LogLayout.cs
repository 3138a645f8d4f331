using System.Globalization;
using System.Text;
using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>Which field of a line has which meaning.</summary>
internal sealed class LogLayout
{
    private readonly int[] places = new int[Enum.GetValues<LogRole>().Length];

    private LogLayout(int fields)
    {
        Fields = fields;
        Array.Fill(places, -1);
    }

    /// <summary>How many fields every row has.</summary>
    internal int Fields { get; }

    /// <summary>The field of a role, from 0; -1 when it has none.</summary>
    internal int Place(LogRole role) => places[(int)role];

    /// <summary>Finds the columns of a profile in the first line of a file.</summary>
    /// <exception cref="LogException">One is not there, or is there twice.</exception>
    internal static LogLayout Of(LogProfile profile, ReadOnlySpan<byte> firstLine)
    {
        var names = Names(profile, firstLine);
        if (names.Count > 4096) throw new LogException($"{names.Count} columns were read; at most 4096 were expected. Is the separator right?");
        var layout = new LogLayout(names.Count);
        foreach (var (role, column) in profile.Columns)
        {
            if (column.Column is not { } wanted) continue;
            layout.places[(int)role] = profile.Header ? ByName(names, wanted) : ByNumber(names.Count, wanted);
        }

        return layout;
    }

    private static int ByName(List<string> names, string wanted)
    {
        var place = names.IndexOf(wanted);
        if (place < 0)
            throw new LogException(
                $"The column '{Excerpt.Of(wanted)}' of the profile is not in the file; it has {Excerpt.Of(string.Join(", ", names.Take(30)), 300)}."
                + $" Use the profile of this kind of file, and look at its separator.");
        return names.IndexOf(wanted, place + 1) < 0 ? place : throw new LogException($"The column '{Excerpt.Of(wanted)}' is in the file twice; which one is meant cannot be told.");
    }

    private static int ByNumber(int fields, string wanted) =>
        int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= fields
            ? number - 1
            : throw new LogException($"'{Excerpt.Of(wanted)}' was read as a column; a file without names has columns 1 to {fields}.");

    private static List<string> Names(LogProfile profile, ReadOnlySpan<byte> line)
    {
        var text = Encoding.UTF8.GetString(line);
        var names = new List<string>();
        for (var at = 0; at <= text.Length;)
        {
            string name;
            if (at < text.Length && text[at] == '"')
            {
                var name2 = new StringBuilder();
                at++;
                while (true)
                {
                    var end = text.IndexOf('"', at);
                    if (end < 0) throw new LogException("The row of names has a quote that is not closed.");
                    name2.Append(text, at, end - at);
                    at = end + 1;
                    if (at >= text.Length || text[at] != '"') break;
                    name2.Append('"');
                    at++;
                }

                if (at < text.Length && text[at] != profile.Separator) throw new LogException("The row of names has text behind a closed quote.");
                name = name2.ToString();
            }
            else
            {
                var end = text.IndexOf(profile.Separator, at);
                if (end < 0) end = text.Length;
                name = text[at..end];
                at = end;
            }

            names.Add(name.Trim());
            at++;
        }

        return names;
    }
}
