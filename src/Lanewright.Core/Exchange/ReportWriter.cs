using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Writes a report for machines. Numbers named <c>si</c> are in SI; the others are in the unit that stands beside them;
/// shares are plain (0.02 is 2 %). The format is described in docs/formats/report.md.
/// </summary>
public static class ReportWriter
{
    /// <summary>The format written.</summary>
    public const string Format = "lanewright-report/1";

    /// <summary>The report as JSON text.</summary>
    /// <param name="report">The report.</param>
    /// <param name="readFindings">Findings of reading the sheet, put before those of the report.</param>
    /// <param name="culture">For the texts of findings.</param>
    /// <param name="units">For the texts of findings.</param>
    public static string Write(
        TestReport report, IReadOnlyList<Finding> readFindings, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(readFindings);
        var key = SheetKey.Of(report.Sheet);
        return JsonText.Object(json =>
        {
            json.WriteString("format", Format);
            json.WriteString("title", report.Sheet.Title);
            json.WriteString("spreader", report.Sheet.Spreader.Id);
            json.WriteString("material", report.Sheet.Material.Name);
            json.WriteBoolean("invented", report.Sheet.Invented);
            json.WriteBoolean("usable", report.Usable && readFindings.All(f => f.Severity is not Severity.Stop));
            json.WriteStartArray("results");
            foreach (var result in report.Results)
                Result(json, result, key);
            json.WriteEndArray();
            Findings(json, [.. readFindings, .. report.Findings], culture, units);
        });
    }

    /// <summary>Writes findings as an array named <c>findings</c>.</summary>
    public static void Findings(
        Utf8JsonWriter json, IReadOnlyList<Finding> findings, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(findings);
        json.WriteStartArray("findings");
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("code", finding.Code);
            json.WriteString("severity", ReportWords.Of(finding.Severity));
            json.WriteString("field", finding.Field);
            json.WriteString("message", FindingText.Message(finding, culture, units));
            json.WriteString("action", FindingText.Action(finding, culture, units));
            json.WriteStartObject("values");
            foreach (var value in finding.Values)
            {
                if (value.Word is not null) json.WriteString(value.Name, value.Word);
                else json.WriteNumber(value.Name, value.Si);
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Result(Utf8JsonWriter json, TestResult result, string sheetKey)
    {
        json.WriteStartObject();
        if (result.Setting.Length > 0) json.WriteString("setting", result.Setting);
        json.WriteString("unit", result.Unit.Symbol);
        json.WriteNumber("value", result.Unit.FromSi(result.Value.Value));
        json.WriteNumber("expanded", result.Unit.FromSi(result.Expanded));
        json.WriteNumber("low", result.Unit.FromSi(result.Low));
        json.WriteNumber("high", result.Unit.FromSi(result.High));
        json.WriteNumber("probability", result.Probability);
        json.WriteNumber("relativeExpanded", result.RelativeExpanded);
        json.WriteNumber("relativeStandard", result.Value.RelativeUncertainty);
        json.WriteStartObject("classical");
        json.WriteNumber("relativeExpanded", result.Classical.Expanded / Math.Abs(result.Value.Value));
        json.WriteNumber("coverageFactor", result.Classical.CoverageFactor);
        if (double.IsFinite(result.Classical.DegreesOfFreedom))
            json.WriteNumber("degreesOfFreedom", result.Classical.DegreesOfFreedom);
        json.WriteEndObject();
        Estimator(json, result);
        if (result.KeyIn is { } key) KeyIn(json, result.Unit, key);
        if (result.Delivery is { } delivery) Delivery(json, delivery);
        if (result.More is { } more)
        {
            json.WriteStartObject("more");
            json.WriteNumber("runs", more.Runs);
            json.WriteNumber("massKilograms", more.Mass);
            json.WriteNumber("floor", more.Floor);
            json.WriteEndObject();
        }

        Budget(json, result);
        Runs(json, result);
        if (result.Trials is not null) Trials(json, result);
        json.WritePropertyName("measured");
        MeasuredJson.Write(json, SheetKey.Mark(result.Value, sheetKey));
        json.WriteEndObject();
    }

    private static void Estimator(Utf8JsonWriter json, TestResult result)
    {
        json.WriteString("estimator", ReportWords.Of(result.Estimate.Estimator));
        json.WriteString("reason", ReportWords.Of(result.Estimate.Reason));
        json.WriteStartObject("alternatives");
        foreach (var (estimator, value) in result.Estimate.Alternatives())
            json.WriteNumber(ReportWords.Of(estimator), result.Unit.FromSi(value));
        json.WriteEndObject();
        json.WriteNumber("scatterOfOneRun", result.Estimate.Scatter.Median);
    }

    private static void KeyIn(Utf8JsonWriter json, Unit unit, KeyIn key)
    {
        json.WriteStartObject("keyIn");
        json.WriteNumber("value", unit.FromSi(key.Value));
        json.WriteNumber("step", unit.FromSi(key.Step));
        json.WriteNumber("cost", key.Cost);
        json.WriteNumber("worstCost", key.WorstCost);
        json.WriteEndObject();
    }

    private static void Delivery(Utf8JsonWriter json, Delivery delivery)
    {
        json.WriteStartObject("delivery");
        json.WriteNumber("share", delivery.Share.Value);
        json.WriteNumber("expanded", delivery.Expanded);
        json.WriteNumber("tolerance", delivery.Tolerance);
        json.WriteString("conformity", ReportWords.Of(delivery.Conformity));
        json.WriteNumber("chanceWithin", delivery.ChanceWithin);
        json.WriteEndObject();
    }

    private static void Budget(Utf8JsonWriter json, TestResult result)
    {
        json.WriteStartArray("budget");
        foreach (var line in result.Budget)
        {
            json.WriteStartObject();
            json.WriteString("family", line.Family);
            json.WriteNumber("sources", line.Sources);
            json.WriteNumber("relativeStandard", line.StandardUncertainty / Math.Abs(result.Value.Value));
            json.WriteNumber("share", line.Share);
            if (double.IsFinite(line.DegreesOfFreedom)) json.WriteNumber("degreesOfFreedom", line.DegreesOfFreedom);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Runs(Utf8JsonWriter json, TestResult result)
    {
        json.WriteStartArray("runs");
        foreach (var run in result.Runs)
        {
            json.WriteStartObject();
            json.WriteString("id", run.Id);
            json.WriteNumber("netKilograms", run.Net.Value);
            json.WriteNumber("ratio", result.Unit.FromSi(run.Ratio));
            json.WriteNumber("deviation", run.Deviation);
            json.WriteNumber("ownUncertainty", run.OwnUncertainty);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Trials(Utf8JsonWriter json, TestResult result)
    {
        var trials = result.Trials!;
        json.WriteStartObject("trials");
        json.WriteNumber("count", trials.Trials);
        json.WriteNumber("seed", trials.Seed);
        json.WriteNumber("mean", result.Unit.FromSi(trials.Mean));
        json.WriteNumber("low", result.Unit.FromSi(trials.Low));
        json.WriteNumber("high", result.Unit.FromSi(trials.High));
        json.WriteBoolean("agree", result.TrialsAgree ?? true);
        json.WriteEndObject();
    }
}
