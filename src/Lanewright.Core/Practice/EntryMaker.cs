using System.Text;
using System.Text.Json;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Practice;

/// <summary>Makes entries with identities drawn from the seed, so that the same seed makes the same world.</summary>
internal sealed class EntryMaker(RandomSource random, string zone)
{
    private readonly Guid device = Uuid(random, DateTimeOffset.UnixEpoch);
    private long sequence;

    internal List<PracticeEntry> Entries { get; } = [];

    internal string NewSubject(DateTimeOffset at) => Uuid(random, at).ToString("D");

    internal void Add(string kind, string subject, string person, DateTimeOffset at, Action<Utf8JsonWriter> payload)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            payload(json);
            json.WriteEndObject();
        }

        Entries.Add(new(
            Uuid(random, at), kind, subject, person, device, ++sequence, at, zone,
            Encoding.UTF8.GetString(stream.ToArray())));
    }

    /// <summary>A UUID version 7 (RFC 9562): 48 bits of milliseconds, then random bits.</summary>
    private static Guid Uuid(RandomSource random, DateTimeOffset at)
    {
        Span<byte> bytes = stackalloc byte[16];
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64BigEndian(bytes[8..], random.NextUInt64());
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64BigEndian(
            bytes, ((ulong)at.ToUnixTimeMilliseconds() << 16) | (random.NextUInt64() & 0xFFFF));
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x70);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new(bytes, bigEndian: true);
    }
}
