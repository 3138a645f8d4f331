using Lanewright.Core.Text;

namespace Lanewright.Storage.Entries;

/// <summary>What came of reading one entry's JSON: a draft, or why there is none.</summary>
/// <param name="Raw">The JSON as it came.</param>
/// <param name="Id">The id as it was sent, as far as it could be read; null otherwise.</param>
/// <param name="Draft">The draft; null when the entry was not understood.</param>
/// <param name="Problem">What was not understood; null when there is a draft.</param>
public sealed record EntryReading(string Raw, string? Id, EntryDraft? Draft, EntryProblem? Problem);

/// <summary>Why an entry was not understood.</summary>
/// <param name="Field">The field, e.g. <c>payload.path</c>.</param>
/// <param name="Read">What was read there, shortened; null when nothing was there.</param>
/// <param name="Expected">What was expected.</param>
public sealed record EntryProblem(string Field, string? Read, Phrase Expected)
{
    /// <summary>The problem as one sentence, for a reader of any language.</summary>
    public Phrase Said => Read is null
        ? (Phrase)$"{Field}: nothing was read; {Expected} was expected."
        : $"{Field}: '{Read}' was read; {Expected} was expected.";

    /// <summary>The same in English, as it is kept.</summary>
    public override string ToString() => Said.ToString();
}
