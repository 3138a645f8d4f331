using System.Globalization;
using Lanewright.Core.Practice;
using Lanewright.Core.Statistics;

namespace Lanewright.Logs.Practice;

/// <summary>Writes the logs of an invented season, each kind with its own faults.</summary>
internal sealed class SeasonLogs : IDisposable
{
    private const int SpreadersOfFile = 50;
    private const double Pound = 0.45359237;
    private const double PoundPerLaneMile = Pound / 1609.344;
    private const int Sixteen = 65_536;

    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");

    private readonly string folder;
    private readonly SeasonWorld world;
    private readonly DateTime begins;
    private readonly Dictionary<SeasonLogKind, (StreamWriter Writer, int Spreaders, int Number)> files = [];
    private readonly char[] line = new char[256];
    private SeasonSpreader spreader = null!;
    private RandomSource random = null!;
    private StreamWriter writer = null!;
    private string? late;
    private long counter;
    private int storm;

    internal SeasonLogs(string folder, SeasonWorld world, DateTime begins)
    {
        this.folder = folder;
        this.world = world;
        this.begins = begins;
        Directory.CreateDirectory(folder);
    }

    /// <summary>Rows written, doubled ones included.</summary>
    internal long Rows { get; private set; }

    /// <summary>Mass of the spreader in the intervals that its log holds, kg.</summary>
    internal double Logged { get; private set; }

    public void Dispose()
    {
        foreach (var (open, _, _) in files.Values) open.Dispose();
    }

    /// <summary>How a kind of log is read.</summary>
    internal static string Profile(SeasonLogKind kind) => kind switch
    {
        SeasonLogKind.Running =>
            """
            {
              "format": "lanewright-log-profile/1",
              "note": "invented; a running counter, times in UTC",
              "zone": "America/Chicago",
              "longestInterval": "90 s",
              "columns": {
                "time": { "column": "time" },
                "spreader": { "column": "truck" },
                "depot": { "column": "depot" },
                "counts": { "column": "pulses", "unit": "pulse", "kind": "running" },
                "speed": { "column": "speed_mph", "unit": "mph" },
                "target": { "column": "rate", "unit": "lb/lane-mile" },
                "latitude": { "column": "lat" },
                "longitude": { "column": "lon" },
                "route": { "column": "route" },
                "material": { "fixed": "white rock salt" }
              }
            }
            """,
        SeasonLogKind.Interval =>
            """
            {
              "format": "lanewright-log-profile/1",
              "note": "invented; counts of each interval, local time, decimal comma",
              "separator": ";",
              "decimal": ",",
              "zone": "America/Chicago",
              "longestInterval": "90 s",
              "columns": {
                "time": { "column": "when", "pattern": "dd.MM.yyyy HH:mm:ss" },
                "spreader": { "column": "unit" },
                "depot": { "column": "yard" },
                "counts": { "column": "count", "unit": "pulse", "kind": "interval" },
                "speed": { "column": "km/h", "unit": "km/h" },
                "target": { "column": "kg/lane-km", "unit": "kg/lane-km" },
                "latitude": { "column": "lat" },
                "longitude": { "column": "lon" },
                "route": { "column": "route" },
                "material": { "fixed": "white rock salt" }
              }
            }
            """,
        SeasonLogKind.Rollover =>
            """
            {
              "format": "lanewright-log-profile/1",
              "note": "invented; a counter of 16 bits, American times, rows doubled and out of order",
              "zone": "America/Chicago",
              "longestInterval": "90 s",
              "columns": {
                "time": { "column": "Date/Time", "pattern": "MM/dd/yyyy hh:mm:ss tt" },
                "spreader": { "column": "Truck" },
                "depot": { "column": "Depot" },
                "counts": { "column": "Counter", "unit": "pulse", "kind": "running", "rollover": 65536 },
                "speed": { "column": "Speed", "unit": "mph" },
                "target": { "column": "Rate", "unit": "lb/lane-mile" },
                "route": { "column": "Route" },
                "material": { "fixed": "white rock salt" }
              }
            }
            """,
        SeasonLogKind.Mass =>
            """
            {
              "format": "lanewright-log-profile/1",
              "note": "invented; kilograms as the controller reports them for each interval, rows missing",
              "zone": "America/Chicago",
              "longestInterval": "90 s",
              "columns": {
                "time": { "column": "epoch", "pattern": "unix" },
                "spreader": { "column": "vehicle" },
                "depot": { "column": "base" },
                "counts": { "column": "kg", "unit": "kg", "kind": "interval" },
                "speed": { "column": "m/s", "unit": "m/s" },
                "target": { "column": "rate", "unit": "kg/lane-km" },
                "latitude": { "column": "lat" },
                "longitude": { "column": "lon" },
                "route": { "column": "route" },
                "material": { "fixed": "white rock salt" }
              }
            }
            """,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    internal void Begin(SeasonSpreader next)
    {
        spreader = next;
        random = new(world.Settings.Seed, 2_000_000 + (ulong)next.Index);
        writer = FileOf(next.Log);
        Logged = 0;
        counter = random.NextInt(50_000);
        storm = -1;
        late = null;
    }

    internal void End()
    {
        if (late is not null) Write(late);
        late = null;
    }

    internal void Row(SeasonInterval interval)
    {
        switch (spreader.Log)
        {
            case SeasonLogKind.Running:
                if (interval.Storm != storm) counter = 0;
                counter += interval.Counts;
                Write(string.Create(CultureInfo.InvariantCulture, line,
                    $"{At(interval):yyyy-MM-ddTHH:mm:ss}Z,{spreader.Name},{world.Depots[spreader.Depot]},{counter},{interval.Speed / 0.44704:0.0},{interval.Target / PoundPerLaneMile:0},{interval.Latitude:0.00000},{interval.Longitude:0.00000},{SeasonRoads.RouteName(spreader, interval.Route)}"));
                Logged += interval.Mass;
                break;
            case SeasonLogKind.Interval:
                Write(string.Create(CultureInfo.InvariantCulture, line,
                    $"{Local(interval):dd.MM.yyyy HH:mm:ss};{spreader.Name};{world.Depots[spreader.Depot]};{interval.Counts};{interval.Speed * 3.6:0.0};{interval.Target * 1000:0.0};{interval.Latitude:0.00000};{interval.Longitude:0.00000};{SeasonRoads.RouteName(spreader, interval.Route)}")
                    .Replace('.', ',').Remove(2, 1).Insert(2, ".").Remove(5, 1).Insert(5, "."));
                Logged += interval.Mass;
                break;
            case SeasonLogKind.Rollover:
                counter = (counter + interval.Counts) % Sixteen;
                var row = string.Create(CultureInfo.InvariantCulture, line,
                    $"{Local(interval):MM/dd/yyyy hh:mm:ss tt},{spreader.Name},{world.Depots[spreader.Depot]},{counter},{interval.Speed / 0.44704:0.0},{interval.Target / PoundPerLaneMile:0},{SeasonRoads.RouteName(spreader, interval.Route)}");
                Logged += interval.Mass;
                OutOfOrder(row);
                break;
            default:
                // One row in 200 never arrives.
                if (random.NextInt(200) == 0) break;
                Write(string.Create(CultureInfo.InvariantCulture, line,
                    $"{(At(interval).Ticks - DateTime.UnixEpoch.Ticks) / TimeSpan.TicksPerSecond},{spreader.Name},{world.Depots[spreader.Depot]},{interval.Counts},{interval.Speed:0.00},{interval.Target * 1000:0.0},{interval.Latitude:0.00000},{interval.Longitude:0.00000},{SeasonRoads.RouteName(spreader, interval.Route)}"));
                Logged += interval.Mass;
                break;
        }

        storm = interval.Storm;
    }

    // One row in 100 comes after its successor, one in 100 twice.
    private void OutOfOrder(string row)
    {
        if (late is null && random.NextInt(100) == 0)
        {
            late = row;
            return;
        }

        Write(row);
        if (random.NextInt(100) == 0) Write(row);
        if (late is not null) Write(late);
        late = null;
    }

    private void Write(string row)
    {
        writer.WriteLine(row);
        Rows++;
    }

    private DateTime At(SeasonInterval interval) => begins.AddSeconds(interval.At);

    private DateTime Local(SeasonInterval interval) => TimeZoneInfo.ConvertTimeFromUtc(At(interval), Zone);

    private StreamWriter FileOf(SeasonLogKind kind)
    {
        if (files.TryGetValue(kind, out var open) && open.Spreaders < SpreadersOfFile)
        {
            files[kind] = open with { Spreaders = open.Spreaders + 1 };
            return open.Writer;
        }

        open.Writer?.Dispose();
        var number = open.Number + 1;
        var file = new StreamWriter(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{SeasonWriter.Word(kind)}-{number:000}.csv")), append: false, new System.Text.UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
        file.WriteLine(kind switch
        {
            SeasonLogKind.Running => "time,truck,depot,pulses,speed_mph,rate,lat,lon,route",
            SeasonLogKind.Interval => "when;unit;yard;count;km/h;kg/lane-km;lat;lon;route",
            SeasonLogKind.Rollover => "Date/Time,Truck,Depot,Counter,Speed,Rate,Route",
            _ => "epoch,vehicle,base,kg,m/s,rate,lat,lon,route",
        });
        files[kind] = (file, 1, number);
        return file;
    }
}
