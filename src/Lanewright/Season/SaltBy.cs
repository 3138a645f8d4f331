using System.Collections.Immutable;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Logs.Applied;

namespace Lanewright.Season;

/// <summary>What lines of the salt report are about.</summary>
internal enum SaltBy
{
    /// <summary>Each watershed, as the table of routes says.</summary>
    Watershed,

    /// <summary>Each route.</summary>
    Route,

    /// <summary>Each road by its name; needs kept roads.</summary>
    Road,

    /// <summary>Each piece of road; needs kept roads.</summary>
    Segment,

    /// <summary>Each storm: an event.</summary>
    Storm,

    /// <summary>Each depot.</summary>
    Depot,
}

/// <summary>What a salt report is to be made of.</summary>
/// <param name="By">What its lines are about.</param>
/// <param name="Facts">What is assumed of materials that <paramref name="Materials"/> does not name.</param>
/// <param name="Materials">Materials by name.</param>
/// <param name="Routes">The table of routes; null without one.</param>
/// <param name="Roads">The kept roads; null without any.</param>
internal sealed record SaltQuestion(
    SaltBy By, SaltFacts Facts, IReadOnlyDictionary<string, MaterialSalt> Materials, IReadOnlyList<RouteLanes>? Routes, RoadNetwork? Roads)
{
    internal static readonly ImmutableArray<string> Words = [.. Enum.GetNames<SaltBy>().Select(name => name.ToLowerInvariant())];

    /// <summary>Why nothing can be put on roads.</summary>
    internal static Phrase LacksRoads => "No roads are kept yet; 'lanewright logs match --roads' takes some and finds the road of every row.";

    /// <summary>Why it cannot be answered; null when it can.</summary>
    internal Phrase? Lacks => this switch
    {
        { By: SaltBy.Watershed, Routes: null } => "Lines by watershed need a table of routes, routes.csv, that names the watershed of each.",
        { By: SaltBy.Road or SaltBy.Segment, Roads: null } => LacksRoads,
        _ => null,
    };

    /// <summary>Reads what lines are to be about.</summary>
    internal static bool TryReadBy(string? text, out SaltBy by)
    {
        var place = text is null ? -1 : Words.IndexOf(text.ToLowerInvariant());
        by = (SaltBy)Math.Max(place, 0);
        return place >= 0;
    }

    /// <summary>What the ledger is asked: lines by what they are about and by material, then what their lanes or their place need.</summary>
    /// <param name="ledger">Season, constants, storms.</param>
    /// <param name="onMap">Whether the report is drawn on roads.</param>
    internal AppliedQuestion Ledger(AppliedQuestion ledger, bool onMap)
    {
        var by = By switch
        {
            SaltBy.Storm => AppliedBy.Storm,
            SaltBy.Depot => AppliedBy.Depot,
            SaltBy.Road or SaltBy.Segment => AppliedBy.Segment,
            _ => AppliedBy.Route,
        };
        var with = new List<AppliedBy> { AppliedBy.Material };
        if (Routes is not null && by is AppliedBy.Storm or AppliedBy.Depot) with.Add(AppliedBy.Route);
        if (onMap && by is not AppliedBy.Segment) with.Add(AppliedBy.Segment);
        return ledger with { By = by, With = with };
    }
}
