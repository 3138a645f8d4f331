using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Lanewright.Files;

namespace Lanewright.App.Tests.Mutation;

/// <summary>Writes a sheet that is held as JSON nodes in each of the three syntaxes.</summary>
internal static class SheetTexts
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text in UTF-8; null when the syntax cannot say it (CSV has no empty groups and lists).</summary>
    public static byte[]? Write(JsonNode sheet, SheetSyntax syntax)
    {
        if (syntax != SheetSyntax.Csv) return Encoding.UTF8.GetBytes(sheet.ToJsonString(Relaxed));
        var rows = new StringBuilder();
        return Row(sheet, "", rows) ? Encoding.UTF8.GetBytes(rows.ToString()) : null;
    }

    private static bool Row(JsonNode? node, string path, StringBuilder rows)
    {
        switch (node)
        {
            case JsonObject { Count: > 0 } map:
                return map.All(field => Row(field.Value, path.Length == 0 ? field.Key : $"{path}.{field.Key}", rows));
            case JsonArray { Count: > 0 } list:
                for (var i = 0; i < list.Count; i++)
                    if (!Row(list[i], string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"), rows)) return false;
                return true;
            case JsonObject or JsonArray:
                return false;
            default:
                var text = node is null ? "" : node.GetValueKind() == JsonValueKind.String ? node.GetValue<string>() : node.ToJsonString();
                rows.Append(CultureInfo.InvariantCulture, $"{path},\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\n");
                return true;
        }
    }
}
