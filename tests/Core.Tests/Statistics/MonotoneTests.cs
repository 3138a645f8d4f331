using CsCheck;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Statistics;

/// <summary>Rising sequences and rising curves.</summary>
public sealed class MonotoneTests
{
    private static readonly Gen<(double Y, double W)[]> Sequences =
        Gen.Select(Gen.Double[-10, 10], Gen.Double[0.1, 10]).Array[2, 12];

    [Fact]
    public void Neighbours_that_fall_take_their_weighted_mean()
    {
        // 1, 5, 3, 4, 8 with equal weights: 5 and 3 become 4, which no longer exceeds the next (by hand).
        var fit = Isotonic.Fit([1, 5, 3, 4, 8], [1, 1, 1, 1, 1]);
        Assert.Equal([1, 4, 4, 4, 8], fit.Select(p => p.Value));
        Assert.Equal((1, 2), (fit[2].First, fit[2].Last));
        // Weight 3 on the 5: (3 x 5 + 3) / 4 = 4.5, and 4 pulls it to (15 + 3 + 4) / 5 = 4.4.
        Assert.Equal(4.4, Isotonic.Fit([1, 5, 3, 4, 8], [1, 3, 1, 1, 1])[1].Value, 1e-12);
    }

    [Fact]
    public void A_fit_never_falls_keeps_the_weighted_mean_and_is_nearer_than_any_other_rising_one() => Sequences.Sample(points =>
    {
        double[] y = [.. points.Select(p => p.Y)], w = [.. points.Select(p => p.W)];
        var fit = Isotonic.Fit(y, w).Select(p => p.Value).ToArray();
        for (var i = 1; i < fit.Length; i++) Assert.True(fit[i] >= fit[i - 1]);
        Assert.Equal(y.Zip(w, (a, b) => a * b).Sum(), fit.Zip(w, (a, b) => a * b).Sum(), 1e-9);
        double Off(double[] v) => v.Select((x, i) => w[i] * (x - y[i]) * (x - y[i])).Sum();
        var other = y.Order().ToArray();
        Assert.True(Off(fit) <= Off(other) + 1e-9);
    });

    [Fact]
    public void A_curve_meets_its_points_never_falls_and_is_straight_where_they_are() => Sequences.Sample(points =>
    {
        double[] y = [.. points.Select(p => p.Y).Order()], x = new double[points.Length];
        for (var i = 1; i < x.Length; i++) x[i] = x[i - 1] + points[i].W;
        var before = double.NegativeInfinity;
        for (var i = 0; i <= 200; i++)
        {
            var height = MonotoneCubic.At(x, y, x[^1] * i / 200);
            Assert.True(height >= before - 1e-9);
            before = height;
        }

        for (var i = 0; i < x.Length; i++)
        {
            Assert.Equal(y[i], MonotoneCubic.At(x, y, x[i]), 1e-9);
            Assert.Equal((2 * x[i]) - 1, MonotoneCubic.At(x, [.. x.Select(v => (2 * v) - 1)], x[i]), 1e-9);
        }
    });

    [Fact]
    public void A_rising_parabola_is_met_exactly_away_from_the_limits() =>
        Assert.Equal(3.61, MonotoneCubic.At([1, 2, 3], [1, 4, 9], 1.9), 1e-12);
}
