namespace Lanewright.Core.Statistics;

/// <summary>
/// Lines through the origin, y = b x: one function for each assumption about the errors. Throws
/// <see cref="ArgumentException"/> when the points cannot give the estimate (see each function); values must be finite.
/// Formulas: <c>docs/method/statistics.md</c>.
/// </summary>
public static class OriginFit
{
    /// <summary>Every y equally uncertain: b = sum(x y)/sum(x^2). Needs one x that is not 0.</summary>
    public static OriginFitResult EqualVariance(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        FitMath.RequirePoints(x, y, least: 1);
        if (x.IndexOfAnyExcept(0.0) < 0)
            throw new ArgumentException("A line through the origin needs one x that is not 0.", nameof(x));
        return Solve(x, y, [], FitAssumption.EqualVariance);
    }

    /// <summary>Variance of y proportional to x: b = sum(y)/sum(x), the ratio of the totals. Needs every x above
    /// 0.</summary>
    public static OriginFitResult RatioOfTotals(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        FitMath.RequirePoints(x, y, least: 1);
        foreach (var value in x)
        {
            if (!(value > 0))
                throw new ArgumentException("A variance proportional to x needs every x above 0.", nameof(x));
        }

        return Solve(x, y, [], FitAssumption.VarianceProportionalToX);
    }

    /// <summary>Variance of y proportional to x^2: b = mean(y/x), the mean of the ratios, with their standard deviation
    /// over sqrt(n) as uncertainty. Needs every x different from 0.</summary>
    public static OriginFitResult MeanOfRatios(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        FitMath.RequirePoints(x, y, least: 1);
        if (x.Contains(0.0))
            throw new ArgumentException("A ratio y/x needs every x different from 0.", nameof(x));
        return Solve(x, y, [], FitAssumption.VarianceProportionalToXSquared);
    }

    /// <summary>Known weights 1/u(y)^2: b = sum(w x y)/sum(w x^2), u(b) = 1/sqrt(sum(w x^2)) whatever the residuals.
    /// Needs weights above 0 and one x that is not 0.</summary>
    public static OriginFitResult Weighted(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights) =>
        Weighted(x, y, weights, FitAssumption.KnownWeights);

    /// <summary>Weights known up to a common factor, which the residuals give. Otherwise as
    /// <see cref="Weighted(ReadOnlySpan{double}, ReadOnlySpan{double}, ReadOnlySpan{double})"/>.</summary>
    public static OriginFitResult WeightedRelative(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights) =>
        Weighted(x, y, weights, FitAssumption.RelativeWeights);

    private static OriginFitResult Weighted(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights, FitAssumption assumption)
    {
        FitMath.RequirePoints(x, y, least: 1);
        FitMath.RequireWeights(weights, x.Length);
        if (x.IndexOfAnyExcept(0.0) < 0)
            throw new ArgumentException("A line through the origin needs one x that is not 0.", nameof(x));
        return Solve(x, y, weights, assumption);
    }

    /// <summary>
    /// Known standard uncertainties of x and y, all independent: the b that makes least
    /// sum((y - b x)^2 / (u(y)^2 + b^2 u(x)^2)), by the iteration of D. York et al., American Journal of Physics 72
    /// (2004), with the centroid held at the origin. Each point needs one uncertainty above 0.
    /// </summary>
    public static OriginFitResult ErrorsInBoth(
        ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy)
    {
        FitMath.RequirePoints(x, y, least: 1);
        FitMath.RequireUncertainties(ux, uy, x.Length);
        var slope = EqualVariance(x, y).Slope;
        OriginStep step = default;
        var converged = false;
        for (var n = 0; n < 200 && !converged; n++)
        {
            if (n > 0)
                slope = step.NextSlope;
            step = new OriginStep(x, ux, y, uy, slope);
            converged = FitMath.HasSettled(step.NextSlope - slope, slope, step.SlopeUncertainty);
        }

        return new OriginFitResult
        {
            Assumption = FitAssumption.ErrorsInBoth,
            Count = x.Length,
            Slope = slope,
            SlopeUncertainty = step.SlopeUncertainty,
            DegreesOfFreedom = double.PositiveInfinity,
            ResidualSumOfSquares = step.Residuals,
            RSquared = double.NaN,
            Converged = converged,
        };
    }

    /// <summary>One step of the iteration from a slope b.</summary>
    private readonly struct OriginStep
    {
        internal OriginStep(
            ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy, double b)
        {
            double products = 0, squares = 0, information = 0;
            for (var i = 0; i < x.Length; i++)
            {
                var varianceX = ux[i] * ux[i];
                var varianceY = uy[i] * uy[i];
                var weight = 1 / (varianceY + (b * b * varianceX));
                // The adjusted x: where the point lands on the line.
                var adjusted = weight * ((x[i] * varianceY) + (b * y[i] * varianceX));
                products += weight * adjusted * y[i];
                squares += weight * adjusted * x[i];
                information += weight * adjusted * adjusted;
                var residual = y[i] - (b * x[i]);
                Residuals += weight * residual * residual;
            }

            NextSlope = products / squares;
            SlopeUncertainty = 1 / Math.Sqrt(information);
        }

        internal double NextSlope { get; }

        internal double SlopeUncertainty { get; }

        internal double Residuals { get; }
    }

    private static OriginFitResult Solve(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights, FitAssumption assumption)
    {
        double squares = 0, products = 0, total = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var weight = Weight(assumption, x[i], weights, i);
            squares += weight * x[i] * x[i];
            products += weight * x[i] * y[i];
            total += weight * y[i] * y[i];
        }

        var slope = products / squares;
        double residuals = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - (slope * x[i]);
            residuals += Weight(assumption, x[i], weights, i) * residual * residual;
        }

        var known = assumption == FitAssumption.KnownWeights;
        var factor = known ? 1 : FitMath.Deviation(residuals, x.Length - 1);
        return new OriginFitResult
        {
            Assumption = assumption,
            Count = x.Length,
            Slope = slope,
            SlopeUncertainty = factor / Math.Sqrt(squares),
            DegreesOfFreedom = known ? double.PositiveInfinity : x.Length - 1,
            ResidualSumOfSquares = residuals,
            RSquared = FitMath.RSquared(residuals, total),
        };
    }

    private static double Weight(FitAssumption assumption, double x, ReadOnlySpan<double> weights, int i) =>
        assumption switch
        {
            FitAssumption.EqualVariance => 1,
            FitAssumption.VarianceProportionalToX => 1 / x,
            FitAssumption.VarianceProportionalToXSquared => 1 / (x * x),
            _ => weights[i],
        };
}
