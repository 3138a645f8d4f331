using System.Text;
using System.Text.Json;

namespace Lanewright.Core.Diagnosis;

/// <summary>A diagnosis as JSON for pages and programs; the form stands in docs/formats/diagnosis.md.</summary>
public static class DiagnosisWriter
{
    private const int MostTests = 5;

    /// <summary>The diagnosis as one JSON object.</summary>
    /// <param name="report">The diagnosis.</param>
    /// <param name="text">How numbers are written in its sentences.</param>
    public static string Write(DiagnosisReport report, DiagnosisText text)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(text);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            Fields(json, report, text);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    internal static void Fields(Utf8JsonWriter json, DiagnosisReport report, DiagnosisText text)
    {
        json.WriteString("outcome", report.Outcome switch
        {
            Outcome.NothingWrong => "nothing-wrong",
            Outcome.Likely => "likely",
            _ => "cannot-tell",
        });
        json.WriteString("headline", text.Headline(report));
        json.WriteNumber("nothingWrong", Rounded(report.NothingWrong));
        json.WriteStartArray("evidence");
        foreach (var line in text.Evidence(report)) json.WriteStringValue(line);
        json.WriteEndArray();
        json.WriteStartArray("causes");
        foreach (var cause in report.Causes)
        {
            json.WriteStartObject();
            json.WriteString("code", cause.Facts.Code);
            json.WriteString("name", text.Culture.Say(cause.Facts.Name));
            json.WriteNumber("chance", Rounded(cause.Chance));
            json.WriteString("chanceText", text.Chance(cause.Chance));
            json.WriteString("effect", text.Effect(cause, report));
            json.WriteString("alsoSeen", text.Culture.Say(cause.Facts.AlsoSeen));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("next");
        foreach (var advised in report.Next.Take(MostTests))
        {
            json.WriteStartObject();
            json.WriteString("code", advised.Test.Code);
            json.WriteString("how", text.Culture.Say(advised.Test.How));
            json.WriteNumber("minutes", advised.Test.Minutes);
            json.WriteNumber("bits", Rounded(advised.Bits));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("picture", Drawn(report) is { } cause1 ? DiagnosisPicture.Svg(report, cause1, "cause", text.Culture) : "");
    }

    // The first cause that is one: of nothing wrong there is nothing to draw.
    private static RankedCause? Drawn(DiagnosisReport report) =>
        report.Causes.FirstOrDefault(c => c.Facts.Cause is not (Cause.NothingWrong or Cause.SomethingElse));

    private static double Rounded(double chance) => Math.Round(chance * 10_000) / 10_000;
}
