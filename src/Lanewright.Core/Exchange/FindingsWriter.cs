using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Writes findings alone, for when there is no report.</summary>
public static class FindingsWriter
{
    /// <summary>The format written.</summary>
    public const string Format = "lanewright-findings/1";

    /// <summary>The findings as JSON text.</summary>
    public static string Write(IReadOnlyList<Finding> findings, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return JsonText.Object(json =>
        {
            json.WriteString("format", Format);
            json.WriteBoolean("usable", false);
            ReportWriter.Findings(json, findings, culture, units);
        });
    }
}
