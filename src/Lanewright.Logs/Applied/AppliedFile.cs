using System.Globalization;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;
using Lanewright.Logs.Roads;

namespace Lanewright.Logs.Applied;

/// <summary>A ledger as a file; values in SI.</summary>
public static class AppliedFile
{
    private const string Columns =
        "name,mass_kg,u_kg,expanded_kg,target_kg,applied_on_target_kg,driven_m,seconds,over_s,under_s,rows,gaps,resets,counts_without_constant,constants";

    /// <summary>Writes CSV; the last line, named in <c>name</c> as "all", is the sum.</summary>
    /// <exception cref="LogException">The file cannot be written.</exception>
    public static void WriteCsv(string path, AppliedAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        try
        {
            using var writer = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
            writer.WriteLine(Columns);
            foreach (var line in answer.Lines.Append(answer.Total with { Name = "all" }))
                writer.WriteLine('"' + line.Name.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"," + string.Join(',', Numbers(line).Select(n => n.ToString("R", CultureInfo.InvariantCulture))));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{Excerpt.Of(path, 200)} could not be written: {wrong.Message}", wrong);
        }
    }

    /// <summary>Writes Parquet, without the sum.</summary>
    /// <exception cref="LogException">The file cannot be written.</exception>
    public static void WriteParquet(string path, AppliedAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var columns = Columns.Split(',');
        TableFile.WriteParquet(
            path, [.. columns.Select((name, i) => new TableColumn(name, i == 0))],
            answer.Lines.Select(line => (IReadOnlyList<object?>)[line.Name, .. Numbers(line).Select(number => (object)number)]));
    }

    /// <summary>Writes GeoJSON (RFC 7946): a feature for each road segment and, where lines are about more, each of that; values in SI.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="roads">The roads that rows were put on.</param>
    /// <param name="answer">A ledger by segment, or by something else with segment.</param>
    /// <param name="by">What its lines are about besides the segment; null for the segment alone.</param>
    /// <returns>Lines that lie on no known segment, and are left out.</returns>
    public static int WriteGeoJson(Stream to, RoadNetwork roads, AppliedAnswer answer, AppliedBy? by)
    {
        ArgumentNullException.ThrowIfNull(roads);
        ArgumentNullException.ThrowIfNull(answer);
        var pieces = roads.Segments.ToDictionary(segment => segment.Piece.Id, segment => segment.Piece, StringComparer.Ordinal);
        var (columns, without) = (Columns.Split(','), 0);
        using var json = new Utf8JsonWriter(to);
        json.WriteStartObject();
        json.WriteString("type", "FeatureCollection");
        json.WriteStartArray("features");
        foreach (var line in answer.Lines)
        {
            if (pieces.GetValueOrDefault(line.Names[^1]) is not { } piece)
            {
                without++;
                continue;
            }

            json.WriteStartObject();
            json.WriteString("type", "Feature");
            json.WriteStartObject("properties");
            if (by is { } what) json.WriteString(what.ToString().ToLowerInvariant(), line.Names[0]);
            json.WriteString("segment", piece.Id);
            json.WriteString("road", piece.Name);
            if (piece.Lanes is { } lanes) json.WriteNumber("lanes", lanes);
            var numbers = Numbers(line);
            for (var i = 0; i < numbers.Length; i++) json.WriteNumber(columns[i + 1], numbers[i]);
            json.WriteEndObject();
            GeoJson.WriteGeometry(json, piece.Points);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        return without;
    }

    private static double[] Numbers(AppliedLine line) =>
    [
        line.Mass.Value, line.Mass.StandardUncertainty, line.Expanded, line.TargetMass, line.AppliedOnTarget, line.Metres, line.Seconds, line.OverSeconds,
        line.UnderSeconds, line.Rows, line.Gaps, line.Resets, line.CountsWithoutConstant, line.Constants,
    ];
}
