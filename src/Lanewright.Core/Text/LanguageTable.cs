using System.Collections.Immutable;
using System.Text.Json;

namespace Lanewright.Core.Text;

/// <summary>
/// Reads a language's table: one JSON object, English text to own text. Core's lies inside this assembly; papers, logs and
/// the program each bring one for what only they say, so that the browser's build does not carry it.
/// </summary>
internal static class LanguageTable
{
    private static ImmutableArray<Func<string, Stream?>> sources = [code => typeof(LanguageTable).Assembly.GetManifestResourceStream(code + ".json")];

    internal static IReadOnlyDictionary<string, string> Empty { get; } = new Dictionary<string, string>();

    /// <summary>How many assemblies brought tables; only ever grows.</summary>
    internal static int Count => sources.Length;

    internal static void Add(Func<string, Stream?> open) => ImmutableInterlocked.Update(ref sources, (all, one) => all.Add(one), open);

    /// <summary>The tables of the first so many assemblies as one. A text that two of them have is said as in the first.</summary>
    internal static IReadOnlyDictionary<string, string> Of(string code, int count)
    {
        var table = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var open in sources.AsSpan(0, count))
        {
            using var stream = open(code);
            if (stream is null) continue;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            Read(bytes, table);
        }

        return table;
    }

    private static void Read(ReadOnlySpan<byte> json, Dictionary<string, string> table)
    {
        var reader = new Utf8JsonReader(json);
        var key = "";
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.PropertyName) key = reader.GetString()!;
            else if (reader.TokenType is JsonTokenType.String) table.TryAdd(key, reader.GetString()!);
        }
    }
}
