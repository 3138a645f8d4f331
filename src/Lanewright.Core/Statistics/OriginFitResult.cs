namespace Lanewright.Core.Statistics;

/// <summary>A line through the origin, y = <see cref="Slope"/> x, fitted to points.</summary>
public sealed record OriginFitResult
{
    /// <summary>What the fit assumed about the errors.</summary>
    public required FitAssumption Assumption { get; init; }

    /// <summary>Number of points.</summary>
    public required int Count { get; init; }

    /// <summary>The estimated slope, in units of y per x.</summary>
    public required double Slope { get; init; }

    /// <summary>Its standard uncertainty; NaN when it rests on residuals and there is only one point.</summary>
    public required double SlopeUncertainty { get; init; }

    /// <summary>Degrees of freedom of the uncertainty: n - 1, or infinite when it comes from known
    /// uncertainties.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>The sum of the weighted squared residuals that the fit made least.</summary>
    public required double ResidualSumOfSquares { get; init; }

    /// <summary>n - 1: the points less the one estimate.</summary>
    public int ResidualDegreesOfFreedom => Count - 1;

    /// <summary>
    /// The root of the residual sum of squares per degree of freedom; NaN for one point. In the units of y for equal
    /// variance, of y/sqrt(x) and y/x for variance proportional to x and its square; for known uncertainties a number
    /// near 1 when they are right (Birge's ratio).
    /// </summary>
    public double ResidualStandardDeviation => FitMath.Deviation(ResidualSumOfSquares, ResidualDegreesOfFreedom);

    /// <summary>1 less the residual over the weighted sum of y squared. Without an intercept the total is about zero,
    /// not about the mean: the other formula gives nonsense (NIST StRD NoInt2). NaN for errors in both and when
    /// all y are 0.</summary>
    public required double RSquared { get; init; }

    /// <summary>False when the iteration of errors in both did not settle; the numbers are then not for use.</summary>
    public bool Converged { get; init; } = true;

    /// <summary>The value of the line at <paramref name="x"/>, x exact.</summary>
    public FitPrediction Predict(double x) => new(Slope * x, Math.Abs(x) * SlopeUncertainty, DegreesOfFreedom);
}
