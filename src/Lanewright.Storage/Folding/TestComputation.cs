using System.Diagnostics.CodeAnalysis;
using Lanewright.Core.Calibrations;
using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;
using Lanewright.Storage.Records;

namespace Lanewright.Storage.Folding;

/// <summary>What a test's sheet, as it stands, comes to.</summary>
public static class TestComputation
{
    /// <summary>
    /// The sheet of a test as it stands. A field in conflict is left out: nobody has said which text holds. The kind of
    /// test and the decision are added from their own entries where no field gives them.
    /// </summary>
    public static SheetReading<TestSheet> Sheet(TestFold fold)
    {
        ArgumentNullException.ThrowIfNull(fold);
        return SheetReader.Read(Tree(fold, withDecision: true));
    }

    /// <summary>The sheet of another calibration as it stands; null when the test is a drop test or a check.</summary>
    public static SheetReading<CalibrationSheet>? Other(TestFold fold)
    {
        ArgumentNullException.ThrowIfNull(fold);
        return Calibration.Find(fold.Kind) is { } kind ? Calibration.Read(Tree(fold, withDecision: false), kind) : null;
    }

    private static SheetTree Tree(TestFold fold, bool withDecision)
    {
        var fields = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var field in fold.Fields)
            if (field.Text is { Length: > 0 } text) fields.Add(field.Path, text);
        if (fold.Kind is { } kind) fields.TryAdd("kind", kind);
        if (withDecision && fold.Decision is { } decision && !fields.Keys.Any(path => path.StartsWith("decision.", StringComparison.Ordinal)))
        {
            fields.Add("decision.verdict", Payload.Text(decision, "verdict") ?? "");
            fields.Add("decision.by", decision.Person);
            if (Payload.Text(decision, "why") is { Length: > 0 } why) fields.Add("decision.why", why);
        }

        return FieldSheet.Tree(fields);
    }

    /// <summary>
    /// The results, the gravest finding (null for none), and in words what kept it from being computed (null when
    /// nothing did). While fields are in conflict nothing is computed: which text holds decides the answer.
    /// </summary>
    [SuppressMessage("Design", "CA1031:Do not catch general exception types",
        Justification = "A fault in computing one test must not keep entries of others from being stored; it is shown.")]
    internal static (IReadOnlyList<TestResultRow> Results, Severity? Gravest, string? Problem) Of(TestFold fold)
    {
        try
        {
            if (Other(fold) is { } other) return Of(fold, other);
            var reading = Sheet(fold);
            if (fold.Fields.Any(field => field.IsConflict)) return ([], Severity.Stop, "Fields in conflict wait to be settled.");
            if (!reading.IsUsable) return ([], Gravest(reading.Findings), null);
            var report = SheetAnalysis.Analyse(reading.Value!);
            var gravest = Gravest([.. reading.Findings, .. report.Findings]);
            return ([.. report.Results.Select((result, index) => Row(fold.Id, index, result))], gravest, null);
        }
        catch (Exception wrong)
        {
            return ([], Severity.Stop, Failed(wrong.GetType().Name).ToString());
        }
    }

    /// <summary>What kept a test from being computed, as it is kept, for a reader of any language.</summary>
    public static Phrase Said(string kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var (open, close) = (kept.IndexOf('(', StringComparison.Ordinal), kept.IndexOf(')', StringComparison.Ordinal));
        return open < 0 || close < open ? kept : Failed(kept[(open + 1)..close]);
    }

    private static Phrase Failed(string what) => $"The computation failed ({what}); the entries are kept.";

    private static (IReadOnlyList<TestResultRow> Results, Severity? Gravest, string? Problem) Of(
        TestFold fold, SheetReading<CalibrationSheet> reading)
    {
        if (fold.Fields.Any(field => field.IsConflict)) return ([], Severity.Stop, "Fields in conflict wait to be settled.");
        if (!reading.IsUsable) return ([], Gravest(reading.Findings), null);
        var report = reading.Value!.Analyse();
        var units = report.Head.Preferences;
        return (
            [.. report.Figures.Where(figure => figure.IsMain).Select((figure, index) => Row(fold.Id, index, figure, units))],
            Gravest([.. reading.Findings, .. report.Findings]), null);
    }

    private static TestResultRow Row(string test, int index, Figure figure, UnitPreferences units)
    {
        var expanded = figure.Expanded ?? 0;
        var value = figure.Value.Value;
        return new()
        {
            Test = test,
            Position = index,
            Setting = figure.Name,
            Unit = figure.UnitFor(units).Symbol,
            Value = value,
            RelativeExpanded = value == 0 ? 0 : expanded / Math.Abs(value),
            Low = value - expanded,
            High = value + expanded,
            Probability = figure.Probability,
        };
    }

    private static Severity? Gravest(IReadOnlyList<Finding> findings) =>
        findings.Count == 0 ? null : findings.Max(finding => finding.Severity);

    private static TestResultRow Row(string test, int index, TestResult result) => new()
    {
        Test = test,
        Position = index,
        Setting = result.Setting,
        Unit = result.Unit.Symbol,
        Value = result.Value.Value,
        RelativeExpanded = result.RelativeExpanded,
        Low = result.Low,
        High = result.High,
        Probability = result.Probability,
        KeyIn = result.KeyIn?.Value,
        Conformity = result.Delivery is { } delivery ? ReportWords.Of(delivery.Conformity) : null,
        Share = result.Delivery?.Share.Value,
        ShareExpanded = result.Delivery?.Expanded,
        Tolerance = result.Delivery?.Tolerance,
    };
}
