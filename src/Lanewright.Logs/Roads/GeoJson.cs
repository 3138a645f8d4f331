using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Roads;

/// <summary>Reads and writes roads as GeoJSON (RFC 7946).</summary>
internal static class GeoJson
{
    /// <summary>The roads; null when it is no collection of features.</summary>
    internal static List<RoadLine>? Read(Stream file, List<RefusedRoad> refused)
    {
        using var document = JsonDocument.Parse(file, new() { MaxDepth = 32, CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        var root = document.RootElement;
        if (root.ValueKind is not JsonValueKind.Object || !root.TryGetProperty("features", out var features) || features.ValueKind is not JsonValueKind.Array)
            return null;
        var lines = new List<RoadLine>();
        var number = 0;
        foreach (var feature in features.EnumerateArray())
        {
            number++;
            var properties = Member(feature, "properties");
            var id = (Text(feature, "id") ?? Text(properties, "id") ?? Text(properties, "@id")) is { Length: > 0 } said ? Excerpt.Of(said, 100) : $"feature {number}";
            var geometry = Member(feature, "geometry");
            var coordinates = Member(geometry, "coordinates");
            switch (Text(geometry, "type"))
            {
                case "LineString":
                    Add(id, coordinates);
                    break;
                case "MultiLineString" when coordinates.ValueKind is JsonValueKind.Array:
                    var part = 0;
                    foreach (var one in coordinates.EnumerateArray()) Add($"{id}/{++part}", one);
                    break;
                // Points of signals and areas of parks are in every extract; they are no roads, and no fault either.
                case "Point" or "MultiPoint" or "Polygon" or "MultiPolygon":
                    break;
                case var other:
                    refused.Add(new(id, $"geometry: '{Excerpt.Of(other)}' was read, LineString or MultiLineString was expected"));
                    break;
            }

            void Add(string name, JsonElement places)
            {
                if (Points(places) is not { } points)
                {
                    refused.Add(new(name, "coordinates: a list of [longitude, latitude] was expected"));
                    return;
                }

                var oneWay = RoadFile.OneWay(Text(properties, "oneway"));
                if (oneWay == 0 && properties.ValueKind is JsonValueKind.Object && properties.TryGetProperty("oneway", out var flag) && flag.ValueKind is JsonValueKind.True)
                    oneWay = 1;
                List<string> keys = [.. points.Select(Key)];
                if (RoadLine.Of(
                    name, Excerpt.Of(Text(properties, "name") ?? Text(properties, "ref") ?? "", 100), points, keys, oneWay,
                    RoadFile.Lanes(Text(properties, "lanes"), name, refused), RoadFile.Width(Text(properties, "width"), name, refused), refused) is { } line)
                    lines.Add(line);
            }
        }

        return lines;
    }

    internal static void Write(Stream file, IReadOnlyList<RoadPiece> pieces)
    {
        using var json = new Utf8JsonWriter(file);
        json.WriteStartObject();
        json.WriteString("type", "FeatureCollection");
        json.WriteStartArray("features");
        foreach (var piece in pieces)
        {
            json.WriteStartObject();
            json.WriteString("type", "Feature");
            json.WriteString("id", piece.Id);
            json.WriteStartObject("properties");
            json.WriteString("name", piece.Name);
            json.WriteString("oneway", piece.IsTwoWay ? "no" : "yes");
            if (piece.Lanes is { } lanes) json.WriteNumber("lanes", lanes);
            if (piece.Width is { } width) json.WriteNumber("width", width);
            json.WriteEndObject();
            WriteGeometry(json, piece.Points);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>A line as the member "geometry".</summary>
    internal static void WriteGeometry(Utf8JsonWriter json, IEnumerable<GeoPoint> points)
    {
        json.WriteStartObject("geometry");
        json.WriteString("type", "LineString");
        json.WriteStartArray("coordinates");
        WritePlaces(json, points);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Lines as one member "geometry"; null when there is none.</summary>
    internal static void WriteGeometry(Utf8JsonWriter json, IReadOnlyList<IReadOnlyList<GeoPoint>> lines)
    {
        if (lines.Count == 0)
        {
            json.WriteNull("geometry");
            return;
        }

        json.WriteStartObject("geometry");
        json.WriteString("type", "MultiLineString");
        json.WriteStartArray("coordinates");
        foreach (var points in lines)
        {
            json.WriteStartArray();
            WritePlaces(json, points);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WritePlaces(Utf8JsonWriter json, IEnumerable<GeoPoint> points)
    {
        foreach (var point in points)
        {
            json.WriteStartArray();
            json.WriteNumberValue(point.Longitude);
            json.WriteNumberValue(point.Latitude);
            json.WriteEndArray();
        }
    }

    // One centimetre: programs round what they write.
    private static string Key(GeoPoint point) => string.Create(CultureInfo.InvariantCulture, $"{point.Longitude:F7} {point.Latitude:F7}");

    private static List<GeoPoint>? Points(JsonElement places)
    {
        if (places.ValueKind is not JsonValueKind.Array) return null;
        var points = new List<GeoPoint>(places.GetArrayLength());
        foreach (var place in places.EnumerateArray())
        {
            if (place.ValueKind is not JsonValueKind.Array || place.GetArrayLength() < 2
                || place[0].ValueKind is not JsonValueKind.Number || place[1].ValueKind is not JsonValueKind.Number
                || !place[0].TryGetDouble(out var longitude) || !place[1].TryGetDouble(out var latitude)) return null;
            points.Add(new(latitude, longitude));
        }

        return points;
    }

    private static JsonElement Member(JsonElement element, string name) =>
        element.ValueKind is JsonValueKind.Object && element.TryGetProperty(name, out var member) ? member : default;

    private static string? Text(JsonElement element, string name) => Member(element, name) switch
    {
        { ValueKind: JsonValueKind.String } text => text.GetString(),
        { ValueKind: JsonValueKind.Number } number => number.GetRawText(),
        _ => null,
    };
}
