namespace Lanewright.Core.Rates;

/// <summary>A row of a published table of target rates.</summary>
/// <param name="Condition">Pavement and weather, as the source says.</param>
/// <param name="Rate">The rate as printed, with its unit.</param>
/// <param name="Note">What stands beside it; empty for nothing.</param>
public sealed record PublishedRate(string Condition, string Rate, string Note);

/// <summary>A published table of target rates, with its source. It is shown, never applied: the yard sets its own rates.</summary>
/// <param name="Word">Its word in a sheet.</param>
/// <param name="Name">What it is.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Rows">Its rows.</param>
public sealed record PublishedRates(string Word, string Name, string Source, IReadOnlyList<PublishedRate> Rows)
{
    /// <summary>Every table whose figures were read in its source.</summary>
    public static IReadOnlyList<PublishedRates> All { get; } =
    [
        new(
            "maine", "MaineDOT, rock salt pre-wetted at 10 gal/ton, on wet, slush or light snow cover",
            "Maine Department of Transportation, ITS report, appendix A (ntlrepository.blob.core.windows.net, 30000/30200/30234)",
            [
                new("above 32 °F, steady or rising", "0-150 lb/lane-mile", "again: 0-150"),
                new("28-32 °F", "150-250 lb/lane-mile", "again: 100-200"),
                new("20-28 °F", "250-350 lb/lane-mile", "again: 200-300"),
                new("15-20 °F", "350-450 lb/lane-mile", "again: 300-400"),
                new("below 15 °F, steady or falling", "not recommended", "plow"),
            ]),
        new(
            "scotland", "Transport Scotland, salt treatment matrix of winter 2009/10, dry salt",
            "Transport Scotland, report on winter 2009/10, appendix D (transport.gov.scot, j13001-15)",
            [
                new("frost, road at -2 °C or above", "8 g/m²", ""),
                new("frost, road -2 to -5 °C, dry or damp", "10 g/m²", "pre-wet 70:30: 9"),
                new("frost, road -2 to -5 °C, wet", "16 g/m²", "pre-wet 70:30: 15"),
                new("frost, road -5 to -10 °C, dry or damp", "18 g/m²", ""),
                new("frost, road -5 to -10 °C, wet", "2 x 15 g/m²", ""),
                new("light snow below 10 mm", "20 g/m²", "pre-wet 70:30: 18"),
                new("medium or heavy snow, or freezing rain forecast", "2 x 20 g/m²", "dry preferred"),
            ]),
    ];

    /// <summary>The table of a word; null when there is none.</summary>
    public static PublishedRates? Find(string? word) => All.FirstOrDefault(table => table.Word == word);
}
