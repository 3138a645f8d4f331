using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Writes a plan for machines; masses in kilograms, times in seconds, shares plain.</summary>
public static class PlanWriter
{
    /// <summary>The format written.</summary>
    public const string Format = "lanewright-plan/1";

    /// <summary>The plan as JSON text.</summary>
    public static string Write(
        TestPlan plan, IReadOnlyList<Finding> readFindings, TextCulture culture, UnitPreferences units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(readFindings);
        return JsonText.Object(json =>
        {
            json.WriteString("format", Format);
            json.WriteNumber("wanted", plan.Request.Wanted);
            json.WriteStartArray("cautions");
            foreach (var caution in plan.Cautions)
            {
                json.WriteStartObject();
                json.WriteString("code", caution.Code);
                json.WriteString("text", culture.Say(caution.Text));
                json.WriteString("source", culture.Say(caution.Source));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (plan.Best is { } best)
            {
                json.WritePropertyName("best");
                Choice(json, best);
            }

            json.WriteStartArray("choices");
            foreach (var choice in plan.Choices)
                Choice(json, choice);
            json.WriteEndArray();
            json.WriteStartArray("practices");
            foreach (var practice in plan.Practices)
            {
                json.WriteStartObject();
                json.WriteString("practice", culture.Say(practice.Practice));
                if (practice.Choice is { } choice)
                {
                    json.WritePropertyName("choice");
                    Choice(json, choice);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            ReportWriter.Findings(json, [.. readFindings, .. plan.Findings], culture, units);
        });
    }

    private static void Choice(Utf8JsonWriter json, PlanChoice choice)
    {
        json.WriteStartObject();
        json.WriteNumber("runs", choice.Runs);
        json.WriteNumber("massPerRunKilograms", choice.MassPerRun.Si);
        if (double.IsFinite(choice.Expected)) json.WriteNumber("expected", choice.Expected);
        json.WriteNumber("containers", choice.Containers);
        if (choice.TimePerRun is { } time) json.WriteNumber("secondsPerRun", time.Si);
        json.WriteBoolean("enough", choice.Enough);
        json.WriteEndObject();
    }
}
