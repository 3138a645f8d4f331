using System.Text;
using System.Text.Json;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Practice;

/// <summary>
/// Practice mode for a page: the state as JSON in, what the person sees as JSON out. Nothing sent makes it throw; the form stands
/// in docs/formats/practice.md.
/// </summary>
public static class LivePractice
{
    /// <summary>What a state looks like.</summary>
    public static string Answer(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var root = JsonTree.Read(json).Root;
        var culture = root is { Kind: NodeKind.Map } && root.Find("culture") is { Kind: NodeKind.Text } name
            && TextCulture.TryFind(name.Literal, out var found) ? found : TextCulture.Invariant;
        if (root is { Kind: NodeKind.Map } && root.Find("language") is { Kind: NodeKind.Text } speech
            && Language.TryFind(speech.Literal, out var language)) culture = culture.In(language);
        return Write(PracticeGame.Look(PracticeState.Read(json)), culture);
    }

    /// <summary>The exercises, the tests and the causes there are, as JSON.</summary>
    public static string Lists(string language = "") => Json(json =>
    {
        Language.TryFind(language, out var speech);
        json.WriteStartArray("exercises");
        foreach (var exercise in PracticeExercises.All)
        {
            json.WriteStartObject();
            json.WriteNumber("number", exercise.Number);
            json.WriteString("title", speech.Say(exercise.Title));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("tests");
        foreach (var test in NextTests.All)
        {
            json.WriteStartObject();
            json.WriteString("code", test.Code);
            json.WriteString("how", speech.Say(test.How));
            json.WriteNumber("minutes", test.Minutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("causes");
        foreach (var facts in CauseTable.All)
        {
            json.WriteStartObject();
            json.WriteString("code", facts.Code);
            json.WriteString("name", speech.Say(facts.Name));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static string Write(PracticeGame game, TextCulture culture) => Json(json =>
    {
        var text = new PracticeText(culture);
        json.WriteString("story", text.Story(game));
        json.WriteString("task", text.Task(game));
        json.WriteString("asksFor", game.Setup.Situation is TestSituation.RoadCheck ? "speed" : "setting");
        Texts(json, "known", text.Known(game));
        json.WriteStartObject("fields");
        foreach (var (path, typed) in game.Sheet?.Fields ?? []) json.WriteString(path, typed);
        json.WriteEndObject();
        Texts(json, "tests", game.Tests.Select(text.Done));
        json.WriteNumber("minutes", game.Minutes);
        Texts(json, "problems", game.Problems.Select(culture.Say));
        json.WriteBoolean("ended", game.Named is not null);
        if (game.End() is not { } end) return;
        json.WriteBoolean("right", end.Right);
        json.WriteString("truth", end.Truth.Code);
        Texts(json, "end", text.Ended(game, end));
        if (game.Diagnosis() is not { } diagnosis) return;
        json.WriteStartObject("diagnosis");
        DiagnosisWriter.Fields(json, diagnosis.Report, new(culture, game.Setup.Metric ? UnitPreferences.Metric : UnitPreferences.UnitedStates));
        json.WriteEndObject();
    });

    private static string Json(Action<Utf8JsonWriter> fields)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            fields(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
