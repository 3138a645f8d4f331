using System.Globalization;
using System.Xml;
using Lanewright.Core.Season.Roads;
using Lanewright.Core.Text;

namespace Lanewright.Logs.Roads;

/// <summary>Reads the roads of an OpenStreetMap extract as XML (API version 0.6): ways with the tag highway that a truck can drive.</summary>
internal static class OpenStreetMap
{
    // Values of the tag highway that stand for roads; the others are paths, or not built.
    private static readonly HashSet<string> Roads =
    [
        "motorway", "motorway_link", "trunk", "trunk_link", "primary", "primary_link", "secondary", "secondary_link", "tertiary", "tertiary_link",
        "unclassified", "residential", "living_street", "service", "road",
    ];

    /// <summary>The roads; null when it is no extract of OpenStreetMap.</summary>
    internal static List<RoadLine>? Read(Stream file, List<RefusedRoad> refused)
    {
        var places = new Dictionary<long, GeoPoint>();
        var lines = new List<RoadLine>();
        // No outer declarations: nothing is fetched and nothing grows.
        using var xml = XmlReader.Create(file, new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreWhitespace = true });
        xml.MoveToContent();
        if (xml.Name != "osm") return null;
        while (xml.Read())
        {
            if (xml.NodeType is not XmlNodeType.Element) continue;
            if (xml.Name == "node")
            {
                if (Whole(xml["id"]) is { } id && Number(xml["lat"]) is { } latitude && Number(xml["lon"]) is { } longitude) places[id] = new(latitude, longitude);
                else refused.Add(new($"node {Excerpt.Of(xml["id"])}", "a node with id, lat and lon was expected"));
            }
            else if (xml.Name == "way")
            {
                Way(xml, places, lines, refused);
            }
        }

        return lines;
    }

    private static void Way(XmlReader xml, Dictionary<long, GeoPoint> places, List<RoadLine> lines, List<RefusedRoad> refused)
    {
        var name = $"way {Excerpt.Of(xml["id"])}";
        var nodes = new List<string?>();
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!xml.IsEmptyElement)
        {
            while (xml.Read() && !(xml.NodeType is XmlNodeType.EndElement && xml.Name == "way"))
            {
                if (xml.NodeType is not XmlNodeType.Element) continue;
                if (xml.Name == "nd") nodes.Add(xml["ref"]);
                else if (xml.Name == "tag" && xml["k"] is { } key) tags[key] = xml["v"] ?? "";
            }
        }

        if (!tags.TryGetValue("highway", out var highway) || !Roads.Contains(highway)) return;
        var points = new List<GeoPoint>();
        var keys = new List<string>();
        foreach (var node in nodes)
        {
            if (Whole(node) is not { } id || !places.TryGetValue(id, out var place))
            {
                // At the border of an extract ways lose points.
                refused.Add(new(name, $"node {Excerpt.Of(node)} is not in the file before its way; the way is taken in without it"));
                continue;
            }

            points.Add(place);
            keys.Add(id.ToString(CultureInfo.InvariantCulture));
        }

        var oneWay = tags.TryGetValue("oneway", out var said) ? RoadFile.OneWay(said)
            : highway.StartsWith("motorway", StringComparison.Ordinal) || tags.GetValueOrDefault("junction") == "roundabout" ? 1 : 0;
        if (RoadLine.Of(
            name, Excerpt.Of(tags.GetValueOrDefault("name") ?? tags.GetValueOrDefault("ref") ?? "", 100), points, keys, oneWay,
            RoadFile.Lanes(tags.GetValueOrDefault("lanes"), name, refused), RoadFile.Width(tags.GetValueOrDefault("width"), name, refused), refused) is { } line)
            lines.Add(line);
    }

    private static long? Whole(string? text) => long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static double? Number(string? text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
