using System.Text.Json.Nodes;

namespace Lanewright.App.Tests.Mutation;

/// <summary>What must come of a mutated sheet.</summary>
internal enum Outcome
{
    /// <summary>A finding of severity stop at the very field.</summary>
    StopAtField,

    /// <summary>A finding about a field that nobody knows, at that field.</summary>
    UnknownField,

    /// <summary>A finding that the field is given twice.</summary>
    TwiceGiven,

    /// <summary>A finding of severity stop at the field or below it.</summary>
    StopUnderField,

    /// <summary>The sheet is not usable, and a finding of severity stop says why.</summary>
    Refused,

    /// <summary>Another legal value: the sheet differs there and nowhere else.</summary>
    Legal,
}

/// <summary>A sheet with one deliberate change.</summary>
/// <param name="Kind">Which change, for counting.</param>
/// <param name="Path">The field changed.</param>
/// <param name="Sheet">The changed sheet.</param>
/// <param name="Outcome">What must come of it.</param>
internal sealed record Mutation(string Kind, string Path, JsonNode Sheet, Outcome Outcome)
{
    /// <summary>A name that stands in the sheet for <see cref="TwinName"/>, which it has already.</summary>
    public const string Twin = "dup-dup-dup";

    /// <summary>The name given twice.</summary>
    public string? TwinName { get; init; }

    /// <summary>Whether only JSON can say it or only there it is wrong.</summary>
    public bool InJsonOnly { get; init; }
}
