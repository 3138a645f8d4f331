using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>
/// Delivery by turn or pulse against gate opening: a line with an offset through the openings' means, weighted by how well each
/// is known; where a line is doubtful, the rising curve through them instead. Formulas:
/// docs/method/gate-table.md.
/// </summary>
public sealed class GateFit
{
    // Below the first the openings are said to miss a line; below the second, where a line is merely doubtful, the curve is
    // used, which costs little (ours).
    private const double Refuted = 0.05;
    private const double Doubtful = 0.5;

    private readonly double[] openings;
    private readonly double[] weights;
    private readonly List<RatioEstimate> estimates;
    private readonly DeliveryFit curve;

    private GateFit(IReadOnlyList<SettingDelivery> points)
    {
        estimates = [.. points.Select(p => p.Estimate)];
        openings = [.. points.Select(p => p.Setting)];
        weights = [.. estimates.Select(e => 1 / e.Total("scatter").Variance)];
        curve = DeliveryFit.Of(points);
        Line = LineFit.Weighted(openings, [.. estimates.Select(e => e.Known.Value)], weights);
        ChanceOfLine = points.Count < 3 ? 1 : ChiSquared.Survival(Line.ResidualSumOfSquares, points.Count - 2);
    }

    /// <summary>The weighted line.</summary>
    public LineFitResult Line { get; }

    /// <summary>The chance that openings on a line would miss it by as much; 1 for two openings.</summary>
    public double ChanceOfLine { get; }

    /// <summary>Whether nothing speaks against a line.</summary>
    public bool IsLine => ChanceOfLine >= Refuted;

    /// <summary>Whether the line is used between the openings.</summary>
    public bool UsesLine => ChanceOfLine >= Doubtful;

    /// <summary>Fits.</summary>
    /// <param name="points">Two or more openings in metres, rising, with what each delivers.</param>
    /// <exception cref="ArgumentException">Fewer than two openings, or they do not rise.</exception>
    public static GateFit Of(IReadOnlyList<SettingDelivery> points) => new(points);

    /// <summary>The delivery at an opening; outside the tested ones only the line can say anything.</summary>
    public CombinedRatios At(double opening)
    {
        if (!UsesLine && opening >= openings[0] && opening <= openings[^1]) return curve.At(opening);
        double sum = 0, mean = 0, squares = 0;
        foreach (var weight in weights) sum += weight;
        for (var i = 0; i < openings.Length; i++) mean += weights[i] / sum * openings[i];
        for (var i = 0; i < openings.Length; i++) squares += weights[i] * (openings[i] - mean) * (openings[i] - mean);
        var slopes = new double[openings.Length];
        for (var i = 0; i < slopes.Length; i++)
            slopes[i] = (weights[i] / sum) + ((opening - mean) * weights[i] * (openings[i] - mean) / squares);
        // What the curve through the openings says otherwise is not known to be chance.
        var value = Line.Intercept + (Line.Slope * opening);
        var shape = openings.Length < 3 ? 0 : Math.Abs(curve.ValueAt(opening) - value);
        return CombinedRatios.Of(
            estimates, slopes, value, "opening",
            new Contribution(ErrorSource.Rectangular("gate:shape", "shape between openings"), shape / Math.Sqrt(3)));
    }
}
