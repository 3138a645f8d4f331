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

/// <summary>A line of the report.</summary>
/// <param name="Name">Route, watershed, depot or what the lines are about.</param>
/// <param name="Mass">Mass spread, kg.</param>
/// <param name="Chloride">Chloride in it, kg.</param>
/// <param name="LaneLength">Length of its lanes, m; null when not known.</param>
internal sealed record SaltLine(string Name, Measured Mass, Measured Chloride, double? LaneLength);

/// <summary>Salt and chloride of a season.</summary>
internal sealed record SaltAnswer(string About, IReadOnlyList<SaltLine> Lines, SaltLine Total, SaltFacts Facts)
{
    internal const string NoWatershed = "no watershed";

    internal static SaltAnswer Of(AppliedAnswer applied, AppliedBy by, IReadOnlyList<RouteLanes>? routes, SaltFacts facts)
    {
        var lines = applied.Lines.Select(line => Line(line.Name.Length > 0 ? line.Name : "(not said)", [line.Mass], null)).ToList();
        var about = by.ToString().ToLowerInvariant();
        double? lanes = null;
        if (routes is not null)
        {
            about = "watershed";
            var known = routes.ToDictionary(route => route.Route, StringComparer.Ordinal);
            lines =
            [
                .. applied.Lines.GroupBy(line => known.GetValueOrDefault(line.Name)?.Watershed ?? NoWatershed, StringComparer.Ordinal)
                    .OrderBy(group => group.Key == NoWatershed).ThenBy(group => group.Key, StringComparer.Ordinal)
                    .Select(group => Line(
                        group.Key, [.. group.Select(line => line.Mass)],
                        // Every lane of the watershed counts, also of routes on which nothing was spread.
                        group.Key == NoWatershed ? null : routes.Where(route => route.Watershed == group.Key).Sum(route => route.LaneLength))),
            ];
            lanes = routes.Sum(route => route.LaneLength);
        }

        return new(about, lines, Line("all", [applied.Total.Mass], lanes), facts);

        SaltLine Line(string name, Measured[] masses, double? length)
        {
            var mass = Measured.Sum(masses);
            return new(name, mass, Chloride.InSalt(mass, SaltKind.SodiumChloride, facts.Moisture, facts.Purity), length);
        }
    }

    /// <summary>What is assumed, in words.</summary>
    internal string Assumed(TextCulture culture) =>
        $"Assumed: sodium chloride of {PercentText.Write(Facts.Purity, culture)} purity with {PercentText.Write(Facts.Moisture, culture)} water, all of it on the road; "
        + "chloride is 60.66 % of the pure, dry salt. ± is half the width of the 95 % interval; a constant is one error for all that was counted with it.";

    internal ReportSheet Report(Show show)
    {
        var metric = show.Units == UnitPreferences.Metric;
        var (mass, rate) = metric ? (Units.Tonne, Units.KilogramPerLaneKilometre) : (Units.ShortTon, Units.PoundPerLaneMile);
        return new(
            "salt", "Salt and chloride of the season", $"By {About}, from the logs. {Assumed(show.Culture)}",
            [
                new(char.ToUpperInvariant(About[0]) + About[1..]), new($"Salt, {mass.Symbol}", true), new($"±, {mass.Symbol}", true), new($"Chloride, {mass.Symbol}", true),
                new($"±, {mass.Symbol}", true), new($"Salt, {rate.Symbol}", true), new($"Chloride, {rate.Symbol}", true),
            ],
            [
                .. Lines.Append(Total).Select(line => (IReadOnlyList<ReportSheetCell>)
                [
                    Excerpt.Of(line.Name, 60), Cell(line.Mass.Value, mass), Cell(Half(line.Mass), mass), Cell(line.Chloride.Value, mass), Cell(Half(line.Chloride), mass),
                    Rate(line.Mass, line.LaneLength), Rate(line.Chloride, line.LaneLength),
                ]),
            ]);

        ReportSheetCell Cell(double si, Unit unit) => new(QuantityText.WriteValue(si, unit, show.Culture, NumberForm.Decimals(1)), unit.FromSi(si));

        ReportSheetCell Rate(Measured of, double? lanes) => lanes is > 0 and var length ? Cell(of.Value / length, rate) : "";
    }

    private static double Half(Measured of) => WelchSatterthwaite.Of(of, 0.95).Expanded;

    internal SeasonPaper Paper()
    {
        var paper = new SeasonPaper(About, "salt_kg", "u_salt_kg", "chloride_kg", "u_chloride_kg", "lane_m", "moisture", "purity");
        foreach (var line in Lines.Append(Total))
        {
            paper.Add(
                line.Name, line.Mass.Value, line.Mass.StandardUncertainty, line.Chloride.Value, line.Chloride.StandardUncertainty, line.LaneLength,
                Facts.Moisture, Facts.Purity);
        }

        return paper;
    }
}
