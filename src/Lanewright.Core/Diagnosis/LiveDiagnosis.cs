using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Diagnosis;

/// <summary>
/// The diagnosis of a test that a page holds: one JSON text in, one out. Called only when somebody asks, never while typing.
/// Nothing typed makes it throw; the form stands in docs/formats/diagnosis.md.
/// </summary>
public static class LiveDiagnosis
{
    private const int MostHistory = 60;

    /// <summary>The causes behind the fields typed so far.</summary>
    public static string Answer(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var input = LiveInput.Read(json);
        var text = new DiagnosisText(input.Culture, input.Units);
        if (Report(input.Fields) is not { } report) return DiagnosisWriter.Write(Empty, text);
        var root = JsonTree.Read(json).Root;
        var history = new List<TestReport>();
        if (root is { Kind: NodeKind.Map } && root.Find("history") is { Kind: NodeKind.List } tests)
            foreach (var test in tests.Children.Take(MostHistory))
                if (Report(FieldsOf(test)) is { } earlier) history.Add(earlier);
        return DiagnosisWriter.Write(Diagnose.Of(DiagnosisHistory.Of(report, history, Facts(root, input.Culture))), text);
    }

    private static DiagnosisReport Empty => new(new()
    {
        Report = new()
        {
            Sheet = new()
            {
                Kind = TestKind.DropTest, Spreader = new() { Id = "", Unit = Units.PulsePerPound }, Material = new() { Name = "" },
                Scale = new() { Id = "" }, Runs = [],
            },
            Results = [],
            Findings = [],
        },
    }, null, []);

    private static Dictionary<string, string> FieldsOf(SheetNode test)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var node in (test.Kind is NodeKind.Map ? test.Find("fields") : null)?.Children ?? [])
            if (node is { Name: { } name, Kind: NodeKind.Text }) fields[name] = node.Literal;
        return fields;
    }

    private static TestReport? Report(Dictionary<string, string> fields)
    {
        var typed = TypedFields.Of(fields);
        var reading = SheetReader.Read(typed.Tree);
        if (reading.Value is { } whole && !reading.Findings.Any(f => f.Severity is Severity.Stop)) return SheetAnalysis.Analyse(whole);
        // Runs that are not whole yet are left out.
        var broken = reading.Findings.Where(f => f.Severity is Severity.Stop)
            .Select(f => TypedFields.RunOf(typed.TypedPath(f.Field))).OfType<int>().ToHashSet();
        var rest = SheetReader.Read(TypedFields.Of(fields, run => !broken.Contains(run)).Tree);
        return rest.Value is { } sheet ? SheetAnalysis.Analyse(sheet) : null;
    }

    private static SpreaderFacts Facts(SheetNode? root, TextCulture culture)
    {
        if (root is not { Kind: NodeKind.Map } || root.Find("facts") is not { Kind: NodeKind.Map } facts) return new();
        var events = facts.Find("events");
        return new()
        {
            Teeth = Number("teeth"),
            Feeders = Number("feeders") is { } f ? (int)f : null,
            Gates = [.. Texts("gates").Select(Opening).OfType<double>()],
            Gate = facts.Find("gate") is { Kind: NodeKind.Text } gate ? Opening(gate.Literal) : null,
            Events = [.. Texts("events")],
            EventsKnown = events is { Kind: NodeKind.List },
            OnTheRoad = facts.Find("onTheRoad") is { Kind: NodeKind.Flag, Literal: "true" },
        };

        double? Number(string name) => facts.Find(name) is { Kind: NodeKind.Text or NodeKind.Number } node
            && QuantityText.ReadNumber(node.Literal, node.Kind is NodeKind.Number ? TextCulture.Invariant : culture).TryGet(out var value)
            && value is > 0 and < 10_000 ? value : null;

        double? Opening(string text) => QuantityText.Read<Length>(text, culture).TryGet(out var length) && length.Si > 0 ? length.Si : null;

        IEnumerable<string> Texts(string name) => facts.Find(name) is { Kind: NodeKind.List } list
            ? list.Children.Where(c => c.Kind is NodeKind.Text).Select(c => c.Literal)
            : [];
    }
}
