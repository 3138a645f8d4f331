namespace Lanewright.Storage.Entries;

/// <summary>
/// An entry as its device made it, before the records took it in. Texts are as typed; <see cref="At"/> is UTC.
/// Two drafts of one id are the same entry when <see cref="SameContent"/> says so.
/// </summary>
public record EntryDraft
{
    /// <summary>The entry's own identity, a lower-case UUID made by the device.</summary>
    public required string Id { get; init; }

    /// <summary>What kind of entry it is, e.g. <c>test.field</c>; a kind not known here is kept all the same.</summary>
    public required string Kind { get; init; }

    /// <summary>Identity of the thing the entry is about: a test, a spreader, a person ...</summary>
    public required string Subject { get; init; }

    /// <summary>Who made it.</summary>
    public required string Person { get; init; }

    /// <summary>The device it was made on.</summary>
    public required string Device { get; init; }

    /// <summary>The device's own count of its entries.</summary>
    public required long Seq { get; init; }

    /// <summary>When the device's clock said it was made, UTC.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The device's time zone, e.g. <c>America/Chicago</c>; empty when it did not say.</summary>
    public required string Zone { get; init; }

    /// <summary>The entry that this one follows on and replaces; null for none.</summary>
    public string? Parent { get; init; }

    /// <summary>Why an earlier entry is corrected; null when nobody said. Never empty.</summary>
    public string? Why { get; init; }

    /// <summary>What the entry says: a JSON object without white space, its names in the order sent.</summary>
    public required string Payload { get; init; }

    /// <summary>Whether another draft says exactly the same.</summary>
    public bool SameContent(EntryDraft other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Id == other.Id && Kind == other.Kind && Subject == other.Subject && Person == other.Person
            && Device == other.Device && Seq == other.Seq && At == other.At && Zone == other.Zone
            && Parent == other.Parent && Why == other.Why && Payload == other.Payload;
    }
}

/// <summary>An entry as the records keep it: never changed, never removed, chained to the one before.</summary>
public sealed record Entry : EntryDraft
{
    /// <summary>Place in the order received: 1, 2, 3 ... without gaps.</summary>
    public required long Number { get; init; }

    /// <summary>When the records took it in, UTC.</summary>
    public required DateTimeOffset Received { get; init; }

    /// <summary>Hash of the entry before; <see cref="EntryHash.First"/> for the first.</summary>
    public required string PreviousHash { get; init; }

    /// <summary>SHA-256 over everything above, see <see cref="EntryHash"/>.</summary>
    public required string Hash { get; init; }
}
