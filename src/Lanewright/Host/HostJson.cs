using System.Text.Json;
using System.Text.Json.Serialization;
using Lanewright.Storage.Entries;
using Lanewright.Storage.Records;

namespace Lanewright.Host;

/// <summary>The shapes of the API's JSON; written without reflection so that the program starts fast.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    Converters = [typeof(MomentJson)])]
[JsonSerializable(typeof(Hello))]
[JsonSerializable(typeof(Me))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(PostAnswer))]
[JsonSerializable(typeof(TestsAnswer))]
[JsonSerializable(typeof(ApiTest))]
[JsonSerializable(typeof(PhotoAnswer))]
[JsonSerializable(typeof(QuarantineAnswer))]
internal sealed partial class HostJson : JsonSerializerContext;

/// <summary>The first answer.</summary>
/// <param name="Lanewright">The API's version: 1.</param>
/// <param name="Version">The program's version.</param>
internal sealed record Hello(int Lanewright, string Version);

/// <summary>What became of one entry.</summary>
internal sealed record PostResult(string? Id, string Status, long? Number, string? Reason);

/// <summary>What became of the entries sent.</summary>
internal sealed record PostAnswer(IReadOnlyList<PostResult> Results, long Last, string Version);

/// <summary>A test with its results.</summary>
internal sealed record ApiTest(TestRow Test, IReadOnlyList<TestResultRow> Results);

/// <summary>A page of tests; <paramref name="Next"/> goes into <c>after</c> for the following one.</summary>
internal sealed record TestsAnswer(IReadOnlyList<ApiTest> Tests, long? Next, long Last);

/// <summary>What became of a photo.</summary>
internal sealed record PhotoAnswer(string Id, string Status);

/// <summary>What could not be taken in.</summary>
internal sealed record QuarantineAnswer(IReadOnlyList<QuarantinedEntry> Entries);

/// <summary>Moments in the one form of the records.</summary>
internal sealed class MomentJson : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        Moments.Read(reader.GetString() ?? "") ?? throw new JsonException("A moment was expected.");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(Moments.Write(value));
}
