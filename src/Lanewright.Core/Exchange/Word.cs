namespace Lanewright.Core.Exchange;

/// <summary>One of the words that a field may hold, what it stands for, and what it means to a person.</summary>
/// <param name="Text">The word in the sheet: lower case, parts joined by hyphens. Read without regard to case.</param>
/// <param name="Value">What it stands for in the program.</param>
/// <param name="Doc">What it means, as a sentence.</param>
public sealed record Word<T>(string Text, T Value, string Doc)
    where T : struct;
