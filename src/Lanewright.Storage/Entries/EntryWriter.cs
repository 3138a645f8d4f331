using System.Text;
using System.Text.Json;

namespace Lanewright.Storage.Entries;

/// <summary>Writes entries as JSON: what the device sent, then what the records added.</summary>
public static class EntryWriter
{
    /// <summary>Writes one entry as an object.</summary>
    public static void Write(Utf8JsonWriter json, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(entry);
        json.WriteStartObject();
        Draft(json, entry);
        json.WriteNumber("number", entry.Number);
        json.WriteString("received", Moments.Write(entry.Received));
        json.WriteString("previousHash", entry.PreviousHash);
        json.WriteString("hash", entry.Hash);
        json.WriteEndObject();
    }

    /// <summary>A draft as a line of JSON.</summary>
    public static string Text(EntryDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return Lined(json => Draft(json, draft));
    }

    /// <summary>An entry as a line of JSON.</summary>
    public static string Text(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Lined(json => Write(json, entry), wrapped: true);
    }

    private static string Lined(Action<Utf8JsonWriter> write, bool wrapped = false)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, EntryReader.Canonical))
        {
            if (!wrapped) json.WriteStartObject();
            write(json);
            if (!wrapped) json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Draft(Utf8JsonWriter json, EntryDraft draft)
    {
        json.WriteString("id", draft.Id);
        json.WriteString("kind", draft.Kind);
        json.WriteString("subject", draft.Subject);
        json.WriteString("person", draft.Person);
        json.WriteString("device", draft.Device);
        json.WriteNumber("seq", draft.Seq);
        json.WriteString("at", Moments.Write(draft.At));
        json.WriteString("zone", draft.Zone);
        json.WriteString("parent", draft.Parent);
        json.WriteString("why", draft.Why);
        json.WritePropertyName("payload");
        json.WriteRawValue(draft.Payload, skipInputValidation: true);
    }
}
