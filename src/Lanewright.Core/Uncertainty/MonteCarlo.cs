using Lanewright.Core.Statistics;

namespace Lanewright.Core.Uncertainty;

/// <summary>Fills one block of trials of a model.</summary>
/// <param name="random">The only source of chance.</param>
/// <param name="results">One result for each trial of the block.</param>
public delegate void MonteCarloBlock(RandomSource random, Span<double> results);

/// <summary>Propagation of distributions by random trials (JCGM 101:2008, clause 7).</summary>
/// <param name="Trials">Number of trials.</param>
/// <param name="Seed">Seed of the random numbers: the same seed gives the same figures on every machine.</param>
/// <param name="Mean">Mean of the trials.</param>
/// <param name="StandardUncertainty">Their standard deviation.</param>
/// <param name="Probability">Coverage probability of the intervals.</param>
/// <param name="Low">Lower end of the probabilistically symmetric interval.</param>
/// <param name="High">Its upper end.</param>
/// <param name="ShortestLow">Lower end of the shortest interval.</param>
/// <param name="ShortestHigh">Its upper end.</param>
public sealed record MonteCarlo(
    int Trials, ulong Seed, double Mean, double StandardUncertainty, double Probability, double Low, double High,
    double ShortestLow, double ShortestHigh)
{
    /// <summary>The most trials in a block.</summary>
    internal const int BlockSize = 1024;

    /// <summary>Runs the trials.</summary>
    /// <param name="model">Fills a block.</param>
    /// <param name="trials">At least 1,000.</param>
    /// <param name="seed">Any.</param>
    /// <param name="probability">Between 0 and 1.</param>
    public static MonteCarlo Run(MonteCarloBlock model, int trials, ulong seed, double probability = 0.95)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1000);
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Must lie between 0 and 1.");
        var random = new RandomSource(seed);
        var y = new double[trials];
        for (var start = 0; start < trials; start += BlockSize)
            model(random, y.AsSpan(start, Math.Min(BlockSize, trials - start)));
        return Summarize(y, seed, probability);
    }

    /// <summary>
    /// Whether an interval from a formula agrees with the trials: both ends within the numerical tolerance for
    /// <paramref name="digits"/> significant digits of u (JCGM 101, 7.9.2 and 8.1), with room of three standard errors
    /// for the trials' own chance.
    /// </summary>
    public bool Agrees(double low, double high, int digits = 2)
    {
        var room = NumericalTolerance(StandardUncertainty, digits) + (3 * EndStandardError);
        return Math.Abs(low - Low) <= room && Math.Abs(high - High) <= room;
    }

    /// <summary>
    /// Half a unit in the last place of u written with a number of significant digits (JCGM 101, 7.9.2).
    /// </summary>
    /// <param name="u">A standard uncertainty; its digits are cut off, not rounded.</param>
    /// <param name="digits">1 or more.</param>
    public static double NumericalTolerance(double u, int digits)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        if (!(u > 0)) return 0;
        // The slack lets a u that rounding holds just below a power of ten count as that power.
        var top = 1 - 1e-12;
        for (var i = 0; i < digits; i++)
            top *= 10;
        double up = 1, down = 1;
        while (u / down >= top) down *= 10;
        while (u * up < top / 10) up *= 10;
        return down / up / 2;
    }

    /// <summary>
    /// Standard error of an end of the symmetric interval: sqrt(q (1 - q) / M) divided by the density there, taken as
    /// that of a normal (a size, not a claim).
    /// </summary>
    public double EndStandardError
    {
        get
        {
            var q = (1 - Probability) / 2;
            var density = NormalDistribution.Pdf(NormalDistribution.Quantile(q)) / StandardUncertainty;
            return Math.Sqrt(q * (1 - q) / Trials) / density;
        }
    }

    private static MonteCarlo Summarize(double[] y, ulong seed, double probability)
    {
        var m = y.Length;
        double mean = 0, squares = 0;
        foreach (var v in y)
            mean += v;
        mean /= m;
        foreach (var v in y)
            squares += (v - mean) * (v - mean);

        // Only the two tails are needed in order: an interval of probability p starts within the lowest 1 - p.
        var inside = (int)Math.Floor((probability * m) + 0.5);
        var outside = Math.Max(1, m - inside);
        inside = m - outside;
        if (2 * outside < m)
        {
            Selection.Partition(y, outside);
            Selection.Partition(y.AsSpan(outside), m - (2 * outside));
            Array.Sort(y, 0, outside);
            Array.Sort(y, m - outside, outside);
        }
        else
        {
            Array.Sort(y);
        }

        var best = 0;
        for (var i = 1; i < outside; i++)
        {
            if (y[i + inside] - y[i] < y[best + inside] - y[best]) best = i;
        }

        // 7.7.2 with ranks from 1: r = (M - q)/2, rounded up when that is not whole.
        var half = (outside - 1) / 2;
        return new(
            m, seed, mean, Math.Sqrt(squares / (m - 1)), probability, y[half], y[half + inside],
            y[best], y[best + inside]);
    }
}
