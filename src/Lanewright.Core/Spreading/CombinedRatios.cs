using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// A quantity that depends on several estimates, such as a curve between settings: its value with the error sources, and the
/// distribution of its error. Each estimate's scatter is its own, and each is a mixture of sizes
/// (docs/method/repeatability.md); their sum is worked out size by size. Sources that estimates share (a scale) add up or
/// cancel as they do.
/// </summary>
public sealed class CombinedRatios
{
    private const int Bins = 96;

    internal CombinedRatios(Measured value, ErrorDistribution error)
    {
        Value = value;
        Error = error;
    }

    /// <summary>The value, with the scatter of each estimate as one source.</summary>
    public Measured Value { get; }

    /// <summary>The distribution of its error.</summary>
    public ErrorDistribution Error { get; }

    /// <summary>Combines.</summary>
    /// <param name="estimates">The estimates.</param>
    /// <param name="slopes">What one unit of each moves the quantity by.</param>
    /// <param name="value">The quantity itself.</param>
    /// <param name="name">Prefix for the identities of the scatters; estimates are numbered.</param>
    /// <param name="others">Further error sources with their amounts.</param>
    /// <exception cref="ArgumentException">There is not one slope for each estimate.</exception>
    public static CombinedRatios Of(
        IReadOnlyList<RatioEstimate> estimates, ReadOnlySpan<double> slopes, double value, string name,
        params ReadOnlySpan<Contribution> others)
    {
        ArgumentNullException.ThrowIfNull(estimates);
        if (slopes.Length != estimates.Count) throw new ArgumentException("One slope for each estimate.", nameof(slopes));
        var known = new Measured[estimates.Count];
        var total = new Measured[estimates.Count];
        double[] weights = [1], variances = [0];
        for (var i = 0; i < estimates.Count; i++)
        {
            var estimate = estimates[i];
            known[i] = estimate.Known;
            total[i] = estimate.Total(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}:{i}:scatter"));
            var scale = slopes[i] * estimate.Known.Value * estimate.ScatterFactor;
            if (scale != 0) (weights, variances) = Add(weights, variances, estimate.Scatter.Chances, scale);
        }

        var rest = Measured.Of(0, others);
        var spreads = new double[variances.Length];
        for (var i = 0; i < spreads.Length; i++) spreads[i] = Math.Sqrt(variances[i]);
        return new(
            Measured.Linear(total, slopes, value) + rest,
            ErrorDistribution.Of(Measured.Linear(known, slopes, value) + rest, weights, spreads));
    }

    // Every size of the one with every size of the other, gathered in bins of equal ratio that keep the mean variance.
    private static (double[] Weights, double[] Variances) Add(
        double[] weights, double[] variances, ReadOnlySpan<double> chances, double scale)
    {
        var own = new double[chances.Length];
        for (var j = 0; j < own.Length; j++) own[j] = Square(scale * RunScatter.Sizes[j]);
        if (weights.Length == 1 && variances[0] == 0) return (chances.ToArray(), own);
        var low = Elementary.Log(variances[0] + own[0]);
        var step = (Elementary.Log(variances[^1] + own[^1]) - low) / (Bins - 1);
        var mass = new double[Bins];
        var sum = new double[Bins];
        for (var i = 0; i < weights.Length; i++)
        {
            for (var j = 0; j < own.Length; j++)
            {
                var variance = variances[i] + own[j];
                var bin = Math.Clamp((int)Math.Round((Elementary.Log(variance) - low) / step), 0, Bins - 1);
                var weight = weights[i] * chances[j];
                mass[bin] += weight;
                sum[bin] += weight * variance;
            }
        }

        var full = Enumerable.Range(0, Bins).Where(bin => mass[bin] > 0).ToList();
        return ([.. full.Select(bin => mass[bin])], [.. full.Select(bin => sum[bin] / mass[bin])]);

        static double Square(double x) => x * x;
    }
}
