using System.Globalization;
using System.Text;
using System.Text.Json;
using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// The analysis beside a test that is still being typed: one JSON text in, one out, as a page needs it. Nothing typed
/// makes it throw, and a run enters the answer only once its whole catch is weighed.
/// </summary>
/// <remarks>
/// In: <c>{"culture", "units", "kind", "fields": {path: text}}</c>; culture, units and kind among the fields stand
/// before the ones beside them. Out: <c>fields</c> (by path: what a number was understood as, or what is wrong with it),
/// <c>todo</c>, <c>runs</c> (masses as text), <c>findings</c>, <c>usable</c>, and <c>results</c>, empty until one run is
/// usable. All texts are ready to show.
/// </remarks>
public static class LiveSheet
{
    // What these say is not wrong, only not typed yet; the list of things to do says it better.
    private static readonly HashSet<FindingKind> NotYet =
    [
        ReadFindings.MissingField, ReadFindings.NotUsable, ReadFindings.TooFewItems, SheetFindings.NoWeighing,
        SheetFindings.ContainersDiffer, DropTestFindings.NoCount, DropTestFindings.NoRuns, DropTestFindings.NoDelivered,
    ];

    /// <summary>What can be said of the fields typed so far.</summary>
    public static string Answer(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var input = LiveInput.Read(json);
        var runs = LiveRuns.Of(input);
        var typed = TypedFields.Of(input.Fields);
        var reading = SheetReader.Read(typed.Tree);
        var findings = new List<Finding>(input.Findings);
        AddTyped(reading.Findings, typed, findings);

        var blocked = RunsWith(findings);
        var ready = runs.Where(run => run.IsReady && !blocked.Contains(run.Place)).Select(run => run.Place).ToHashSet();
        var (report, reportFields) = Analyse(input, reading, typed, runs.Count, ready);
        if (report is not null) AddTyped(report.Findings, reportFields, findings);
        LiveReadings.Check(input, runs, findings);
        return Write(new(input, runs, findings, report, reportFields, ready));
    }

    /// <summary>
    /// The plan of a test that has no runs yet: the same text in, with <c>method</c> (containers, whole or truck) and
    /// <c>delivery</c> beside the fields.
    /// </summary>
    public static string Plan(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return LivePlan.Write(LiveInput.Read(json));
    }

    /// <summary>
    /// What is to be said of the value keyed in: the same text in, with <c>unit</c>, <c>advised</c> (value to key in),
    /// <c>keyed</c> and <c>readBack</c> (as typed) beside the fields. Out: <c>say</c>, sentences; empty when all agree.
    /// </summary>
    public static string Keyed(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return LiveKeyed.Write(json);
    }

    private static (TestReport? Report, TypedFields Typed) Analyse(
        LiveInput input, SheetReading<TestSheet> reading, TypedFields typed, int runs, HashSet<int> ready)
    {
        if (ready.Count == 0) return (null, typed);
        var sheet = reading.Value;
        if (ready.Count < runs)
        {
            // Places shift when runs are left out, so the rest is read again as a sheet of its own.
            typed = TypedFields.Of(input.Fields, ready.Contains);
            sheet = SheetReader.Read(typed.Tree).Value;
        }

        return (sheet is null ? null : SheetAnalysis.Analyse(sheet), typed);
    }

    private static void AddTyped(IEnumerable<Finding> from, TypedFields typed, List<Finding> to)
    {
        foreach (var finding in from)
        {
            if (!NotYet.Contains(finding.Kind)) to.Add(finding with { Field = typed.TypedPath(finding.Field) });
        }
    }

    private static HashSet<int> RunsWith(IEnumerable<Finding> findings) =>
    [
        .. findings.Where(finding => finding.Severity is Severity.Stop)
            .Select(finding => TypedFields.RunOf(finding.Field)).OfType<int>(),
    ];

    private static string Write(LiveState state)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            LiveFieldsWriter.Write(json, state);
            ToDo(json, LiveToDo.Of(state.Input, state.Runs), state.Input.Culture);
            LiveRunsWriter.Write(json, state);
            json.WriteBoolean("usable", state.IsUsable);
            LiveAnswer.Write(json, state);
            ReportWriter.Findings(
                json, [.. state.Findings.OrderByDescending(f => f.Severity)], state.Input.Culture, state.Input.Units);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void ToDo(Utf8JsonWriter json, List<LiveToDo> list, TextCulture culture)
    {
        json.WriteStartArray("todo");
        foreach (var item in list)
        {
            json.WriteStartObject();
            json.WriteString("step", item.Step);
            json.WriteString("path", item.Path);
            json.WriteString("text", culture.Say(item.Text));
            json.WriteBoolean("needed", item.Needed);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}

/// <summary>All that is known of a test being typed.</summary>
internal sealed record LiveState(
    LiveInput Input, IReadOnlyList<LiveRun> Runs, IReadOnlyList<Finding> Findings, TestReport? Report,
    TypedFields ReportFields, IReadOnlySet<int> Ready)
{
    internal AnswerText Text { get; } = new(Input.Culture, Input.Units);

    internal bool IsUsable => Report is { Results.Count: > 0 } && Findings.All(f => f.Severity is not Severity.Stop);

    internal static string Path(int run) => string.Create(CultureInfo.InvariantCulture, $"runs[{run}]");
}
