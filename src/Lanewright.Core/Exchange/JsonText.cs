using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Lanewright.Core.Exchange;

/// <summary>JSON as a file of its own: indented, \n at the end of each line, letters of every language as they are.</summary>
internal static class JsonText
{
    // Never part of a page, so only JSON's own escapes are needed.
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The text of one object.</summary>
    internal static string Object(Action<Utf8JsonWriter> writeFields)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            writeFields(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }
}
