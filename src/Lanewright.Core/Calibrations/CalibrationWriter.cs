using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// Writes a calibration's report for machines; described in docs/formats/calibrations.md. Numbers named <c>si</c> are in SI,
/// the others in the unit beside them.
/// </summary>
public static class CalibrationWriter
{
    /// <summary>The format written.</summary>
    public const string Format = "lanewright-calibration/1";

    /// <summary>The report as JSON text.</summary>
    public static string Write(
        CalibrationReport report, IReadOnlyList<Finding> readFindings, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(readFindings);
        return JsonText.Object(json =>
        {
            json.WriteString("format", Format);
            json.WriteString("kind", report.Kind.Word);
            json.WriteString("title", report.Head.Title);
            json.WriteString("spreader", report.Head.Spreader);
            json.WriteBoolean("invented", report.Head.Invented);
            json.WriteBoolean("usable", report.Usable && readFindings.All(f => f.Severity is not Severity.Stop));
            Content(json, report, culture, units, pictures: false);
            ReportWriter.Findings(json, [.. readFindings, .. report.Findings], culture, units);
        });
    }

    /// <summary>Writes figures, lines and tables, and pictures when asked, into the object that is open.</summary>
    internal static void Content(
        Utf8JsonWriter json, CalibrationReport report, TextCulture culture, UnitPreferences units, bool pictures)
    {
        json.WriteStartArray("figures");
        foreach (var figure in report.Figures) Write(json, figure, culture, units);
        json.WriteEndArray();
        json.WriteStartArray("lines");
        foreach (var line in report.Lines) json.WriteStringValue(line.Text(culture, units));
        json.WriteEndArray();
        json.WriteStartArray("tables");
        foreach (var table in report.Tables) Write(json, table, culture, units);
        json.WriteEndArray();
        if (!pictures) return;
        json.WriteStartArray("pictures");
        for (var i = 0; i < report.Pictures.Count; i++)
        {
            json.WriteStartObject();
            json.WriteString("name", culture.Say(report.Pictures[i].Title));
            json.WriteString("svg", report.Pictures[i].Svg($"picture{CalibrationText.Number(i)}", culture, units));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Figure figure, TextCulture culture, UnitPreferences units)
    {
        var unit = figure.UnitFor(units);
        json.WriteStartObject();
        json.WriteString("name", culture.Say(figure.Label));
        json.WriteBoolean("main", figure.IsMain);
        json.WriteString("text", figure.Text(culture, units));
        json.WriteString("unit", unit.Symbol);
        json.WriteNumber("value", unit.FromSi(figure.Value.Value));
        json.WriteNumber("si", figure.Value.Value);
        if (figure.Expanded is { } expanded)
        {
            json.WriteNumber("probability", figure.Probability);
            json.WriteNumber("expandedSi", expanded);
            if (figure.Value.Value != 0 && figure.Dimension is not (Dimension.Temperature or Dimension.Fraction))
            {
                json.WriteNumber("relativeExpanded", expanded / Math.Abs(figure.Value.Value));
                json.WriteString("relative", "± " + PercentText.Write(expanded / Math.Abs(figure.Value.Value), culture));
            }

            json.WriteStartArray("budget");
            foreach (var line in Budget.Of(figure.Value))
            {
                json.WriteStartObject();
                json.WriteString("family", culture.Say(Phrase.OfFamily(line.Family)));
                json.WriteString("share", PercentText.Write(line.Share, culture));
                json.WriteNumber("si", line.StandardUncertainty);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ReportTable table, TextCulture culture, UnitPreferences units)
    {
        json.WriteStartObject();
        json.WriteString("caption", culture.Say(table.Title));
        json.WriteStartArray("columns");
        foreach (var column in table.Columns) json.WriteStringValue(column.Heading(culture, units));
        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in table.Rows)
        {
            json.WriteStartArray();
            for (var i = 0; i < row.Count; i++) json.WriteStringValue(row[i].Text(table.Columns[i], culture, units));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
