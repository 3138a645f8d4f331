using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Lanewright.Core.Text;

namespace Lanewright.Storage.Entries;

/// <summary>
/// Reads an entry from JSON. A kind or a payload member that is not known is kept; a part that cannot be understood is
/// a problem of that entry alone and never an exception.
/// </summary>
public static class EntryReader
{
    private const int LongestName = 100;
    private const int LongestWhy = 2000;
    private const int Depth = 32;

    /// <summary>Longest payload, in characters.</summary>
    public const int LongestPayload = 500_000;

    // Characters beyond ASCII stay as they are, as a browser writes them; what JSON must escape is escaped.
    internal static readonly JsonWriterOptions Canonical =
        new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Indented = false };

    // What lies in quarantine may be deeper than an entry may be.
    internal static readonly JsonDocumentOptions AsItCame = new() { MaxDepth = 1000 };

    /// <summary>Reads one entry.</summary>
    public static EntryReading Read(JsonElement json)
    {
        var raw = json.GetRawText();
        string? id = null;
        try
        {
            var draft = Draft(json, ref id);
            return new(raw, id, draft, PayloadRules.Check(draft.Kind, json.GetProperty("payload")) is { } problem
                ? throw new EntryProblemException(problem)
                : null);
        }
        catch (EntryProblemException wrong)
        {
            return new(raw, id, null, wrong.Problem);
        }
        catch (Exception wrong) when (wrong is InvalidOperationException or ArgumentException or JsonException)
        {
            // Half characters and bytes that are not UTF-8 come to light only when a text is taken out.
            return new(raw, id, null, new("entry", null, "text made of whole characters (UTF-8)"));
        }
    }

    /// <summary>A JSON value without white space, names in the order sent, characters written in one way.</summary>
    public static string Minify(JsonElement json)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Canonical)) json.WriteTo(writer);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static EntryDraft Draft(JsonElement json, ref string? id)
    {
        if (json.ValueKind is not JsonValueKind.Object) throw Wrong("entry", Shorten(json), "an object");
        id = Name(json, "id", LongestName);
        if (!IsUuid(id)) throw Wrong("id", id, "a lower-case UUID");
        var kind = Name(json, "kind", 60);
        if (!kind.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '.' or '-'))
            throw Wrong("kind", kind, "small letters, digits, dots and hyphens");
        var parent = Optional(json, "parent", LongestName);
        if (parent is not null && !IsUuid(parent)) throw Wrong("parent", parent, "a lower-case UUID or null");
        var payload = Minify(Member(json, "payload", JsonValueKind.Object, "an object"));
        if (payload.Length > LongestPayload)
            throw Wrong("payload", payload.Length.ToString(CultureInfo.InvariantCulture), $"at most {LongestPayload} characters");
        if (IsTooDeep(payload)) throw Wrong("payload", null, $"at most {Depth} objects and lists inside one another");
        return new()
        {
            Id = id,
            Kind = kind,
            Subject = Name(json, "subject", LongestName),
            Person = Name(json, "person", LongestName),
            Device = Name(json, "device", LongestName),
            Seq = Seq(json),
            At = At(json),
            Zone = Optional(json, "zone", LongestName) ?? "",
            Parent = parent,
            Why = Why(json),
            Payload = payload,
        };
    }

    private static bool IsTooDeep(string payload)
    {
        var (depth, inText) = (0, false);
        for (var i = 0; i < payload.Length; i++)
        {
            if (inText && payload[i] == '\\') i++;
            else if (payload[i] == '"') inText = !inText;
            else if (!inText && (payload[i] is '{' or '[') && ++depth > Depth) return true;
            else if (!inText && (payload[i] is '}' or ']')) depth--;
        }

        return false;
    }

    private static long Seq(JsonElement json)
    {
        var seq = Member(json, "seq", JsonValueKind.Number, "a whole number from 0");
        return seq.TryGetInt64(out var value) && value >= 0
            ? value
            : throw Wrong("seq", Shorten(seq), "a whole number from 0");
    }

    private static DateTimeOffset At(JsonElement json)
    {
        var text = Name(json, "at", 40);
        return Moments.Read(text)
            ?? throw Wrong("at", text, "a moment such as 2026-11-25T10:12:13.123Z");
    }

    private static string? Why(JsonElement json)
    {
        if (!json.TryGetProperty("why", out var why) || why.ValueKind is JsonValueKind.Null) return null;
        if (why.ValueKind is not JsonValueKind.String) throw Wrong("why", Shorten(why), "a text or null");
        var text = why.GetString()!;
        if (text.Length > LongestWhy) throw Wrong("why", Shorten(why), $"at most {LongestWhy} characters");
        if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')))
            throw Wrong("why", null, "text without control characters");
        return text.Length == 0 ? null : text;
    }

    private static string? Optional(JsonElement json, string name, int longest) =>
        !json.TryGetProperty(name, out var member) || member.ValueKind is JsonValueKind.Null
        || (member.ValueKind is JsonValueKind.String && member.GetString()!.Length == 0)
            ? null
            : Name(json, name, longest);

    private static string Name(JsonElement json, string name, int longest)
    {
        var text = Member(json, name, JsonValueKind.String, "a text").GetString()!;
        if (text.Length == 0 || text.Length > longest)
            throw Wrong(name, text[..Math.Min(text.Length, 60)], $"1 to {longest} characters");
        return text.Any(char.IsControl) ? throw Wrong(name, null, "text without control characters") : text;
    }

    private static JsonElement Member(JsonElement json, string name, JsonValueKind kind, Phrase expected)
    {
        if (!json.TryGetProperty(name, out var member)) throw Wrong(name, null, expected);
        return member.ValueKind == kind ? member : throw Wrong(name, Shorten(member), expected);
    }

    /// <summary>Whether a text is a UUID in its usual lower-case form, of any version.</summary>
    public static bool IsUuid(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Guid.TryParseExact(text, "D", out _) && !text.Any(char.IsAsciiLetterUpper);
    }

    internal static string Shorten(JsonElement json)
    {
        var raw = json.GetRawText();
        return raw.Length <= 60 ? raw : raw[..57] + "...";
    }

    private static EntryProblemException Wrong(string field, string? read, Phrase expected) =>
        new(new(field, read, expected));

    /// <summary>Carries a problem out of the reading of one entry; never leaves this file.</summary>
    private sealed class EntryProblemException(EntryProblem problem) : Exception(problem.ToString())
    {
        internal EntryProblem Problem => problem;
    }
}
