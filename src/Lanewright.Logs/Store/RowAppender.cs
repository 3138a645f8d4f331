using DuckDB.NET.Native;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>Hands rows to the engine as blocks of columns: value by value would take longer than reading them.</summary>
internal static unsafe class RowAppender
{
    /// <summary>The columns of the table that rows are appended to, in order.</summary>
    internal const string Columns =
        "unit INTEGER, season INTEGER, line INTEGER, route INTEGER, material INTEGER, segment INTEGER, moment TIMESTAMPTZ, seconds DOUBLE, "
        + "counts DOUBLE, reading DOUBLE, metres DOUBLE, odometer DOUBLE, speed DOUBLE, target DOUBLE, latitude DOUBLE, longitude DOUBLE, "
        + "gap BOOLEAN, reset BOOLEAN";

    private const int Block = 2048;

    private static readonly DuckDBType[] Types =
    [
        DuckDBType.Integer, DuckDBType.Integer, DuckDBType.Integer, DuckDBType.Integer, DuckDBType.Integer, DuckDBType.Integer,
        DuckDBType.TimestampTz, DuckDBType.Double, DuckDBType.Double, DuckDBType.Double, DuckDBType.Double, DuckDBType.Double,
        DuckDBType.Double, DuckDBType.Double, DuckDBType.Double, DuckDBType.Double, DuckDBType.Boolean, DuckDBType.Boolean,
    ];

    /// <summary>Appends rows to a table.</summary>
    internal static void Append(Engine engine, string table, LogRows rows, ReadOnlySpan<int> order, int seasonBegins)
    {
        Check(NativeMethods.Appender.DuckDBAppenderCreate(engine.Connection.NativeConnection, null!, table, out var appender), "open");
        using (appender)
        {
            var types = Array.ConvertAll(Types, NativeMethods.LogicalType.DuckDBCreateLogicalType);
            using var chunk = NativeMethods.DataChunks.DuckDBCreateDataChunk(Array.ConvertAll(types, t => t.DangerousGetHandle()), (ulong)types.Length);
            foreach (var type in types) type.Dispose();
            for (var at = 0; at < order.Length; at += Block)
            {
                NativeMethods.DataChunks.DuckDBDataChunkReset(chunk);
                var part = order.Slice(at, Math.Min(Block, order.Length - at));
                Fill(chunk, rows, part, seasonBegins);
                NativeMethods.DataChunks.DuckDBDataChunkSetSize(chunk, (ulong)part.Length);
                Check(NativeMethods.Appender.DuckDBAppendDataChunk(appender, chunk), "append");
            }

            Check(NativeMethods.Appender.DuckDBAppenderClose(appender), "close");
        }
    }

    private static void Fill(DuckDBDataChunk chunk, LogRows rows, ReadOnlySpan<int> order, int seasonBegins)
    {
        Copy(chunk, 0, rows.Unit, order);
        Season(chunk, 1, rows.At, order, seasonBegins);
        Copy(chunk, 2, rows.Line, order);
        Names(chunk, 3, rows.Route, order);
        Names(chunk, 4, rows.Material, order);
        Names(chunk, 5, rows.Segment, order);
        Copy(chunk, 6, rows.At, order);
        double[][] numbers = [rows.Seconds, rows.Counts, rows.Reading, rows.Metres, rows.Odometer, rows.Speed, rows.Target, rows.Latitude, rows.Longitude];
        for (var c = 0; c < numbers.Length; c++) Numbers(chunk, 7 + c, numbers[c], order);
        Copy(chunk, 16, rows.Gap, order);
        Copy(chunk, 17, rows.Reset, order);
    }

    private static T* Data<T>(DuckDBDataChunk chunk, int column, out IntPtr vector)
        where T : unmanaged
    {
        vector = NativeMethods.DataChunks.DuckDBDataChunkGetVector(chunk, column);
        return (T*)NativeMethods.Vectors.DuckDBVectorGetData(vector);
    }

    private static void Copy<T>(DuckDBDataChunk chunk, int column, T[] values, ReadOnlySpan<int> order)
        where T : unmanaged
    {
        var data = Data<T>(chunk, column, out _);
        for (var i = 0; i < order.Length; i++) data[i] = values[order[i]];
    }

    // The season of a moment changes so seldom that its limits are remembered.
    private static void Season(DuckDBDataChunk chunk, int column, long[] at, ReadOnlySpan<int> order, int begins)
    {
        var data = Data<int>(chunk, column, out _);
        long from = 0, to = 0;
        var year = 0;
        for (var i = 0; i < order.Length; i++)
        {
            var moment = at[order[i]];
            if (moment < from || moment >= to)
            {
                year = LogSeason.YearOf(moment, begins);
                from = LogSeason.Begin(year, begins);
                to = LogSeason.Begin(year + 1, begins);
            }

            data[i] = year;
        }
    }

    private static void Names(DuckDBDataChunk chunk, int column, int[] values, ReadOnlySpan<int> order)
    {
        var data = Data<int>(chunk, column, out var vector);
        ulong* valid = null;
        for (var i = 0; i < order.Length; i++)
        {
            data[i] = values[order[i]];
            if (data[i] < 0) Clear(vector, ref valid, i);
        }
    }

    private static void Numbers(DuckDBDataChunk chunk, int column, double[] values, ReadOnlySpan<int> order)
    {
        var data = Data<double>(chunk, column, out var vector);
        ulong* valid = null;
        for (var i = 0; i < order.Length; i++)
        {
            data[i] = values[order[i]];
            if (double.IsNaN(data[i])) Clear(vector, ref valid, i);
        }
    }

    private static void Clear(IntPtr vector, ref ulong* valid, int row)
    {
        if (valid is null)
        {
            NativeMethods.Vectors.DuckDBVectorEnsureValidityWritable(vector);
            valid = NativeMethods.Vectors.DuckDBVectorGetValidity(vector);
        }

        valid[row >> 6] &= ~(1UL << (row & 63));
    }

    private static void Check(DuckDBState state, string what)
    {
        if (state != DuckDBState.Success) throw new LogException($"Rows could not be handed to the store of logs ({what}).");
    }
}
