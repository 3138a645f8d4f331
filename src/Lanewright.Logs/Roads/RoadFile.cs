using Lanewright.Core.Quantities;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Roads;

/// <summary>A piece of a file that was not taken in, and why.</summary>
/// <param name="What">Which: its identity or its place in the file.</param>
/// <param name="Why">What was read and what was expected.</param>
public sealed record RefusedRoad(string What, Phrase Why);

/// <summary>Roads as read from a file.</summary>
/// <param name="Pieces">Pieces that meet at their ends only.</param>
/// <param name="Refused">What was not taken in.</param>
public sealed record RoadReading(IReadOnlyList<RoadPiece> Pieces, IReadOnlyList<RefusedRoad> Refused);

/// <summary>
/// Reads roads from GeoJSON (RFC 7946) or an extract of OpenStreetMap as XML. Lines are cut where they share a point with another, so
/// that a way can turn there. Names of properties are OpenStreetMap's keys: name, ref, oneway, lanes, width.
/// </summary>
public static class RoadFile
{
    private const long MostBytes = 400_000_000;

    /// <summary>Reads a file.</summary>
    /// <exception cref="LogException">It cannot be read, or holds no road.</exception>
    public static RoadReading Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var name = Excerpt.Of(path, 200);
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes } large)
                throw new LogException($"{name} has {large.Length / 1_000_000} MB; up to {MostBytes / 1_000_000} MB are taken. Cut out the area that the trucks drive in.");
            using var file = File.OpenRead(path);
            var refused = new List<RefusedRoad>();
            var lines = (FirstSign(file) == '<' ? OpenStreetMap.Read(file, refused) : GeoJson.Read(file, refused))
                ?? throw new LogException($"{name}: expected GeoJSON with features, or OpenStreetMap as XML.");
            var pieces = Cut(lines, refused);
            return pieces.Count > 0
                ? new(pieces, refused)
                : throw new LogException(refused.Count > 0
                    ? (Phrase)$"{name} holds no road; pieces that were refused: {refused.Count}, the first: {refused[0].What}: {refused[0].Why}." : $"{name} holds no road.");
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{name} could not be read: {wrong.Message}", wrong);
        }
        catch (Exception wrong) when (wrong is System.Text.Json.JsonException or System.Xml.XmlException or InvalidOperationException)
        {
            // Half characters come to light only when a text is taken out.
            throw new LogException($"{name}: expected GeoJSON, or OpenStreetMap as XML. {wrong.Message}", wrong);
        }
    }

    /// <summary>Lanes from a text such as 2; null where nothing is said.</summary>
    internal static double? Lanes(string? text, string what, List<RefusedRoad> refused) => Number(
        text, "lanes", "a number from 0.5 to 20", what, refused, value => value is >= 0.5 and <= 20,
        read => QuantityText.ReadNumber(read, TextCulture.Invariant).TryGet(out var lanes) ? lanes : null);

    /// <summary>Width in metres from a text such as 7.5, 7.5 m or 24 ft; null where nothing is said.</summary>
    internal static double? Width(string? text, string what, List<RefusedRoad> refused) => Number(
        text, "width", "a length from 1 to 100 m", what, refused, value => value is >= 1 and <= 100,
        read => QuantityText.Read<Length>(read, TextCulture.Invariant, Units.Metre).TryGet(out var width) ? width.Si : null);

    /// <summary>Whether a road is driven as its points run (1), against them (-1) or both ways (0).</summary>
    internal static int OneWay(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        "yes" or "true" or "1" => 1,
        "-1" or "reverse" => -1,
        _ => 0,
    };

    // The road stays, only what is said of it is left out, and that is told.
    private static double? Number(
        string? text, string name, Phrase expected, string what, List<RefusedRoad> refused, Func<double, bool> isIn, Func<string, double?> read)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        if (read(text.Trim()) is { } value && isIn(value)) return value;
        refused.Add(new(what, $"{name}: '{Excerpt.Of(text)}' was read, {expected} was expected; the road is taken in without it"));
        return null;
    }

    private static int FirstSign(FileStream file)
    {
        int sign;
        do sign = file.ReadByte(); while (sign is ' ' or '\t' or '\r' or '\n' or 0xEF or 0xBB or 0xBF);
        file.Position = 0;
        return sign;
    }

    // A point that two lines share, or one line twice, is a place where a way can turn.
    private static List<RoadPiece> Cut(List<RoadLine> lines, List<RefusedRoad> refused)
    {
        var uses = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var key in lines.SelectMany(line => line.Keys)) uses[key] = uses.GetValueOrDefault(key) + 1;
        var pieces = new List<RoadPiece>();
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            var id = line.Id;
            for (var again = 2; !known.Add(id); again++) id = $"{line.Id} ({again})";
            var from = 0;
            var number = 0;
            for (var i = 1; i < line.Points.Count; i++)
            {
                if (i < line.Points.Count - 1 && uses[line.Keys[i]] < 2) continue;
                IReadOnlyList<GeoPoint> points = [.. line.Points.Skip(from).Take(i - from + 1)];
                if (points.Distinct().Count() > 1)
                {
                    var whole = from == 0 && i == line.Points.Count - 1;
                    pieces.Add(new(whole ? id : $"{id}:{number++}", line.Name, line.Keys[from], line.Keys[i], points, line.IsTwoWay, line.Lanes, line.Width));
                }
                else
                {
                    refused.Add(new(id, "a piece has no length"));
                }

                from = i;
            }
        }

        return [.. pieces.DistinctBy(piece => piece.Id)];
    }
}

/// <summary>A road as a file draws it, not cut yet. Points with equal keys are one place.</summary>
internal sealed record RoadLine(
    string Id, string Name, IReadOnlyList<GeoPoint> Points, IReadOnlyList<string> Keys, bool IsTwoWay, double? Lanes, double? Width)
{
    /// <summary>A line, turned about where it is driven against its points; null with a reason where it is none.</summary>
    internal static RoadLine? Of(
        string id, string name, List<GeoPoint> points, List<string> keys, int oneWay, double? lanes, double? width, List<RefusedRoad> refused)
    {
        if (points.Count < 2)
        {
            refused.Add(new(id, $"{points.Count} point was read, at least 2 were expected|{points.Count} points were read, at least 2 were expected"));
            return null;
        }

        if (points.FirstOrDefault(point => !(Math.Abs(point.Latitude) <= 90 && Math.Abs(point.Longitude) <= 180)) is var wrong && wrong != default)
        {
            refused.Add(new(id, $"{wrong.Longitude}, {wrong.Latitude} was read; longitude and latitude in degrees (WGS 84) were expected"));
            return null;
        }

        if (oneWay < 0)
        {
            points.Reverse();
            keys.Reverse();
        }

        return new(id, name, points, keys, oneWay == 0, lanes, width);
    }
}
