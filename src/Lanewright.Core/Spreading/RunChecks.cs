using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Spreading;

/// <summary>Tests that look at the runs side by side: do they agree, and if not, in which way?</summary>
internal static class RunChecks
{
    private const double AgreementRange = 0.10;
    private const double SizesDiffer = 1.5;
    private const double Level = 0.05;
    private const int RunsWithPower = 6;

    internal static void Of(TestSheet sheet, RatioEstimate estimate, string where, List<Finding> findings)
    {
        var n = estimate.Runs.Count;
        if (n == 1)
        {
            var known = sheet.EarlierScatter is { Runs: > 1 };
            findings.Add((known ? DropTestFindings.SingleRunKnown : DropTestFindings.SingleRun).At(where));
            return;
        }

        if (n == 2) findings.Add(DropTestFindings.TwoRuns.At(where));
        var ratios = new double[n];
        for (var i = 0; i < n; i++)
            ratios[i] = estimate.Runs[i].Ratio;
        var range = (ratios.Max() - ratios.Min()) / Descriptive.Mean(ratios);
        if (range > AgreementRange * (1 + 1e-9))
            findings.Add(DropTestFindings.Scatter.At(where, Share("range", range)));
        if (n < 3) return;
        Outlier(estimate, ratios, where, findings);
        StartStop(sheet, estimate, where, findings);
        Setting(sheet, estimate, ratios, where, findings);
    }

    private static void Outlier(RatioEstimate estimate, double[] ratios, string where, List<Finding> findings)
    {
        var n = ratios.Length;
        var critical = Grubbs.CriticalValue(n, Level, twoSided: true);
        if (Descriptive.StandardDeviation(ratios) > 0)
        {
            var (statistic, index) = Grubbs.Statistic(ratios);
            if (statistic > critical)
            {
                var others = 0.0;
                for (var i = 0; i < n; i++)
                    others += i == index ? 0 : ratios[i] / (n - 1);
                findings.Add(DropTestFindings.Outlier.At(
                    estimate.Runs[index].Field, FindingValue.Text("run", estimate.Runs[index].Id),
                    Share("deviation", (ratios[index] / others) - 1), Number("statistic", statistic),
                    Number("critical", critical)));
            }
        }

        if (n < RunsWithPower)
            findings.Add(DropTestFindings.OutlierNoPower.At(
                where, Number("count", n), Number("largest", Grubbs.LargestPossible(n)),
                Number("critical", critical)));
    }

    // Line with intercept of top against bottom; the weights follow the scatter and the reading errors.
    private static void StartStop(TestSheet sheet, RatioEstimate estimate, string where, List<Finding> findings)
    {
        var n = estimate.Runs.Count;
        double[] x = new double[n], y = new double[n], w = new double[n];
        var constant = estimate.Known.Value;
        var scatter = estimate.Scatter.RootMeanSquare;
        for (var i = 0; i < n; i++)
        {
            var run = estimate.Runs[i];
            x[i] = run.Bottom.Value;
            y[i] = run.Top.Value;
            var share = (scatter * scatter * estimate.Growth[i])
                + (run.Top / run.Bottom).Variance / (run.Ratio * run.Ratio);
            w[i] = 1 / (share * constant * constant * x[i] * x[i]);
        }

        if (x.Max() < SizesDiffer * x.Min())
        {
            findings.Add(DropTestFindings.OneSize.At(where));
            return;
        }

        var line = LineFit.WeightedRelative(x, y, w);
        var u = line.InterceptUncertainty;
        if (!(u > 0)) return;
        var statistic = Math.Abs(line.Intercept) / u;
        var critical = StudentT.Quantile(1 - (Level / 2), n - 2);
        if (statistic <= critical) return;
        // A mass the count does not explain: on top it is the intercept itself, below it is -a / b.
        var mass = sheet.MassOnTop ? line.Intercept : -line.Intercept / line.Slope;
        findings.Add(DropTestFindings.StartStop.At(
            where, FindingValue.Number("amount", mass, Dimension.Mass), Number("statistic", statistic),
            Number("critical", critical)));
    }

    private static void Setting(TestSheet sheet, RatioEstimate estimate, double[] ratios, string where, List<Finding> findings)
    {
        var groups = new Dictionary<string, List<double>>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < ratios.Length; i++)
        {
            var setting = sheet.Runs.First(r => r.Id == estimate.Runs[i].Id).Setting.Trim();
            if (setting.Length == 0) return;
            if (!groups.TryGetValue(setting, out var list)) groups.Add(setting, list = []);
            list.Add(ratios[i]);
        }

        var within = ratios.Length - groups.Count;
        if (groups.Count < 2 || within < 1) return;
        double between = 0, inside = 0;
        var mean = Descriptive.Mean(ratios);
        double low = double.PositiveInfinity, high = 0;
        foreach (var group in groups.Values)
        {
            var centre = group.Average();
            low = Math.Min(low, centre);
            high = Math.Max(high, centre);
            between += group.Count * (centre - mean) * (centre - mean);
            foreach (var r in group)
                inside += (r - centre) * (r - centre);
        }

        var effect = (high - low) / mean;
        if (effect < sheet.WantedUncertainty / 2) return;
        // One-way analysis of variance: F of the settings' means against the runs within a setting.
        var chance = inside == 0
            ? 0
            : 1 - FisherF.Cdf(between / (groups.Count - 1) / (inside / within), groups.Count - 1, within);
        if (chance < Level)
            findings.Add(DropTestFindings.SettingMatters.At(where, Share("effect", effect), Share("chance", chance)));
    }

    private static FindingValue Share(string name, double share) =>
        FindingValue.Number(name, share, Dimension.Fraction);

    private static FindingValue Number(string name, double number) =>
        FindingValue.Number(name, number, Dimension.Fraction);
}
