using System.Text.Json;
using Lanewright.Core.Findings;

namespace Lanewright.Core.Exchange;

/// <summary>Writes, for each typed field, what it was understood as or what is wrong with it.</summary>
internal static class LiveFieldsWriter
{
    internal static void Write(Utf8JsonWriter json, LiveState state) => Write(json, state.Input, state.Findings);

    internal static void Write(Utf8JsonWriter json, LiveInput input, IReadOnlyList<Finding> findings)
    {
        var problems = new Dictionary<string, Finding>(StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            // The gravest finding of a field stands beside it; the others are in the list.
            if (!problems.TryGetValue(finding.Field, out var other) || finding.Severity > other.Severity)
                problems[finding.Field] = finding;
        }

        json.WriteStartObject("fields");
        foreach (var (path, text) in input.Fields)
        {
            if (string.IsNullOrWhiteSpace(text)) continue;
            var problem = problems.GetValueOrDefault(path);
            var echo = LiveFields.Echo(input, path, text);
            if (problem is null && echo is null) continue;
            json.WriteStartObject(path);
            if (echo is not null) json.WriteString("echo", echo);
            if (problem is not null) Problem(json, problem, input);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Problem(Utf8JsonWriter json, Finding finding, LiveInput input)
    {
        json.WriteStartObject("problem");
        json.WriteString("code", finding.Code);
        json.WriteString("severity", ReportWords.Of(finding.Severity));
        json.WriteString("message", FindingText.Message(finding, input.Culture, input.Units));
        json.WriteString("action", FindingText.Action(finding, input.Culture, input.Units));
        json.WriteStartArray("choices");
        foreach (var choice in Choices(finding)) json.WriteStringValue(choice);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    // Each reading is a text that has one meaning, so a page can offer it to be taken instead of what was typed.
    private static string[] Choices(Finding finding)
    {
        foreach (var value in finding.Values)
        {
            // The English word is the one that is taken apart; the readings in it are the same in every language.
            if (value is { Name: "readings", Word: { } readings })
                return [.. readings.Split(" or ").Where(reading => reading != "…")];
        }

        return [];
    }
}
