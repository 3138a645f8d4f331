using System.Globalization;
using System.Text.Json;
using Lanewright.Core.Charts;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Writes the results of the runs that are usable, as texts ready to show.</summary>
internal static class LiveAnswer
{
    internal static void Write(Utf8JsonWriter json, LiveState state)
    {
        json.WriteStartArray("results");
        for (var i = 0; i < state.Report?.Results.Count; i++)
            Result(json, state, state.Report.Results[i], string.Create(CultureInfo.InvariantCulture, $"result{i}"));
        json.WriteEndArray();
    }

    private static void Result(Utf8JsonWriter json, LiveState state, TestResult result, string id)
    {
        var sheet = state.Report!.Sheet;
        var text = state.Text;
        json.WriteStartObject();
        json.WriteString("setting", result.Setting);
        json.WriteString("unit", QuantityText.Symbol(result.Unit, text.Culture));
        if (result.KeyIn is { } key)
        {
            json.WriteStartObject("keyIn");
            json.WriteString("number", text.Keyed(key, result.Unit));
            json.WriteString("text", $"{text.Keyed(key, result.Unit)} {QuantityText.Symbol(result.Unit, text.Culture)}");
            json.WriteString("rounding", text.Rounding(key));
            json.WriteEndObject();
        }

        json.WriteString("constant", text.Constant(result));
        json.WriteString("interval", text.Interval(result));
        json.WriteString("relative", "± " + text.Percent(result.RelativeExpanded));
        json.WriteNumber("value", result.Unit.FromSi(result.Value.Value));
        json.WriteNumber("relativeExpanded", result.RelativeExpanded);
        json.WriteString("dry", sheet.Material.Moisture is null ? "" : text.Culture.Say("for dry material"));
        if (text.Road(sheet, result) is { } road) json.WriteString("road", road);
        if (text.Tolerance(result) is { } tolerance) json.WriteString("tolerance", tolerance);
        if (result.Delivery is { } delivery) json.WriteString("conformity", ReportWords.Of(delivery.Conformity));
        if (text.More(sheet, result) is { } more) json.WriteString("more", more);
        json.WriteString("method", text.Method(result));
        Runs(json, result, text);
        Budget(json, result, text);
        json.WriteStartObject("pictures");
        json.WriteString("runs", RunsPicture.Svg(result, id + "-runs", text.Culture));
        json.WriteString("budget", BudgetPicture.Svg(result, id + "-budget", text.Culture));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Runs(Utf8JsonWriter json, TestResult result, AnswerText text)
    {
        json.WriteStartArray("runs");
        foreach (var run in result.Runs)
        {
            json.WriteStartObject();
            json.WriteString("name", run.Id);
            json.WriteString("net", text.Mass(run.Net.Value, 4));
            json.WriteString("ratio", QuantityText.Write(run.Ratio, result.Unit, text.Culture, NumberForm.Significant(4)));
            json.WriteString("deviation", text.Signed(run.Deviation));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Budget(Utf8JsonWriter json, TestResult result, AnswerText text)
    {
        json.WriteStartArray("budget");
        foreach (var line in result.Budget)
        {
            json.WriteStartObject();
            json.WriteString("family", text.Culture.Say(Phrase.OfFamily(line.Family)));
            json.WriteString("relative", text.Percent(line.StandardUncertainty / Math.Abs(result.Value.Value)));
            json.WriteString("share", text.Percent(line.Share));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
