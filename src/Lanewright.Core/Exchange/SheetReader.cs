using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Reads a sheet from its fields; asked over <see cref="SchemaFields"/> the same questions are the published schema.
/// </summary>
public static class SheetReader
{
    /// <summary>Reads a sheet from the tree of its file.</summary>
    public static SheetReading<TestSheet> Read(SheetTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        return TreeFields.Read(tree, SheetCulture.Of(tree), Read);
    }

    /// <summary>The sheet, or null when something it cannot do without is missing or wrong.</summary>
    public static TestSheet? Read(Fields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var kind = fields.Choice("kind", "Which question the test answers.", SheetWords.Kinds);
        SheetCulture.Ask(fields);
        var title = fields.Text("title", "A line that names the test.", Need.Optional);
        var invented = fields.YesNo("invented", "Yes for data made up for demonstration or practice.", Need.Optional);
        var date = fields.Date("date", "Day of the test.", Need.Optional);
        var place = fields.Text("place", "Where it was done.", Need.Optional);
        var people = fields.Text("people", "Who did it, names or initials separated by commas.", Need.Optional);
        var units = fields.Choice(
            "units", "Units of numbers written without one; without this every number needs its unit.",
            SheetWords.UnitSystems, Need.Optional);
        var bare = BareUnits.Of(units);
        var spreader = fields.Group("spreader", "The spreader under test.", SpreaderReader.Read);
        var material = fields.Group("material", "What was dropped.", f => MaterialReader.Read(f, bare));
        var scale = fields.Group("scale", "The scale that weighed the catch.", f => ScaleReader.Read(f, bare));
        var common = fields.YesNo(
            "commonError",
            "Whether the scale's own error is the same in both readings of a difference: same scale, same place on it, "
            + "within minutes, not adjusted in between.",
            Need.Optional);
        var timing = fields.Quantity<Duration>(
            "timingUncertainty", "Standard uncertainty of a timed run, start and stop together; 0.3 s is assumed when left out.", Need.Optional,
            Units.Second, Duration.FromSi(0), Duration.FromSi(60));
        var step = fields.Quantity<RevolutionCount>(
            "revolutionStep", "Smallest step in which turns were counted, e.g. 0.25 rev; whole turns when left out.", Need.Optional,
            Units.Revolution, RevolutionCount.FromSi(0.001), RevolutionCount.FromSi(1));
        var earlier = fields.Group(
            "earlierScatter", "Scatter from run to run known from earlier tests of this spreader.", Earlier,
            Need.Optional);
        var wanted = Share(fields, "wantedUncertainty", "Relative uncertainty wanted; 2 % when left out.", 0.0001, 0.5);
        var probability = Share(
            fields, "probability", "Coverage probability of the intervals; 95 % when left out.", 0.5, 0.999);
        var tolerance = Share(
            fields, "tolerance", "The yard's tolerance for delivered against weighed; 5 % when left out.", 0.001, 0.5);
        var runs = fields.List("runs", "The runs, in the order they were done.", (f, i) => RunReader.Read(f, i, bare), 1);
        var decision = fields.Group("decision", "What was decided, once it was.", DecisionOf, Need.Optional);
        ReportTwins(fields, runs);
        if (kind is null || spreader is null || material is null || scale is null || runs.Count == 0) return null;
        return new()
        {
            Kind = kind.Value,
            Title = title ?? "",
            Invented = invented ?? false,
            Date = date,
            Place = place ?? "",
            People = people?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [],
            Units = units,
            Spreader = spreader,
            Material = material,
            Scale = scale,
            CommonError = common,
            TimingUncertainty = timing,
            RevolutionStep = step,
            EarlierScatter = earlier,
            WantedUncertainty = wanted?.Si ?? TestSheet.DefaultWantedUncertainty,
            Probability = probability?.Si ?? 0.95,
            Tolerance = tolerance?.Si ?? TestSheet.DefaultTolerance,
            Runs = runs,
            Decision = decision,
        };
    }

    internal static Fraction? Share(
        Fields fields, string name, string doc, double least, double most, Need need = Need.Optional) =>
        fields.Quantity<Fraction>(name, doc, need, null, Fraction.FromSi(least), Fraction.FromSi(most));

    private static EarlierScatter? Earlier(Fields fields)
    {
        var relative = Share(
            fields, "relative", "Standard deviation of one run, as a share.", 1e-4, 0.5, Need.Required);
        var runs = fields.Count("runs", "How many runs it came from.", least: 2, most: 100_000);
        return relative is { } r && runs is { } n ? new(r.Si, n) : null;
    }

    private static Decision? DecisionOf(Fields fields)
    {
        var verdict = fields.Choice("verdict", "What was decided.", SheetWords.Verdicts);
        var by = fields.Text("by", "Who decided.", Need.Optional);
        var why = fields.Text("why", "Why.", Need.Optional, 1000);
        return verdict is { } v ? new(v, by ?? "", why ?? "") : null;
    }

    // Names of runs carry the identity of their readings' errors, so two runs must not share one.
    private static void ReportTwins(Fields fields, IReadOnlyList<Run> runs)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var run in runs)
        {
            if (!seen.Add(run.Id))
                fields.Report(SheetFindings.RunTwice, "runs", FindingValue.Text("run", run.Id));
        }
    }
}
