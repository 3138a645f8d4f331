namespace Lanewright.Files;

/// <summary>Finds out which character separates the cells.</summary>
internal static class CsvSeparator
{
    /// <summary>
    /// The first comma, semicolon or tab outside quotes: the first cell of a sheet's row is a name and never holds one.
    /// A first line <c>sep=;</c>, which some spreadsheets write, says it outright.
    /// </summary>
    internal static char Of(string text)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            var row = line.Trim(' ');
            if (Declared(row) is { } declared) return declared;
            if (row.StartsWith("#")) continue;

            var quoted = false;
            foreach (var one in row)
            {
                if (one == '"') quoted = !quoted;
                else if (!quoted && one is ',' or ';' or '\t') return one;
            }
        }

        return ',';
    }

    /// <summary>The separator that a line declares, or null when it declares none.</summary>
    internal static char? Declared(ReadOnlySpan<char> line) =>
        line.Length == 5 && line.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && line[4] is (',' or ';' or '\t')
            ? line[4]
            : null;
}
