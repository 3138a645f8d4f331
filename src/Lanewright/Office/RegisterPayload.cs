using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Lanewright.Core.Exchange;

namespace Lanewright.Office;

/// <summary>A record of the register as JSON, and its fields as texts.</summary>
internal static class RegisterPayload
{
    /// <summary>Entries that a record settles; never part of the record itself.</summary>
    internal const string Over = "over";

    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The texts of a record's fields by their paths; what is no text, number or flag is left out.</summary>
    internal static Dictionary<string, string> Texts(string payload)
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        using var json = JsonDocument.Parse(payload);
        if (json.RootElement.ValueKind is JsonValueKind.Object) Gather(json.RootElement, "", texts);
        return texts;
    }

    /// <summary>
    /// The record of fields that were read. Members of the earlier record that are not known here are kept: a newer program
    /// may know them.
    /// </summary>
    /// <param name="fields">The fields, each with its text for every reader.</param>
    /// <param name="earlier">The record it replaces; null for none.</param>
    /// <param name="over">Further entries that it settles.</param>
    internal static string Write(IReadOnlyList<AskedField> fields, string? earlier = null, IReadOnlyList<string>? over = null)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Plain))
        {
            json.WriteStartObject();
            foreach (var group in fields.GroupBy(field => field.Path.Split('.')[0]))
            {
                var first = group.First();
                if (first.Path == group.Key) WriteField(json, group.Key, first);
                else if (group.Any(field => field.Text is not null)) WriteGroup(json, group.Key, group);
            }

            if (earlier is not null) WriteUnknown(json, fields, earlier);
            if (over is { Count: > 0 })
            {
                json.WriteStartArray(Over);
                foreach (var id in over) json.WriteStringValue(id);
                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>A record as it stands, written once more to settle others.</summary>
    internal static string Settling(string payload, IReadOnlyList<string> over) => Again(payload, Over, json =>
    {
        json.WriteStartArray(Over);
        foreach (var id in over) json.WriteStringValue(id);
        json.WriteEndArray();
    });

    /// <summary>A record as it stands, taken out of use.</summary>
    internal static string Retired(string payload) => Again(payload, "retired", json => json.WriteBoolean("retired", true));

    private static string Again(string payload, string without, Action<Utf8JsonWriter> add)
    {
        using var earlier = JsonDocument.Parse(payload);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Plain))
        {
            json.WriteStartObject();
            foreach (var member in earlier.RootElement.EnumerateObject().Where(member => member.Name != without)) member.WriteTo(json);
            add(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteGroup(Utf8JsonWriter json, string name, IEnumerable<AskedField> fields)
    {
        json.WriteStartObject(name);
        foreach (var field in fields) WriteField(json, field.Path[(name.Length + 1)..], field);
        json.WriteEndObject();
    }

    private static void WriteField(Utf8JsonWriter json, string name, AskedField field)
    {
        if (field.Text is not { } text) return;
        json.WritePropertyName(name);
        if (field.Shape is FieldShape.YesNo) json.WriteBooleanValue(text == "yes");
        else if (field.Shape is FieldShape.Number) json.WriteRawValue(text);
        else json.WriteStringValue(text);
    }

    private static void WriteUnknown(Utf8JsonWriter json, IReadOnlyList<AskedField> fields, string earlier)
    {
        var known = fields.Select(field => field.Path.Split('.')[0]).Append(Over).ToHashSet(StringComparer.Ordinal);
        using var old = JsonDocument.Parse(earlier);
        foreach (var member in old.RootElement.EnumerateObject().Where(member => known.Add(member.Name))) member.WriteTo(json);
    }

    private static void Gather(JsonElement element, string path, Dictionary<string, string> texts)
    {
        foreach (var member in element.EnumerateObject())
        {
            var at = Place.Join(path, member.Name);
            if (member.Value.ValueKind is JsonValueKind.Object) Gather(member.Value, at, texts);
            else if (Text(member.Value) is { } text) texts[at] = text;
        }
    }

    private static string? Text(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Number => value.GetRawText(),
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        _ => null,
    };
}
