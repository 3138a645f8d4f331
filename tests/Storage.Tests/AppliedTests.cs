using Lanewright.Core.Practice;
using Lanewright.Core.Season;
using Lanewright.Logs;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Practice;
using Lanewright.Logs.Store;

namespace Lanewright.Storage.Tests;

public sealed class AppliedTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("lanewright-applied-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void A_season_in_any_grouping_adds_up_to_the_same_mass_and_holds_the_truth()
    {
        var season = Path.Combine(root, "season");
        var rows = SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 12, Storms = 3, Interval = 60, Seed = 4, Drifting = 0 }), season);
        var folder = SeasonCoverage.Take(season, Path.Combine(root, "data"));
        var constants = ConstantTable.Read(Path.Combine(season, "constants.csv"));
        var storms = Storm.Read(Path.Combine(season, "storms.csv"));
        var truth = SeasonTable.Read(Path.Combine(season, "truth.csv"), "logged_kg");
        var wanted = Enumerable.Range(0, truth.Count).Sum(row => truth.Number(row, "logged_kg")!.Value);
        AppliedLine? first = null;
        foreach (var by in Enum.GetValues<AppliedBy>())
        {
            var answer = AppliedLedger.Compute(folder, new() { By = by, Constants = constants, Storms = storms });
            first ??= answer.Total;
            Assert.Equal(first.Mass.Value, answer.Total.Mass.Value, first.Mass.Value * 1e-12);
            Assert.Equal(first.Mass.StandardUncertainty, answer.Total.Mass.StandardUncertainty, first.Mass.StandardUncertainty * 1e-9);
            Assert.Equal(first.Rows, answer.Total.Rows);
            Assert.Equal(answer.Total.Mass.Value, answer.Lines.Sum(line => line.Mass.Value), answer.Total.Mass.Value * 1e-12);
            Assert.Equal(
                by switch { AppliedBy.Spreader => 12, AppliedBy.Depot => 4, AppliedBy.Route => 12, AppliedBy.Storm => 3, AppliedBy.Day => answer.Lines.Count, _ => 1 }, answer.Lines.Count);
        }

        Assert.True(rows > first!.Rows && first.Rows > 5000);
        Assert.InRange(wanted, first.Mass.Value - (1.5 * first.Expanded), first.Mass.Value + (1.5 * first.Expanded));
        Assert.Equal(0, first.CountsWithoutConstant);
        // Found from pauses of 12 hours instead of a list, each depot for itself.
        Assert.Equal(12, AppliedLedger.Compute(folder, new() { By = AppliedBy.Storm, Constants = constants }).Lines.Count);
    }

    [Fact]
    public void Segments_that_a_map_found_stand_beside_the_rows()
    {
        var season = Path.Combine(root, "season [1]*");
        SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 2, Storms = 1, Interval = 60, Seed = 4 }), season);
        var folder = SeasonCoverage.Take(season, Path.Combine(root, "data [2]?"));
        var constants = ConstantTable.Read(Path.Combine(season, "constants.csv"));
        var spreader = MatchedSegments.Spreaders(folder.Files())[0];
        Assert.Equal(new LoggedSpreader("2026-27", "Alder Flat", "HR-102"), spreader);
        var track = MatchedSegments.Track(folder.Files(), spreader);
        Assert.True(track.Count > 100 && track.All(point => Math.Abs(point.Latitude - 45) < 1));
        MatchedSegments.Write(folder, spreader, [.. track.Select(point => new SegmentMatch(point.Moment, "old"))]);
        MatchedSegments.Write(folder, spreader, [.. track.Take(50).Select(point => new SegmentMatch(point.Moment, "way 1:0"))]);
        var answer = AppliedLedger.Compute(folder, new() { By = AppliedBy.Segment, Constants = constants });
        Assert.Equal(["", "way 1:0"], answer.Lines.Select(line => line.Name));
        Assert.Equal(50, answer.Lines[1].Rows);
        Assert.Equal(answer.Total.Rows, AppliedLedger.Compute(folder, new() { By = AppliedBy.Season, Constants = constants }).Total.Rows);
    }

    [Fact]
    public void One_constant_for_a_season_does_not_average_out_and_counts_without_one_are_said()
    {
        var folder = Rows("SELECT i, 'HR-' || (101 + i % 2), 1000.0, 10.0 FROM range(200) t(i)");
        var from = new DateTimeOffset(2026, 11, 3, 0, 0, 0, TimeSpan.Zero);
        var constants = new[]
        {
            SeasonConstant.Stated("a", "HR-101", from, null, 0.05, 0.02, double.PositiveInfinity, "floor scale", 0.01),
            SeasonConstant.Stated("b", "HR-102", from, from.AddSeconds(1001), 0.05, 0.02, double.PositiveInfinity, "floor scale", 0.01),
        };
        using var engine = Engine.Open(root);
        var answer = AppliedLedger.Compute(engine, folder, new() { By = AppliedBy.Spreader, Constants = constants });
        // By hand, JCGM 100:2008 5.2.2: 100 rows of 1000 counts of 0.05 kg are 5000 kg; their own 2 % and the scale's 1 %.
        var counting = Math.Sqrt(100 / 6.0) * 0.05;
        Assert.Equal(5000, answer.Lines[0].Mass.Value, 1e-9);
        Assert.Equal(Math.Sqrt((100 * 100) + (50 * 50) + (counting * counting)), answer.Lines[0].Mass.StandardUncertainty, 1e-9);
        // HR-102 has rows at 10, 30, ... 1990 s; those up to 990 s have a constant.
        Assert.Equal(2500, answer.Lines[1].Mass.Value, 1e-9);
        Assert.Equal(50_000, answer.Lines[1].CountsWithoutConstant, 1e-9);
        // Together: own parts apart, the scale's part in common.
        var all = Math.Sqrt((100 * 100) + (50 * 50) + (75 * 75) + (150 / 6.0 * 0.05 * 0.05));
        Assert.Equal(all, answer.Total.Mass.StandardUncertainty, 1e-9);
        Assert.Equal(1.959963984540054 * all, answer.Total.Expanded, 1e-6);
    }

    [Fact]
    public void Time_over_and_under_is_that_of_intervals_outside_the_band()
    {
        // 10 m at 1 kg/m wanted: 10 kg. Given 8, 9.5, 10.5, 13 kg in turn, 10 s each; a gap counts for none.
        var folder = Rows("SELECT i, 'HR-101', [160.0, 190.0, 210.0, 260.0][1 + i % 4], 10.0 FROM range(400) t(i)");
        var constants = new[] { SeasonConstant.Stated("a", "HR-101", DateTimeOffset.UnixEpoch, null, 0.05, 0.02, 5, null, 0) };
        using var engine = Engine.Open(root);
        var line = AppliedLedger.Compute(engine, folder, new() { By = AppliedBy.Spreader, Constants = constants }).Lines[0];
        Assert.Equal((4000.0, 1000.0, 1000.0), (line.Seconds, line.OverSeconds, line.UnderSeconds));
        Assert.Equal((4000.0, 4100.0), (line.TargetMass, line.AppliedOnTarget));
        // Student's t for 5 degrees of freedom, 95 %: 2.571 (any table); counting adds next to nothing.
        Assert.Equal(2.571, line.Expanded / line.Mass.StandardUncertainty, 2e-3);
    }

    [Fact]
    public void Two_constants_at_once_and_storms_that_overlap_are_refused()
    {
        var at = DateTimeOffset.UnixEpoch;
        var twice = Assert.Throws<LogException>(() => ConstantTable.Check(
            [SeasonConstant.Stated("a", "HR-101", at, null, 1, 0, 5, null, 0), SeasonConstant.Stated("b", "HR-101", at.AddDays(1), null, 1, 0, 5, null, 0)]));
        Assert.Contains("both valid at 1970-01-02", twice.Message, StringComparison.Ordinal);
        var file = Path.Combine(root, "storms.csv");
        File.WriteAllText(file, "storm,from,to,depot\nA,2026-11-03T00:00:00Z,2026-11-04T00:00:00Z,\nB,2026-11-03T20:00:00Z,2026-11-05T00:00:00Z,Quarry Road\n");
        Assert.Contains("overlap", Assert.Throws<LogException>(() => Storm.Read(file)).Message, StringComparison.Ordinal);
        File.WriteAllText(file, "storm,from,to\nA,2026-11-03,2026-11-04T00:00:00Z\n");
        Assert.Contains("storms.csv, line 2, from", Assert.Throws<LogException>(() => Storm.Read(file)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_seed_writes_the_same_season_and_says_that_it_is_invented()
    {
        foreach (var name in new[] { "a", "b" }) SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 3, Storms = 2, Interval = 120, Seed = 9 }), Path.Combine(root, name));
        var files = Directory.EnumerateFiles(Path.Combine(root, "a"), "*", SearchOption.AllDirectories).ToList();
        Assert.True(files.Count > 12);
        foreach (var file in files)
            Assert.Equal(File.ReadAllText(file), File.ReadAllText(file.Replace(Path.Combine(root, "a"), Path.Combine(root, "b"), StringComparison.Ordinal)));
        Assert.Contains("invented", File.ReadAllText(Path.Combine(root, "a", "README.txt")), StringComparison.Ordinal);
        Assert.Throws<LogException>(() => SeasonWriter.Write(SeasonWorld.Make(new() { Spreaders = 1 }), Path.Combine(root, "a")));
    }

    // Rows for the ledger without the way through a log: number, spreader, counts, metres; 10 s each, 1 kg/m wanted.
    private string Rows(string sql)
    {
        var file = Path.Combine(root, "rows.parquet");
        using var engine = Engine.Open(root);
        engine.Run(
            $"""
            COPY (SELECT '2026-27' AS season, 'Quarry Road' AS depot, s AS spreader, make_timestamptz(1793664000000000 + i * 10000000) AS moment, 10.0::DOUBLE AS seconds,
                n::DOUBLE AS counts, m::DOUBLE AS metres, 1.0::DOUBLE AS target, false AS gap, false AS reset, 'R1' AS route, NULL::VARCHAR AS segment, NULL::VARCHAR AS material, 'UTC' AS zone
            FROM ({sql}) t(i, s, n, m)) TO {Engine.Text(file)} (FORMAT parquet)
            """);
        return $"read_parquet({Engine.Text(file)})";
    }
}
