namespace Lanewright.Core.Statistics;

/// <summary>
/// Lines with an intercept, y = a + b x: one function for each assumption about the errors. Throws
/// <see cref="ArgumentException"/> for fewer than two points, equal x, or values that are not finite. Formulas:
/// <c>docs/method/statistics.md</c>.
/// </summary>
public static class LineFit
{
    /// <summary>Every y equally uncertain, by an amount the residuals give (JCGM 100:2008, H.3).</summary>
    public static LineFitResult Ordinary(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        FitMath.RequirePoints(x, y, least: 2);
        FitMath.RequireDifferent(x);
        return Solve(x, y, [], FitAssumption.EqualVariance);
    }

    /// <summary>Known weights 1/u(y)^2, above 0: the residuals do not change the uncertainties.</summary>
    public static LineFitResult Weighted(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights)
    {
        FitMath.RequirePoints(x, y, least: 2);
        FitMath.RequireWeights(weights, x.Length);
        FitMath.RequireDifferent(x);
        return Solve(x, y, weights, FitAssumption.KnownWeights);
    }

    /// <summary>Weights, above 0, known up to a common factor, which the residuals give.</summary>
    public static LineFitResult WeightedRelative(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights)
    {
        FitMath.RequirePoints(x, y, least: 2);
        FitMath.RequireWeights(weights, x.Length);
        FitMath.RequireDifferent(x);
        return Solve(x, y, weights, FitAssumption.RelativeWeights);
    }

    private static LineFitResult Solve(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> weights, FitAssumption assumption)
    {
        double sum = 0, meanX = 0, meanY = 0;
        for (var i = 0; i < x.Length; i++)
            sum += weights.IsEmpty ? 1 : weights[i];
        for (var i = 0; i < x.Length; i++)
        {
            var share = (weights.IsEmpty ? 1 : weights[i]) / sum;
            meanX += share * x[i];
            meanY += share * y[i];
        }

        double squares = 0, products = 0, total = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            var dx = x[i] - meanX;
            var dy = y[i] - meanY;
            squares += weight * dx * dx;
            products += weight * dx * dy;
            total += weight * dy * dy;
        }

        var slope = products / squares;
        double residuals = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - meanY - (slope * (x[i] - meanX));
            residuals += (weights.IsEmpty ? 1 : weights[i]) * residual * residual;
        }

        var known = assumption == FitAssumption.KnownWeights;
        var factor = known ? 1 : FitMath.Deviation(residuals, x.Length - 2);
        return new LineFitResult
        {
            Assumption = assumption,
            Count = x.Length,
            Intercept = meanY - (slope * meanX),
            Slope = slope,
            SlopeUncertainty = factor / Math.Sqrt(squares),
            Pivot = meanX,
            PivotUncertainty = factor / Math.Sqrt(sum),
            DegreesOfFreedom = known ? double.PositiveInfinity : x.Length - 2,
            ResidualSumOfSquares = residuals,
            RSquared = FitMath.RSquared(residuals, total),
        };
    }

    /// <summary>
    /// Known standard uncertainties of x and y, all independent: the unified equations of D. York, N. M. Evensen,
    /// M. L. Martinez and J. De Basabe Delgado, American Journal of Physics 72 (2004), 367-375, with their standard
    /// uncertainties (from the adjusted points). Each point needs one uncertainty above 0.
    /// </summary>
    /// <returns>The fit; <see cref="LineFitResult.Converged"/> is false when 200 steps did not settle it.</returns>
    public static LineFitResult ErrorsInBoth(
        ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy)
    {
        FitMath.RequirePoints(x, y, least: 2);
        FitMath.RequireUncertainties(ux, uy, x.Length);
        FitMath.RequireDifferent(x);
        var slope = Ordinary(x, y).Slope;
        YorkStep step = default;
        var converged = false;
        for (var n = 0; n < 200 && !converged; n++)
        {
            if (n > 0)
                slope = step.NextSlope;
            step = new YorkStep(x, ux, y, uy, slope);
            converged = FitMath.HasSettled(step.NextSlope - slope, slope, step.SlopeUncertainty);
        }

        return new LineFitResult
        {
            Assumption = FitAssumption.ErrorsInBoth,
            Count = x.Length,
            Intercept = step.MeanY - (slope * step.MeanX),
            Slope = slope,
            SlopeUncertainty = step.SlopeUncertainty,
            Pivot = step.AdjustedMeanX,
            PivotUncertainty = 1 / Math.Sqrt(step.SumOfWeights),
            DegreesOfFreedom = double.PositiveInfinity,
            ResidualSumOfSquares = step.Residuals,
            RSquared = double.NaN,
            Converged = converged,
        };
    }

    /// <summary>One step of York's iteration from a slope; letters as in the paper.</summary>
    private readonly struct YorkStep
    {
        internal YorkStep(
            ReadOnlySpan<double> x, ReadOnlySpan<double> ux, ReadOnlySpan<double> y, ReadOnlySpan<double> uy, double b)
        {
            for (var i = 0; i < x.Length; i++)
            {
                var weight = Weight(ux[i], uy[i], b);
                SumOfWeights += weight;
                MeanX += weight * x[i];
                MeanY += weight * y[i];
            }

            MeanX /= SumOfWeights;
            MeanY /= SumOfWeights;
            double products = 0, squares = 0, meanBeta = 0;
            for (var i = 0; i < x.Length; i++)
            {
                var weight = Weight(ux[i], uy[i], b);
                var beta = Beta(x[i], ux[i], y[i], uy[i], b);
                products += weight * beta * (y[i] - MeanY);
                squares += weight * beta * (x[i] - MeanX);
                meanBeta += weight * beta;
                var residual = y[i] - MeanY - (b * (x[i] - MeanX));
                Residuals += weight * residual * residual;
            }

            NextSlope = products / squares;
            meanBeta /= SumOfWeights;
            AdjustedMeanX = MeanX + meanBeta;
            double information = 0;
            for (var i = 0; i < x.Length; i++)
            {
                var u = Beta(x[i], ux[i], y[i], uy[i], b) - meanBeta;
                information += Weight(ux[i], uy[i], b) * u * u;
            }

            SlopeUncertainty = 1 / Math.Sqrt(information);
        }

        internal double SumOfWeights { get; }

        internal double MeanX { get; }

        internal double MeanY { get; }

        internal double AdjustedMeanX { get; }

        internal double NextSlope { get; }

        internal double SlopeUncertainty { get; }

        internal double Residuals { get; }

        private static double Weight(double ux, double uy, double b) => 1 / ((uy * uy) + (b * b * ux * ux));

        /// <summary>The adjusted x less <see cref="MeanX"/>, with variances in place of their reciprocals, so that
        /// either may be 0.</summary>
        private double Beta(double x, double ux, double y, double uy, double b) =>
            Weight(ux, uy, b) * (((x - MeanX) * uy * uy) + (b * (y - MeanY) * ux * ux));
    }
}
