using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Xml;
using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Store;

/// <summary>A file of logs as lines: CSV as it is, GPX and Parquet turned into lines first, so that all three have one road.</summary>
internal static class SourceFile
{
    private const int MostTextOfField = 1000;

    internal static LogFileKind KindOf(string path, LogProfile profile) =>
        profile.Kind ?? Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".CSV" or ".TXT" or ".TSV" => LogFileKind.Csv,
            ".GPX" => LogFileKind.Gpx,
            ".PARQUET" => LogFileKind.Parquet,
            var ending => throw new LogException($"'{Excerpt.Of(ending)}' was read as the ending of the file; expected .csv, .gpx or .parquet. The profile can say it with \"file\"."),
        };

    /// <summary>SHA-256 of a file's bytes: the same content is the same file, whatever its name.</summary>
    internal static string Hash(string path, CancellationToken stop)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = ArrayPool<byte>.Shared.Rent(1 << 20);
        try
        {
            for (int read; (read = file.Read(buffer)) > 0;)
            {
                stop.ThrowIfCancellationRequested();
                hash.AppendData(buffer, 0, read);
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>The profile for lines that were made here.</summary>
    internal static LogProfile OfLines(LogProfile profile) =>
        profile with { Separator = ',', Culture = TextCulture.Invariant, Header = true };

    /// <summary>Writes the points of a GPX file (schema 1.1 of topografix.com) as lines. Columns are attributes of the point, its
    /// elements and those of its extensions, by their names without prefix; <c>track</c> is the name of the track.</summary>
    /// <exception cref="LogException">It is not GPX.</exception>
    internal static void WriteGpx(string path, LogProfile profile, string lines)
    {
        string[] columns = [.. profile.Columns.Values.Select(one => one.Column).OfType<string>().Distinct(StringComparer.Ordinal)];
        try
        {
            using var reader = XmlReader.Create(path, new()
            {
                DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreProcessingInstructions = true,
                MaxCharactersInDocument = 4_000_000_000, CloseInput = true,
            });
            using var writer = new StreamWriter(lines, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            writer.NewLine = "\n";
            writer.WriteLine(string.Join(',', columns.Select(Quoted)));
            if (reader.MoveToContent() is not XmlNodeType.Element || reader.LocalName != "gpx")
                throw new LogException($"'{Excerpt.Of(reader.LocalName)}' was read as the first element; expected gpx.");
            Points(reader, columns, writer);
        }
        catch (XmlException wrong)
        {
            throw new LogException($"It is not well-formed XML: {Excerpt.Of(wrong.Message, 200)} Nothing of it was taken in.", wrong);
        }
    }

    private static void Points(XmlReader reader, string[] columns, StreamWriter writer)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        var track = "";
        var element = "";
        var inPoint = false;
        while (reader.Read())
        {
            switch (reader.NodeType)
            {
                case XmlNodeType.Element when reader.LocalName == "trk":
                    track = "";
                    break;
                case XmlNodeType.Element when reader.LocalName == "trkpt":
                    values.Clear();
                    inPoint = !reader.IsEmptyElement;
                    while (reader.MoveToNextAttribute()) values[reader.LocalName] = reader.Value;
                    reader.MoveToElement();
                    if (!inPoint) Point(columns, values, track, writer);
                    break;
                case XmlNodeType.Element:
                    element = reader.LocalName;
                    if (inPoint)
                        while (reader.MoveToNextAttribute()) values.TryAdd(reader.LocalName, Cut(reader.Value));
                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA when inPoint:
                    values.TryAdd(element, Cut(reader.Value));
                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA when element == "name":
                    track = Cut(reader.Value);
                    break;
                case XmlNodeType.EndElement when reader.LocalName == "trkpt":
                    Point(columns, values, track, writer);
                    inPoint = false;
                    break;
            }
        }
    }

    private static void Point(string[] columns, Dictionary<string, string> values, string track, StreamWriter writer)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            if (i > 0) writer.Write(',');
            writer.Write(Quoted(columns[i] == "track" ? track : values.GetValueOrDefault(columns[i], "")));
        }

        writer.WriteLine();
    }

    private static string Cut(string text) => text.Length > MostTextOfField ? text[..MostTextOfField] : text;

    private static string Quoted(string text) =>
        '"' + text.ReplaceLineEndings(" ").Trim().Replace("\"", "\"\"", StringComparison.Ordinal) + '"';

    /// <summary>Writes the rows of a Parquet file as lines.</summary>
    internal static void WriteParquet(Engine engine, string path, LogProfile profile, string lines)
    {
        var source = $"read_parquet({Engine.List([path])}, hive_partitioning = false)";
        var has = new HashSet<string>(StringComparer.Ordinal);
        engine.Ask($"SELECT column_name FROM (DESCRIBE SELECT * FROM {source})", row => has.Add(row.GetString(0)));
        string[] wanted = [.. profile.Columns.Values.Select(one => one.Column).OfType<string>().Distinct(StringComparer.Ordinal)];
        foreach (var one in wanted)
            if (!has.Contains(one))
                throw new LogException($"The column '{Excerpt.Of(one)}' of the profile is not in the file; it has {Excerpt.Of(string.Join(", ", has.Take(30)), 300)}.");
        var columns = wanted.Select(one => $"translate({Name(one)}::VARCHAR, chr(10) || chr(13), '  ') AS {Name(one)}");
        engine.Run($"COPY (SELECT {string.Join(", ", columns)} FROM {source}) TO {Engine.Text(lines)} (FORMAT csv, HEADER true, DELIMITER ',', QUOTE '\"', ESCAPE '\"')");
    }

    private static string Name(string column) => '"' + column.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';
}
