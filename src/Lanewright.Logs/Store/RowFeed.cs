using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;
using DuckDB.NET.Data;
using DuckDB.NET.Native;
using Lanewright.Logs.Rows;

namespace Lanewright.Logs.Store;

/// <summary>
/// Lets the engine read rows where they are, as a table function that hands over blocks of columns: value by value, or through a table of
/// the engine's own, would take longer than reading the lines. Belongs to one thread at a time.
/// </summary>
internal sealed unsafe class RowFeed : IDisposable
{
    private const int Block = 2048;

    private static readonly (string Name, DuckDBType Type)[] Columns =
    [
        ("moment", DuckDBType.TimestampTz), ("seconds", DuckDBType.Double), ("counts", DuckDBType.Double), ("reading", DuckDBType.Double),
        ("metres", DuckDBType.Double), ("odometer", DuckDBType.Double), ("speed", DuckDBType.Double), ("target", DuckDBType.Double),
        ("latitude", DuckDBType.Double), ("longitude", DuckDBType.Double), ("gap", DuckDBType.Boolean), ("reset", DuckDBType.Boolean),
        ("route", DuckDBType.Varchar), ("material", DuckDBType.Varchar), ("segment", DuckDBType.Varchar), ("line", DuckDBType.Integer),
    ];

    private readonly DuckDBConnection connection;
    private readonly GCHandle self;
    private readonly List<ShortText> texts = [];
    private LogRows rows = new(0);
    private int[] order = [];
    private IReadOnlyList<string> names = [];
    private int next;
    private int end;

    /// <summary>Registers the function <c>feed</c> with a number behind it.</summary>
    internal RowFeed(Engine engine, int number)
    {
        Function = $"feed{number}()";
        connection = engine.Connection.Duplicate();
        connection.Open();
        self = GCHandle.Alloc(this);
        var function = NativeMethods.TableFunction.DuckDBCreateTableFunction();
        NativeMethods.TableFunction.DuckDBTableFunctionSetName(function, $"feed{number}");
        NativeMethods.TableFunction.DuckDBTableFunctionSetExtraInfo(function, GCHandle.ToIntPtr(self), &Nothing);
        NativeMethods.TableFunction.DuckDBTableFunctionSetBind(function, &Bind);
        NativeMethods.TableFunction.DuckDBTableFunctionSetInit(function, &Nothing);
        NativeMethods.TableFunction.DuckDBTableFunctionSetFunction(function, &Hand);
        var state = NativeMethods.TableFunction.DuckDBRegisterTableFunction(connection.NativeConnection, function);
        NativeMethods.TableFunction.DuckDBDestroyTableFunction(ref function);
        if (state != DuckDBState.Success) throw new LogException("The store of logs would not take rows.");
    }

    /// <summary>The function as SQL calls it.</summary>
    internal string Function { get; }

    /// <summary>Runs a statement over some rows.</summary>
    /// <param name="from">The rows.</param>
    /// <param name="places">Their places, in order.</param>
    /// <param name="begin">The first of <paramref name="places"/>.</param>
    /// <param name="behind">The one behind the last.</param>
    /// <param name="book">Names that rows hold numbers of.</param>
    /// <param name="sql">What to do with <see cref="Function"/>.</param>
    internal void Run(LogRows from, int[] places, int begin, int behind, LogNameBook book, string sql)
    {
        rows = from;
        order = places;
        next = begin;
        end = behind;
        names = book.Names.All;
        while (texts.Count < names.Count) texts.Add(ShortText.Of(names[texts.Count]));
        Engine.Run(connection, sql);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        connection.Dispose();
        self.Free();
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void Nothing(IntPtr info)
    {
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void Bind(IntPtr info)
    {
        foreach (var (name, type) in Columns)
        {
            using var logical = NativeMethods.LogicalType.DuckDBCreateLogicalType(type);
            NativeMethods.TableFunction.DuckDBBindAddResultColumn(info, name, logical);
        }
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void Hand(IntPtr info, IntPtr chunk)
    {
        // Nothing may be thrown into the engine.
        try
        {
            // The chunk is the engine's, so the handle must not free it.
            using var handle = new DuckDBDataChunk(chunk);
            ((RowFeed)GCHandle.FromIntPtr(NativeMethods.TableFunction.DuckDBFunctionGetExtraInfo(info)).Target!).Fill(handle);
            handle.SetHandleAsInvalid();
        }
#pragma warning disable CA1031 // Do not catch general exception types: said to the engine, which says it to the caller.
        catch (Exception wrong)
        {
            NativeMethods.TableFunction.DuckDBFunctionSetError(info, wrong.Message);
        }
#pragma warning restore CA1031
    }

    private void Fill(DuckDBDataChunk chunk)
    {
        var part = order.AsSpan(next, Math.Min(Block, end - next));
        next += part.Length;
        Copy(chunk, 0, rows.At, part);
        Numbers(chunk, 1, rows.Seconds, part);
        Numbers(chunk, 2, rows.Counts, part);
        Numbers(chunk, 3, rows.Reading, part);
        Numbers(chunk, 4, rows.Metres, part);
        Numbers(chunk, 5, rows.Odometer, part);
        Numbers(chunk, 6, rows.Speed, part);
        Numbers(chunk, 7, rows.Target, part);
        Numbers(chunk, 8, rows.Latitude, part);
        Numbers(chunk, 9, rows.Longitude, part);
        Copy(chunk, 10, rows.Gap, part);
        Copy(chunk, 11, rows.Reset, part);
        Texts(chunk, 12, rows.Route, part);
        Texts(chunk, 13, rows.Material, part);
        Texts(chunk, 14, rows.Segment, part);
        Copy(chunk, 15, rows.Line, part);
        NativeMethods.DataChunks.DuckDBDataChunkSetSize(chunk, (ulong)part.Length);
    }

    private static T* Data<T>(DuckDBDataChunk chunk, int column, out IntPtr vector)
        where T : unmanaged
    {
        vector = NativeMethods.DataChunks.DuckDBDataChunkGetVector(chunk, column);
        return (T*)NativeMethods.Vectors.DuckDBVectorGetData(vector);
    }

    private static void Copy<T>(DuckDBDataChunk chunk, int column, T[] values, ReadOnlySpan<int> part)
        where T : unmanaged
    {
        var data = Data<T>(chunk, column, out _);
        for (var i = 0; i < part.Length; i++) data[i] = values[part[i]];
    }

    private static void Numbers(DuckDBDataChunk chunk, int column, double[] values, ReadOnlySpan<int> part)
    {
        var data = Data<double>(chunk, column, out var vector);
        ulong* valid = null;
        for (var i = 0; i < part.Length; i++)
        {
            data[i] = values[part[i]];
            if (double.IsNaN(data[i])) Clear(vector, ref valid, i);
        }
    }

    private void Texts(DuckDBDataChunk chunk, int column, int[] values, ReadOnlySpan<int> part)
    {
        var data = Data<ShortText>(chunk, column, out var vector);
        ulong* valid = null;
        for (var i = 0; i < part.Length; i++)
        {
            var name = values[part[i]];
            if (name < 0)
            {
                Clear(vector, ref valid, i);
            }
            else if (texts[name].Length <= ShortText.Most)
            {
                data[i] = texts[name];
            }
            else
            {
                NativeMethods.Vectors.DuckDBVectorAssignStringElement(vector, (ulong)i, names[name]);
            }
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

    /// <summary>A text as the engine holds it when it has at most 12 bytes: its length, and the bytes themselves.</summary>
    [InlineArray(4)]
    private struct ShortText
    {
        internal const int Most = 12;

        private uint first;

        internal readonly uint Length => first;

        internal static ShortText Of(string text)
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            var made = default(ShortText);
            made[0] = (uint)bytes.Length;
            if (bytes.Length <= Most) bytes.CopyTo(MemoryMarshal.AsBytes(((Span<uint>)made)[1..]));
            return made;
        }
    }
}
