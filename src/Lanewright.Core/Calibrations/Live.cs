using System.Text;
using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;

namespace Lanewright.Core.Calibrations;

/// <summary>
/// The answer beside any sheet that is still being typed: one JSON text in, one out. A drop test or a check is answered by
/// <see cref="LiveSheet"/>; every other calibration here.
/// </summary>
/// <remarks>
/// In: <c>{"culture", "units", "kind", "fields": {path: text}}</c>. Out, for a calibration: <c>fields</c> (by path: what is
/// wrong with it), <c>todo</c>, <c>keyedIn</c> (whether the result is keyed into the controller), <c>usable</c>,
/// <c>figures</c>, <c>lines</c>, <c>tables</c>, <c>pictures</c> and <c>findings</c>; all texts ready to show.
/// </remarks>
public static class Live
{
    private const int MostToDo = 12;

    // What these say is not wrong, only not typed yet.
    private static readonly HashSet<FindingKind> NotYet =
        [ReadFindings.MissingField, ReadFindings.NotUsable, ReadFindings.TooFewItems];

    /// <summary>What can be said of the fields typed so far.</summary>
    public static string Answer(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var input = LiveInput.Read(json);
        return Calibration.Find(input.Text("kind")) is { } kind ? Answer(input, kind) : LiveSheet.Answer(json);
    }

    /// <summary>The JSON Schema of a kind's sheet, from which a page makes its fields; empty for a kind that is not known.</summary>
    public static string Form(string kind) => Calibration.Find(kind) is { } known ? Calibration.Schema(known) : "";

    /// <summary>The kinds there are, as JSON: <c>[{"word", "name", "doc"}]</c>.</summary>
    /// <param name="language">The language of names and docs, such as <c>fr</c>; English when it is not known.</param>
    public static string Kinds(string language = "")
    {
        Language.TryFind(language, out var speech);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartArray();
            foreach (var kind in Calibration.Kinds)
            {
                json.WriteStartObject();
                json.WriteString("word", kind.Word);
                json.WriteString("name", speech.Say(kind.Name));
                json.WriteString("doc", speech.Say(kind.Doc));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static string Answer(LiveInput input, CalibrationKind kind)
    {
        var typed = TypedFields.Of(input.Fields);
        var reading = Calibration.Read(typed.Tree, kind);
        var report = reading.IsUsable ? reading.Value!.Analyse() : null;
        var found = input.Findings.Concat(reading.Findings).Concat(report?.Findings ?? [])
            .Select(finding => finding with { Field = typed.TypedPath(finding.Field) }).ToList();
        var findings = found.Where(finding => !NotYet.Contains(finding.Kind)).ToList();
        var stops = findings.Exists(finding => finding.Severity is Severity.Stop);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            LiveFieldsWriter.Write(json, input, findings);
            json.WriteStartArray("todo");
            foreach (var missing in found.Where(f => f.Kind == ReadFindings.MissingField).Take(MostToDo))
            {
                json.WriteStartObject();
                json.WriteString("path", missing.Field);
                json.WriteString("text", Doc(missing, input.Culture));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteBoolean("keyedIn", kind.IsKeyedIn);
            json.WriteBoolean("usable", report is { Usable: true } && !stops);
            if (report is not null) CalibrationWriter.Content(json, report, input.Culture, input.Units, pictures: true);
            ReportWriter.Findings(
                json, [.. findings.OrderByDescending(f => f.Severity)], input.Culture, input.Units);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static string Doc(Finding finding, TextCulture culture) =>
        finding.Values.FirstOrDefault(value => value.Name == "doc").Term is { } doc ? culture.Say(doc) : "";
}
