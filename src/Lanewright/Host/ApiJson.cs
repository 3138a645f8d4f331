using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Lanewright.Host;

/// <summary>Answers in JSON.</summary>
internal static class ApiJson
{
    private const string Type = "application/json; charset=utf-8";
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static IResult Answer<T>(T value, JsonTypeInfo<T> shape) => Results.Json(value, shape, Type);

    /// <summary>An answer written by hand, for entries whose payloads pass through as they are.</summary>
    internal static IResult Written(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options)) write(json);
        return Results.Bytes(stream.ToArray(), Type);
    }
}
