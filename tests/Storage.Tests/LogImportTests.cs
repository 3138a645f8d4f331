using System.Text;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;
using Lanewright.Logs;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Rows;
using Lanewright.Logs.Store;

namespace Lanewright.Storage.Tests;

public sealed class LogImportTests : IDisposable
{
    private const string Running =
        """
        { "format": "lanewright-log-profile/1", "zone": "America/Chicago", "longestInterval": "60 s", "columns": {
          "time": { "column": "time" }, "spreader": { "column": "truck" }, "depot": { "fixed": "Quarry Road" },
          "counts": { "column": "pulses", "unit": "pulse", "kind": "running", "rollover": 65536 }, "speed": { "column": "speed", "unit": "m/s" } } }
        """;

    private static readonly string Interval = Running.Replace("\"running\", \"rollover\": 65536", "\"interval\"", StringComparison.Ordinal);

    private readonly string root = Directory.CreateTempSubdirectory("lanewright-logs-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private LogFolder Folder => new(Path.Combine(root, "data"));

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void A_running_counter_becomes_counts_of_intervals_with_rollover_reset_gap_and_any_order()
    {
        var taken = Take(Running,
            "time,truck,pulses,speed", "2026-11-03T04:00:10Z,HR-101,65000,10", "2026-11-03T04:00:00Z,HR-101,64900,10", "2026-11-03T04:00:20Z,HR-101,64,10",
            "2026-11-03T04:00:30Z,HR-101,164,10", "2026-11-03T04:00:40Z,HR-101,20,10", "2026-11-03T05:00:00Z,HR-101,520,10", "2026-11-03T04:00:20Z,HR-102,7,0");
        Assert.Null(taken.Problem);
        Assert.Equal((7, 0), (taken.Accepted, taken.Refused));
        Assert.Equal(
            [
                "HR-101 04:00:00 counts - s - m - ", "HR-101 04:00:10 counts 100 s 10 m 100 ", "HR-101 04:00:20 counts 600 s 10 m 100 ", "HR-101 04:00:30 counts 100 s 10 m 100 ",
                "HR-101 04:00:40 counts 20 s 10 m 100 reset", "HR-101 05:00:00 counts 500 s 3560 m - gap", "HR-102 04:00:20 counts - s - m - ",
            ],
            Rows());
    }

    [Fact]
    public void Counts_of_each_interval_are_kept_as_they_are_and_a_gap_has_no_time()
    {
        Take(Interval, "time,truck,pulses,speed", "2026-11-03T04:00:00Z,HR-101,5,10", "2026-11-03T04:00:10Z,HR-101,50,10", "2026-11-03T04:10:00Z,HR-101,70,10");
        Assert.Equal(["HR-101 04:00:00 counts 5 s - m - ", "HR-101 04:00:10 counts 50 s 10 m 100 ", "HR-101 04:10:00 counts 70 s - m - gap"], Rows());
    }

    [Fact]
    public void A_second_file_goes_on_where_the_first_ended_and_repeats_nothing()
    {
        string[] first = ["time,truck,pulses,speed", "2026-11-03T04:00:00Z,HR-101,100,10", "2026-11-03T04:00:10Z,HR-101,200,10"];
        Take(Running, first);
        Assert.True(Take(Running, first).WasThere);
        var second = Take(Running, [.. first, "2026-11-03T04:00:05Z,HR-101,150,10", "2026-11-03T04:00:10Z,HR-101,201,10", "2026-11-03T04:00:20Z,HR-101,350,10"]);
        Assert.Equal(1, second.Accepted);
        Assert.Equal((2, 1, 1), (second.Reasons["duplicate"], second.Reasons["late"], second.Reasons["same-moment"]));
        Assert.Equal("HR-101 04:00:20 counts 150 s 10 m 100 ", Rows()[^1]);
        // An earlier day that comes later counts within itself, and changes nothing that is there.
        Take(Running, "time,truck,pulses,speed", "2026-11-02T04:00:00Z,HR-101,10,10", "2026-11-02T04:00:10Z,HR-101,40,10");
        Assert.Equal(3, Rows().Count(row => row.Contains("counts 100 ", StringComparison.Ordinal) || row.Contains("counts 150 ", StringComparison.Ordinal) || row.Contains("counts 30 ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Small_parts_give_what_one_part_gives()
    {
        var random = new RandomSource(5);
        var lines = new List<string> { "time,truck,pulses,speed" };
        var counts = new int[3];
        for (var i = 0; i < 30_000; i++)
        {
            var truck = random.NextInt(3);
            counts[truck] = (counts[truck] + random.NextInt(300)) % 65536;
            lines.Add(FormattableString.Invariant($"{new DateTime(2026, 11, 3).AddSeconds(i):yyyy-MM-ddTHH:mm:ssZ},HR-{101 + truck},{counts[truck]},{random.NextInt(20)}"));
            if (random.NextInt(50) == 0) lines.Add(lines[^1]);
        }

        Take(Running, [.. lines]);
        var whole = Rows();
        Directory.Delete(Folder.Root, recursive: true);
        var file = Write(lines);
        using (var import = LogImport.Begin(Folder, LogProfileReader.Read(Running), null, 140_000)) Assert.True(import.Take(file, stop: Stop).Accepted == 30_000);
        Assert.True(Folder.Files().Count > 10);
        Assert.Equal(whole, Rows());
    }

    [Theory]
    [InlineData("2026-11-03T04:00:00Z,HR-101,1", "fields")]
    [InlineData("2026-11-03T04:00:00Z,\"HR-101,1,2", "quote")]
    [InlineData("2026-13-03T04:00:00Z,HR-101,1,2", "time (time)")]
    [InlineData("1999-12-03T04:00:00Z,HR-101,1,2", "season (time)")]
    [InlineData("2026-11-01 01:30:00,HR-101,1,2", "time-twice (time)")]
    [InlineData("2027-03-14 02:30:00,HR-101,1,2", "time-skipped (time)")]
    [InlineData(",HR-101,1,2", "empty (time)")]
    [InlineData("2026-11-03T04:00:00Z,,1,2", "empty (spreader)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,,2", "empty (counts)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,1_000,2", "number (counts)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,\"1,250\",2", "number (counts)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,NaN,2", "number (counts)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,-1,2", "range (counts)")]
    [InlineData("2026-11-03T04:00:00Z,HR-101,1,999", "range (speed)")]
    [InlineData("2026-11-03T04:00:00Z,..,1,2", "name (spreader)")]
    public void A_row_that_cannot_be_understood_is_kept_with_its_line_its_text_and_why(string row, string reason)
    {
        var taken = Take(Running, "time,truck,pulses,speed", "2026-11-03T04:00:00Z,HR-109,1,2", row);
        Assert.Equal((1, 1), (taken.Accepted, taken.Refused));
        Assert.Equal(1, taken.Reasons[reason]);
        var kept = File.ReadAllLines(Assert.Single(taken.RefusedFiles));
        Assert.Equal(2, kept.Length);
        Assert.Contains(",3,", kept[1], StringComparison.Ordinal);
        Assert.EndsWith('"' + row.Replace("\"", "\"\"", StringComparison.Ordinal) + '"', kept[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("time;truck;pulses;speed\n1;2;3;4", "not in the file")]
    [InlineData("time,truck,pulses,speed,pulses\n", "twice")]
    public void A_file_that_is_not_of_the_profile_is_refused_with_a_message(string text, string message)
    {
        var file = Path.Combine(root, "bad.csv");
        File.WriteAllText(file, text);
        using var import = LogImport.Begin(Folder, LogProfileReader.Read(Running));
        Assert.Contains(message, import.Take(file, stop: Stop).Problem?.ToString(), StringComparison.Ordinal);
        File.WriteAllBytes(file, [0xFF, 0xFE, 0x74, 0x00]);
        Assert.Contains("UTF-16", import.Take(file, stop: Stop).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Contains("no such file", import.Take(file + "x", stop: Stop).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Empty(Folder.Files());
    }

    [Fact]
    public void Gpx_and_parquet_come_in_by_the_same_road()
    {
        var gpx = Path.Combine(root, "track.gpx");
        File.WriteAllText(gpx, LogMutations.Gpx);
        using (var import = LogImport.Begin(Folder, LogProfileReader.Read(LogMutations.GpxProfile)))
        {
            Assert.Equal((null, 3), (import.Take(gpx, stop: Stop) is var taken ? taken.Problem : "", taken.Accepted));
        }

        Assert.Equal(["HR-101 04:00:00 counts - s - m - ", "HR-101 04:00:10 counts 120 s 10 m - ", "HR-101 04:00:20 counts 125 s 10 m - "], Rows());
        var parquet = Path.Combine(root, "log.parquet");
        using (var engine = Engine.Open(root))
            engine.Run($"COPY (SELECT TIMESTAMPTZ '2026-11-04 04:00:00+00' + to_seconds(10 * i) AS time, 'HR-105' AS truck, 100 * i AS pulses, 10.5 AS speed FROM range(3) t(i)) TO {Engine.Text(parquet)} (FORMAT parquet)");
        using (var import = LogImport.Begin(Folder, LogProfileReader.Read(Running))) Assert.Equal((null, 3), (import.Take(parquet, stop: Stop) is var taken ? taken.Problem : "", taken.Accepted));
        Assert.Equal("HR-105 04:00:20 counts 100 s 10 m 105 ", Rows()[^1]);
    }

    [Fact]
    public void Other_programs_read_the_rows_as_a_table_partitioned_by_season_depot_and_spreader()
    {
        Take(Running, "time,truck,pulses,speed", "2026-06-30T23:59:59Z,HR/1 ü,1,2", "2026-07-01T00:00:00Z,HR/1 ü,1,2");
        using var engine = Engine.Open(root);
        var seen = new List<string>();
        engine.Ask(
            $"SELECT season, depot, spreader, zone, typeof(moment) FROM read_parquet({Engine.Text(Folder.Rows + "/**/*.parquet")}, hive_partitioning = true, hive_types_autocast = false) ORDER BY season",
            row => seen.Add(string.Join('|', Enumerable.Range(0, 5).Select(row.GetString))));
        Assert.Equal(["2025-26|Quarry Road|HR/1 ü|America/Chicago|TIMESTAMP WITH TIME ZONE", "2026-27|Quarry Road|HR/1 ü|America/Chicago|TIMESTAMP WITH TIME ZONE"], seen);
        Assert.All(Folder.Files(), file => Assert.Contains("/season=202", file.Replace('\\', '/'), StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_forgotten_can_come_in_again_in_another_way()
    {
        string[] lines = ["time,truck,pulses,speed", "2026-11-03T04:00:00Z,HR-101,1,10", "2026-11-03T04:00:10Z,HR-101,3,10"];
        Take(Interval, lines);
        Assert.Equal(2, LogImport.Forget(Folder, Write(lines), null, Stop));
        Assert.Empty(Directory.EnumerateFiles(Folder.Rows, "*", SearchOption.AllDirectories));
        Take(Running, lines);
        Assert.Equal("HR-101 04:00:10 counts 2 s 10 m 100 ", Rows()[^1]);
    }

    [Fact]
    public void Numbers_of_logs_are_read_as_core_reads_them()
    {
        var random = new RandomSource(11);
        const string Letters = "0123456789.,-+eE ";
        var read = 0;
        foreach (var culture in new[] { TextCulture.Invariant, TextCulture.German })
            for (var i = 0; i < 40_000; i++)
            {
                var text = i % 2 == 0
                    ? string.Concat(Enumerable.Range(0, 1 + random.NextInt(9)).Select(_ => Letters[random.NextInt(Letters.Length)])).Trim()
                    : QuantityText.WriteNumber((random.NextDouble() - 0.3) * Math.Pow(10, random.NextInt(12) - 4), culture, NumberForm.Significant(1 + random.NextInt(17)));
                var core = QuantityText.ReadNumber(text, culture);
                Assert.Equal(core.TryGet(out var wanted), LogNumber.TryRead(Encoding.UTF8.GetBytes(text), culture, out var value));
                if (!core.TryGet(out _)) continue;
                Assert.Equal(BitConverter.DoubleToInt64Bits(wanted), BitConverter.DoubleToInt64Bits(value));
                read++;
            }

        Assert.True(read > 20_000);
    }

    [Theory]
    [InlineData("dd.MM.yyyy HH:mm:ss", "03.11.2026 04:05:06", "2026-11-03T04:05:06")]
    [InlineData("M/d/yyyy h:mm:ss tt", "3/4/2027 12:05:06 AM", "2027-03-04T00:05:06")]
    [InlineData("iso", "2026-11-03T04:05:06.25+02:00", "2026-11-03T02:05:06.25")]
    [InlineData("iso", "2026-11-03 04:05", "2026-11-03T04:05:00")]
    [InlineData("unix", "1793678706", "2026-11-03T04:05:06")]
    [InlineData("unix-ms", "1793678706500", "2026-11-03T04:05:06.5")]
    [InlineData("iso", "2026-11-03T24:05:06Z", null)]
    [InlineData("iso", "2027-02-29T04:05:06Z", null)]
    [InlineData("iso", "2026-11-03T04:05:06Z ", null)]
    [InlineData("dd.MM.yyyy HH:mm:ss", "3.11.2026 04:05:06", null)]
    public void Times_are_read_by_their_pattern_only(string pattern, string text, string? wanted)
    {
        Assert.True(TimePattern.TryRead(pattern, out var read));
        Assert.Equal(wanted is not null, read.TryParse(Encoding.UTF8.GetBytes(text), out var micros, out var offset));
        if (wanted is not null)
            Assert.Equal(DateTime.Parse(wanted, System.Globalization.CultureInfo.InvariantCulture), DateTime.UnixEpoch.AddTicks((micros - ((offset ?? 0) * 60_000_000L)) * 10));
    }

    [Theory]
    [InlineData("\"zone\": \"America/Chicago\"", "\"zone\": \"Central\"", "zone")]
    [InlineData("\"kind\": \"running\"", "\"kind\": \"total\"", "running interval")]
    [InlineData("\"unit\": \"pulse\"", "\"unit\": \"mph\"", "expected a unit such as pulse, ")]
    [InlineData("\"columns\"", "\"colums\"", "perhaps columns")]
    [InlineData("\"60 s\"", "\"60 kg\"", "longestInterval")]
    [InlineData("\"fixed\": \"Quarry Road\"", "\"fixed\": \"Quarry Road\", \"column\": \"d\"", "either 'column' or 'fixed'")]
    [InlineData("lanewright-log-profile/1", "lanewright-log-profile/2", "lanewright-log-profile/1")]
    public void A_profile_with_something_wrong_says_where(string was, string now, string message)
    {
        var wrong = Assert.Throws<LogException>(() => LogProfileReader.Read(Running.Replace(was, now, StringComparison.Ordinal)));
        Assert.Contains(message, wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Damaged_logs_are_accounted_for_row_by_row()
    {
        var tally = LogMutations.Run(240, 3);
        Assert.Empty(tally.Wrong);
        Assert.True(tally.Refused > 5 && tally.Rows > 3000 && tally.RefusedRows > 200);
    }

    [Fact]
    public void A_killed_import_goes_on_with_nothing_lost_or_doubled()
    {
        var tally = LogKills.Run(5, 2);
        Assert.Equal(0, tally.Wrong);
        Assert.True(tally is { Kills: 5, Rows: > 5000 });
    }

    private ImportedFile Take(string profile, params string[] lines)
    {
        using var import = LogImport.Begin(Folder, LogProfileReader.Read(profile));
        return import.Take(Write(lines), stop: Stop);
    }

    private string Write(IEnumerable<string> lines)
    {
        var file = Path.Combine(root, "log.csv");
        File.WriteAllText(file, string.Join('\n', lines) + "\n");
        return file;
    }

    // What is stored, in order of spreader and time.
    private List<string> Rows()
    {
        using var engine = Engine.Open(root);
        var rows = new List<string>();
        engine.Ask(
            $"""
            SELECT spreader || ' ' || strftime(make_timestamp(epoch_us(moment)), '%H:%M:%S') || ' counts ' || coalesce(counts::DECIMAL(18,0)::VARCHAR, '-') || ' s ' || coalesce(seconds::DECIMAL(18,0)::VARCHAR, '-')
                || ' m ' || coalesce(metres::DECIMAL(18,0)::VARCHAR, '-') || ' ' || CASE WHEN gap THEN 'gap' ELSE '' END || CASE WHEN reset THEN 'reset' ELSE '' END
            FROM {RowTable.Read(Folder.Files())} ORDER BY spreader, moment
            """,
            row => rows.Add(row.GetString(0)));
        return rows;
    }
}
