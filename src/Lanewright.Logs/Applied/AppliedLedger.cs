using DuckDB.NET.Data;
using Lanewright.Core.Season;
using Lanewright.Core.Uncertainty;
using Lanewright.Logs.Rows;
using Lanewright.Logs.Store;

namespace Lanewright.Logs.Applied;

/// <summary>
/// Turns stored rows into mass. The engine adds up counts by group and constant; Core turns those sums into mass with its
/// uncertainty, so that there is one formula for it.
/// </summary>
public static class AppliedLedger
{
    /// <summary>Computes a ledger over the rows of a folder.</summary>
    /// <exception cref="LogException">There are none, or they cannot be read.</exception>
    public static AppliedAnswer Compute(LogFolder folder, AppliedQuestion question)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(question);
        var files = folder.Files();
        if (files.Count == 0) throw new LogException("No logs are taken in yet. Take some in with 'lanewright logs import'.");
        using var engine = Engine.OpenForReading();
        var source = RowTable.Read(files);
        // What a map found stands beside the rows.
        if ((question.By is AppliedBy.Segment || question.With.Contains(AppliedBy.Segment)) && MatchedSegments.Files(folder) is { Count: > 0 } matched) source = RowTable.WithSegments(source, matched);
        return Compute(engine, source, question);
    }

    /// <summary>The storms that the rows' pauses show, each of one depot.</summary>
    /// <exception cref="LogException">There are no rows, or they cannot be read.</exception>
    public static IReadOnlyList<Storm> FindStorms(LogFolder folder, AppliedQuestion question)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(question);
        var files = folder.Files();
        var storms = new List<Storm>();
        if (files.Count == 0) return storms;
        using var engine = Engine.OpenForReading();
        WriteStorms(engine, RowTable.Read(files), question.Season is { } season ? $"WHERE r.season = {Engine.Text(season)}" : "", question with { Storms = null });
        engine.Ask(
            "SELECT name, epoch_us(lo), epoch_us(hi), depot FROM storms ORDER BY ALL",
            row => storms.Add(new(row.GetString(0), At(row.GetInt64(1)), At(row.GetInt64(2)), row.GetString(3))));
        return storms;

        static DateTimeOffset At(long micros) => DateTimeOffset.UnixEpoch.AddTicks(micros * 10);
    }

    internal static AppliedAnswer Compute(Engine engine, string source, AppliedQuestion question)
    {
        ConstantTable.Check(question.Constants);
        WriteConstants(engine, question.Constants);
        var sql = Sql(engine, source, question);
        var groups = new Dictionary<string, Sums>(StringComparer.Ordinal);
        var total = new Sums();
        engine.Ask(sql, row =>
        {
            var name = row.IsDBNull(0) ? "" : row.GetString(0);
            if (!groups.TryGetValue(name, out var sums)) groups.Add(name, sums = new());
            sums.Add(row, question.Constants);
            total.Add(row, question.Constants);
        });
        return new(
            [.. groups.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => one.Value.Line(one.Key, $"{question.By}:{one.Key}", question.Probability))],
            total.Line("", "all", question.Probability));
    }

    /// <summary>The one pass over the rows.</summary>
    internal static string Sql(Engine engine, string source, AppliedQuestion question)
    {
        var where = question.Season is { } season ? $"WHERE r.season = {Engine.Text(season)}" : "";
        var storms = question.By is AppliedBy.Storm || question.With.Contains(AppliedBy.Storm);
        if (storms) WriteStorms(engine, source, where, question);
        var name = question.With.Count == 0
            ? NameOf(question.By, engine, source)
            : $"concat_ws(chr(31), {string.Join(", ", question.With.Prepend(question.By).Select(by => $"coalesce({NameOf(by, engine, source)}, '')"))})";
        var low = Engine.Number(1 - question.Band);
        var high = Engine.Number(1 + question.Band);
        return
            $"""
            SELECT {(question.By is AppliedBy.Day ? "strftime(make_timestamp(name * 86400000000), '%Y-%m-%d')" : "name")} AS name, * EXCLUDE (name) FROM (
                SELECT {name} AS name, c.id AS id, sum(r.counts) AS counts, count(r.counts) AS intervals, count(*) AS "rows",
                    sum(r.target * r.metres) AS wanted, sum(CASE WHEN r.target * r.metres IS NOT NULL THEN r.counts * c.k END) AS given,
                    sum(r.metres) AS metres, sum(CASE WHEN NOT r.gap THEN r.seconds END) AS seconds,
                    sum(CASE WHEN NOT r.gap AND r.counts * c.k > {high} * r.target * r.metres THEN r.seconds END) AS over,
                    sum(CASE WHEN NOT r.gap AND r.counts * c.k < {low} * r.target * r.metres THEN r.seconds END) AS under,
                    count(*) FILTER (WHERE r.gap) AS gaps, count(*) FILTER (WHERE r.reset) AS resets,
                    count(*) FILTER (WHERE r.gap AND r.seconds IS NULL AND r.counts > 0) AS holes
                FROM {source} r
                LEFT JOIN constants c ON c.spreader = r.spreader AND r.moment >= c.lo AND r.moment < c.hi
                {(storms ? "LEFT JOIN storms ON storms.depot = r.depot AND r.moment >= storms.lo AND r.moment < storms.hi" : "")}
                {where}
                GROUP BY ALL)
            """;
    }

    private static string NameOf(AppliedBy by, Engine engine, string source) => by switch
    {
        AppliedBy.Season => "r.season",
        AppliedBy.Depot => "r.depot",
        AppliedBy.Spreader => "r.spreader",
        AppliedBy.Day => $"((epoch_us(r.moment) + {LocalOffset(engine, source)}) // 86400000000)",
        AppliedBy.Storm => "storms.name",
        AppliedBy.Route => "r.route",
        AppliedBy.Segment => "r.segment",
        AppliedBy.Material => "r.material",
        _ => throw new ArgumentOutOfRangeException(nameof(by), by, null),
    };

    internal static void WriteConstants(Engine engine, IReadOnlyList<SeasonConstant> constants)
    {
        engine.Run("CREATE OR REPLACE TABLE constants (id INTEGER, spreader VARCHAR, lo TIMESTAMPTZ, hi TIMESTAMPTZ, k DOUBLE)");
        foreach (var some in constants.Select((one, i) =>
            $"({i}, {Engine.Text(one.Spreader)}, {Moment(one.From)}, {(one.To is { } to ? Moment(to) : "'infinity'")}, {Engine.Number(one.MassPerCount)})").Chunk(1000))
            engine.Run("INSERT INTO constants VALUES " + string.Join(", ", some));
    }

    private static string Moment(DateTimeOffset moment) => $"make_timestamptz({(moment.UtcTicks - DateTime.UnixEpoch.Ticks) / 10}::BIGINT)";

    private static void WriteStorms(Engine engine, string source, string where, AppliedQuestion question)
    {
        engine.Run("CREATE OR REPLACE TABLE storms (name VARCHAR, depot VARCHAR, lo TIMESTAMPTZ, hi TIMESTAMPTZ)");
        if (question.Storms is { } listed)
        {
            foreach (var storm in listed)
                engine.Run(
                    storm.Depot is { } depot
                        ? $"INSERT INTO storms VALUES ({Engine.Text(storm.Name)}, {Engine.Text(depot)}, {Moment(storm.From)}, {Moment(storm.To)})"
                        : $"INSERT INTO storms SELECT {Engine.Text(storm.Name)}, depot, {Moment(storm.From)}, {Moment(storm.To)} FROM (SELECT DISTINCT depot FROM {source})");
            return;
        }

        // Quarters of an hour in which a depot's spreaders counted, and one before and behind for rows that begin and end a trip; a
        // new storm begins where the one before is long ago.
        engine.Run(
            $"""
            INSERT INTO storms
            WITH busy AS (
                SELECT DISTINCT r.depot AS depot, epoch_us(r.moment) // 900000000 AS quarter FROM {source} r {where}{(where.Length == 0 ? "WHERE" : " AND")} r.counts > 0),
            begun AS (
                SELECT depot, quarter, coalesce(quarter - lag(quarter) OVER w > {Engine.Number(question.StormPauseHours * 4)}, true)::INTEGER AS begins
                FROM busy WINDOW w AS (PARTITION BY depot ORDER BY quarter)),
            numbered AS (SELECT depot, quarter, sum(begins) OVER (PARTITION BY depot ORDER BY quarter) AS storm FROM begun),
            spans AS (SELECT depot, storm, min(quarter) AS first, max(quarter) AS last FROM numbered GROUP BY depot, storm)
            SELECT depot || ' ' || strftime(make_timestamp(first * 900000000), '%Y-%m-%d %H:%M') || ' UTC', depot,
                make_timestamptz((first - 1) * 900000000), make_timestamptz((last + 2) * 900000000)
            FROM spans
            """);
    }

    // Microseconds that the clocks of the rows' zones are ahead of UTC.
    private static string LocalOffset(Engine engine, string source)
    {
        var zones = new List<string>();
        long first = LogSeason.Earliest, last = LogSeason.Latest;
        engine.Ask($"SELECT zone, epoch_us(min(moment)), epoch_us(max(moment)) FROM {source} GROUP BY zone", row =>
        {
            zones.Add(row.GetString(0));
            first = zones.Count == 1 ? row.GetInt64(1) : Math.Min(first, row.GetInt64(1));
            last = zones.Count == 1 ? row.GetInt64(2) : Math.Max(last, row.GetInt64(2));
        });
        var cases = zones.Select(zone => $"WHEN {Engine.Text(zone)} THEN {ZoneOffset(TimeZoneInfo.FindSystemTimeZoneById(zone), first, last)}");
        return zones.Count == 0 ? "0" : $"CASE r.zone {string.Join(' ', cases)} END";
    }

    private static string ZoneOffset(TimeZoneInfo zone, long first, long last)
    {
        var sql = "";
        long? offset = null;
        // By quarters of an hour only where an hour differs from the next: changes are seldom.
        const long Hour = 3_600_000_000;
        for (var at = first / Hour * Hour; at <= last; at += Hour)
        {
            var now = OffsetAt(zone, at);
            if (offset is { } before && before != now)
            {
                var change = at - Hour;
                while (OffsetAt(zone, change) == before) change += Hour / 4;
                sql += $"WHEN epoch_us(r.moment) < {change} THEN {before} ";
            }

            offset = now;
        }

        return sql.Length == 0 ? $"{offset ?? 0}" : $"CASE {sql}ELSE {offset} END";
    }

    private static long OffsetAt(TimeZoneInfo zone, long micros) => zone.GetUtcOffset(DateTime.UnixEpoch.AddTicks(micros * 10)).Ticks / 10;

    private sealed class Sums
    {
        private readonly Dictionary<int, (double Counts, long Intervals)> parts = [];
        private IReadOnlyList<SeasonConstant> constants = [];
        private double wanted;
        private double given;
        private double metres;
        private double seconds;
        private double over;
        private double under;
        private double without;
        private long rows;
        private long gaps;
        private long resets;
        private long holes;

        internal void Add(DuckDBDataReader row, IReadOnlyList<SeasonConstant> all)
        {
            constants = all;
            if (row.IsDBNull(1))
            {
                without += Number(row, 2);
            }
            else
            {
                var (counts, intervals) = parts.GetValueOrDefault(row.GetInt32(1));
                parts[row.GetInt32(1)] = (counts + Number(row, 2), intervals + row.GetInt64(3));
            }

            rows += row.GetInt64(4);
            wanted += Number(row, 5);
            given += Number(row, 6);
            metres += Number(row, 7);
            seconds += Number(row, 8);
            over += Number(row, 9);
            under += Number(row, 10);
            gaps += row.GetInt64(11);
            resets += row.GetInt64(12);
            holes += row.GetInt64(13);
        }

        internal AppliedLine Line(string name, string group, double probability)
        {
            var mass = AppliedMass.Of([.. parts.OrderBy(p => p.Key).Select(p => new CountsUnder(constants[p.Key], p.Value.Counts, p.Value.Intervals))], group);
            var expanded = mass.Variance == 0 ? 0 : WelchSatterthwaite.Of(mass, probability).Expanded;
            return new(name, mass, expanded, wanted, given, metres, seconds, over, under, rows, gaps, resets, without, parts.Count) { Holes = holes };
        }

        private static double Number(DuckDBDataReader row, int column) => row.IsDBNull(column) ? 0 : row.GetDouble(column);
    }
}
