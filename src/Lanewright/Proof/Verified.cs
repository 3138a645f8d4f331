using Lanewright.Core.Text;

namespace Lanewright.Proof;

/// <summary>How one thing that was looked at stands.</summary>
internal enum Standing
{
    /// <summary>It is as it should be.</summary>
    Good,

    /// <summary>Something the reader must know or do.</summary>
    Note,

    /// <summary>It is not as it should be.</summary>
    Bad,
}

/// <summary>One thing that was looked at.</summary>
/// <param name="Standing">How it stands.</param>
/// <param name="Text">In words.</param>
internal sealed record VerifiedLine(Standing Standing, string Text);

/// <summary>What came of looking at a file.</summary>
/// <param name="Kind">What the file is.</param>
/// <param name="Lines">What was looked at, in order.</param>
/// <param name="Culture">Language of the words.</param>
internal sealed record Verified(Phrase Kind, IReadOnlyList<VerifiedLine> Lines, TextCulture Culture)
{
    /// <summary>Whether nothing is wrong.</summary>
    internal bool Holds => Lines.All(line => line.Standing != Standing.Bad);

    /// <summary>The result in one sentence.</summary>
    internal string Sentence => Culture.Say(Holds
        ? (Phrase)$"{Kind}: nothing was found changed."
        : $"{Kind}: DO NOT RELY ON THIS FILE. What is wrong stands in the list.");
}
