using System.Diagnostics;
using System.Globalization;
using Lanewright.Core.Season;
using Lanewright.Logs.Applied;
using Lanewright.Logs.Profiles;
using Lanewright.Logs.Store;

namespace Lanewright.Campaigns;

/// <summary>Speed of taking logs in, and of computing what was spread against plain SQL for the same sums.</summary>
internal static class SeasonRows
{
    private const int Spreaders = 100;

    private static readonly int[] Sizes = [1, 10, 100];

    private const string Profile =
        """
        { "format": "lanewright-log-profile/1", "zone": "America/Chicago", "longestInterval": "60 s", "columns": {
          "time": { "column": "time" }, "spreader": { "column": "truck" }, "depot": { "column": "depot" },
          "counts": { "column": "pulses", "unit": "pulse", "kind": "running" }, "speed": { "column": "mph", "unit": "mph" },
          "target": { "column": "rate", "unit": "lb/lane-mile" }, "latitude": { "column": "lat" }, "longitude": { "column": "lon" },
          "route": { "column": "route" } } }
        """;

    /// <summary>Imports CSV and prints rows for each second.</summary>
    internal static int Import(int millions)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-rows-").FullName;
        try
        {
            var file = Path.Combine(root, "log.csv");
            Write(file, millions * 1_000_000L);
            Console.WriteLine($"{millions} million rows, {new FileInfo(file).Length / 1_000_000} MB of CSV, {Environment.ProcessorCount} processors, load {Load()}");
            for (var run = 1; run <= 3; run++)
            {
                var data = Path.Combine(root, "data");
                var watch = Stopwatch.StartNew();
                var processor = Processor();
                ImportedFile taken;
                using (var import = LogImport.Begin(new LogFolder(data), LogProfileReader.Read(Profile))) taken = import.Take(file);
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"run {run}: {taken.Accepted} rows in {watch.Elapsed.TotalSeconds:0.00} s, {taken.Accepted / watch.Elapsed.TotalSeconds / 1e6:0.00} million rows/s; {Processor() - processor:0.00} s of processors, {taken.Accepted / (Processor() - processor) / 1e6:0.00} million rows for each second of one; {taken.Refused} refused {taken.Problem}; peak memory {Peak()} MB; load {Load()}"));
                Directory.Delete(data, recursive: true);
            }

            return 0;
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    /// <summary>Computes ledgers over more and more rows, in turns with plain SQL.</summary>
    internal static int Applied(int most)
    {
        var root = Directory.CreateTempSubdirectory("lanewright-rows-").FullName;
        try
        {
            var constants = Constants();
            Console.WriteLine("rows, million | as-applied, s | plain SQL, s | ratio | ns a row | peak memory, MB | load");
            foreach (var millions in Sizes.Where(m => m <= most))
            {
                var rows = Path.Combine(root, $"{millions}");
                // A hundred million are ten million, each file read ten times: making them would take longer than reading them.
                var times = Math.Max(1, millions / 10);
                Make(rows, millions * 1_000_000L / times);
                var made = Directory.EnumerateFiles(rows, "*.parquet", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
                var files = Enumerable.Repeat(made, times).SelectMany(one => one).ToList();
                using var engine = Engine.Open(Path.Combine(root, "spill"));
                var ours = new List<double>();
                var plain = new List<double>();
                double mass = 0, plainMass = 0;
                for (var run = 0; run < (millions < 100 ? 5 : 3); run++)
                {
                    var watch = Stopwatch.StartNew();
                    mass = AppliedLedger.Compute(engine, RowTable.Read(files), new() { By = AppliedBy.Spreader, Constants = constants }).Total.Mass.Value;
                    ours.Add(watch.Elapsed.TotalSeconds);
                    watch.Restart();
                    plainMass = 0;
                    engine.Ask(Plain(RowTable.Read(files)), row => plainMass += row.GetDouble(1));
                    plain.Add(watch.Elapsed.TotalSeconds);
                }

                if (Math.Abs(mass - plainMass) > 1e-9 * mass) throw new InvalidOperationException($"The two sums differ: {mass} and {plainMass} kg.");
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{millions} | {Median(ours):0.000} | {Median(plain):0.000} | {Median(ours) / Median(plain):0.00} | {Median(ours) / millions * 1000:0.0} | {Peak()} | {Load()}"));
            }

            return 0;
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    // The same sums as somebody would write them by hand who wants no uncertainty.
    private static string Plain(string source) =>
        $"""
        SELECT r.spreader, sum(r.counts * c.k) AS mass, count(*) AS "rows",
            sum(r.target * r.metres) AS wanted, sum(CASE WHEN r.target * r.metres IS NOT NULL THEN r.counts * c.k END) AS given,
            sum(r.metres) AS metres, sum(CASE WHEN NOT r.gap THEN r.seconds END) AS seconds,
            sum(CASE WHEN NOT r.gap AND r.counts * c.k > 1.1 * r.target * r.metres THEN r.seconds END) AS over,
            sum(CASE WHEN NOT r.gap AND r.counts * c.k < 0.9 * r.target * r.metres THEN r.seconds END) AS under,
            count(*) FILTER (WHERE r.gap) AS gaps, count(*) FILTER (WHERE r.reset) AS resets
        FROM {source} r
        LEFT JOIN constants c ON c.spreader = r.spreader AND r.moment >= c.lo AND r.moment < c.hi
        GROUP BY r.spreader
        """;

    private static List<SeasonConstant> Constants()
    {
        var constants = new List<SeasonConstant>();
        var change = new DateTimeOffset(2027, 1, 10, 0, 0, 0, TimeSpan.Zero);
        for (var i = 0; i < Spreaders; i++)
        {
            var name = $"HR-{101 + i}";
            constants.Add(SeasonConstant.Stated(name + "-1", name, new(2026, 9, 1, 0, 0, 0, TimeSpan.Zero), change, 0.05, 0.01, 5, "floor scale", 0.003));
            constants.Add(SeasonConstant.Stated(name + "-2", name, change, null, 0.051, 0.01, 5, "floor scale", 0.003));
        }

        return constants;
    }

    // Rows in the stored layout, without the way through CSV.
    private static void Make(string folder, long rows)
    {
        using var engine = Engine.Open(folder + "-spill");
        var each = rows / Spreaders;
        engine.Run(
            $"""
            COPY (
                SELECT '2026-27' AS season, 'Depot ' || (s % 4) AS depot, 'HR-' || (101 + s) AS spreader,
                    make_timestamptz(1793000000000000 + (i * {12_000_000_000_000 / each})::BIGINT) AS moment, 10.0::DOUBLE AS seconds,
                    (i * 7919 % 300)::DOUBLE AS counts, (i * 150)::DOUBLE AS reading, (i * 104729 % 120)::DOUBLE AS metres, NULL::DOUBLE AS odometer,
                    (i * 104729 % 120 / 10.0)::DOUBLE AS speed, 0.0846::DOUBLE AS target, (44.8 + i % 1000 / 1e5)::DOUBLE AS latitude, (-93.2 + i % 777 / 1e5)::DOUBLE AS longitude,
                    i % 500 = 0 AS gap, i % 5000 = 0 AS reset, 'R' || (i // 1000 % 5) AS route, 'white rock salt' AS material, NULL::VARCHAR AS segment,
                    'America/Chicago' AS zone, 'made' AS file, (i % 2000000000)::INTEGER AS line
                FROM range({Spreaders}) a(s), range({each}) b(i)
            ) TO {Engine.Text(folder)} (FORMAT parquet, COMPRESSION zstd, PARTITION_BY (season, depot, spreader))
            """);
    }

    private static void Write(string file, long rows)
    {
        using var writer = new StreamWriter(file, append: false, new System.Text.UTF8Encoding(false), 1 << 20) { NewLine = "\n" };
        writer.WriteLine("time,truck,depot,pulses,mph,rate,lat,lon,route");
        var begin = new DateTime(2026, 11, 2, 0, 0, 0, DateTimeKind.Utc);
        var line = new char[200];
        for (var s = 0; s < Spreaders; s++)
        {
            var each = rows / Spreaders;
            long counter = 0;
            for (long i = 0; i < each; i++)
            {
                counter += i * 7919 % 300;
                if (!line.AsSpan().TryWrite(
                    CultureInfo.InvariantCulture,
                    $"{begin.AddSeconds(10 * i):yyyy-MM-ddTHH:mm:ss}Z,HR-{101 + s},Depot {s % 4},{counter},{i * 7 % 45}.{i % 10},300,44.{80000 + (i % 9999)},-93.{20000 + (i % 7777)},R{i / 1000 % 5}", out var length))
                    throw new InvalidOperationException("The line is too long.");
                writer.WriteLine(line.AsSpan(0, length));
            }
        }
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static long Peak()
    {
        using var self = Process.GetCurrentProcess();
        return self.PeakWorkingSet64 / 1_000_000;
    }

    private static double Processor()
    {
        using var self = Process.GetCurrentProcess();
        return self.TotalProcessorTime.TotalSeconds;
    }

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "?";
}
