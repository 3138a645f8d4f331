namespace Lanewright.Storage.Records;

/// <summary>The current record of something in the register. Computed from its entries; never truth.</summary>
public sealed record RegisterItem
{
    /// <summary>Its identity.</summary>
    public required string Id { get; init; }

    /// <summary>spreader, scale, material, person, depot, rules; or a kind that is not known here.</summary>
    public required string Kind { get; init; }

    /// <summary>The whole record, JSON as sent.</summary>
    public required string Payload { get; init; }

    /// <summary>The entry it comes from; a change names it as parent.</summary>
    public required string EntryId { get; init; }

    /// <summary>That entry's number.</summary>
    public required long Number { get; init; }

    /// <summary>Whether it is no longer in use.</summary>
    public required bool Retired { get; init; }

    /// <summary>Ids, separated by spaces, of entries that say something else and that nobody has settled; else empty.</summary>
    public required string Others { get; init; }
}

/// <summary>Something that happened to a spreader. Computed from its entry; never truth.</summary>
public sealed record SpreaderEvent
{
    /// <summary>The entry.</summary>
    public required string EntryId { get; init; }

    /// <summary>The spreader's identity.</summary>
    public required string Spreader { get; init; }

    /// <summary>The entry's number.</summary>
    public required long Number { get; init; }

    /// <summary>What: hydraulics, metering, gate, sensor, tyres, battery, material, supplier, other.</summary>
    public required string Event { get; init; }

    /// <summary>In words.</summary>
    public required string Note { get; init; }

    /// <summary>The day it happened, as typed.</summary>
    public required string Date { get; init; }

    /// <summary>Who wrote it down.</summary>
    public required string Person { get; init; }

    /// <summary>When it was written down, UTC.</summary>
    public required DateTimeOffset At { get; init; }
}

/// <summary>Something sent that could not be taken in as an entry: kept as it came, beside the entries.</summary>
public sealed record QuarantinedEntry
{
    /// <summary>SHA-256 of the raw text; the same text is kept once.</summary>
    public required string Hash { get; init; }

    /// <summary>The entry's id as far as it could be read; null otherwise.</summary>
    public string? EntryId { get; init; }

    /// <summary>When it first came, UTC.</summary>
    public required DateTimeOffset Received { get; init; }

    /// <summary>conflict (the id is taken by other content) or rejected (not understood).</summary>
    public required string Status { get; init; }

    /// <summary>Why it is here.</summary>
    public required string Reason { get; init; }

    /// <summary>The JSON as it came.</summary>
    public required string Raw { get; init; }
}

/// <summary>A photo's bytes, written once; its entry holds their hash.</summary>
public sealed record Photo
{
    /// <summary>The entry of kind test.photo.</summary>
    public required string EntryId { get; init; }

    /// <summary>SHA-256 of the bytes, 64 lower-case hexadecimal digits.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Kind of picture, e.g. image/jpeg.</summary>
    public required string Mime { get; init; }

    /// <summary>When it came, UTC.</summary>
    public required DateTimeOffset Received { get; init; }

    /// <summary>The bytes.</summary>
    public required byte[] Bytes { get; init; }
}
