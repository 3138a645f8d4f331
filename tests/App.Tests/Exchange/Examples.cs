using System.Text.Json.Nodes;
using Lanewright.Core.Exchange;
using Lanewright.Core.Tests;
using Lanewright.Files;

namespace Lanewright.App.Tests.Exchange;

/// <summary>The files of the folder <c>examples</c>.</summary>
internal static class Examples
{
    /// <summary>All of them, by name.</summary>
    public static IReadOnlyList<string> All { get; } =
        [.. Directory.GetFiles(Repository.File("examples")).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    /// <summary>The files of plans.</summary>
    public static IReadOnlyList<string> Plans { get; } = [.. All.Where(name => name.Contains("-plan.", StringComparison.Ordinal))];

    /// <summary>The sheets.</summary>
    public static IReadOnlyList<string> Sheets { get; } = [.. All.Except(Plans)];

    public static string PathOf(string name) => Repository.File("examples", name);

    /// <summary>A file taken apart.</summary>
    public static SheetTree Tree(string name) => SheetFile.Read(PathOf(name));

    /// <summary>A tree as JSON; what YAML and CSV keep as text stays text.</summary>
    public static JsonNode? Json(SheetNode node)
    {
        switch (node.Kind)
        {
            case NodeKind.Map:
                var map = new JsonObject();
                foreach (var child in node.Children) map.Add(child.Name!, Json(child));
                return map;
            case NodeKind.List:
                return new JsonArray([.. node.Children.Select(Json)]);
            case NodeKind.Text:
                return JsonValue.Create(node.Literal);
            default:
                return node.Literal.Length == 0 ? null : JsonNode.Parse(node.Literal);
        }
    }
}
