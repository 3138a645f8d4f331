using Lanewright.Core.Statistics;

namespace Lanewright.Core.Season;

/// <summary>
/// Average run lengths: how many values it takes on average until a chart signals, with independent normal values of deviation 1
/// whose mean lies <c>shift</c> off the target from the first value on. Each is the solution of an integral equation by Gauss's
/// rule (A. L. Goel and S. M. Wu, Technometrics 13, 1971; S. V. Crowder, Technometrics 29, 1987).
/// </summary>
public static class RunLengths
{
    private const int Points = 64;

    /// <summary>Of the upper sum of a CUSUM chart alone.</summary>
    /// <param name="allowance">k, in deviations.</param>
    /// <param name="limit">h, in deviations; more than 0.</param>
    /// <param name="shift">In deviations, either sign.</param>
    public static double OfUpperCusum(double allowance, double limit, double shift)
    {
        // L(u) = 1 + L(0) P(next is 0) + integral of L(y) f(y | u) over (0, h]; unknown are L(0) and L at the points.
        var rule = GaussLegendre.Of(Points, 0, limit);
        var n = Points + 1;
        var (matrix, right) = (new double[n, n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var from = i == 0 ? 0 : rule.Points[i - 1];
            matrix[i, 0] = -NormalDistribution.Cdf(allowance - from - shift);
            for (var j = 1; j < n; j++)
                matrix[i, j] = -rule.Weights[j - 1] * NormalDistribution.Pdf(rule.Points[j - 1] + allowance - from - shift);
            matrix[i, i] += 1;
            right[i] = 1;
        }

        return (LinearSystem.Solve(matrix, right) ?? throw new ArgumentOutOfRangeException(nameof(limit), limit, "No run length."))[0];
    }

    /// <summary>Of a CUSUM chart with both sums: 1/L = 1/L(up) + 1/L(down) (J. M. Lucas and R. B. Crosier, Technometrics 24,
    /// 1982).</summary>
    public static double OfCusum(double allowance, double limit, double shift) =>
        1 / ((1 / OfUpperCusum(allowance, limit, shift)) + (1 / OfUpperCusum(allowance, limit, -shift)));

    /// <summary>Of an EWMA chart with two settled limits.</summary>
    /// <param name="weight">w, more than 0 and at most 1.</param>
    /// <param name="width">Limits in deviations of the weighted mean.</param>
    /// <param name="shift">In deviations of the values.</param>
    public static double OfEwma(double weight, double width, double shift)
    {
        if (!(weight > 0 && weight <= 1)) throw new ArgumentOutOfRangeException(nameof(weight), weight, "Must be more than 0 and at most 1.");
        var reach = width * Math.Sqrt(weight / (2 - weight));
        var rule = GaussLegendre.Of(Points, -reach, reach);
        var n = Points + 1;
        var (matrix, right) = (new double[n, n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            var from = i == 0 ? 0 : rule.Points[i - 1];
            for (var j = 1; j < n; j++)
            {
                matrix[i, j] = -rule.Weights[j - 1] / weight
                    * NormalDistribution.Pdf(((rule.Points[j - 1] - ((1 - weight) * from)) / weight) - shift);
            }

            matrix[i, i] += 1;
            right[i] = 1;
        }

        return (LinearSystem.Solve(matrix, right) ?? throw new ArgumentOutOfRangeException(nameof(width), width, "No run length."))[0];
    }
}
