using System.Text;
using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Writes findings alone, for when there is no report.</summary>
public static class FindingsWriter
{
    /// <summary>The findings as JSON text.</summary>
    public static string Write(IReadOnlyList<Finding> findings, TextCulture culture, UnitPreferences units)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("format", "lanewright-findings/1");
            json.WriteBoolean("usable", false);
            ReportWriter.Findings(json, findings, culture, units);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
