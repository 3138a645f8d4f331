using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Spreading;

/// <summary>The one road from a sheet to a report.</summary>
public static class SheetAnalysis
{
    /// <summary>Analyses a drop test or a verification. Wrong input gives findings, never an exception.</summary>
    public static TestReport Analyse(TestSheet sheet, AnalysisOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        options ??= new();
        var findings = new List<Finding>();
        findings.AddRange(ScaleCheck.Of(sheet.Scale, "scale", sheet.Date));
        ConditionChecks.Of(sheet, findings);
        var groups = GroupBySetting(sheet);
        var results = new List<TestResult>(groups.Count);
        if (sheet.CommonError is { } common)
        {
            Analyse(sheet, common, groups, options, results, findings);
        }
        else
        {
            // Nobody said which it is: work out both, use the wider, and ask.
            var (together, togetherFindings) = Try(true);
            var (apart, apartFindings) = Try(false);
            var wide = Widest(together) >= Widest(apart);
            results.AddRange(wide ? together : apart);
            findings.AddRange(wide ? togetherFindings : apartFindings);
            if (results.Count > 0)
            {
                findings.Add(WeighingFindings.CommonErrorNotStated.At(
                    "commonError", FindingValue.Text("scale", sheet.Scale.Id),
                    FindingValue.Number("common", Widest(together), Dimension.Fraction),
                    FindingValue.Number("separate", Widest(apart), Dimension.Fraction)));
            }
        }

        DecisionCheck(sheet, findings);
        // Stable order: gravest first, otherwise as found.
        var ordered = findings.OrderByDescending(f => f.Severity).ToList();
        return new() { Sheet = sheet, Results = results, Findings = ordered };

        (List<TestResult> Results, List<Finding> Findings) Try(bool common)
        {
            var r = new List<TestResult>(groups.Count);
            var f = new List<Finding>();
            Analyse(sheet, common, groups, options, r, f);
            return (r, f);
        }

        static double Widest(List<TestResult> results) =>
            results.Count == 0 ? 0 : results.Max(r => r.RelativeExpanded);
    }

    private static void Analyse(
        TestSheet sheet, bool common, List<SettingGroup> groups, AnalysisOptions options, List<TestResult> results,
        List<Finding> findings)
    {
        // A delivery belongs to one drive setting.
        if (groups.Count > 1 && sheet.Spreader.Current is not null)
        {
            findings.Add(DropTestFindings.CurrentOfManySettings.At(
                "spreader.current", FindingValue.Number("count", groups.Count, Dimension.Fraction)));
            sheet = sheet with { Spreader = sheet.Spreader with { Current = null } };
        }

        var builder = new RunBuilder(sheet, common, findings);
        foreach (var group in groups)
        {
            var runs = new List<BuiltRun>(group.Runs.Count);
            foreach (var (run, index) in group.Runs)
            {
                if (builder.Build(run, index) is { } built) runs.Add(built);
            }

            if (runs.Count > 0)
                results.Add(ResultBuilder.Of(sheet, group.Setting, runs, options, findings));
        }

        if (results.Count == 0) findings.Add(DropTestFindings.NoRuns.At("runs"));
    }

    // A closed loop's constant holds for every setting; an open loop has a delivery at each.
    private static List<SettingGroup> GroupBySetting(TestSheet sheet)
    {
        var split = sheet.Kind is TestKind.DropTest && sheet.Spreader.Form is ConstantForm.MassFlow;
        var groups = new List<SettingGroup>();
        for (var i = 0; i < sheet.Runs.Count; i++)
        {
            var setting = split ? sheet.Runs[i].Setting.Trim() : "";
            var group = groups.Find(g => string.Equals(g.Setting, setting, StringComparison.OrdinalIgnoreCase));
            if (group is null) groups.Add(group = new(setting, []));
            group.Runs.Add((sheet.Runs[i], i));
        }

        return groups;
    }

    private static void DecisionCheck(TestSheet sheet, List<Finding> findings)
    {
        if (sheet.Decision is not { } decision) return;
        if (decision.Verdict is Verdict.Adopt && findings.Exists(f => f.Severity is Severity.Stop))
            findings.Add(DropTestFindings.AdoptedAgainstStop.At(
                "decision.verdict", string.IsNullOrWhiteSpace(decision.By) ? FindingValue.Said("by", "Somebody") : FindingValue.Text("by", decision.By)));
        if (string.IsNullOrWhiteSpace(decision.By) || string.IsNullOrWhiteSpace(decision.Why))
            findings.Add(DropTestFindings.DecisionWithoutReason.At("decision"));
    }

    private sealed record SettingGroup(string Setting, List<(Run Run, int Index)> Runs);
}
