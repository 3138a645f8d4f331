namespace Lanewright.Core.Statistics;

/// <summary>The value of a fitted curve at one x.</summary>
/// <param name="Value">y there.</param>
/// <param name="StandardUncertainty">Its standard uncertainty; NaN when the fit left no degrees of freedom.</param>
/// <param name="DegreesOfFreedom">Of the uncertainty; infinite when it comes from known uncertainties.</param>
public readonly record struct FitPrediction(double Value, double StandardUncertainty, double DegreesOfFreedom);
