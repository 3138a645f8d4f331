using Lanewright.Core.Text;

namespace Lanewright.Storage;

/// <summary>What became of one entry that was sent.</summary>
public enum AppendStatus
{
    /// <summary>Taken in now.</summary>
    Accepted,

    /// <summary>It was there already, the very same.</summary>
    Have,

    /// <summary>The id is taken by an entry that says something else; this one is in quarantine.</summary>
    Conflict,

    /// <summary>It was not understood; it is in quarantine.</summary>
    Rejected,
}

/// <summary>What became of one entry that was sent. It holds once it is returned: the entry is on the disk.</summary>
/// <param name="Id">The entry's id as sent; null when it could not be read.</param>
/// <param name="Status">What became of it.</param>
/// <param name="Number">Its number, when the records have it.</param>
/// <param name="Reason">Why not; null when they have it.</param>
public sealed record AppendResult(string? Id, AppendStatus Status, long? Number, Phrase? Reason);

/// <summary>The answer to one sending.</summary>
/// <param name="Results">One for each entry sent, in the order sent.</param>
/// <param name="Last">The highest number in the records; 0 when they are empty.</param>
public sealed record AppendAnswer(IReadOnlyList<AppendResult> Results, long Last);
