using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Documents;
using Lanewright.Logs.Applied;
using Lanewright.Print;

namespace Lanewright.Season;

/// <summary>What a table of routes says of one.</summary>
/// <param name="Route">Its name, as in the logs.</param>
/// <param name="Watershed">Its watershed.</param>
/// <param name="LaneLength">Length of all its lanes together, m.</param>
internal sealed record RouteLanes(string Route, string Watershed, double LaneLength);

/// <summary>What is assumed of the salt.</summary>
/// <param name="Moisture">Water as a share of the whole.</param>
/// <param name="Purity">Salt as a share of what is not water.</param>
internal sealed record SaltFacts(double Moisture, double Purity);

/// <summary>What a table of materials says of one: brine, sand with salt, another salt.</summary>
/// <param name="Name">Its name, as in the logs.</param>
/// <param name="Salt">The salt in it.</param>
/// <param name="Share">Salt as a share of the mass as it is spread, water included, with its error.</param>
internal sealed record MaterialSalt(string Name, SaltKind Salt, Measured Share);

/// <summary>A line of the report.</summary>
/// <param name="Name">Route, watershed, depot or what the lines are about.</param>
/// <param name="Mass">Mass spread, with water and sand, kg.</param>
/// <param name="Salt">Salt in it, kg.</param>
/// <param name="Chloride">Chloride in it, kg.</param>
/// <param name="LaneLength">Length of its lanes, m; null when not known.</param>
internal sealed record SaltLine(string Name, Measured Mass, Measured Salt, Measured Chloride, double? LaneLength);

/// <summary>Salt and chloride of a season.</summary>
internal sealed record SaltAnswer(string About, IReadOnlyList<SaltLine> Lines, SaltLine Total, SaltFacts Facts)
{
    internal const string NoWatershed = "no watershed";
    private const string NotSaid = "(not said)";

    /// <summary>The report.</summary>
    /// <param name="applied">The ledger by what lines are about and by material (<see cref="AppliedQuestion.With"/>).</param>
    /// <param name="by">What lines are about.</param>
    /// <param name="routes">Routes, to sum up by watershed; null for lines as they are.</param>
    /// <param name="facts">What is assumed of materials that <paramref name="materials"/> does not name.</param>
    /// <param name="materials">Materials by name.</param>
    internal static SaltAnswer Of(
        AppliedAnswer applied, AppliedBy by, IReadOnlyList<RouteLanes>? routes, SaltFacts facts, IReadOnlyDictionary<string, MaterialSalt> materials)
    {
        var about = routes is null ? by.ToString().ToLowerInvariant() : "watershed";
        var known = (routes ?? []).ToDictionary(route => route.Route, StringComparer.Ordinal);
        var lines = applied.Lines.GroupBy(line => GroupOf(line.Names[0]), StringComparer.Ordinal)
            .OrderBy(group => group.Key == NoWatershed).ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => Line(
                group.Key, [.. group],
                // Every lane of the watershed counts, also of routes on which nothing was spread.
                routes is null || group.Key == NoWatershed ? null : routes.Where(route => route.Watershed == group.Key).Sum(route => route.LaneLength))).ToList();
        return new(about, lines, Line("all", applied.Lines, routes?.Sum(route => route.LaneLength)), facts)
        {
            Materials = [.. applied.Lines.Select(line => line.Names[1]).Distinct().Select(materials.GetValueOrDefault).OfType<MaterialSalt>()],
        };

        string GroupOf(string name) =>
            routes is not null ? known.GetValueOrDefault(name)?.Watershed ?? NoWatershed : name.Length > 0 ? name : NotSaid;

        SaltLine Line(string name, IReadOnlyList<AppliedLine> parts, double? length)
        {
            var salts = parts.Select(part => materials.GetValueOrDefault(part.Names[1]) is { } material
                ? (Salt: part.Mass * material.Share, Kind: material.Salt)
                : (Salt: part.Mass * ((1 - facts.Moisture) * facts.Purity), Kind: SaltKind.SodiumChloride)).ToList();
            return new(
                name, Measured.Sum([.. parts.Select(part => part.Mass)]), Measured.Sum([.. salts.Select(one => one.Salt)]),
                Measured.Sum([.. salts.Select(one => Chloride.InSalt(one.Salt, one.Kind, 0, 1))]), length);
        }
    }

    /// <summary>Materials of the table that were spread.</summary>
    internal IReadOnlyList<MaterialSalt> Materials { get; init; } = [];

    /// <summary>What is assumed, in words.</summary>
    internal string Assumed(Show show)
    {
        var (purity, water) = (show.Percent(Facts.Purity), show.Percent(Facts.Moisture));
        var stated = string.Join(", ", Materials.Select(one => $"{Excerpt.Of(one.Name)} {show.Percent(one.Share.Value)}"));
        return (Materials.Count == 0
                ? show.Say($"Assumed: sodium chloride of {purity} purity with {water} water, all of it on the road; chloride is 60.66 % of pure, dry sodium chloride.")
                : show.Say($"Salt by mass as spread: {stated}. Other materials: sodium chloride of {purity} purity with {water} water. All of it on the road; chloride is 60.66 % of pure, dry sodium chloride."))
            + " " + show.Say("± is half the width of the 95 % interval; a constant is one error for all that was counted with it.");
    }

    internal ReportSheet Report(Show show)
    {
        var metric = show.Units == UnitPreferences.Metric;
        var (mass, rate) = metric ? (Units.Tonne, Units.KilogramPerLaneKilometre) : (Units.ShortTon, Units.PoundPerLaneMile);
        return new(
            "salt", show.Say("Salt and chloride of the season"), show.Say("From the logs.") + " " + Assumed(show),
            [
                new(Capital(show.Say(Word(About)))), new(show.Say($"Spread, {mass.Symbol}"), true), new($"±, {mass.Symbol}", true), new(show.Say($"Salt, {mass.Symbol}"), true),
                new(show.Say($"Chloride, {mass.Symbol}"), true), new($"±, {mass.Symbol}", true), new(show.Say($"Salt, {rate.Symbol}"), true), new(show.Say($"Chloride, {rate.Symbol}"), true),
            ],
            [
                .. Lines.Append(Total).Select(line => (IReadOnlyList<ReportSheetCell>)
                [
                    Excerpt.Of(line.Name is "all" or NoWatershed or NotSaid ? show.Say(Phrase.FromString(line.Name)) : line.Name, 60), Cell(line.Mass.Value, mass), Cell(Half(line.Mass), mass), Cell(line.Salt.Value, mass), Cell(line.Chloride.Value, mass), Cell(Half(line.Chloride), mass),
                    Rate(line.Salt, line.LaneLength), Rate(line.Chloride, line.LaneLength),
                ]),
            ]);

        ReportSheetCell Cell(double si, Unit unit) => new(QuantityText.WriteValue(si, unit, show.Culture, NumberForm.Decimals(1)), unit.FromSi(si));

        ReportSheetCell Rate(Measured of, double? lanes) => lanes is > 0 and var length ? Cell(of.Value / length, rate) : "";
    }

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    // Its lines are about one of these.
    private static Phrase Word(string about) => about switch
    {
        "watershed" => "watershed",
        "depot" => "depot",
        "storm" => "storm",
        "segment" => "segment",
        _ => "route",
    };

    private static double Half(Measured of) => WelchSatterthwaite.Of(of, 0.95).Expanded;

    internal SeasonPaper Paper()
    {
        var paper = new SeasonPaper(About, "spread_kg", "u_spread_kg", "salt_kg", "u_salt_kg", "chloride_kg", "u_chloride_kg", "lane_m", "moisture", "purity");
        foreach (var line in Lines.Append(Total))
        {
            paper.Add(
                line.Name, line.Mass.Value, line.Mass.StandardUncertainty, line.Salt.Value, line.Salt.StandardUncertainty, line.Chloride.Value, line.Chloride.StandardUncertainty, line.LaneLength,
                Facts.Moisture, Facts.Purity);
        }

        return paper;
    }
}
