using Lanewright.Core.Findings;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>The words of a report for machines, and the sentences for people.</summary>
public static class ReportWords
{
    /// <summary>Machine word of a severity.</summary>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Note => "note",
        Severity.Warn => "warn",
        _ => "stop",
    };

    /// <summary>How a severity is called where it stands in front of a finding.</summary>
    public static Phrase Label(Severity severity) => severity switch
    {
        Severity.Note => "NOTE",
        Severity.Warn => "WARN",
        _ => "STOP",
    };

    /// <summary>Machine word of a kind of test.</summary>
    public static string Of(TestKind kind) => kind is TestKind.DropTest ? "drop-test" : "verification";

    /// <summary>Machine word of a verdict against a tolerance.</summary>
    public static string Of(Conformity conformity) => conformity switch
    {
        Conformity.Pass => "pass",
        Conformity.Fail => "fail",
        _ => "cannot-tell",
    };

    /// <summary>Machine word of an estimator.</summary>
    public static string Of(RatioEstimator estimator) => estimator switch
    {
        RatioEstimator.RatioOfTotals => "ratio-of-totals",
        RatioEstimator.MeanOfRatios => "mean-of-ratios",
        RatioEstimator.EqualVariance => "equal-variance-line",
        RatioEstimator.Weighted => "weighted-line",
        _ => "errors-in-both-line",
    };

    /// <summary>Machine word of a reason.</summary>
    public static string Of(EstimatorReason reason) => reason switch
    {
        EstimatorReason.OneRun => "one-run",
        EstimatorReason.SizesAlike => "sizes-alike",
        EstimatorReason.CountsMatter => "counts-matter",
        EstimatorReason.WeighingsDiffer => "weighings-differ",
        EstimatorReason.ScatterAdds => "scatter-adds",
        EstimatorReason.ScatterConstant => "scatter-constant",
        _ => "same-share",
    };

    /// <summary>What an estimator is, in words.</summary>
    public static Phrase Sentence(RatioEstimator estimator) => estimator switch
    {
        RatioEstimator.RatioOfTotals => "ratio of the totals",
        RatioEstimator.MeanOfRatios => "mean of the runs' ratios",
        RatioEstimator.EqualVariance => "line through zero, every run off by the same amount",
        RatioEstimator.Weighted => "runs weighted by how well each was weighed",
        _ => "line through zero with errors in counts and masses",
    };

    /// <summary>Why it was chosen, in words.</summary>
    public static Phrase Sentence(EstimatorReason reason) => reason switch
    {
        EstimatorReason.OneRun => "there is one run, so every way gives the same",
        EstimatorReason.SizesAlike => "the drops are of nearly one size, so the ways agree and the usual one is taken",
        EstimatorReason.CountsMatter => "the counts are about as uncertain as the masses",
        EstimatorReason.WeighingsDiffer => "the runs were not weighed equally well, and it matters beside their scatter",
        EstimatorReason.ScatterAdds => "the runs themselves show scatter that adds up along a drop",
        EstimatorReason.ScatterConstant => "the runs themselves show the same scatter for small and large drops",
        _ => "sizes differ and nothing speaks against every run scattering by the same share",
    };
}
