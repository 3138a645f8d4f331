using Lanewright.Core.Statistics;

namespace Lanewright.Core.Uncertainty;

/// <summary>
/// The distribution of a result's error about 0: a mixture of normals of different spread, plus one rectangle. It is
/// what propagation of distributions (JCGM 101) gives for a linear model, worked out by formula instead of random
/// numbers. The largest rectangular contribution keeps its shape; all others enter the normal part by their variance
/// (central limit theorem), those of finite degrees of freedom as if their spread were known. So it is exact for normals
/// with at most one rectangle; how far off it is otherwise: docs/method/measured-values.md.
/// </summary>
public sealed class ErrorDistribution
{
    // Below this ratio of rectangle half-width to normal spread the shape cannot be told from a normal's: the fourth
    // cumulant -2a^4/15 is then under 1e-6 s^4.
    private const double NegligibleRectangle = 0.05;
    private const double NegligibleWeight = 1e-10;

    private static readonly double SqrtThree = Math.Sqrt(3);

    private readonly double[] weights;
    private readonly double[] spreads;

    private ErrorDistribution(double[] weights, double[] spreads, double halfWidth)
    {
        this.weights = weights;
        this.spreads = spreads;
        HalfWidth = halfWidth;
    }

    /// <summary>Half-width of the rectangle; 0 without one.</summary>
    public double HalfWidth { get; }

    /// <summary>Standard deviation of the whole.</summary>
    public double StandardDeviation
    {
        get
        {
            var v = HalfWidth * HalfWidth / 3;
            for (var i = 0; i < weights.Length; i++)
                v += weights[i] * spreads[i] * spreads[i];
            return Math.Sqrt(v);
        }
    }

    /// <summary>The distribution of a measured value whose spreads are all known.</summary>
    public static ErrorDistribution Of(Measured x) => Of(x, [1], [0]);

    /// <summary>
    /// The distribution of a measured value together with a further normal error whose spread was estimated: the spread itself
    /// is spread as that of a normal sample is when nothing else is known (its logarithm uniform beforehand), so that alone it
    /// gives the t distribution.
    /// </summary>
    /// <param name="known">The sources of known spread.</param>
    /// <param name="estimate">The estimated spread, more than 0.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, 1 or more.</param>
    public static ErrorDistribution OfEstimate(Measured known, double estimate, double degreesOfFreedom)
    {
        const int points = 160;
        const double least = 0.15, ratio = 1.06;
        Span<double> weights = stackalloc double[points], spreads = stackalloc double[points];
        var spread = least;
        for (var i = 0; i < points; i++, spread *= ratio)
        {
            weights[i] = Elementary.Exp(-degreesOfFreedom * (Elementary.Log(spread) + (0.5 / (spread * spread)) - 0.5));
            spreads[i] = spread * estimate;
        }

        return Of(known, weights, spreads);
    }

    /// <summary>
    /// The distribution of a measured value together with a further normal error whose spread is itself uncertain.
    /// </summary>
    /// <param name="known">The sources of known spread.</param>
    /// <param name="weights">Chance of each spread of the further error, 0 or more; only their proportions count.</param>
    /// <param name="spreads">Those spreads.</param>
    /// <exception cref="ArgumentException">The spans differ in length, or the weights do not add up to anything.</exception>
    public static ErrorDistribution Of(Measured known, ReadOnlySpan<double> weights, ReadOnlySpan<double> spreads)
    {
        if (weights.Length != spreads.Length || weights.Length == 0)
            throw new ArgumentException("One weight for each spread, and at least one.", nameof(weights));
        double rectangle = 0, normal = 0;
        foreach (var c in known.Contributions)
        {
            var amount = Math.Abs(c.Amount);
            if (c.Source.Shape is ErrorShape.Rectangular && amount > rectangle)
                (rectangle, amount) = (amount, rectangle);
            normal += amount * amount;
        }

        var sum = 0.0;
        foreach (var weight in weights)
            sum += weight < NegligibleWeight ? 0 : weight;
        if (!(sum > 0)) throw new ArgumentException("The weights must add up to more than 0.", nameof(weights));
        var w = new List<double>(weights.Length);
        var s = new List<double>(weights.Length);
        var halfWidth = rectangle * SqrtThree;
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] < NegligibleWeight) continue;
            w.Add(weights[i] / sum);
            s.Add(Math.Sqrt(normal + (spreads[i] * spreads[i])));
        }

        return new([.. w], [.. s], halfWidth);
    }

    /// <summary>The chance that the error is at most <paramref name="limit"/> either way; 0 below 0.</summary>
    public double ChanceWithin(double limit)
    {
        if (limit < 0) return 0;
        if (double.IsPositiveInfinity(limit)) return 1;
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
            sum += weights[i] * Within(limit, spreads[i]);
        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>The chance that the error is at most <paramref name="x"/>, either sign.</summary>
    public double ChanceBelow(double x) =>
        x >= 0 ? 0.5 + (ChanceWithin(x) / 2) : 0.5 - (ChanceWithin(-x) / 2);

    /// <summary>Half the width of the interval about 0 that holds the error with the given chance.</summary>
    /// <param name="probability">Between 0 and 1.</param>
    public double Coverage(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Must lie between 0 and 1.");
        double low = 0, high = HalfWidth;
        foreach (var s in spreads)
            high = Math.Max(high, HalfWidth + (s * 40));
        if (high == 0) return 0;
        var x = 2 * StandardDeviation;
        // Newton kept inside a shrinking bracket: the chance grows steadily with the limit.
        for (var i = 0; i < 200; i++)
        {
            var miss = ChanceWithin(x) - probability;
            if (Math.Abs(miss) < 1e-12) break;
            if (miss > 0) high = x;
            else low = x;
            var slope = Density(x);
            var next = slope > 0 ? x - (miss / slope) : double.NaN;
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (Math.Abs(next - x) <= 1e-13 * next) break;
            x = next;
        }

        return x;
    }

    private double Within(double limit, double spread)
    {
        if (HalfWidth <= NegligibleRectangle * spread)
        {
            if (spread == 0) return 1;
            var s = Math.Sqrt((spread * spread) + (HalfWidth * HalfWidth / 3));
            return (2 * NormalDistribution.Cdf(limit / s)) - 1;
        }

        if (spread <= 1e-9 * HalfWidth) return Math.Min(limit / HalfWidth, 1);
        // Integral of the normal over the rectangle, with G(z) = z Phi(z) + phi(z) and G(z) - G(-z) = z.
        var z1 = (limit + HalfWidth) / spread;
        var z2 = (limit - HalfWidth) / spread;
        // Beyond 9 deviations a normal holds less than 1e-18, and the difference below would only lose digits.
        if (z2 > 9) return 1;
        return spread / (2 * HalfWidth) * (Twice(z1) - Twice(z2));

        static double Twice(double z) =>
            (2 * ((z * NormalDistribution.Cdf(z)) + NormalDistribution.Pdf(z))) - z;
    }

    private double Density(double limit)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            var spread = spreads[i];
            if (HalfWidth <= NegligibleRectangle * spread)
            {
                var s = Math.Sqrt((spread * spread) + (HalfWidth * HalfWidth / 3));
                if (s > 0) sum += weights[i] * 2 * NormalDistribution.Pdf(limit / s) / s;
            }
            else if (spread <= 1e-9 * HalfWidth)
            {
                if (limit < HalfWidth) sum += weights[i] / HalfWidth;
            }
            else
            {
                sum += weights[i] / HalfWidth
                    * (NormalDistribution.Cdf((limit + HalfWidth) / spread)
                        - NormalDistribution.Cdf((limit - HalfWidth) / spread));
            }
        }

        return sum;
    }
}
