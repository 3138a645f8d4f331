using System.Text.Json;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Folding;

/// <summary>Takes single members out of an entry's payload; a member of another shape counts as not there.</summary>
internal static class Payload
{
    internal static string? Text(Entry entry, string name)
    {
        using var json = Parse(entry);
        return Text(json.RootElement, name);
    }

    internal static string? Text(JsonElement payload, string name) =>
        payload.TryGetProperty(name, out var member) && member.ValueKind is JsonValueKind.String ? member.GetString() : null;

    internal static bool Flag(Entry entry, string name)
    {
        using var json = Parse(entry);
        return json.RootElement.TryGetProperty(name, out var member) && member.ValueKind is JsonValueKind.True;
    }

    /// <summary>The further entries that an entry says it replaces.</summary>
    internal static IReadOnlyList<string> Over(Entry entry)
    {
        if (!entry.Payload.Contains("\"over\"", StringComparison.Ordinal)) return [];
        using var json = Parse(entry);
        if (!json.RootElement.TryGetProperty("over", out var over) || over.ValueKind is not JsonValueKind.Array) return [];
        return [.. over.EnumerateArray().Where(id => id.ValueKind is JsonValueKind.String).Select(id => id.GetString()!)];
    }

    /// <summary>The named texts of a member that is an object.</summary>
    internal static IReadOnlyList<KeyValuePair<string, string>> Texts(Entry entry, string name)
    {
        using var json = Parse(entry);
        if (!json.RootElement.TryGetProperty(name, out var member) || member.ValueKind is not JsonValueKind.Object) return [];
        return
        [
            .. member.EnumerateObject().Where(one => one.Value.ValueKind is JsonValueKind.String)
                .Select(one => KeyValuePair.Create(one.Name, one.Value.GetString()!)),
        ];
    }

    // A payload that is not JSON any more was changed behind the program's back: the chain's check tells, and computing
    // what is shown must not stop at it.
    private static JsonDocument Parse(Entry entry)
    {
        try
        {
            return JsonDocument.Parse(entry.Payload);
        }
        catch (JsonException)
        {
            return JsonDocument.Parse("{}");
        }
    }
}
