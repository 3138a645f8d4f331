using System.Globalization;
using System.Text;
using DuckDB.NET.Data;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>What is stored already, as far as new rows need it: the last row of each spreader, and stored rows within the time of
/// the new ones.</summary>
internal sealed class StoredRows
{
    private readonly Engine engine;
    private readonly LogNameBook book;
    private readonly List<string> files;
    private readonly Dictionary<int, StoredRow> last = [];
    private readonly Dictionary<int, StoredRow[]> within = [];

    internal StoredRows(Engine engine, LogNameBook book, IEnumerable<string> files)
    {
        this.engine = engine;
        this.book = book;
        this.files = [.. files];
        if (this.files.Count == 0) return;
        engine.Ask(
            $"""
            SELECT depot, spreader, latest, l.s, l.r, l.o FROM (
                SELECT depot, spreader, max(epoch_us(moment)) AS latest, arg_max(struct_pack(s := seconds, r := reading, o := odometer), moment) AS l
                FROM {RowTable.Read(this.files)} GROUP BY depot, spreader)
            """,
            row => last[UnitOf(row)] = new(row.GetInt64(2), Number(row, 3), Number(row, 4), Number(row, 5)));
    }

    /// <summary>Looks up what the rows of a part need.</summary>
    internal void Prepare(LogRows rows, int[] order, int[] starts)
    {
        within.Clear();
        var asked = new List<(int Unit, long From, long To)>();
        for (var u = 0; u < starts.Length - 1; u++)
        {
            if (starts[u] == starts[u + 1] || !last.TryGetValue(u, out var end)) continue;
            var from = rows.At[order[starts[u]]];
            if (from > end.At) within[u] = [end];
            else asked.Add((u, from, rows.At[order[starts[u + 1] - 1]]));
        }

        if (asked.Count > 0) Ask(asked);
    }

    internal ReadOnlySpan<StoredRow> Of(int unit) => within.TryGetValue(unit, out var rows) ? rows : [];

    /// <summary>Takes note of rows that are stored now.</summary>
    internal void Add(LogRows rows, ReadOnlySpan<int> order, IEnumerable<string> written)
    {
        files.AddRange(written);
        foreach (var i in order)
            if (!last.TryGetValue(rows.Unit[i], out var end) || end.At < rows.At[i])
                last[rows.Unit[i]] = new(rows.At[i], rows.Seconds[i], rows.Reading[i], rows.Odometer[i]);
    }

    // The stored rows within the asked time, the one before it and the one behind it.
    private void Ask(List<(int Unit, long From, long To)> asked)
    {
        var values = new StringBuilder();
        foreach (var (unit, from, to) in asked)
        {
            var names = book.Units[unit];
            values.Append(values.Length == 0 ? "" : ", ").Append(CultureInfo.InvariantCulture, $"({Engine.Text(book.Names.All[names.Depot])}, {Engine.Text(book.Names.All[names.Spreader])}, {from}, {to})");
        }

        engine.Run($"CREATE OR REPLACE TABLE asked AS SELECT * FROM (VALUES {values}) t(depot, spreader, lo, hi)");
        engine.Run(
            $"""
            CREATE OR REPLACE TABLE near AS
            SELECT r.depot AS depot, r.spreader AS spreader, epoch_us(r.moment) AS us, seconds, reading, odometer, asked.lo AS lo, asked.hi AS hi
            FROM {RowTable.Read(files)} r JOIN asked ON r.depot = asked.depot AND r.spreader = asked.spreader
            """);
        var found = new Dictionary<int, List<StoredRow>>();
        engine.Ask(
            """
            SELECT depot, spreader, us, seconds, reading, odometer FROM near
            WHERE us >= lo AND us <= hi
            UNION ALL
            SELECT depot, spreader, x.us, x.seconds, x.reading, x.odometer FROM (SELECT depot, spreader, arg_max(near, us) AS x FROM near WHERE us < lo GROUP BY depot, spreader)
            UNION ALL
            SELECT depot, spreader, x.us, x.seconds, x.reading, x.odometer FROM (SELECT depot, spreader, arg_min(near, us) AS x FROM near WHERE us > hi GROUP BY depot, spreader)
            """,
            row =>
            {
                var unit = UnitOf(row);
                if (!found.TryGetValue(unit, out var list)) found.Add(unit, list = []);
                list.Add(new(row.GetInt64(2), Number(row, 3), Number(row, 4), Number(row, 5)));
            });
        engine.Run("DROP TABLE near");
        foreach (var (unit, list) in found)
        {
            list.Sort((a, b) => a.At.CompareTo(b.At));
            within[unit] = [.. list];
        }
    }

    private int UnitOf(DuckDBDataReader row) => book.UnitOf(book.Names.Of(row.GetString(0)), book.Names.Of(row.GetString(1)));

    private static double Number(DuckDBDataReader row, int column) => row.IsDBNull(column) ? double.NaN : row.GetDouble(column);
}
