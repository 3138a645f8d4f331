using System.Text.Json;

namespace Lanewright.Core.Text;

/// <summary>
/// Reads a language's table, which lies inside this assembly: one JSON object, English text to own text.
/// </summary>
internal static class LanguageTable
{
    internal static IReadOnlyDictionary<string, string> Empty { get; } = new Dictionary<string, string>();

    internal static IReadOnlyDictionary<string, string> Of(string code)
    {
        using var stream = typeof(LanguageTable).Assembly.GetManifestResourceStream(code + ".json")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Read(bytes);
    }

    internal static IReadOnlyDictionary<string, string> Read(ReadOnlySpan<byte> json)
    {
        var table = new Dictionary<string, string>(StringComparer.Ordinal);
        var reader = new Utf8JsonReader(json);
        var key = "";
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.PropertyName) key = reader.GetString()!;
            else if (reader.TokenType is JsonTokenType.String) table.Add(key, reader.GetString()!);
        }

        return table;
    }
}
