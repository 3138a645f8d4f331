using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Lanewright.Commands;
using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Roads;
using Lanewright.Logs.Store;
using Lanewright.Season;

namespace Lanewright.Storage.Tests;

/// <summary>An invented season with a known truth, taken in; the commands over it.</summary>
public sealed class PracticeSeason : IDisposable
{
    public const string Drifted = "HR-103";
    public const string Lost = "HR-106";

    private readonly string root = Directory.CreateTempSubdirectory("lanewright-season-").FullName;

    public PracticeSeason()
    {
        Folder = Path.Combine(root, "season");
        Data = Path.Combine(root, "data");
        string[] depots = ["Quarry Road", "Alder Flat"];
        SeasonWriter.Write(
            SeasonWorld.Make(new()
            {
                Seed = 7, Interval = 60, Storms = 5, Days = 60,
                Fleet = [.. Enumerable.Range(0, 8).Select(i => new SeasonUnit($"HR-{101 + i}", depots[i % 2], 0.05 + (0.005 * i), 0.005, i == 2 ? 0.06 : 0, 15))],
                LostTicketOf = Lost,
            }),
            Folder);
        SeasonCoverage.Take(Folder, Data, [SeasonLogKind.Running, SeasonLogKind.Interval, SeasonLogKind.Rollover]);
    }

    internal string Folder { get; }

    internal string Data { get; }

    internal string File(string name) => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(root, recursive: true);
}

public sealed class SeasonTests(PracticeSeason season) : IClassFixture<PracticeSeason>
{
    [Fact]
    public void Tickets_against_logs_find_the_truck_that_drifted_and_no_other()
    {
        // Without the checks there are tickets alone.
        using var folder = new ScratchSeason(season, "constants.csv", "storms.csv", "tickets.csv");
        folder.Keep("verifications.csv", lines => lines.Take(1));
        var (code, output, error) = Run(SeasonCommand.Make(), "drift", folder.Place, "--logs", season.Data, "--json");
        Assert.Equal((0, ""), (code, error));
        var spreaders = JsonDocument.Parse(output).RootElement.GetProperty("spreaders").EnumerateArray().ToDictionary(one => one.GetProperty("spreader").GetString()!);
        Assert.Equal(8, spreaders.Count);
        Assert.All(spreaders.Values, one => Assert.Equal((0, 0), (one.GetProperty("checks").GetInt32(), one.GetProperty("sisters").GetInt32())));
        var drifted = spreaders[PracticeSeason.Drifted];
        Assert.True(drifted.GetProperty("tickets").GetInt32() >= 3);
        Assert.Equal("more", drifted.GetProperty("alarm_direction").GetString());
        Assert.InRange(drifted.GetProperty("share_off").GetDouble(), 0.045, 0.075);
        // The lost ticket is a look that says far too little was loaded; the others agree with their calibrations.
        Assert.All(spreaders.Where(one => one.Key is not (PracticeSeason.Drifted or PracticeSeason.Lost)), one => Assert.Equal(JsonValueKind.Null, one.Value.GetProperty("alarm").ValueKind));
    }

    [Fact]
    public void Where_nobody_says_what_the_scale_is_worth_the_sisters_are_asked()
    {
        using var folder = new ScratchSeason(season, "constants.csv", "storms.csv");
        // The scale of the loads is 3 % wrong, and nothing is stated about it.
        folder.Keep("tickets.csv", lines => lines.Select((line, i) =>
        {
            var cells = line.Split(',');
            if (i > 0)
            {
                cells[7] = (1.03 * double.Parse(cells[7], CultureInfo.InvariantCulture)).ToString("0.0", CultureInfo.InvariantCulture);
                cells[9] = "";
            }

            return string.Join(',', cells);
        }));
        var tables = new SeasonFolder(folder.Place, TextCulture.UnitedStates);
        var book = StormBook.Of(new LogFolder(season.Data), tables.TimedTickets(), tables.LogConstants(), tables.Storms());
        Assert.Equal(0, book.Outside);
        var looks = StormLoads.Looks(book.Loads);
        Assert.NotEmpty(looks);
        Assert.All(looks, one => Assert.Equal(DriftLookKind.Sisters, one.Look.Kind));
        foreach (var spreader in looks.GroupBy(one => one.Spreader).Where(own => own.Key is not (PracticeSeason.Drifted or PracticeSeason.Lost)))
            // Beside its own error a look scatters from day to day (docs/method/drift.md).
            Assert.All(spreader, one => Assert.InRange(one.Look.LogShare.Value / Math.Sqrt(one.Look.LogShare.Variance + 0.000025), -3, 3));
        Assert.True(looks.Where(one => one.Spreader == PracticeSeason.Drifted).Max(one => one.Look.LogShare.Value) > 0.04);
    }

    [Fact]
    public void The_balance_by_storm_names_the_storm_of_the_lost_ticket()
    {
        var (code, output, error) = Run(SeasonCommand.Make(), "balance", season.Folder, "--logs", season.Data, "--by", "storm", "--json");
        Assert.Equal((2, ""), (code, error));
        var suspects = JsonDocument.Parse(output).RootElement.GetProperty("lines").EnumerateArray()
            .Where(line => line.GetProperty("suspect").GetString() == "yes").ToList();
        var lost = Assert.Single(suspects.Where(line => line.GetProperty("spreader").GetString() == PracticeSeason.Lost).Select(line => line.GetProperty("depot").GetString()).Distinct());
        Assert.StartsWith("Alder Flat, Storm ", lost, StringComparison.Ordinal);
        Assert.All(suspects, line => Assert.True(line.GetProperty("spreader").GetString() is PracticeSeason.Lost or PracticeSeason.Drifted));
        var refused = Run(SeasonCommand.Make(), "balance", season.Folder, "--by", "storm");
        Assert.Equal(1, refused.Code);
        Assert.Contains("--by: 'storm' was read", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Salt_is_what_was_spread_and_chloride_its_share_by_watershed_storm_and_material()
    {
        using var folder = new ScratchSeason(season);
        folder.Write("routes.csv", "route,watershed,lane_m\nR10,Mill Creek,15000\nR11,Mill Creek,15000\nR12,Bass Lake,20000\nR20,Mill Creek,15000\nR21,Mill Creek,15000\nR22,Bass Lake,20000\n");
        string[] salt = ["salt", "--data", season.Data, "--constants", season.File("constants.csv"), "--json"];
        var (code, output, error) = Run(SeasonCommand.Make(), [.. salt, "--routes", Path.Combine(folder.Place, "routes.csv"), "--moisture", "2 %"]);
        Assert.Equal((0, ""), (code, error));
        var lines = JsonDocument.Parse(output).RootElement.GetProperty("lines").EnumerateArray().ToDictionary(one => one.GetProperty("watershed").GetString()!);
        var all = AppliedLedger.Compute(new LogFolder(season.Data), new() { By = AppliedBy.Season, Constants = ConstantTable.Read(season.File("constants.csv")) }).Total;
        Assert.Equal(["Bass Lake", "Mill Creek", "all"], lines.Keys);
        Assert.Equal(all.Mass.Value, Number("all", "spread_kg"), all.Mass.Value * 1e-9);
        Assert.Equal(all.Mass.StandardUncertainty, Number("all", "u_spread_kg"), all.Mass.StandardUncertainty * 1e-3);
        // Share of chlorine in sodium chloride by IUPAC's atomic masses of 2021: 35.45 / 58.44.
        Assert.Equal(all.Mass.Value * 0.98 * 35.45 / 58.44, Number("all", "chloride_kg"), all.Mass.Value * 1e-6);
        Assert.Equal(Number("all", "spread_kg"), Number("Mill Creek", "spread_kg") + Number("Bass Lake", "spread_kg"), 1e-3);
        Assert.Equal((60_000, 40_000, 100_000), (Number("Mill Creek", "lane_m"), Number("Bass Lake", "lane_m"), Number("all", "lane_m")));

        // The same logs, had they been of brine: 23.3 % by mass, known to 0.5 %.
        folder.Write("materials.csv", "material,salt,salt_share,u_salt_share\nwhite rock salt,sodium chloride,0.233,0.005\n");
        (code, output, error) = Run(SeasonCommand.Make(), [.. salt, "--by", "storm", "--storms", season.File("storms.csv"), "--materials", Path.Combine(folder.Place, "materials.csv")]);
        Assert.Equal((0, ""), (code, error));
        lines = JsonDocument.Parse(output).RootElement.GetProperty("lines").EnumerateArray().ToDictionary(one => one.GetProperty("storm").GetString()!);
        Assert.Equal(["Storm 01", "Storm 02", "Storm 03", "Storm 04", "Storm 05", "all"], lines.Keys);
        Assert.Equal(0.233 * all.Mass.Value, Number("all", "salt_kg"), all.Mass.Value * 1e-9);
        Assert.Equal(0.233 * all.Mass.Value * 35.45 / 58.44, Number("all", "chloride_kg"), all.Mass.Value * 1e-6);
        var u = Math.Sqrt(Math.Pow(all.Mass.StandardUncertainty / all.Mass.Value, 2) + Math.Pow(0.005 / 0.233, 2));
        Assert.Equal(u, Number("all", "u_salt_kg") / Number("all", "salt_kg"), 1e-4);

        folder.Write("materials.csv", "material,salt,salt_share\nbrine,rock,0.2\n");
        (code, _, error) = Run(SeasonCommand.Make(), [.. salt, "--materials", Path.Combine(folder.Place, "materials.csv")]);
        Assert.Equal(2, code);
        Assert.Contains("materials.csv, line 2: salt: 'rock' was read", error, StringComparison.Ordinal);

        double Number(string line, string column) => lines[line].GetProperty(column).GetDouble();
    }

    [Fact]
    public void The_ledger_of_roads_goes_out_as_GeoJSON_and_adds_up_to_what_lies_on_roads()
    {
        using var folder = new ScratchSeason(season);
        Assert.Equal(0, Run(LogsCommand.Make(), "match", "--roads", season.File("roads.geojson"), "--data", season.Data).Code);
        foreach (var by in new[] { "segment", "storm" })
        {
            var (map, table) = (Path.Combine(folder.Place, by + ".geojson"), Path.Combine(folder.Place, by + ".parquet"));
            var (code, _, _) = Run(
                LogsCommand.Make(), "applied", "--data", season.Data, "--constants", season.File("constants.csv"), "--storms", season.File("storms.csv"), "--by", by, "--geojson", map,
                "--parquet", table);
            Assert.Equal(0, code);
            var features = JsonDocument.Parse(File.ReadAllBytes(map)).RootElement.GetProperty("features").EnumerateArray().ToList();
            Assert.All(features, feature => Assert.Equal("LineString", feature.GetProperty("geometry").GetProperty("type").GetString()));
            var answer = AppliedLedger.Compute(new LogFolder(season.Data), new() { By = AppliedBy.Segment, Constants = ConstantTable.Read(season.File("constants.csv")) });
            var wanted = answer.Lines.Where(line => line.Name.Length > 0).Sum(line => line.Mass.Value);
            Assert.Equal(wanted, features.Sum(feature => feature.GetProperty("properties").GetProperty("mass_kg").GetDouble()), wanted * 1e-9);
            Assert.Equal(by == "storm", features.All(feature => feature.GetProperty("properties").TryGetProperty("storm", out _)));
            Assert.True(new FileInfo(table).Length > 200);
        }

        // Salt on the same roads: whatever the lines are about, all of it is there, also what lies on no road.
        var all = AppliedLedger.Compute(new LogFolder(season.Data), new() { By = AppliedBy.Season, Constants = ConstantTable.Read(season.File("constants.csv")) }).Total.Mass.Value;
        foreach (var by in SaltQuestion.Words)
        {
            var (map, table, pdf, xlsx) = (Path.Combine(folder.Place, "salt.geojson"), Path.Combine(folder.Place, "salt.parquet"), Path.Combine(folder.Place, "salt.pdf"), Path.Combine(folder.Place, "salt.xlsx"));
            string[] salt = ["salt", "--data", season.Data, "--constants", season.File("constants.csv"), "--storms", season.File("storms.csv"), "--routes", season.File("routes.csv")];
            var (code, output, error) = Run(
                SeasonCommand.Make(), [.. salt, .. new[] { "--by", by, "--geojson", map, "--parquet", table, "--json" }, .. by == "road" ? ["--pdf", pdf, "--xlsx", xlsx] : Array.Empty<string>()]);
            Assert.Equal((0, ""), (code, error));
            var lines = JsonDocument.Parse(output).RootElement.GetProperty("lines").EnumerateArray().ToDictionary(one => one.GetProperty(by).GetString()!);
            var features = JsonDocument.Parse(File.ReadAllBytes(map)).RootElement.GetProperty("features").EnumerateArray().ToList();
            Assert.Equal(lines.Keys.Where(name => name != "all"), features.Select(feature => feature.GetProperty("properties").GetProperty(by).GetString()));
            Assert.Equal(all, features.Sum(feature => feature.GetProperty("properties").GetProperty("salt_kg").GetDouble()), all * 1e-9);
            Assert.True(features.Count(feature => feature.GetProperty("geometry").ValueKind == JsonValueKind.Object) >= 2);
            // Two lanes on every road; what worked nowhere near a known road has no rate.
            Assert.True(lines["all"].GetProperty("lane_m").GetDouble() > 100_000);
            Assert.Equal((all, features.Count), Rows(table));
            if (by != "road") continue;
            Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(pdf)[..4]);
            Assert.Equal("PK"u8.ToArray(), File.ReadAllBytes(xlsx)[..2]);
        }

        (double, int) Rows(string table)
        {
            using var engine = Engine.OpenForReading();
            var (sum, count) = (0.0, 0);
            engine.Ask($"SELECT salt_kg, lane_m FROM read_parquet({Engine.Text(table)})", row => (sum, count) = (sum + row.GetDouble(0), count + 1));
            return (Math.Round(sum / all, 9) * all, count);
        }
    }

    [Theory]
    [InlineData(nameof(SaltBy.Road))]
    [InlineData(nameof(SaltBy.Segment))]
    public void Salt_that_lies_on_no_road_has_no_length_of_lanes_and_a_road_that_of_all_its_pieces(string by)
    {
        AppliedLine Line(string segment) => new(
            segment + AppliedLine.Between + "salt", Measured.Of(1000, 10, ErrorSource.Normal("a", "a")), 20, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1);
        RoadPiece Piece(string id, double north) => new(id, "Road 1", id, id + " end", [new(north, 0), new(north + 0.01, 0)], IsTwoWay: true, Lanes: 2);
        var roads = new RoadNetwork([Piece("a", 0), Piece("b", 0.01)]);

        var answer = SaltAnswer.Of(
            new([Line("a"), Line("")], Line("")), new(Enum.Parse<SaltBy>(by), new(0, 1), new Dictionary<string, MaterialSalt>(), null, roads));

        Assert.Equal([by == nameof(SaltBy.Road) ? "Road 1" : "a", "(not said)"], answer.Lines.Select(line => line.Name));
        // A hundredth of a degree of a sphere with the earth's mean radius (IUGG: 6 371 008.8 m).
        Assert.Equal((by == nameof(SaltBy.Road) ? 4 : 2) * 0.01 * Math.PI / 180 * 6_371_008.8, answer.Lines[0].LaneLength!.Value, 1e-3);
        Assert.Null(answer.Lines[1].LaneLength);
    }

    private static (int Code, string Output, string Error) Run(Command command, params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        return (command.Parse(arguments).Invoke(new() { Output = output, Error = error }), output.ToString(), error.ToString());
    }

    /// <summary>A folder with some of the season's tables, as they are or changed.</summary>
    private sealed class ScratchSeason : IDisposable
    {
        private readonly PracticeSeason season;

        internal ScratchSeason(PracticeSeason season, params string[] files)
        {
            this.season = season;
            foreach (var file in files) Keep(file, lines => lines);
        }

        internal string Place { get; } = Directory.CreateTempSubdirectory("lanewright-scratch-").FullName;

        internal void Keep(string file, Func<IEnumerable<string>, IEnumerable<string>> change) =>
            File.WriteAllLines(Path.Combine(Place, file), change(File.ReadAllLines(season.File(file))));

        internal void Write(string file, string text) => File.WriteAllText(Path.Combine(Place, file), text);

        public void Dispose() => Directory.Delete(Place, recursive: true);
    }
}

/// <summary>Constants that the records say were valid, over the demo world; all invented.</summary>
public sealed class RecordConstantTests(DemoServer server) : IClassFixture<DemoServer>
{
    [Fact]
    public async Task Each_adopted_test_holds_from_its_decision_until_the_next_with_the_value_it_found()
    {
        var stop = TestContext.Current.CancellationToken;
        var constants = await RecordConstants.OfAsync(server.Store, stop);
        Assert.True(constants.Count > 60);
        ConstantTable.Check(constants);
        var latest = (await server.Store.LatestAdoptedAsync(stop)).Where(one => constants.Any(constant => constant.Id.EndsWith(one.Id, StringComparison.Ordinal))).ToList();
        Assert.True(latest.Count > 20);
        foreach (var test in latest)
        {
            var own = Assert.Single(constants, one => one.Id.EndsWith(test.Id, StringComparison.Ordinal));
            Assert.Equal((test.DecidedAt, null), (own.From, own.To));
            Assert.Equal(1 / test.Results[0].Value, own.MassPerCount, own.MassPerCount * 1e-12);
            Assert.Contains(own.Relative, part => part.Source.Id.StartsWith("scale:", StringComparison.Ordinal));
            Assert.All(own.Relative, part => Assert.True(part.Source.Id.StartsWith("scale:", StringComparison.Ordinal) || part.Source.Id.StartsWith(test.Id + ":", StringComparison.Ordinal)));
        }

        // No test's own error is another's; those on one scale share its gain.
        var sources = constants.SelectMany(one => one.Relative.Select(part => part.Source.Id).Distinct()).GroupBy(id => id, StringComparer.Ordinal).ToList();
        Assert.All(sources.Where(id => !id.Key.StartsWith("scale:", StringComparison.Ordinal)), id => Assert.Single(id));
        Assert.Contains(sources, id => id.Key.StartsWith("scale:", StringComparison.Ordinal) && id.Count() > 5);
    }
}
