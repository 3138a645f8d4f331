namespace Lanewright.Core.Spreading;

/// <summary>Ways to draw one ratio from several runs, each named by what it assumes of the scatter.</summary>
public enum RatioEstimator
{
    /// <summary>Sum of tops by sum of bottoms: the variance grows with the size of the drop.</summary>
    RatioOfTotals,

    /// <summary>Mean of the runs' ratios: every run scatters by the same share, whatever its size.</summary>
    MeanOfRatios,

    /// <summary>Line through the origin by least squares: every run scatters by the same amount.</summary>
    EqualVariance,

    /// <summary>Runs weighted by the common scatter and the known errors of the more uncertain side of the ratio.</summary>
    Weighted,

    /// <summary>Line through the origin with errors in both counts and masses, and the common scatter.</summary>
    ErrorsInBoth,
}

/// <summary>Why an estimator was chosen.</summary>
public enum EstimatorReason
{
    /// <summary>One run: every estimator gives the same.</summary>
    OneRun,

    /// <summary>Drops of nearly one size: the estimators agree, so the trade's usual one is used.</summary>
    SizesAlike,

    /// <summary>The counts are as uncertain as the masses.</summary>
    CountsMatter,

    /// <summary>The runs were weighed with different quality, and it shows against the scatter.</summary>
    WeighingsDiffer,

    /// <summary>The runs themselves show scatter that adds up along the drop.</summary>
    ScatterAdds,

    /// <summary>The runs themselves show scatter of one amount for all sizes.</summary>
    ScatterConstant,

    /// <summary>Sizes differ and nothing speaks against every run scattering by the same share.</summary>
    SameShare,
}
