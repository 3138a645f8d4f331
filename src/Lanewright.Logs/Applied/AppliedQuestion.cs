using Lanewright.Core.Season;

namespace Lanewright.Logs.Applied;

/// <summary>What a ledger's lines are about.</summary>
public enum AppliedBy
{
    /// <summary>The whole season.</summary>
    Season,

    /// <summary>Each depot.</summary>
    Depot,

    /// <summary>Each spreader.</summary>
    Spreader,

    /// <summary>Each day of the rows' own zone.</summary>
    Day,

    /// <summary>Each storm.</summary>
    Storm,

    /// <summary>Each route.</summary>
    Route,

    /// <summary>Each road segment.</summary>
    Segment,

    /// <summary>Each material.</summary>
    Material,
}

/// <summary>What to compute.</summary>
public sealed record AppliedQuestion
{
    /// <summary>What lines are about.</summary>
    public AppliedBy By { get; init; }

    /// <summary>What lines are about besides <see cref="By"/>: one for each combination, with a name of all of them
    /// (<see cref="AppliedLine.Names"/>). Days are not combined.</summary>
    public IReadOnlyList<AppliedBy> With { get; init; } = [];

    /// <summary>Only this season, such as 2026-27; null for all.</summary>
    public string? Season { get; init; }

    /// <summary>Constants of the spreaders.</summary>
    public required IReadOnlyList<SeasonConstant> Constants { get; init; }

    /// <summary>Storms; null: found from pauses.</summary>
    public IReadOnlyList<Storm>? Storms { get; init; }

    /// <summary>A pause of all spreaders of a depot that ends a storm, hours; without a list of storms.</summary>
    public double StormPauseHours { get; init; } = 12;

    /// <summary>An interval counts as over or under when it differs from its target by more than this share.</summary>
    public double Band { get; init; } = 0.1;

    /// <summary>Coverage probability of intervals.</summary>
    public double Probability { get; init; } = 0.95;
}
