using System.Text.Json.Serialization;

namespace Lanewright.Storage.Records;

/// <summary>A test in lists. Computed from its entries; never truth.</summary>
public sealed record TestRow
{
    /// <summary>State of a test nobody has decided yet.</summary>
    public const string Open = "open";

    /// <summary>State of a test that was decided, whatever the verdict.</summary>
    public const string Decided = "decided";

    /// <summary>The test's identity.</summary>
    public required string Id { get; init; }

    /// <summary>drop-test or verification; empty while the test's beginning is still on its way.</summary>
    public required string Kind { get; init; }

    /// <summary>The spreader's identity in the register; null when nobody said.</summary>
    public string? Spreader { get; init; }

    /// <summary>The spreader's number as typed.</summary>
    public required string SpreaderName { get; init; }

    /// <summary>Title as typed.</summary>
    public required string Title { get; init; }

    /// <summary>Day of the test as typed.</summary>
    public required string Date { get; init; }

    /// <summary>Place as typed.</summary>
    public required string Place { get; init; }

    /// <summary>Material as typed.</summary>
    public required string Material { get; init; }

    /// <summary><see cref="Open"/> or <see cref="Decided"/>.</summary>
    public required string State { get; init; }

    /// <summary>How many entries it has.</summary>
    public required int Entries { get; init; }

    /// <summary>How many photos it has.</summary>
    public required int Photos { get; init; }

    /// <summary>How many fields and decisions wait to be settled.</summary>
    public required int Conflicts { get; init; }

    /// <summary>The gravest finding: note, warn or stop; null for none.</summary>
    public string? Severity { get; init; }

    /// <summary>What kept it from being computed; null when nothing did.</summary>
    public string? Problem { get; init; }

    /// <summary>adopt, reject or repeat; null while it is open or decisions are in conflict.</summary>
    public string? Verdict { get; init; }

    /// <summary>Who decided.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>When it was decided, UTC.</summary>
    public DateTimeOffset? DecidedAt { get; init; }

    /// <summary>What was keyed in, as typed.</summary>
    public string? Keyed { get; init; }

    /// <summary>What the controller showed afterwards, as typed.</summary>
    public string? ReadBack { get; init; }

    /// <summary>When it was begun, UTC.</summary>
    public required DateTimeOffset BegunAt { get; init; }

    /// <summary>Who began it.</summary>
    public required string BegunBy { get; init; }

    /// <summary>Number of its latest entry.</summary>
    public required long LastNumber { get; init; }

    /// <summary>The scale that weighed, as typed; empty when nobody said.</summary>
    public string Scale { get; init; } = "";

    /// <summary>Whether its data are made up for demonstration or practice.</summary>
    public bool Invented { get; init; }

    /// <summary>What a search looks in, in small letters.</summary>
    [JsonIgnore]
    public string Search { get; init; } = "";
}

/// <summary>One result of a test: for an open loop there is one for each drive setting. SI throughout.</summary>
public sealed record TestResultRow
{
    /// <summary>The test.</summary>
    public required string Test { get; init; }

    /// <summary>Place among the test's results, from 0.</summary>
    public required int Position { get; init; }

    /// <summary>Drive setting as typed, or empty.</summary>
    public required string Setting { get; init; }

    /// <summary>Symbol of the unit it is shown or keyed in.</summary>
    public required string Unit { get; init; }

    /// <summary>The value, SI.</summary>
    public required double Value { get; init; }

    /// <summary>Expanded uncertainty as a share of the value.</summary>
    public required double RelativeExpanded { get; init; }

    /// <summary>Lower end of the interval, SI.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end of the interval, SI.</summary>
    public required double High { get; init; }

    /// <summary>Coverage probability of the interval.</summary>
    public required double Probability { get; init; }

    /// <summary>What to key in, SI; null in a verification.</summary>
    public double? KeyIn { get; init; }

    /// <summary>pass, fail or cannot-tell of delivered against asked; null when not known.</summary>
    public string? Conformity { get; init; }

    /// <summary>Delivered by asked; null when not known.</summary>
    public double? Share { get; init; }

    /// <summary>Expanded uncertainty of the share.</summary>
    public double? ShareExpanded { get; init; }

    /// <summary>Tolerance of the share, plus or minus.</summary>
    public double? Tolerance { get; init; }
}
