using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season;

/// <summary>
/// A CUSUM chart for looks of different uncertainty: each adds the logarithm of the likelihood ratio of "changed by d" to "not
/// changed", (d / s^2)(x - d/2), and its mirror image downwards. For looks of one uncertainty it is the usual chart with
/// k = d/2 and h = limit * s^2 / d (docs/method/drift.md).
/// </summary>
public static class DriftChart
{
    private const int Points = 49;
    private const int OffsetPoints = 9;

    /// <summary>The sums.</summary>
    /// <param name="values">Logarithms of shares, off what the calibration found, in order of time.</param>
    /// <param name="deviations">Own standard deviation of each, more than 0.</param>
    /// <param name="change">The change to find, more than 0.</param>
    /// <param name="limit">A sum above it is a signal; more than 0.</param>
    public static IReadOnlyList<CusumPoint> Of(
        ReadOnlySpan<double> values, ReadOnlySpan<double> deviations, double change, double limit)
    {
        if (values.Length != deviations.Length) throw new ArgumentException("One deviation for each value.", nameof(deviations));
        if (!(change > 0)) throw new ArgumentOutOfRangeException(nameof(change), change, "Must be more than 0.");
        if (!(limit > 0)) throw new ArgumentOutOfRangeException(nameof(limit), limit, "Must be more than 0.");
        var points = new CusumPoint[values.Length];
        double high = 0, low = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var weight = change / (deviations[i] * deviations[i]);
            high = Math.Max(0, high + (weight * (values[i] - (change / 2))));
            low = Math.Max(0, low + (weight * (-values[i] - (change / 2))));
            points[i] = new(high, low, high > limit ? ChartSignal.High : low > limit ? ChartSignal.Low : ChartSignal.None);
        }

        return points;
    }

    /// <summary>
    /// The chance that the upper sum has given no signal after each look: the distribution of the sum carried from look to look
    /// on an even grid by Simpson's rule, with the chance of 0 beside it.
    /// </summary>
    /// <param name="means">Mean of each look.</param>
    /// <param name="deviations">Own standard deviation of each, more than 0.</param>
    /// <param name="change">The change to find.</param>
    /// <param name="limit">The limit.</param>
    public static double[] ChanceOfSilence(
        ReadOnlySpan<double> means, ReadOnlySpan<double> deviations, double change, double limit)
    {
        var step = limit / (Points - 1);
        // What a look does on the grid depends on differences only: densities at each of them, and the chance to fall to 0.
        var (densities, fall) = (new double[(2 * Points) - 1], new double[Points]);
        var (atZero, held, next, silence) = (1.0, new double[Points], new double[Points], new double[means.Length]);
        for (var i = 0; i < means.Length; i++)
        {
            // The look adds a normal amount: mean m and deviation r.
            var r = change / deviations[i];
            var m = change / (deviations[i] * deviations[i]) * (means[i] - (change / 2));
            if (i == 0 || means[i] != means[i - 1] || deviations[i] != deviations[i - 1])
            {
                for (var j = 0; j < densities.Length; j++)
                    densities[j] = NormalDistribution.Pdf((((j - Points + 1) * step) - m) / r) / r;
                for (var k = 0; k < Points; k++) fall[k] = NormalDistribution.Cdf((-m - (k * step)) / r);
            }

            var zero = atZero * fall[0];
            for (var k = 0; k < Points; k++) zero += held[k] * fall[k];
            var total = zero;
            for (var j = 0; j < Points; j++)
            {
                var sum = atZero * densities[j + Points - 1];
                for (var k = 0; k < Points; k++) sum += held[k] * densities[j - k + Points - 1];
                next[j] = sum * (j is 0 or Points - 1 ? 1 : j % 2 == 1 ? 4 : 2) * step / 3;
                total += next[j];
            }

            (held, next, atZero) = (next, held, zero);
            silence[i] = Math.Clamp(total, 0, 1);
        }

        return silence;
    }

    /// <summary>
    /// The same with an error common to all looks, normal around 0 with the given standard deviation, averaged over.
    /// </summary>
    public static double[] ChanceOfSilence(
        ReadOnlySpan<double> means, ReadOnlySpan<double> deviations, double change, double limit, double common)
    {
        if (common == 0) return ChanceOfSilence(means, deviations, change, limit);
        var rule = GaussLegendre.Of(OffsetPoints, -4, 4);
        var (average, moved, weights) = (new double[means.Length], new double[means.Length], 0.0);
        for (var o = 0; o < OffsetPoints; o++)
        {
            var weight = rule.Weights[o] * NormalDistribution.Pdf(rule.Points[o]);
            for (var i = 0; i < moved.Length; i++) moved[i] = means[i] + (common * rule.Points[o]);
            var silence = ChanceOfSilence(moved, deviations, change, limit);
            for (var i = 0; i < moved.Length; i++) average[i] += weight * silence[i];
            weights += weight;
        }

        for (var i = 0; i < average.Length; i++) average[i] /= weights;
        return average;
    }
}
