using CsCheck;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>The estimators of a ratio against the fits through the origin, which are independent code; the rule that
/// chooses; and what must not change the answer. All data invented.</summary>
public sealed class RatioEstimatorTests
{
    // Masses and pulses of very different sizes.
    private static readonly double[] Bottoms = [20, 60, 150, 400, 900];
    private static readonly double[] Tops = [247, 716, 1812, 4790, 10_700];

    private static readonly double[] Pattern = [0.8, -1.1, 1.2, -0.9, 0.5, -0.6, 1.0, -0.9];
    private static readonly double[] Sizes = [10, 30, 80, 200, 500, 1200, 3000, 8000];

    [Fact]
    public void One_set_of_runs_gives_a_different_constant_for_each_assumption()
    {
        var values = Values(Estimate(Bottoms, Tops));
        Ulps(OriginFit.RatioOfTotals(Bottoms, Tops).Slope, values[RatioEstimator.RatioOfTotals]);
        Ulps(OriginFit.MeanOfRatios(Bottoms, Tops).Slope, values[RatioEstimator.MeanOfRatios]);
        Ulps(OriginFit.EqualVariance(Bottoms, Tops).Slope, values[RatioEstimator.EqualVariance]);
        // Sum of tops by sum of bottoms, mean of quotients, sum(xy)/sum(xx), by hand.
        Assert.Equal(18_265.0 / 1530, values[RatioEstimator.RatioOfTotals], 1e-9);
        Assert.Equal(12.0454444, values[RatioEstimator.MeanOfRatios], 1e-6);
        Assert.Equal(3, new[] { RatioEstimator.RatioOfTotals, RatioEstimator.MeanOfRatios, RatioEstimator.EqualVariance }
            .Select(e => Math.Round(values[e], 3)).Distinct().Count());
    }

    [Fact]
    public void Known_errors_of_the_worse_side_weigh_the_runs_as_a_weighted_fit_does()
    {
        double[] u = [1, 2, 3, 5, 20];
        foreach (var massOnTop in new[] { false, true })
        {
            var estimate = massOnTop ? Estimate(Tops, Bottoms, uTop: u) : Estimate(Bottoms, Tops, uBottom: u);
            double[] x = massOnTop ? Tops : Bottoms, y = massOnTop ? Bottoms : Tops;
            var s = estimate.Scatter.RootMeanSquare;
            var weights = x.Select((v, i) => 1 / ((Square(s) + Square(u[i] / Bottoms[i])) * v * v)).ToArray();
            Ulps(OriginFit.Weighted(x, y, weights).Slope, Values(estimate)[RatioEstimator.Weighted]);
        }
    }

    [Fact]
    public void Errors_in_both_agree_with_York_where_the_errors_are_small()
    {
        double[] ux = [0.1, 0.2, 0.3, 0.5, 1], uy = [2, 3, 5, 20, 60];
        var estimate = Estimate(Bottoms, Tops, uy, ux);
        var s = estimate.Scatter.RootMeanSquare;
        // The fit knows no scatter; here it enters as an error of each top.
        var withScatter = uy.Select((u, i) => Math.Sqrt(Square(u) + Square(s * 12 * Bottoms[i]))).ToArray();
        var fit = OriginFit.ErrorsInBoth(Bottoms, ux, Tops, withScatter);
        Assert.True(fit.Converged);
        Assert.Equal(fit.Slope, Values(estimate)[RatioEstimator.ErrorsInBoth], 0.05 * fit.SlopeUncertainty);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.5)]
    [InlineData(0)]
    public void The_standard_deviation_of_the_answer_is_that_of_the_fit_with_the_same_assumption(double power)
    {
        var estimate = Estimate(Sizes, Noisy(power, 0.15));
        var fit = power switch
        {
            1 => OriginFit.MeanOfRatios(Sizes, Noisy(power, 0.15)),
            0.5 => OriginFit.RatioOfTotals(Sizes, Noisy(power, 0.15)),
            _ => OriginFit.EqualVariance(Sizes, Noisy(power, 0.15)),
        };
        Ulps(fit.Slope, estimate.Known.Value);
        // Scatter of one run of mean size, as the residuals of the fit give it.
        var mean = Sizes.Average();
        var one = fit.ResidualStandardDeviation / fit.Slope
            * power switch { 1 => 1, 0.5 => 1 / Math.Sqrt(mean), _ => 1 / mean };
        Ulps(fit.SlopeUncertainty / fit.Slope, estimate.ScatterFactor * one);
    }

    [Fact]
    public void One_run_needs_no_rule()
    {
        var estimate = Estimate([200], [2400]);
        Assert.Equal((RatioEstimator.RatioOfTotals, EstimatorReason.OneRun), (estimate.Estimator, estimate.Reason));
        Assert.Equal(12, estimate.Known.Value, 1e-12);
    }

    [Theory]
    [InlineData(250, EstimatorReason.SizesAlike)]
    [InlineData(251, EstimatorReason.SameShare)]
    public void Sizes_are_alike_up_to_a_factor_of_one_and_a_quarter(double largest, EstimatorReason expected) =>
        Assert.Equal(expected, Estimate([200, 220, largest], [2410, 2630, 12.03 * largest]).Reason);

    [Theory]
    [InlineData(1, 0.02, EstimatorReason.SameShare)]
    [InlineData(0.5, 0.08, EstimatorReason.ScatterAdds)]
    [InlineData(0, 0.15, EstimatorReason.ScatterConstant)]
    public void The_runs_themselves_show_how_their_scatter_grows(double power, double scatter, EstimatorReason expected) =>
        Assert.Equal(expected, Estimate(Sizes, Noisy(power, scatter)).Reason);

    [Theory]
    [InlineData(0.05, EstimatorReason.CountsMatter)]
    [InlineData(0.001, EstimatorReason.WeighingsDiffer)]
    public void Counts_as_uncertain_as_the_masses_count_too(double count, EstimatorReason expected)
    {
        double[] b = [200, 210, 400], t = [2400, 2520, 4800];
        var u = b.Select((v, i) => v * (i == 0 ? 0.05 : 0.004)).ToArray();
        Assert.Equal(expected, Estimate(b, t, [.. t.Select(v => v * count * 0.2)], u).Reason);
    }

    [Fact]
    public void Weighings_of_different_quality_matter_only_when_they_show_against_the_scatter()
    {
        double[] b = [200, 210, 400], u = [10, 1, 2];
        Assert.Equal(EstimatorReason.WeighingsDiffer, Estimate(b, [2400, 2520, 4800], uBottom: u).Reason);
        Assert.Equal(EstimatorReason.SameShare, Estimate(b, [2400, 3220, 4100], uBottom: u).Reason);
        Assert.Equal(EstimatorReason.SameShare, Estimate(b, [2400, 2520, 4800], uBottom: [2, 2.1, 4]).Reason);
    }

    private static readonly Gen<(double Mass, double Off)[]> AnyRuns =
        Gen.Select(Gen.Double[20, 2000], Gen.Double[-0.05, 0.05]).Array[1, 8];

    [Fact]
    public void Weights_of_every_estimator_sum_to_one_and_none_is_negative() =>
        AnyRuns.Sample(
            runs =>
            {
                var e = Of(runs);
                Assert.Equal(1, e.Weights.Sum(), 1e-12);
                Assert.All(e.Weights, w => Assert.True(w >= 0));
                foreach (var (_, value) in e.Alternatives())
                    Assert.InRange(value, e.Runs.Min(r => r.Ratio) * (1 - 1e-12), e.Runs.Max(r => r.Ratio) * (1 + 1e-12));
            },
            iter: 300, threads: 1);

    [Fact]
    public void The_order_of_the_runs_does_not_matter() =>
        AnyRuns.Sample(
            runs =>
            {
                var (a, b) = (Of(runs), Of([.. runs.Reverse()]));
                Assert.Equal(a.Reason, b.Reason);
                Assert.Equal(a.Known.Value, b.Known.Value, 1e-12 * a.Known.Value);
                Assert.Equal(a.Error().Coverage(0.95), b.Error().Coverage(0.95), 1e-9 * a.Known.Value);
            },
            iter: 300, threads: 1);

    [Fact]
    public void All_masses_times_k_divide_the_constant_by_k_and_all_pulses_times_k_multiply_it() =>
        Gen.Select(AnyRuns, Gen.Double[0.01, 100]).Sample(
            (runs, k) =>
            {
                var plain = Of(runs);
                var masses = Of(runs, mass: k);
                var pulses = Of(runs, pulse: k);
                Assert.Equal((plain.Reason, plain.Reason), (masses.Reason, pulses.Reason));
                Relative(plain.Known.Value / k, masses.Known.Value);
                Relative(plain.Known.Value * k, pulses.Known.Value);
                Relative(plain.Error().Coverage(0.95) / k, masses.Error().Coverage(0.95));
                Relative(plain.Error().Coverage(0.95) * k, pulses.Error().Coverage(0.95));
            },
            iter: 200, threads: 1);

    [Theory]
    [InlineData(20, 71.04227546027082)]
    [InlineData(20, 3)]
    [InlineData(20, 0.4535924)]
    public void Runs_exactly_at_a_limit_are_judged_alike_in_every_unit(double mass, double k)
    {
        // The error of counts at this mass is a third of that of the weighing, where counts begin to matter; and 1.25 of it is alike.
        foreach (var runs in new (double, double)[][] { [(mass, 0), (10 * mass, 0.001)], [(mass, 0), (1.25 * mass, 0.001)] })
        {
            var plain = Of(runs).Reason;
            Assert.Equal((plain, plain), (Of(runs, mass: k).Reason, Of(runs, pulse: k).Reason));
        }
    }

    [Fact]
    public void A_further_run_that_agrees_never_widens_the_interval() =>
        Gen.Double[-0.05, 0.05].Array[2, 7].Sample(
            offs =>
            {
                var before = Of([.. offs.Select(o => (200.0, o))]);
                var mean = (before.Known.Value / 12) - 1;
                var after = Of([.. offs.Append(mean).Select(o => (200.0, o))]);
                Assert.True(after.Error().Coverage(0.95) <= before.Error().Coverage(0.95) * (1 + 1e-9));
            },
            iter: 300, threads: 1);

    [Fact]
    public void Runs_that_cannot_make_a_ratio_are_a_programming_mistake()
    {
        Assert.Throws<ArgumentException>(() => RatioEstimate.Of([]));
        Assert.Throws<ArgumentException>(() => Estimate([200, 0], [2400, 10]));
        Assert.Throws<ArgumentException>(() => Estimate([200, 200], [2400, -10]));
    }

    // Counts with an error of one pulse's size, masses with half a percent.
    private static RatioEstimate Of((double Mass, double Off)[] runs, double mass = 1, double pulse = 1) => Estimate(
        [.. runs.Select(r => r.Mass * mass)], [.. runs.Select(r => r.Mass * 12 * (1 + r.Off) * pulse)],
        [.. runs.Select(_ => 0.4 * pulse)], [.. runs.Select(r => 0.005 * r.Mass * mass)]);

    private static RatioEstimate Estimate(double[] bottoms, double[] tops, double[]? uTop = null, double[]? uBottom = null) =>
        RatioEstimate.Of([.. bottoms.Select((b, i) => new RatioRun(
            $"{i}", $"runs[{i}]",
            Measured.Of(tops[i], uTop?[i] ?? 0, ErrorSource.Normal($"run:{i}:top", "top")),
            Measured.Of(b, uBottom?[i] ?? 0, ErrorSource.Normal($"run:{i}:bottom", "bottom"))))]);

    // Deviations that grow with the size of the run to a power: 1 the same share, 0 the same amount.
    private static double[] Noisy(double power, double scatter) =>
        [.. Sizes.Select((b, i) => 12 * (b + (Pattern[i] * scatter * 30 * Math.Pow(b / 30, power))))];

    private static Dictionary<RatioEstimator, double> Values(RatioEstimate e) =>
        e.Alternatives().ToDictionary(a => a.Estimator, a => a.Value);

    private static void Ulps(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 * Math.Abs(expected));

    private static void Relative(double expected, double actual) => Assert.Equal(expected, actual, 1e-9 * expected);

    private static double Square(double x) => x * x;
}
