using System.Text.Json;

namespace Lanewright.Core.Exchange;

/// <summary>The recurring parts of a schema's fields.</summary>
internal static class SchemaText
{
    /// <summary>A pattern for a text that is not blank.</summary>
    internal const string NotBlank = @"\S";

    /// <summary>The types a value may have; an optional one may be null too.</summary>
    internal static void Types(Utf8JsonWriter json, bool optional, params ReadOnlySpan<string> types)
    {
        if (types.Length == 1 && !optional)
        {
            json.WriteString("type", types[0]);
            return;
        }

        json.WriteStartArray("type");
        foreach (var type in types) json.WriteStringValue(type);
        if (optional) json.WriteStringValue("null");
        json.WriteEndArray();
    }

    /// <summary>A text of a format that the schema's vocabulary names.</summary>
    internal static void Formatted(Utf8JsonWriter json, bool optional, string format)
    {
        Types(json, optional, "string");
        json.WriteString("format", format);
    }

    /// <summary>One of a few words, each with its meaning.</summary>
    internal static void Words<T>(Utf8JsonWriter json, IReadOnlyList<Word<T>> words, bool optional)
        where T : struct
    {
        json.WriteStartArray("oneOf");
        foreach (var word in words)
        {
            json.WriteStartObject();
            json.WriteString("const", word.Text);
            json.WriteString("description", word.Doc);
            json.WriteEndObject();
        }

        if (optional)
        {
            json.WriteStartObject();
            json.WriteString("type", "null");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
