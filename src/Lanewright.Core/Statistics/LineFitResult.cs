namespace Lanewright.Core.Statistics;

/// <summary>A line y = <see cref="Intercept"/> + <see cref="Slope"/> x fitted to points.</summary>
public sealed record LineFitResult
{
    /// <summary>What the fit assumed about the errors.</summary>
    public required FitAssumption Assumption { get; init; }

    /// <summary>Number of points.</summary>
    public required int Count { get; init; }

    /// <summary>The estimated value at x = 0.</summary>
    public required double Intercept { get; init; }

    /// <summary>The estimated slope, in units of y per x.</summary>
    public required double Slope { get; init; }

    /// <summary>Standard uncertainty of the slope; NaN when it rests on residuals and there are but two
    /// points.</summary>
    public required double SlopeUncertainty { get; init; }

    /// <summary>The (weighted) mean x, where the errors of height and slope are uncorrelated. For errors in both it is
    /// the mean of the adjusted x.</summary>
    public required double Pivot { get; init; }

    /// <summary>Standard uncertainty of the line's height at the pivot.</summary>
    public required double PivotUncertainty { get; init; }

    /// <summary>Degrees of freedom of the uncertainties: n - 2, or infinite when they come from known
    /// uncertainties.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>The sum of the weighted squared residuals that the fit made least.</summary>
    public required double ResidualSumOfSquares { get; init; }

    /// <summary>n - 2: the points less the two estimates.</summary>
    public int ResidualDegreesOfFreedom => Count - 2;

    /// <summary>The root of the residual sum of squares per degree of freedom, in the units of y for the ordinary fit;
    /// for known uncertainties a number near 1 when they are right (Birge's ratio). NaN for two points.</summary>
    public double ResidualStandardDeviation => FitMath.Deviation(ResidualSumOfSquares, ResidualDegreesOfFreedom);

    /// <summary>1 less the residual over the weighted sum of squares of y about its mean. NaN for errors in both
    /// and when all y are equal.</summary>
    public required double RSquared { get; init; }

    /// <summary>False when the iteration of errors in both did not settle; the numbers are then not for use.</summary>
    public bool Converged { get; init; } = true;

    /// <summary>Standard uncertainty of the intercept.</summary>
    public double InterceptUncertainty => FitMath.Hypotenuse(PivotUncertainty, Pivot * SlopeUncertainty);

    /// <summary>Covariance of intercept and slope.</summary>
    public double Covariance => -Pivot * SlopeUncertainty * SlopeUncertainty;

    /// <summary>Correlation of intercept and slope, between -1 and 1.</summary>
    public double Correlation => -Pivot * SlopeUncertainty / InterceptUncertainty;

    /// <summary>The height of the line at <paramref name="x"/>, x exact: JCGM 100:2008, H.3.4. From the pivot, so that
    /// nothing cancels between the covariance and the variances.</summary>
    public FitPrediction Predict(double x) => new(
        Intercept + (Slope * x),
        FitMath.Hypotenuse(PivotUncertainty, (x - Pivot) * SlopeUncertainty),
        DegreesOfFreedom);

    /// <summary>A single future observation at <paramref name="x"/>: the height of the line and the observation's own
    /// scatter.</summary>
    /// <param name="x">Where, exact.</param>
    /// <param name="observationUncertainty">Standard deviation of one observation in the units of y; for the ordinary
    /// fit <see cref="ResidualStandardDeviation"/>.</param>
    public FitPrediction PredictObservation(double x, double observationUncertainty)
    {
        var line = Predict(x);
        return line with
        {
            StandardUncertainty = FitMath.Hypotenuse(line.StandardUncertainty, observationUncertainty),
        };
    }
}
