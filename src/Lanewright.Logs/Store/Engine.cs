using System.Globalization;
using System.Text;
using DuckDB.NET.Data;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Store;

/// <summary>
/// The embedded query engine, DuckDB, in memory. Its native library of 70 MB is loaded with the first instance and by nothing
/// else. It may not fetch anything from a network.
/// </summary>
internal sealed class Engine : IDisposable
{
    internal const int DefaultThreads = 2;

    private Engine(DuckDBConnection connection) => Connection = connection;

    internal DuckDBConnection Connection { get; }

    /// <summary>Starts it.</summary>
    /// <param name="spill">A folder for what does not fit in memory.</param>
    /// <param name="megabytes">Most memory it takes.</param>
    internal static Engine Open(string spill, int megabytes = 1000)
    {
        var connection = new DuckDBConnection("DataSource=:memory:");
        try
        {
            connection.Open();
            var engine = new Engine(connection);
            engine.Run("SET autoinstall_known_extensions = false");
            engine.Run("SET autoload_known_extensions = false");
            // A file that is written anew under its old name within a second would be taken for the old one.
            engine.Run("SET enable_external_file_cache = false");
            engine.Run("SET TimeZone = 'UTC'");
            engine.Run($"SET threads = {DefaultThreads}");
            engine.Run($"SET memory_limit = '{megabytes}MB'");
            engine.Run($"SET temp_directory = {Text(spill)}");
            return engine;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Starts it to read a folder, beside imports that may run meanwhile.</summary>
    internal static Engine OpenForReading() => Open(Path.Combine(Path.GetTempPath(), $"lanewright-logs-{Environment.ProcessId}"));

    /// <summary>A text as SQL writes it.</summary>
    internal static string Text(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";

    /// <summary>A number as SQL writes it.</summary>
    internal static string Number(double value) => double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) + "::DOUBLE" : "NULL::DOUBLE";

    /// <summary>A list of files as SQL writes it.</summary>
    internal static string List(IEnumerable<string> files)
    {
        var list = new StringBuilder("[");
        foreach (var file in files)
        {
            if (list.Length > 1) list.Append(", ");
            list.Append(Text(Plain(file)));
        }

        return list.Append(']').ToString();
    }

    // Files are named by patterns: what is meant as itself stands in brackets.
    private static string Plain(string file) => file.AsSpan().ContainsAny('[', '*', '?')
        ? file.Replace("[", "[[]", StringComparison.Ordinal).Replace("*", "[*]", StringComparison.Ordinal).Replace("?", "[?]", StringComparison.Ordinal)
        : file;

    /// <summary>Does something without an answer.</summary>
    internal void Run(string sql) => Run(Connection, sql);

    /// <summary>The same on another connection to the same engine.</summary>
    internal static void Run(DuckDBConnection connection, string sql)
    {
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            command.ExecuteNonQuery();
        }
        catch (DuckDBException wrong)
        {
            throw Said(wrong);
        }
    }

    /// <summary>Asks, and hands over each row of the answer.</summary>
    internal void Ask(string sql, Action<DuckDBDataReader> row)
    {
        try
        {
            using var command = Connection.CreateCommand();
            command.CommandText = sql;
            command.UseStreamingMode = true;
            using var reader = command.ExecuteReader();
            while (reader.Read()) row(reader);
        }
        catch (DuckDBException wrong)
        {
            throw Said(wrong);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Connection.Dispose();

    private static LogException Said(DuckDBException wrong) => new($"The store of logs could not do it: {Excerpt.Of(wrong.Message, 400)}", wrong);
}
