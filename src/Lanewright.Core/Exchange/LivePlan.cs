using System.Globalization;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>Plans a test from what is typed before it, as texts ready to show; cautions come whatever is missing.</summary>
internal static class LivePlan
{
    // A test's field and the plan's field of the same meaning.
    private static readonly (string Test, string Plan)[] Same =
    [
        ("culture", "culture"), ("units", "units"), ("commonError", "commonError"), ("spreader.constant", "constant"),
        ("material.bulkDensity", "bulkDensity"), ("wantedUncertainty", "wantedUncertainty"),
    ];

    internal static string Write(LiveInput input)
    {
        var reading = PlanReader.Read(TypedFields.Of(Fields(input)).Tree);
        var plan = reading.Value is { } request ? Planner.Plan(request) : null;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            Cautions(json, plan?.Cautions ?? Planner.CautionsFor(MethodOf(input)), input.Culture);
            if (plan is not null) Plan(json, plan, new(input.Culture, input.Units));
            ReportWriter.Findings(
                json, [.. input.Findings, .. reading.Findings, .. plan?.Findings ?? []], input.Culture, input.Units);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static Dictionary<string, string> Fields(LiveInput input)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal) { ["method"] = input.Method };
        foreach (var (path, text) in input.Fields)
        {
            if (path.StartsWith("scale.", StringComparison.Ordinal)) fields[path] = text;
        }

        foreach (var (test, plan) in Same) fields[plan] = input.Text(test);
        // A plan knows no unit of the constant or of the delivery but the one that stands with the number.
        fields["expectedConstant"] = WithUnit(input, input.Text("spreader.current"), Units.Find(input.Text("spreader.unit")));
        fields["delivery"] = WithUnit(input, input.Delivery, input.Units[Dimension.MassFlow]);
        return fields;
    }

    private static string WithUnit(LiveInput input, string text, Unit? unit) =>
        unit is not null && text.Length > 0
            && QuantityText.ReadNumber(text, input.Culture).Outcome is not TextOutcome.Problem
            ? $"{text} {unit.Symbol}"
            : text;

    private static CatchMethod MethodOf(LiveInput input) => input.Method switch
    {
        "whole" => CatchMethod.Whole,
        "truck" => CatchMethod.Truck,
        _ => CatchMethod.Containers,
    };

    private static void Cautions(Utf8JsonWriter json, IReadOnlyList<Caution> cautions, TextCulture culture)
    {
        json.WriteStartArray("cautions");
        foreach (var caution in cautions)
        {
            json.WriteStartObject();
            json.WriteString("code", caution.Code);
            json.WriteString("text", culture.Say(caution.Text));
            json.WriteString("source", culture.Say(caution.Source));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Plan(Utf8JsonWriter json, TestPlan plan, AnswerText text)
    {
        var wanted = text.Percent(plan.Request.Wanted);
        if (plan.Best is { } best)
        {
            json.WriteString(
                "best",
                text.Culture.Say($"Drop {best.Runs} runs of {text.Mass(best.MassPerRun.Si, 3)} each, {text.Mass(best.Total.Si, 3)} in all: ± {text.Percent(best.Expected)} to expect, ± {wanted} wanted."));
            if (best.Containers > 0)
                json.WriteString(
                    "containers",
                    text.Culture.Say($"Each run takes {best.Containers} containers of about {text.Mass(best.MassPerRun.Si / best.Containers, 2)}, every one with its own tare."));
            if (best.TimePerRun is { } time)
                json.WriteString(
                    "time",
                    text.Culture.Say($"Each run takes about {QuantityText.Write(time, Units.Second, text.Culture, NumberForm.Significant(2))}."));
        }
        else if (plan.Choices.Count > 0)
        {
            json.WriteString("best", text.Culture.Say($"Nothing reaches ± {wanted} with this scale."));
        }

        json.WriteStartArray("grid");
        foreach (var row in plan.Choices.GroupBy(choice => choice.MassPerRun.Si))
        {
            json.WriteStartObject();
            json.WriteString("mass", text.Mass(row.Key, 3));
            json.WriteStartArray("choices");
            foreach (var choice in row)
            {
                json.WriteStartObject();
                json.WriteNumber("runs", choice.Runs);
                json.WriteString("expected", double.IsFinite(choice.Expected) ? text.Percent(choice.Expected) : "?");
                json.WriteBoolean("enough", choice.Enough);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("practices");
        foreach (var practice in plan.Practices)
        {
            json.WriteStringValue(practice.Choice is { } choice
                ? text.Culture.Say($"{(Phrase)practice.Practice} Here: ± {text.Percent(choice.Expected)}, {(Phrase)(choice.Enough ? "enough" : "not enough")}.")
                : text.Culture.Say(practice.Practice));
        }

        json.WriteEndArray();
    }
}
