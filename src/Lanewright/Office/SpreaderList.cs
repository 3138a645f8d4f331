using Lanewright.Core.Register;
using Lanewright.Storage;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>A spreader of the register with what the office shows beside it.</summary>
/// <param name="Id">Its identity in the register.</param>
/// <param name="Record">The record.</param>
/// <param name="InConflict">Whether other versions of the record stand beside it.</param>
/// <param name="Latest">Its latest adopted drop test; null for none.</param>
/// <param name="Due">Why it is due; null when it is not.</param>
internal sealed record OfficeSpreader(string Id, RegisterSpreader Record, bool InConflict, LatestTest? Latest, DueItem? Due)
{
    internal string Number => Record.Spreader.Id;

    /// <summary>The constant in use; null when none is known, or when there is one for each drive setting.</summary>
    internal TestResultRow? Result => Latest?.Results.Count == 1 ? Latest.Results[0] : null;

    /// <summary>What a search looks in.</summary>
    internal string Search { get; } = string.Join(
        ' ', Record.Spreader.Id, Record.Depot, Record.Body, Record.Spreader.Metering, Record.Material, Record.Note);
}

/// <summary>The register's spreaders at one state of the records.</summary>
/// <param name="Last">Number of the last entry that it knows.</param>
/// <param name="Day">The day for which what is due was worked out.</param>
/// <param name="InUse">Those in use, in order of their numbers.</param>
/// <param name="Retired">Those no longer in use.</param>
/// <param name="Unread">Records that cannot be read as a spreader.</param>
/// <param name="Due">Those due, the dearest to wait for first.</param>
internal sealed record SpreaderState(
    long Last, DateOnly Day, IReadOnlyList<OfficeSpreader> InUse, IReadOnlyList<OfficeSpreader> Retired,
    IReadOnlyList<RegisterItem> Unread, IReadOnlyList<OfficeSpreader> Due)
{
    internal OfficeSpreader? Find(string id) => InUse.FirstOrDefault(one => one.Id == id) ?? Retired.FirstOrDefault(one => one.Id == id);
}

/// <summary>The list of spreaders, as it is shown.</summary>
internal sealed record SpreaderList(
    ListQuery Query, ListPage<OfficeSpreader> Page, int All, int Due, IReadOnlyList<RegisterItem> Unread)
{
    internal static readonly IReadOnlyDictionary<string, Func<OfficeSpreader, IComparable?>> Keys =
        new Dictionary<string, Func<OfficeSpreader, IComparable?>>(StringComparer.Ordinal)
        {
            ["number"] = one => one.Number,
            ["depot"] = one => one.Record.Depot,
            ["body"] = one => one.Record.Body,
            ["material"] = one => one.Record.Material,
            ["known"] = one => one.Result?.RelativeExpanded,
            ["calibrated"] = one => one.Latest?.Date,
            ["due"] = one => one.Due is null ? null : OfficeText.Because(one.Due),
            ["error"] = one => one.Due?.Share,
            ["mass"] = one => one.Due?.Mass,
            ["cost"] = one => one.Due?.Cost,
        };

    /// <summary>The spreaders that are found, in the order asked for.</summary>
    internal static IReadOnlyList<OfficeSpreader> Found(SpreaderState state, ListQuery query) =>
        [.. (query.Only == "retired" ? state.Retired : state.InUse)
            .Where(one => (query.Only != "due" || one.Due is not null) && query.Finds(one.Search))];

    internal static SpreaderList Of(SpreaderState state, ListQuery query) => new(
        query, query.Take(Found(state, query), Keys), state.InUse.Count, state.Due.Count, state.Unread);
}
