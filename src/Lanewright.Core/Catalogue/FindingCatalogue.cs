using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Catalogue;

/// <summary>The findings of one area of the work.</summary>
/// <param name="Title">What the area is called in the list of findings.</param>
/// <param name="Kinds">Its findings, in the order in which they are listed.</param>
public sealed record FindingArea(string Title, IReadOnlyList<FindingKind> Kinds);

/// <summary>
/// Every finding that the program can make. Each area keeps its kinds in a class of its own (<see cref="ReadFindings"/>
/// is one) with a list <c>All</c>, and is named here.
/// </summary>
public static class FindingCatalogue
{
    /// <summary>The areas, in the order of the work.</summary>
    public static IReadOnlyList<FindingArea> Areas { get; } =
    [
        new("Reading a sheet", ReadFindings.All),
        new("The sheet as a whole", SheetFindings.All),
        new("Scale and weighing", WeighingFindings.All),
        new("Runs and answer", DropTestFindings.All),
        new("Planning", PlanFindings.All),
        new("Other calibrations", [.. CalibrationFindings.All, .. FilmFindings.All]),
        new("Liquids", LiquidFindings.All),
        new("Delivery and pattern", DeliveryFindings.All),
        new("The register", RegisterFindings.All),
    ];

    /// <summary>Every kind of finding.</summary>
    public static IReadOnlyList<FindingKind> All { get; } = [.. Areas.SelectMany(area => area.Kinds)];

    /// <summary>The kind with a code; null when there is none.</summary>
    public static FindingKind? Find(string? code) => All.FirstOrDefault(kind => kind.Code == code);
}
