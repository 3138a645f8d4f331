using System.Globalization;
using System.Text.Json;
using Lanewright.Storage.Entries;

namespace Lanewright.Storage.Tests;

/// <summary>Makes drafts as a device would; all data is invented.</summary>
internal sealed class Drafts(string device = "phone-1", int seed = 1)
{
    private readonly Random random = new(seed);
    private long seq;

    internal static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    /// <summary>The fields of a finished verification, as typed.</summary>
    internal static IReadOnlyDictionary<string, string> Verification { get; } = new Dictionary<string, string>
    {
        ["title"] = "HR-104, salt, check", ["units"] = "us", ["date"] = "2026-10-06", ["place"] = "Quarry Road",
        ["spreader.id"] = "HR-104", ["spreader.loop"] = "closed", ["spreader.constant"] = "pulses-per-mass",
        ["spreader.unit"] = "pulse/lb", ["spreader.current"] = "12.6", ["material.name"] = "white rock salt",
        ["scale.id"] = "bench", ["scale.kind"] = "platform", ["scale.capacity"] = "150 lb", ["scale.division"] = "0.1 lb",
        ["scale.class"] = "iii", ["scale.verified"] = "2026-04-14", ["commonError"] = "yes", ["tolerance"] = "5 %",
        ["runs[0].delivered"] = "63.0", ["runs[0].containers[0].tare"] = "2.4", ["runs[0].containers[0].gross"] = "64.9",
        ["runs[1].delivered"] = "61.5", ["runs[1].containers[0].tare"] = "2.6", ["runs[1].containers[0].gross"] = "63.8",
        ["runs[2].delivered"] = "62.2", ["runs[2].containers[0].tare"] = "2.3", ["runs[2].containers[0].gross"] = "64.0",
    };

    /// <summary>A version 7 UUID that the seed alone decides.</summary>
    internal string Id()
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x70);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true).ToString("D", CultureInfo.InvariantCulture);
    }

    internal EntryDraft Draft(string kind, string subject, string payload, string? parent = null, string? why = null) => new()
    {
        Id = Id(),
        Kind = kind,
        Subject = subject,
        Person = "M.O.",
        Device = device,
        Seq = ++seq,
        At = Noon.AddSeconds(seq),
        Zone = "America/Chicago",
        Parent = parent,
        Why = why,
        Payload = payload,
    };

    internal EntryDraft Begin(
        string test, IReadOnlyDictionary<string, string>? fields = null, string spreader = "sp-1") => Draft(
            EntryKinds.TestBegin, test,
            $$"""{"kind":"verification","spreader":"{{spreader}}","fields":{{JsonSerializer.Serialize(fields ?? Verification)}}}""");

    internal EntryDraft Field(string test, string path, string text, string? parent = null, params string[] over) => Draft(
        EntryKinds.TestField, test,
        $$"""{"path":{{JsonSerializer.Serialize(path)}},"text":{{JsonSerializer.Serialize(text)}}"""
        + (over.Length == 0 ? "}" : $$""","over":{{JsonSerializer.Serialize(over)}}}"""),
        parent);

    internal EntryDraft Decide(string test, string verdict, string? parent = null) => Draft(
        EntryKinds.TestDecision, test,
        $$"""{"verdict":"{{verdict}}","why":"inside the tolerance","keyed":null,"readBack":null}""", parent);

    internal EntryDraft Spreader(string id, string name, string? parent = null, bool retired = false) => Draft(
        "register.spreader", id, $$"""{"name":{{JsonSerializer.Serialize(name)}},"retired":{{(retired ? "true" : "false")}}}""", parent);

    /// <summary>What the reader makes of an entry's JSON.</summary>
    internal static EntryReading Read(string json)
    {
        using var document = JsonDocument.Parse(json, new() { MaxDepth = 500 });
        return EntryReader.Read(document.RootElement);
    }
}
