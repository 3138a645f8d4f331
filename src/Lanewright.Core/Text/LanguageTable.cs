using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;

namespace Lanewright.Core.Text;

/// <summary>
/// Reads a language's table: one JSON object, English text to own text. Core's lies inside this assembly; papers, logs and
/// the program each bring one for what only they say, so that the browser's build does not carry it.
/// </summary>
internal static class LanguageTable
{
    private static ImmutableArray<Func<Assembly>> assemblies = [() => typeof(LanguageTable).Assembly];

    internal static IReadOnlyDictionary<string, string> Empty { get; } = new Dictionary<string, string>();

    /// <summary>How many assemblies brought tables; only ever grows.</summary>
    internal static int Count => assemblies.Length;

    internal static void Add(ReadOnlySpan<Func<Assembly>> more) =>
        ImmutableInterlocked.Update(ref assemblies, (all, added) => all.AddRange(added), more.ToArray());

    /// <summary>The tables of the first so many assemblies as one. A text that two of them have is said as in the first.</summary>
    internal static IReadOnlyDictionary<string, string> Of(string code, int count)
    {
        var table = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var assembly in assemblies.AsSpan(0, count))
        {
            using var stream = assembly().GetManifestResourceStream(code + ".json");
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
