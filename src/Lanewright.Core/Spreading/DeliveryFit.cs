using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Spreading;

/// <summary>What was delivered at one drive setting.</summary>
/// <param name="Setting">The setting, as a share of full.</param>
/// <param name="Estimate">Mass by time, kg/s.</param>
public sealed record SettingDelivery(double Setting, RatioEstimate Estimate);

/// <summary>
/// Delivery against drive setting: the settings' means made to rise (isotonic, weighted), and a monotone cubic through them.
/// Formulas, rules and limits: docs/method/delivery-curve.md.
/// </summary>
public sealed class DeliveryFit
{
    // A step that gains less than this share of the usual gain of the steps below it is counted as no gain (ours).
    private const double NoGain = 0.5;

    // Below this share of the mean slope a setting for a delivery means nothing.
    private const double Flat = 0.05;

    private readonly double[] settings;
    private readonly double[] raw;
    private readonly double[] fitted;
    private readonly double[] weights;
    private readonly IsotonicPoint[] blocks;
    private readonly List<RatioEstimate> estimates;

    private DeliveryFit(IReadOnlyList<SettingDelivery> points)
    {
        Points = points;
        estimates = [.. points.Select(p => p.Estimate)];
        settings = [.. points.Select(p => p.Setting)];
        raw = [.. estimates.Select(e => e.Known.Value)];
        weights = [.. estimates.Select(e => 1 / e.Total("scatter").Variance)];
        blocks = Isotonic.Fit(raw, weights);
        fitted = [.. blocks.Select(b => b.Value)];
    }

    /// <summary>The settings, rising.</summary>
    public IReadOnlyList<SettingDelivery> Points { get; }

    /// <summary>Whether some setting delivered less than a lower one, so that they were pooled.</summary>
    public bool WasPooled => blocks.Any(b => b.First != b.Last);

    /// <summary>The fitted delivery at the highest setting.</summary>
    public double Full => fitted[^1];

    /// <summary>The fitted delivery at the lowest setting.</summary>
    public double Least => fitted[0];

    /// <summary>Fits.</summary>
    /// <param name="points">Two or more, settings rising.</param>
    /// <exception cref="ArgumentException">Fewer than two settings, or they do not rise.</exception>
    public static DeliveryFit Of(IReadOnlyList<SettingDelivery> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2) throw new ArgumentException("Two settings or more are needed.", nameof(points));
        for (var i = 1; i < points.Count; i++)
        {
            if (!(points[i].Setting > points[i - 1].Setting)) throw new ArgumentException("The settings must rise.", nameof(points));
        }

        return new(points);
    }

    /// <summary>The delivery by the fit, kg/s, without its error.</summary>
    public double ValueAt(double setting) => MonotoneCubic.At(settings, fitted, setting);

    /// <summary>The delivery at a setting between the lowest and the highest tested.</summary>
    public CombinedRatios At(double setting) => Moved(setting, 1, ValueAt(setting));

    /// <summary>
    /// The setting that delivers <paramref name="delivery"/>; null when the tested settings do not reach it or the curve is flat
    /// there.
    /// </summary>
    public CombinedRatios? SettingFor(double delivery)
    {
        if (!(delivery >= Least && delivery <= Full)) return null;
        double low = settings[0], high = settings[^1];
        for (var i = 0; i < 100 && high - low > 1e-14; i++)
        {
            var middle = (low + high) / 2;
            if (ValueAt(middle) < delivery) low = middle;
            else high = middle;
        }

        var at = (low + high) / 2;
        // The flatter of the curve's own slope and the straight line's: the slope is not known better than that.
        var slope = Math.Min(SlopeAt(at), ChordAt(at));
        return slope < Flat * (Full - Least) / (settings[^1] - settings[0]) ? null : Moved(at, -1 / slope, at);
    }

    /// <summary>
    /// Where delivery begins: the line through the two lowest settings, carried on to nothing. Null when it does not rise.
    /// </summary>
    public CombinedRatios? Beginning()
    {
        double rise = raw[1] - raw[0], step = settings[1] - settings[0];
        if (!(rise > 0)) return null;
        var slopes = new double[raw.Length];
        slopes[0] = -step * raw[1] / (rise * rise);
        slopes[1] = step * raw[0] / (rise * rise);
        return CombinedRatios.Of(estimates, slopes, settings[0] - (raw[0] * step / rise), "setting");
    }

    /// <summary>
    /// The setting from which on nothing is gained, by rule: the first step whose gain, with its interval, stays below half the
    /// middle gain of the steps below it, when no higher step shows a gain again. It is where the line through the last two
    /// settings below that step meets the mean of those above it.
    /// </summary>
    /// <param name="probability">Of the interval.</param>
    /// <returns>The setting; null when no such step is seen.</returns>
    public CombinedRatios? NothingGainedFrom(double probability)
    {
        for (var k = 1; k < raw.Length - 1; k++)
        {
            var usual = MiddleGain(k);
            if (!(usual > 0) || !(GainOf(Math.Max(k - 2, 0)) > 0) || !StaysBelow(k, NoGain * usual, probability)) continue;
            if (Enumerable.Range(k + 1, raw.Length - k - 2).All(j => !Gains(j, NoGain * usual, probability))) return Knee(k);
        }

        return null;
    }

    // The bend lies somewhere in the two steps about setting k, which may be on the line or on the flat; so neither uses it.
    private CombinedRatios Knee(int k)
    {
        double above = 0, mean = 0;
        for (var i = k + 1; i < raw.Length; i++) above += weights[i];
        for (var i = k + 1; i < raw.Length; i++) mean += weights[i] / above * raw[i];
        var last = Math.Max(k - 1, 1);
        double step = settings[last] - settings[last - 1], rise = raw[last] - raw[last - 1];
        var at = settings[last] + ((mean - raw[last]) * step / rise);
        var slopes = new double[raw.Length];
        slopes[last - 1] = (mean - raw[last]) * step / (rise * rise);
        slopes[last] = (-step / rise) - slopes[last - 1];
        for (var i = k + 1; i < raw.Length; i++) slopes[i] += step / rise * weights[i] / above;
        return CombinedRatios.Of(estimates, slopes, Math.Clamp(at, settings[last], settings[k + 1]), "setting");
    }

    private double MiddleGain(int k)
    {
        var gains = Enumerable.Range(0, k).Select(GainOf).Order().ToList();
        return gains.Count % 2 == 1 ? gains[gains.Count / 2] : (gains[(gains.Count / 2) - 1] + gains[gains.Count / 2]) / 2;
    }

    private bool StaysBelow(int k, double limit, double probability) => GainOf(k) + GainError(k, probability) < limit;

    private bool Gains(int k, double limit, double probability) => GainOf(k) - GainError(k, probability) > limit;

    private double GainOf(int k) => (raw[k + 1] - raw[k]) / (settings[k + 1] - settings[k]);

    private double GainError(int k, double probability)
    {
        var step = settings[k + 1] - settings[k];
        var slopes = new double[raw.Length];
        slopes[k] = -1 / step;
        slopes[k + 1] = 1 / step;
        return CombinedRatios.Of(estimates, slopes, 0, "setting").Error.Coverage(probability);
    }

    private double ChordAt(double setting)
    {
        var k = MonotoneCubic.Piece(settings, fitted, setting);
        return (fitted[k + 1] - fitted[k]) / (settings[k + 1] - settings[k]);
    }

    private double SlopeAt(double setting)
    {
        var half = 1e-5 * (settings[^1] - settings[0]);
        double low = Math.Max(settings[0], setting - half), high = Math.Min(settings[^1], setting + half);
        return (ValueAt(high) - ValueAt(low)) / (high - low);
    }

    // The curve at a setting, times a factor: what each setting's mean moves it by, and what the straight line and the cubic differ
    // by as what is not known of the shape between.
    private CombinedRatios Moved(double setting, double factor, double value)
    {
        var slopes = new double[raw.Length];
        var moved = (double[])fitted.Clone();
        for (var i = 0; i < raw.Length; i++)
        {
            var step = 1e-6 * Math.Max(Math.Abs(fitted[i]), 1e-12);
            moved[i] = fitted[i] + step;
            var up = MonotoneCubic.At(settings, moved, setting);
            moved[i] = fitted[i] - step;
            var down = MonotoneCubic.At(settings, moved, setting);
            moved[i] = fitted[i];
            Spread(i, factor * (up - down) / (2 * step), slopes);
        }

        var shape = Math.Abs(ValueAt(setting) - MonotoneCubic.Straight(settings, fitted, setting));
        return CombinedRatios.Of(
            estimates, slopes, value, "setting",
            new Contribution(
                ErrorSource.Rectangular("curve:shape", "shape of the curve between settings"), Math.Abs(factor) * shape / Math.Sqrt(3)));
    }

    // A pooled value is moved by every setting of its block.
    private void Spread(int i, double amount, double[] slopes)
    {
        var sum = 0.0;
        for (var j = blocks[i].First; j <= blocks[i].Last; j++) sum += weights[j];
        for (var j = blocks[i].First; j <= blocks[i].Last; j++) slopes[j] += amount * weights[j] / sum;
    }
}
