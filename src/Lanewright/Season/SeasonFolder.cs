using Lanewright.Core.Liquids;
using Lanewright.Core.Season;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Store;

namespace Lanewright.Season;

/// <summary>A constant of the season.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Depot">Depot.</param>
/// <param name="Spreader">Spreader.</param>
/// <param name="From">Valid from.</param>
/// <param name="Relative">1 with its error sources: what it found by what is so.</param>
internal sealed record StatedConstant(string Id, string Depot, string Spreader, DateTimeOffset From, Measured Relative);

/// <summary>A check: weighed by expected, with its error sources.</summary>
internal sealed record StatedCheck(string Name, string Depot, string Spreader, DateTimeOffset At, Measured LogShare);

/// <summary>A survey of a pile.</summary>
internal sealed record StatedPile(string Depot, DateTimeOffset At, Measured Mass);

/// <summary>The tables of a season in a folder (docs/formats/season.md), with the rows that were refused.</summary>
internal sealed class SeasonFolder(string folder, TextCulture culture)
{
    private readonly Dictionary<string, (DateTimeOffset First, DateTimeOffset Last)> tickets = new(StringComparer.Ordinal);

    internal List<RefusedRow> Refused { get; } = [];

    /// <summary>Whether a whole file could not be read.</summary>
    internal bool IsUnreadable => Refused.Any(row => row.IsFile);

    internal List<StatedConstant> Constants() => Read(
        "constants.csv", ["constant", "spreader", "depot", "from", "kg_per_count", "u_rel"], row =>
        {
            var id = row.Needed("constant");
            row.Number("kg_per_count", 1e-12);
            var dof = row.Number("dof", 1e-9, double.PositiveInfinity);
            var relative = With(1, row.Number("u_rel", 0, most: 1), ErrorSource.Normal($"constant:{id}", "calibration constant", dof));
            return new StatedConstant(id, row.Text("depot"), row.Needed("spreader"), row.Moment("from"), Scale(row, relative));
        });

    internal List<StatedCheck> Checks() => Read(
        "verifications.csv", ["verification", "at", "depot", "spreader", "expected_kg", "weighed_kg"], row =>
        {
            var id = row.Needed("verification");
            var (expected, weighed) = (row.Number("expected_kg", 1e-9), row.Number("weighed_kg", 1e-9));
            var share = With(1, row.Number("u_kg", 0, 0) / weighed, ErrorSource.Normal($"verification:{id}:reading", "weighing of the check"));
            share = With(share, row.Number("u_run_rel", 0, 0, 1), ErrorSource.Normal($"verification:{id}:run", "scatter from run to run"));
            return new StatedCheck(
                id, row.Text("depot"), row.Needed("spreader"), row.Moment("at"),
                Scale(row, share).Map(Core.Statistics.Elementary.Log(weighed / expected), 1));
        });

    internal List<LoadTicket> Tickets() => [.. TimedTickets().Select(one => one.Ticket)];

    internal List<TimedTicket> TimedTickets()
    {
        var rows = Read("tickets.csv", ["ticket", "at", "depot", "spreader", "kind", "net_kg"], row => new TimedTicket(row.Moment("at"), Ticket(row)));
        foreach (var (at, ticket) in rows)
        {
            var span = tickets.GetValueOrDefault(ticket.Depot, (First: at, Last: at));
            tickets[ticket.Depot] = (at < span.First ? at : span.First, at > span.Last ? at : span.Last);
        }

        return rows;
    }

    private static LoadTicket Ticket(SeasonRow row)
    {
        var id = row.Needed("ticket");
        var kind = row.Word("kind", ("load", TicketKind.Load), ("return", TicketKind.Return), ("delivery", TicketKind.Delivery));
        var spreader = row.Text("spreader");
        if (kind is not TicketKind.Delivery && spreader.Length == 0) row.Refuse("spreader is empty; a load or a return needs one.");
        var net = row.Number("net_kg", 0);
        var share = With(1, net > 0 ? row.Number("u_kg", 0, 0) / net : 0, ErrorSource.Normal($"ticket:{id}", "rounding and tare of tickets"));
        return new LoadTicket(row.Needed("depot"), kind is TicketKind.Delivery ? "" : spreader, kind, net * Scale(row, share));
    }

    /// <summary>The first and the last survey of each depot. A pile is left out, with its reason, when tickets that were read before
    /// stand outside of its surveys: they would be missing in its balance.</summary>
    internal List<PilePair> Piles()
    {
        var pairs = new List<PilePair>();
        foreach (var depot in Read("piles.csv", ["survey", "at", "depot", "shape", "width_m", "density_kg_m3"], Pile).GroupBy(pile => pile.Depot, StringComparer.Ordinal))
        {
            var surveys = depot.GroupBy(pile => pile.At).OrderBy(at => at.Key).ToList();
            if (surveys.Count < 2)
                Refused.Add(new("piles.csv", 0, $"{Excerpt.Of(depot.Key)} has one survey; two are needed. Its pile is left out."));
            else if (tickets.TryGetValue(depot.Key, out var span) && (span.First < surveys[0].Key || span.Last > surveys[^1].Key))
                Refused.Add(new("piles.csv", 0, $"{Excerpt.Of(depot.Key)} has tickets before its first or after its last survey; its pile is left out."));
            else
                pairs.Add(new(depot.Key, MassOf(surveys[0]), MassOf(surveys[^1])));
        }

        return pairs;

        static Measured MassOf(IEnumerable<StatedPile> piles) => Measured.Sum([.. piles.Select(pile => pile.Mass)]);
    }

    /// <summary>Masses by spreader as <c>logs applied --by spreader</c> writes them. The file says how uncertain a mass is, not what it
    /// shares: what the spreader's only constant shares is put back; with several constants the whole is the spreader's own.</summary>
    internal List<LoggedMass> Applied(string path, IReadOnlyList<StatedConstant> constants) =>
    [
        .. SeasonRows.Read(path, culture, Refused, ["name", "mass_kg", "u_kg"], row => (
                Name: row.Text("name"), Mass: row.Number("mass_kg", 0), U: row.Number("u_kg", 0)))
            .Where(line => line.Name != "all").Select(line => Logged(line.Name, line.Mass, line.U, constants)).OfType<LoggedMass>(),
    ];

    /// <summary>Masses by spreader from logs that were taken in, with everything they share.</summary>
    /// <param name="data">The data folder.</param>
    /// <param name="constants">The constants.</param>
    /// <param name="depots">Depots of the spreaders; one that is not named is left out.</param>
    /// <exception cref="LogException">There are no logs, or they cannot be read.</exception>
    internal static List<LoggedMass> FromLogs(string data, IReadOnlyList<SeasonConstant> constants, IReadOnlyDictionary<string, string> depots) =>
        FromLogs(AppliedLedger.Compute(new LogFolder(data), new() { By = AppliedBy.Spreader, Constants = constants }), depots);

    /// <summary>The same from a ledger by spreader.</summary>
    internal static List<LoggedMass> FromLogs(AppliedAnswer answer, IReadOnlyDictionary<string, string> depots) =>
        [.. answer.Lines.Where(line => depots.ContainsKey(line.Name)).Select(line => new LoggedMass(depots[line.Name], line.Name, line.Mass))];

    /// <summary>The constants of the folder as the logs are computed with.</summary>
    /// <exception cref="LogException">They cannot be read.</exception>
    internal IReadOnlyList<SeasonConstant> LogConstants() => ConstantTable.Read(Path.Combine(folder, "constants.csv"));

    /// <summary>The storms of the folder; null without a list of them.</summary>
    /// <exception cref="LogException">They cannot be read.</exception>
    internal IReadOnlyList<Storm>? Storms() => Path.Combine(folder, "storms.csv") is var file && File.Exists(file) ? Storm.Read(file) : null;

    /// <summary>The depot of each spreader, as the constants say.</summary>
    internal static Dictionary<string, string> Depots(IEnumerable<StatedConstant> constants) =>
        constants.GroupBy(constant => constant.Spreader, StringComparer.Ordinal).ToDictionary(own => own.Key, own => own.First().Depot, StringComparer.Ordinal);

    /// <summary>The depot of each spreader, as its tickets say.</summary>
    internal static Dictionary<string, string> Depots(IEnumerable<LoadTicket> tickets) =>
        tickets.Where(ticket => ticket.Spreader.Length > 0).GroupBy(ticket => ticket.Spreader, StringComparer.Ordinal)
            .ToDictionary(own => own.Key, own => own.First().Depot, StringComparer.Ordinal);

    /// <summary>A table of routes with their watersheds and lanes: columns route, watershed, lane_m.</summary>
    internal static List<RouteLanes> Routes(string path, TextCulture culture, List<RefusedRow> refused)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return SeasonRows.Read(path, culture, refused, ["route", "watershed", "lane_m"], row =>
        {
            var route = row.Needed("route");
            if (!seen.Add(route)) row.Refuse($"route: '{Excerpt.Of(route)}' is there twice.");
            return new RouteLanes(route, row.Needed("watershed"), row.Number("lane_m", 0));
        });
    }

    /// <summary>A table of materials with the salt in them: columns material, salt, salt_share, u_salt_share.</summary>
    internal static Dictionary<string, MaterialSalt> Materials(string path, TextCulture culture, List<RefusedRow> refused)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return SeasonRows.Read(path, culture, refused, ["material", "salt", "salt_share"], row =>
        {
            var name = row.Needed("material");
            if (!seen.Add(name)) row.Refuse($"material: '{Excerpt.Of(name)}' is there twice.");
            var salt = row.Word(
                "salt", ("sodium chloride", SaltKind.SodiumChloride), ("calcium chloride", SaltKind.CalciumChloride), ("magnesium chloride", SaltKind.MagnesiumChloride),
                ("potassium acetate", SaltKind.PotassiumAcetate), ("none", SaltKind.None));
            return new MaterialSalt(
                name, salt, With(row.Number("salt_share", 0, most: 1), row.Number("u_salt_share", 0, 0, 1), ErrorSource.Normal($"material:{name}:salt", $"salt in {name}")));
        }).ToDictionary(one => one.Name, StringComparer.Ordinal);
    }

    private LoggedMass? Logged(string spreader, double mass, double u, IReadOnlyList<StatedConstant> constants)
    {
        var own = constants.Where(constant => constant.Spreader == spreader).ToList();
        if (own.Count == 0)
        {
            Refused.Add(new("constants.csv", 0, $"no constant of '{Excerpt.Of(spreader)}', which has logged mass; it is left out."));
            return null;
        }

        var known = own.Count == 1 ? mass * own[0].Relative : (Measured)mass;
        var rest = (u * u) - known.Variance;
        return new(own[0].Depot, spreader, With(known, rest > 0 ? Math.Sqrt(rest) : 0, ErrorSource.Normal($"applied:{spreader}", "counts of the log")));
    }

    private static StatedPile Pile(SeasonRow row)
    {
        var id = row.Needed("survey");
        var shape = row.Word("shape", ("cone", PileShape.Cone), ("windrow", PileShape.Windrow));
        var width = Length("width_m", "u_width_m");
        var length = shape is PileShape.Windrow ? Length("length_m", "u_length_m") : 0;
        // A little less comes of measuring; the volume's formula goes on smoothly there.
        if (shape is PileShape.Windrow && length.Value < 0.8 * width.Value) row.Refuse("length_m is far less than width_m; the whole length of the foot was expected.");
        Measured height;
        if (row.Text("height_m").Length > 0)
        {
            height = Length("height_m", "u_height_m");
        }
        else
        {
            const double degree = Math.PI / 180;
            var angle = row.Number("angle_deg", 1, most: 80) * degree;
            height = PileSurvey.HeightOf(width, With(angle, row.Number("u_angle_deg", 0, 0) * degree, ErrorSource.Normal($"survey:{id}:angle", "angle of the pile")));
        }

        var density = row.Number("density_kg_m3", 1);
        var from = row.Text("density_id") is { Length: > 0 } shared ? shared : $"of survey {id}";
        return new(row.Needed("depot"), row.Moment("at"), new PileSurvey(shape, width, length, height).Mass(
            With(density, density * row.Number("u_density_rel", 0, 0, 1), ErrorSource.Normal($"density:{from}", "density of the pile"))));

        Measured Length(string column, string uncertainty) =>
            With(row.Number(column, 1e-3), row.Number(uncertainty, 0, 0), ErrorSource.Normal($"survey:{id}:{column}", "lengths of the pile"));
    }

    private List<T> Read<T>(string file, IReadOnlyList<string> needed, Func<SeasonRow, T> make) =>
        SeasonRows.Read(Path.Combine(folder, file), culture, Refused, needed, make);

    // The gain of a scale is one error wherever that scale weighed.
    private static Measured Scale(SeasonRow row, Measured share)
    {
        var scale = row.Text("scale");
        var u = row.Number("u_scale_rel", 0, 0, 1);
        return scale.Length == 0 ? share : With(share, u, ErrorSource.Normal($"scale:{scale}:gain", $"scale {scale}: error in proportion to load"));
    }

    private static Measured With(Measured value, double u, ErrorSource source) => u > 0 && double.IsFinite(u) ? value.With(source, u) : value;
}
