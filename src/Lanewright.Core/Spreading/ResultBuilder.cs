using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>Draws the runs of one setting together into a result, and judges it.</summary>
internal static class ResultBuilder
{
    private const double LargeChange = 0.20;
    private const double CoarseCost = 0.005;
    private const double WorthWarning = 0.1;
    private const int MostExtraRuns = 50;

    // Room for rounding where a figure may lie exactly on a limit.
    private const double Slack = 1e-9;

    internal static TestResult Of(
        TestSheet sheet, string setting, List<BuiltRun> runs, AnalysisOptions options, List<Finding> findings)
    {
        var earlier = sheet.EarlierScatter is { Runs: > 1 } e ? e : null;
        var ratios = runs.ConvertAll(r => r.Ratio);
        var estimate = RatioEstimate.Of(ratios, earlier?.Relative ?? 0, (earlier?.Runs ?? 1) - 1);
        var where = setting.Length == 0 ? "runs" : $"runs at {setting}";
        RunChecks.Of(sheet, estimate, where, findings);
        var error = estimate.Error();
        var expanded = error.Coverage(sheet.Probability);
        var value = estimate.Total($"test:{setting}:scatter");
        var verification = sheet.Kind is TestKind.Verification;
        var budget = Budget.Of(value);
        var result = new TestResult
        {
            Setting = setting,
            Dimension = verification ? Dimension.Fraction : DimensionOf(sheet.Spreader.Form),
            Unit = verification ? Units.Percent : sheet.Spreader.Unit,
            Value = value,
            Probability = sheet.Probability,
            Expanded = expanded,
            Error = error,
            Classical = WelchSatterthwaite.Of(estimate.Classical($"test:{setting}:runs"), sheet.Probability),
            Estimate = estimate,
            Budget = budget,
            Runs = Rows(runs, estimate),
            KeyIn = verification ? null : Key(sheet.Spreader, value.Value, expanded, findings),
            Delivery = verification
                ? Deliver(sheet, value, expanded, error)
                : Current(sheet, value, expanded, error, findings),
            More = More(sheet, estimate, value, expanded, runs, budget, where, findings),
        };
        if (verification) Judge(sheet, result.Delivery!, findings);
        return options.Trials == 0 ? result : WithTrials(sheet, result, options, where, findings);
    }

    internal static Dimension DimensionOf(ConstantForm form) => form switch
    {
        ConstantForm.PulsesPerMass => Dimension.PulsesPerMass,
        ConstantForm.MassPerPulse => Dimension.MassPerPulse,
        ConstantForm.MassPerRevolution => Dimension.MassPerRevolution,
        _ => Dimension.MassFlow,
    };

    private static List<RunRow> Rows(List<BuiltRun> runs, RatioEstimate estimate)
    {
        var shared = RatioRun.SharedSources(estimate.Runs);
        return runs.ConvertAll(r => new RunRow(
            r.Run.Id, r.Net, r.Ratio.Ratio, (r.Ratio.Ratio / estimate.Known.Value) - 1, r.Ratio.OwnError(shared)));
    }

    private static KeyIn? Key(Spreader spreader, double value, double expanded, List<Finding> findings)
    {
        var key = spreader.Resolution is { } step && step > 0 ? Rounded(spreader, step, value) : null;
        if (key is null)
        {
            // Settings of an open loop share their controller, so one note is enough.
            if (!findings.Exists(f => f.Kind == DropTestFindings.ResolutionNotStated))
                findings.Add(DropTestFindings.ResolutionNotStated.At("spreader.resolution"));
        }
        else if (key.WorstCost > Math.Max(CoarseCost, expanded / value / 4))
        {
            findings.Add(DropTestFindings.CoarseResolution.At(
                "spreader.resolution", FindingValue.Number("step", key.Step, spreader.Unit.Dimension),
                FindingValue.Number("cost", key.WorstCost, Dimension.Fraction)));
        }

        InRange(spreader, key?.Value ?? value, findings);
        return key;
    }

    // Rounded in the unit that is keyed in, so that the value shown is exactly a step of it.
    private static KeyIn Rounded(Spreader spreader, double step, double value)
    {
        var stepInUnit = spreader.Unit.FromSi(step);
        var keyed = spreader.Unit.ToSi(Math.Round(spreader.Unit.FromSi(value) / stepInUnit) * stepInUnit);
        return new(keyed, step, (keyed / value) - 1, step / 2 / value);
    }

    // A controller takes no constant of zero, so without a stated lowest value it is one step.
    private static void InRange(Spreader spreader, double keyed, List<Finding> findings)
    {
        if ((spreader.Lowest ?? spreader.Resolution) is { } lowest && keyed < lowest * (1 - Slack)) Beyond("lowest", lowest);
        if (spreader.Highest is { } highest && keyed > highest * (1 + Slack)) Beyond("highest", highest);

        void Beyond(string limit, double si) => findings.Add(DropTestFindings.OutOfRange.At(
            "spreader." + limit, FindingValue.Said("which", limit),
            FindingValue.Number("limit", si, spreader.Unit.Dimension),
            FindingValue.Number("value", keyed, spreader.Unit.Dimension)));
    }

    // What the constant in use has been putting down, by asked: with pulses per mass the old by the new, else the new by
    // the old.
    private static Delivery? Current(
        TestSheet sheet, Measured value, double expanded, ErrorDistribution error, List<Finding> findings)
    {
        if (sheet.Spreader.Current is not { } current || !(current > 0)) return null;
        var share = sheet.MassOnTop ? value / current : current / value;
        // The error of a share of the value is the value's own, scaled by the derivative.
        var scale = share.Value / value.Value;
        var delivery = Deliver(sheet, share, expanded * scale, error, scale);
        if (Math.Abs(share.Value - 1) > LargeChange)
            findings.Add(DropTestFindings.LargeChange.At(
                "spreader.current",
                FindingValue.Number("delivered", share.Value, Dimension.Fraction)));
        return delivery;
    }

    private static Delivery Deliver(
        TestSheet sheet, Measured share, double expanded, ErrorDistribution error, double scale = 1)
    {
        var off = share.Value - 1;
        var tolerance = sheet.Tolerance;
        var verdict = Math.Abs(off) + expanded <= tolerance * (1 + Slack) ? Conformity.Pass
            : Math.Abs(off) - expanded > tolerance ? Conformity.Fail
            : Conformity.CannotTell;
        var within = error.ChanceBelow((tolerance - off) / scale) - error.ChanceBelow((-tolerance - off) / scale);
        return new(share, expanded, tolerance, verdict, Math.Clamp(within, 0, 1));
    }

    private static void Judge(TestSheet sheet, Delivery delivery, List<Finding> findings)
    {
        FindingValue[] values =
        [
            FindingValue.Number("share", delivery.Share.Value, Dimension.Fraction),
            FindingValue.Number("uncertainty", delivery.Expanded, Dimension.Fraction),
            FindingValue.Number("tolerance", sheet.Tolerance, Dimension.Fraction),
        ];
        if (delivery.Conformity is Conformity.Fail) findings.Add(DropTestFindings.Fails.At("runs", values));
        else if (delivery.Conformity is Conformity.CannotTell) findings.Add(DropTestFindings.CannotTell.At("runs", values));
    }

    // What more runs like these would bring: errors that runs share stay, the others fall with the number of runs.
    private static MoreToDrop? More(
        TestSheet sheet, RatioEstimate estimate, Measured value, double expanded, List<BuiltRun> runs,
        IReadOnlyList<BudgetLine> budget, string where, List<Finding> findings)
    {
        var got = expanded / Math.Abs(value.Value);
        if (sheet.Kind is TestKind.DropTest && got > sheet.Tolerance)
            findings.Add(DropTestFindings.TooWide.At(
                where, FindingValue.Number("got", got, Dimension.Fraction),
                FindingValue.Number("tolerance", sheet.Tolerance, Dimension.Fraction)));
        if (got <= sheet.WantedUncertainty) return null;
        var sharedSources = RatioRun.SharedSources(estimate.Runs);
        double shared = 0, own = 0;
        foreach (var c in estimate.Known.Contributions)
        {
            var v = c.Amount * c.Amount / (value.Value * value.Value);
            if (sharedSources.Contains(c.Source)) shared += v;
            else own += v;
        }

        var one = (own * runs.Count) + (estimate.Scatter.Median * estimate.Scatter.Median);
        var mean = runs.Average(r => r.Net.Value);
        var more = new MoreToDrop(0, 0, 2 * Math.Sqrt(shared));
        for (var n = runs.Count + 1; n <= runs.Count + MostExtraRuns && more.Runs == 0; n++)
        {
            // 2 for a spread that is known; the rest is what few runs leave unknown of it (read off the coverage
            // campaign's median widths).
            var factor = 2 + (2.2 / n);
            if (factor * Math.Sqrt(shared + (one / n)) <= sheet.WantedUncertainty)
                more = more with { Runs = n - runs.Count, Mass = (n - runs.Count) * mean };
        }

        var isNow = FindingValue.Number("got", got, Dimension.Fraction);
        var wanted = FindingValue.Number("wanted", sheet.WantedUncertainty, Dimension.Fraction);
        findings.Add(more.Runs > 0
            ? DropTestFindings.Wide.At(
                where, isNow, wanted, FindingValue.Number("runs", more.Runs, Dimension.Fraction),
                FindingValue.Number("mass", more.Mass, Dimension.Mass))
            : DropTestFindings.WideForGood.At(where, isNow, wanted, FindingValue.Said("cause", Phrase.OfFamily(budget[0].Family))));
        return more;
    }

    private static TestResult WithTrials(
        TestSheet sheet, TestResult result, AnalysisOptions options, string where, List<Finding> findings)
    {
        var trials = RatioTrials.Run(result.Estimate, options.Trials, options.Seed, sheet.Probability);
        var agrees = trials.Agrees(result.Low, result.High);
        if (!agrees)
        {
            // Two digits of the uncertainty are more than a yard needs: a small disagreement is only noted.
            var off = Math.Max(Math.Abs(trials.Low - result.Low), Math.Abs(trials.High - result.High));
            findings.Add(DropTestFindings.FirstOrderFails.At(
                off > WorthWarning * result.Expanded ? Severity.Warn : Severity.Note, where, FindingValue.Number("low", trials.Low, result.Dimension),
                FindingValue.Number("high", trials.High, result.Dimension)));
        }

        return result with { Trials = trials, TrialsAgree = agrees };
    }
}
