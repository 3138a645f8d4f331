namespace Lanewright.Core.Statistics;

/// <summary>What a fit assumes about the errors. Different assumptions give different estimates from the same
/// points.</summary>
public enum FitAssumption
{
    /// <summary>x exact; every y has the same unknown variance, estimated from the residuals.</summary>
    EqualVariance,

    /// <summary>x exact; the variance of y is proportional to x, the factor estimated from the residuals.</summary>
    VarianceProportionalToX,

    /// <summary>x exact; the variance of y is proportional to x squared, the factor estimated from the residuals: every
    /// ratio y/x is equally good.</summary>
    VarianceProportionalToXSquared,

    /// <summary>x exact; the weights are the reciprocal variances of y and known: the residuals do not change the
    /// uncertainties.</summary>
    KnownWeights,

    /// <summary>x exact; the weights are known up to a common factor, which is estimated from the residuals.</summary>
    RelativeWeights,

    /// <summary>x and y uncertain, with known standard uncertainties, all independent.</summary>
    ErrorsInBoth,
}
