using Lanewright.Core.Charts;
using Lanewright.Core.Liquids;
using Lanewright.Core.Quantities;
using Lanewright.Core.Season;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Documents;
using Lanewright.Logs.Applied;
using Lanewright.Office;
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
internal sealed record SaltFacts(double Moisture, double Purity)
{
    /// <summary>Least and most moisture.</summary>
    internal static readonly (double Least, double Most) Moistures = (0, 0.5);

    /// <summary>Least and most purity.</summary>
    internal static readonly (double Least, double Most) Purities = (0.5, 1);

    /// <summary>A share as a person wrote it; null when it is none within the limits.</summary>
    internal static double? Read(string? text, TextCulture culture, (double Least, double Most) limits) =>
        QuantityText.Read<Fraction>(text, culture, Units.Percent).TryGet(out var share) && share.Si >= limits.Least && share.Si <= limits.Most ? share.Si : null;
}

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
internal sealed record SaltLine(string Name, Measured Mass, Measured Salt, Measured Chloride, double? LaneLength)
{
    /// <summary>Pieces of road that its rows lie on, where the ledger was asked for them.</summary>
    internal IReadOnlyList<string> Segments { get; init; } = [];
}

/// <summary>Salt and chloride of a season.</summary>
/// <param name="By">What its lines are about.</param>
/// <param name="Lines">In order of their names; what nothing is said of comes last.</param>
/// <param name="Total">All together, with what the lines share.</param>
/// <param name="Facts">What is assumed.</param>
internal sealed record SaltAnswer(SaltBy By, IReadOnlyList<SaltLine> Lines, SaltLine Total, SaltFacts Facts)
{
    internal const string NoWatershed = "no watershed";
    private const string NotSaid = "(not said)";

    /// <summary>The report.</summary>
    /// <param name="applied">The ledger that <see cref="SaltQuestion.Ledger"/> asks for.</param>
    /// <param name="question">What was asked.</param>
    internal static SaltAnswer Of(AppliedAnswer applied, SaltQuestion question)
    {
        var (by, materials, facts) = (question.By, question.Materials, question.Facts);
        var routes = (question.Routes ?? []).ToDictionary(route => route.Route, StringComparer.Ordinal);
        var pieces = by is SaltBy.Road or SaltBy.Segment
            ? question.Roads!.Segments.ToDictionary(segment => segment.Piece.Id, StringComparer.Ordinal) : [];
        var roads = pieces.Values.ToLookup(NameOf, StringComparer.Ordinal);
        var lines = applied.Lines.GroupBy(line => GroupOf(line.Names[0]), StringComparer.Ordinal)
            .OrderBy(group => group.Key is NoWatershed or NotSaid).ThenBy(group => group.Key, NaturalOrder.Instance)
            .Select(group => Line(group.Key, [.. group], LanesOf(group.Key, [.. group]))).ToList();
        return new(by, lines, Line("all", applied.Lines, TotalLanes()), facts)
        {
            Materials = [.. applied.Lines.Select(line => line.Names[1]).Distinct().Select(materials.GetValueOrDefault).OfType<MaterialSalt>()],
        };

        string GroupOf(string name) => by switch
        {
            SaltBy.Watershed => routes.GetValueOrDefault(name)?.Watershed ?? NoWatershed,
            SaltBy.Road when pieces.TryGetValue(name, out var piece) => NameOf(piece),
            _ => name.Length > 0 ? name : NotSaid,
        };

        // Every lane of a watershed or of a road counts, also those on which nothing was spread; of storms and depots the routes that they worked.
        double? LanesOf(string name, IReadOnlyList<AppliedLine> group) => by switch
        {
            SaltBy.Watershed => name == NoWatershed ? null : routes.Values.Where(route => route.Watershed == name).Sum(route => route.LaneLength),
            SaltBy.Route => routes.GetValueOrDefault(name)?.LaneLength,
            SaltBy.Road => roads.Contains(name) ? Known(roads[name].Select(LanesOfPiece)) : null,
            SaltBy.Segment => pieces.TryGetValue(name, out var piece) ? LanesOfPiece(piece) : null,
            _ => routes.Count == 0 ? null : Known(group.Select(line => line.Names[2]).Distinct().Select(route => routes.GetValueOrDefault(route)?.LaneLength)),
        };

        double? TotalLanes() => by is SaltBy.Road or SaltBy.Segment ? Known(pieces.Values.Select(LanesOfPiece))
            : routes.Count > 0 ? routes.Values.Sum(route => route.LaneLength) : null;

        static string NameOf(RoadSegment piece) => piece.Piece.Name.Length > 0 ? piece.Piece.Name : piece.Piece.Id;

        static double? LanesOfPiece(RoadSegment piece) => piece.Length * piece.Piece.Lanes;

        static double? Known(IEnumerable<double?> lengths)
        {
            var sum = 0.0;
            foreach (var length in lengths)
            {
                if (length is not { } some) return null;
                sum += some;
            }

            return sum;
        }

        SaltLine Line(string name, IReadOnlyList<AppliedLine> parts, double? length)
        {
            var salts = parts.Select(part => materials.GetValueOrDefault(part.Names[1]) is { } material
                ? (Salt: part.Mass * material.Share, Kind: material.Salt)
                : (Salt: part.Mass * ((1 - facts.Moisture) * facts.Purity), Kind: SaltKind.SodiumChloride)).ToList();
            return new(
                name, Measured.Sum([.. parts.Select(part => part.Mass)]), Measured.Sum([.. salts.Select(one => one.Salt)]),
                Measured.Sum([.. salts.Select(one => Chloride.InSalt(one.Salt, one.Kind, 0, 1))]), length)
            {
                // The segment stands first or, where the ledger was asked for it besides, last.
                Segments = [.. parts.Select(part => part.Names[by is SaltBy.Road or SaltBy.Segment ? 0 : ^1]).Distinct()],
            };
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
        var (mass, rate) = UnitsOf(show);
        var lines = Lines.Append(Total).ToList();
        return new(
            "salt", show.Say("Salt and chloride of the season"), show.Say("From the logs.") + " " + Assumed(show),
            [
                new(Capital(show.Say(Word))), new(show.Say($"Spread, {mass.Symbol}"), true), new($"±, {mass.Symbol}", true), new(show.Say($"Salt, {mass.Symbol}"), true),
                new(show.Say($"Chloride, {mass.Symbol}"), true), new($"±, {mass.Symbol}", true), new(show.Say($"Salt, {rate.Symbol}"), true), new(show.Say($"Chloride, {rate.Symbol}"), true),
            ],
            [
                .. lines.Select(line => (IReadOnlyList<ReportSheetCell>)
                [
                    Name(line, show), Cell(line.Mass.Value, mass), Cell(Half(line.Mass), mass), Cell(line.Salt.Value, mass), Cell(line.Chloride.Value, mass), Cell(Half(line.Chloride), mass),
                    Rate(line.Salt, line.LaneLength), Rate(line.Chloride, line.LaneLength),
                ]),
            ])
        {
            Culture = show.Culture, Picture = Lines.Count == 0 ? "" : Picture(show),
        };

        ReportSheetCell Cell(double si, Unit unit) => new(QuantityText.WriteValue(si, unit, show.Culture, NumberForm.Decimals(1)), unit.FromSi(si));

        ReportSheetCell Rate(Measured of, double? lanes) => lanes is > 0 and var length ? Cell(of.Value / length, rate) : "";
    }

    private string Picture(Show show) => BarPicture.Svg(
        show.Say("Chloride"), [.. Lines.Select(line => new Bar(Name(line, show), line.Chloride.Value, Half(line.Chloride)))], UnitsOf(show).Mass, "salt", show.Culture);

    private static (Unit Mass, Unit Rate) UnitsOf(Show show) =>
        show.Units == UnitPreferences.Metric ? (Units.Tonne, Units.KilogramPerLaneKilometre) : (Units.ShortTon, Units.PoundPerLaneMile);

    private static string Name(SaltLine line, Show show) =>
        Excerpt.Of(line.Name is "all" or NoWatershed or NotSaid ? show.Say(Phrase.FromString(line.Name)) : line.Name, 60);

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    // Its lines are about one of these.
    private Phrase Word => By switch
    {
        SaltBy.Watershed => "watershed",
        SaltBy.Depot => "depot",
        SaltBy.Storm => "storm",
        SaltBy.Segment => "segment",
        SaltBy.Road => "road",
        _ => "route",
    };

    private static double Half(Measured of) => WelchSatterthwaite.Of(of, 0.95).Expanded;

    /// <summary>The lines and their sum, in SI.</summary>
    internal SeasonPaper Paper()
    {
        var paper = EmptyPaper();
        foreach (var line in Lines.Append(Total)) paper.Add(Cells(line));
        return paper;
    }

    /// <summary>The lines without their sum as Parquet, in SI.</summary>
    internal void WriteParquet(string path) => TableFile.WriteParquet(path, EmptyPaper().Columns(), Lines.Select(Cells));

    /// <summary>The lines on the roads that their rows lie on, in SI.</summary>
    internal void WriteGeoJson(Stream to, RoadNetwork roads)
    {
        var pieces = roads.Segments.ToDictionary(segment => segment.Piece.Id, segment => segment.Piece.Points, StringComparer.Ordinal);
        TableFile.WriteGeoJson(to, EmptyPaper().Columns(), Lines.Select(line => (
            (IReadOnlyList<object?>)Cells(line), (IReadOnlyList<IReadOnlyList<GeoPoint>>)[.. line.Segments.Select(pieces.GetValueOrDefault).OfType<IReadOnlyList<GeoPoint>>()])));
    }

    private SeasonPaper EmptyPaper() =>
        new(SaltQuestion.Words[(int)By], "spread_kg", "u_spread_kg", "salt_kg", "u_salt_kg", "chloride_kg", "u_chloride_kg", "lane_m", "moisture", "purity");

    private object?[] Cells(SaltLine line) =>
    [
        line.Name, line.Mass.Value, line.Mass.StandardUncertainty, line.Salt.Value, line.Salt.StandardUncertainty, line.Chloride.Value, line.Chloride.StandardUncertainty,
        line.LaneLength, Facts.Moisture, Facts.Purity,
    ];
}
