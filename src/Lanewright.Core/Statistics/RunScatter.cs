namespace Lanewright.Core.Statistics;

/// <summary>
/// What several runs, and earlier knowledge, say of the scatter from run to run: the chance of each size of scatter on
/// a grid, rather than one estimate that three runs cannot support.
/// </summary>
/// <remarks>
/// Model: ratio i is the constant times (1 + e_i), e_i normal with variance s^2 g_i + u_i^2; u_i (reading errors of the
/// run) and g_i (how the scatter grows with the size of the drop) are known, s is not. The restricted likelihood of s,
/// with the constant integrated out, is weighted by a prior for log s: level from 0.2 % to 4.5 %, falling as s^-2 above,
/// to 100 %. The prior's limits are ours (common practice, no source): no yard weighing shows better than 0.2 %, and a
/// spreader that scatters by more than that is rare. Formulas and consequences: docs/method/repeatability.md.
/// </remarks>
public sealed class RunScatter
{
    /// <summary>The smallest scatter considered.</summary>
    public const double Least = 0.002;

    /// <summary>Where the prior starts to fall.</summary>
    public const double Knee = 0.045;

    /// <summary>The largest scatter considered.</summary>
    public const double Most = 1.0;

    private const int GridSize = 48;

    private static readonly double[] Grid = MakeGrid();
    private static readonly double[] GridLogPrior = MakeLogPrior();

    private readonly double[] weights;

    private RunScatter(double[] weights, double logEvidence)
    {
        this.weights = weights;
        LogEvidence = logEvidence;
    }

    /// <summary>The sizes of scatter considered, as shares of the constant (standard deviation of one run).</summary>
    public static ReadOnlySpan<double> Sizes => Grid;

    /// <summary>The chance of each size; sums to 1.</summary>
    public ReadOnlySpan<double> Chances => weights;

    /// <summary>Logarithm of the average likelihood, for comparing assumptions about the growth g.</summary>
    public double LogEvidence { get; }

    /// <summary>Root of the mean square: the scatter of one run to expect.</summary>
    public double RootMeanSquare
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < weights.Length; i++)
                sum += weights[i] * Grid[i] * Grid[i];
            return Math.Sqrt(sum);
        }
    }

    /// <summary>The size with as much chance below it as above: the scatter to reckon with when planning.</summary>
    public double Median
    {
        get
        {
            var below = 0.0;
            for (var i = 0; i < weights.Length; i++)
            {
                below += weights[i];
                if (below >= 0.5) return Grid[i];
            }

            return Most;
        }
    }

    /// <summary>
    /// Degrees of freedom of a chi-squared variance with the same spread relative to its mean: 2 E(s^2)^2 / Var(s^2).
    /// </summary>
    public double DegreesOfFreedom
    {
        get
        {
            double first = 0, second = 0;
            for (var i = 0; i < weights.Length; i++)
            {
                var square = Grid[i] * Grid[i];
                first += weights[i] * square;
                second += weights[i] * square * square;
            }

            var variance = second - (first * first);
            return variance > 0 ? 2 * first * first / variance : double.PositiveInfinity;
        }
    }

    /// <summary>Learns from the runs of one test.</summary>
    /// <param name="ratios">The runs' ratios, in any unit; all positive.</param>
    /// <param name="readingErrors">Known standard uncertainty of each ratio from errors of its own, as a share.</param>
    /// <param name="growth">g of each run, above 0; 1 when the scatter is the same share for every size of drop.</param>
    /// <param name="earlierScatter">Scatter found in earlier tests, as a share; 0 when there is none.</param>
    /// <param name="earlierFreedom">Degrees of freedom behind it; 0 when there is none.</param>
    /// <exception cref="ArgumentException">Lengths differ, there is no run, a ratio or a growth is not above 0,
    /// or a reading error is negative.</exception>
    public static RunScatter Learn(
        ReadOnlySpan<double> ratios, ReadOnlySpan<double> readingErrors, ReadOnlySpan<double> growth,
        double earlierScatter = 0, double earlierFreedom = 0)
    {
        var n = ratios.Length;
        if (n == 0 || readingErrors.Length != n || growth.Length != n)
            throw new ArgumentException("One reading error and one growth for each ratio, and at least one.", nameof(ratios));
        for (var i = 0; i < n; i++)
        {
            if (!(ratios[i] > 0)) throw new ArgumentException("The ratios must be above 0.", nameof(ratios));
            if (!(growth[i] > 0)) throw new ArgumentException("Growth must be above 0.", nameof(growth));
            if (!(readingErrors[i] >= 0))
                throw new ArgumentException("Reading errors must be 0 or more.", nameof(readingErrors));
        }

        var mean = Descriptive.Mean(ratios);
        var log = new double[GridSize];
        var top = double.NegativeInfinity;
        for (var j = 0; j < GridSize; j++)
        {
            var square = Grid[j] * Grid[j];
            double logVariances = 0, precision = 0, weighted = 0;
            for (var i = 0; i < n; i++)
            {
                var v = (square * growth[i]) + (readingErrors[i] * readingErrors[i]);
                logVariances += Elementary.Log(v);
                precision += 1 / v;
                weighted += ((ratios[i] / mean) - 1) / v;
            }

            var centre = weighted / precision;
            var misfit = 0.0;
            for (var i = 0; i < n; i++)
            {
                var v = (square * growth[i]) + (readingErrors[i] * readingErrors[i]);
                var d = (ratios[i] / mean) - 1 - centre;
                misfit += d * d / v;
            }

            var l = n == 1 ? 0 : -0.5 * (logVariances + Elementary.Log(precision) + misfit);
            if (earlierFreedom > 0 && earlierScatter > 0)
                l -= earlierFreedom * (Elementary.Log(Grid[j])
                    + (earlierScatter * earlierScatter / (2 * square)));
            log[j] = l + GridLogPrior[j];
            top = Math.Max(top, log[j]);
        }

        var sum = 0.0;
        for (var j = 0; j < GridSize; j++)
        {
            log[j] = Elementary.Exp(log[j] - top);
            sum += log[j];
        }

        for (var j = 0; j < GridSize; j++)
            log[j] /= sum;
        return new(log, top + Elementary.Log(sum));
    }

    private static double[] MakeGrid()
    {
        var grid = new double[GridSize];
        var step = Elementary.Log(Most / Least) / (GridSize - 1);
        for (var j = 0; j < GridSize; j++)
            grid[j] = Least * Elementary.Exp(step * j);
        return grid;
    }

    private static double[] MakeLogPrior()
    {
        var prior = new double[GridSize];
        var sum = 0.0;
        for (var j = 0; j < GridSize; j++)
        {
            var fall = Math.Min(1, Knee / Grid[j]);
            prior[j] = fall * fall;
            sum += prior[j];
        }

        for (var j = 0; j < GridSize; j++)
            prior[j] = Elementary.Log(prior[j] / sum);
        return prior;
    }
}
