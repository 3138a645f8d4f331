using System.Text.Json;
using Lanewright.Core.Exchange;

namespace Lanewright.Storage.Entries;

/// <summary>
/// What the payload of a known kind must hold so that it can be understood; other members, and kinds not listed, are
/// nobody's business here and are kept as they are.
/// </summary>
internal static class PayloadRules
{
    private const int LongestFieldText = 20_000;

    /// <summary>The first thing wrong with a payload; null when nothing is.</summary>
    internal static EntryProblem? Check(string kind, JsonElement payload) => kind switch
    {
        EntryKinds.TestBegin => Begin(payload),
        EntryKinds.TestField => Field(payload),
        EntryKinds.TestPhoto => Photo(payload),
        EntryKinds.TestDecision => OneOf(payload, "verdict", "adopt", "reject", "repeat"),
        EntryKinds.SpreaderEvent => Text(payload, "event", 60),
        EntryKinds.TestNote => Text(payload, "text", LongestFieldText),
        _ => null,
    };

    private static EntryProblem? Begin(JsonElement payload)
    {
        // A newer page may begin what this server does not compute yet: it is kept, and computed once the server is renewed.
        if (Text(payload, "kind", 60) is { } wrong) return wrong;
        if (!payload.TryGetProperty("fields", out var fields) || fields.ValueKind is JsonValueKind.Null) return null;
        if (fields.ValueKind is not JsonValueKind.Object)
            return new("payload.fields", EntryReader.Shorten(fields), "an object of paths and texts");
        foreach (var field in fields.EnumerateObject())
        {
            if (FieldPath.Read(field.Name) is null)
                return new("payload.fields", field.Name, "the path of a field, such as runs[0].pulses");
            if (field.Value.ValueKind is not JsonValueKind.String)
                return new("payload.fields." + field.Name, EntryReader.Shorten(field.Value), "a text");
        }

        return null;
    }

    private static EntryProblem? Field(JsonElement payload)
    {
        if (Text(payload, "path", 500) is { } wrong) return wrong;
        var path = payload.GetProperty("path").GetString()!;
        if (FieldPath.Read(path) is null)
            return new("payload.path", path[..Math.Min(path.Length, 60)], "the path of a field, such as runs[0].pulses");
        if (!payload.TryGetProperty("text", out var text) || text.ValueKind is not JsonValueKind.String)
            return new("payload.text", text.ValueKind is JsonValueKind.Undefined ? null : EntryReader.Shorten(text), "a text");
        return text.GetString()!.Length <= LongestFieldText
            ? null
            : new("payload.text", EntryReader.Shorten(text), $"at most {LongestFieldText} characters");
    }

    private static EntryProblem? Photo(JsonElement payload)
    {
        if (Text(payload, "sha256", 64) is { } wrong) return wrong;
        var hash = payload.GetProperty("sha256").GetString()!;
        if (hash.Length != 64 || !hash.All(char.IsAsciiHexDigitLower))
            return new("payload.sha256", hash, "64 lower-case hexadecimal digits");
        return payload.TryGetProperty("bytes", out var bytes) && bytes.ValueKind is JsonValueKind.Number
            && bytes.TryGetInt64(out var count) && count > 0
            ? null
            : new("payload.bytes", bytes.ValueKind is JsonValueKind.Undefined ? null : EntryReader.Shorten(bytes),
                "the photo's size in bytes");
    }

    private static EntryProblem? OneOf(JsonElement payload, string name, params string[] words)
    {
        if (Text(payload, name, 60) is { } wrong) return wrong;
        var word = payload.GetProperty(name).GetString()!;
        return words.Contains(word) ? null : new("payload." + name, word, string.Join(" or ", words));
    }

    private static EntryProblem? Text(JsonElement payload, string name, int longest)
    {
        if (!payload.TryGetProperty(name, out var member)) return new("payload." + name, null, "a text");
        return member.ValueKind is JsonValueKind.String && member.GetString()!.Length is > 0 and var length && length <= longest
            ? null
            : new("payload." + name, EntryReader.Shorten(member), $"a text of 1 to {longest} characters");
    }
}
