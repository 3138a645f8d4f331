using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

/// <summary>
/// End-gauge calibration, GUM (JCGM 100:2008) H.1: l = l_s + d - l_s (da theta + a_s dtheta), here in nanometres and
/// kelvins. Inputs and published results as quoted in the documentation of the open libraries GTC, suncal and propagate.
/// </summary>
public sealed class GumGaugeBlockTests
{
    private static readonly Measured Standard =
        Measured.Of(50_000_623, 25, ErrorSource.Normal("standard", "calibration of the standard", 18));

    private static readonly Measured Difference = Measured.Of(
        215,
        [
            new(ErrorSource.Normal("repeat", "comparator", 24), 5.8),
            new(ErrorSource.Normal("comparator-random", "comparator", 5), 3.9),
            new(ErrorSource.Normal("comparator-systematic", "comparator", 8), 6.7),
        ]);

    private static readonly Measured ExpansionDifference =
        Measured.Of(0, 1e-6 / Math.Sqrt(3), ErrorSource.Rectangular("expansion-difference", "expansion difference", 50));

    private static readonly Measured BedTemperature = Measured.Of(
        -0.1,
        [
            new(ErrorSource.Normal("bed-mean", "bed temperature"), 0.2),
            new(ErrorSource.Arcsine("bed-cycle", "bed temperature"), 0.5 / Math.Sqrt(2)),
        ]);

    private static readonly Measured Expansion =
        Measured.Of(11.5e-6, 2e-6 / Math.Sqrt(3), ErrorSource.Rectangular("expansion", "expansion of the standard"));

    private static readonly Measured TemperatureDifference = Measured.Of(
        0, 0.05 / Math.Sqrt(3), ErrorSource.Rectangular("temperature-difference", "temperature difference", 2));

    private static readonly Measured Length =
        Standard + Difference
        - (Standard * ((ExpansionDifference * BedTemperature) + (Expansion * TemperatureDifference)));

    [Fact]
    public void Inputs_have_the_published_uncertainties()
    {
        // H.1.3.2: u(d) 9.7 nm with 25.6 degrees of freedom (from the rounded 9.7); H.1.3.4: u(theta) 0.41 K.
        var u = Difference.StandardUncertainty;
        Assert.Equal(9.7, u, 0.05);
        var dof = WelchSatterthwaite.EffectiveDegreesOfFreedom(Difference);
        Assert.Equal(25.6, dof * Math.Pow(9.7 / u, 4), 0.05);
        Assert.Equal(0.41, BedTemperature.StandardUncertainty, 0.005);
    }

    [Fact]
    public void First_order_gives_the_published_length_and_contributions()
    {
        Assert.Equal(50_000_838, Length.Value, 1e-6);
        // Published 32 nm; 31.671 nm from the inputs as published, to their rounding.
        Assert.Equal(31.67, Length.StandardUncertainty, 0.01);
        // Table H.1: 25, 9.7, 2.9 and 16.6 nm; the other two do not act in first order.
        var budget = Budget.Of(Length).ToDictionary(l => l.Family, l => l.StandardUncertainty);
        Assert.Equal(25, budget["calibration of the standard"], 0.05);
        Assert.Equal(9.7, budget["comparator"], 0.05);
        Assert.Equal(2.9, budget["expansion difference"], 0.05);
        Assert.Equal(16.6, budget["temperature difference"], 0.05);
        Assert.Equal(4, budget.Count);
    }

    [Fact]
    public void Degrees_of_freedom_and_expanded_uncertainty_are_the_published_ones()
    {
        // 16.76 from the unrounded u (17.5 if u is first rounded to 32 nm); GUM truncates to 16, k 2.92, U99 93 nm with
        // u rounded to 32 nm, 92.5 nm without (92.62 in the R package propagate).
        Assert.Equal(16.76, WelchSatterthwaite.EffectiveDegreesOfFreedom(Length), 0.015);
        var u99 = WelchSatterthwaite.Of(Length, 0.99, truncate: true);
        Assert.Equal(16, u99.DegreesOfFreedom);
        Assert.Equal(2.92, u99.CoverageFactor, 0.005);
        Assert.Equal(92.5, u99.Expanded, 0.1);
        Assert.True(WelchSatterthwaite.Of(Length, 0.99).CoverageFactor < u99.CoverageFactor);
    }

    /// <summary>H.1.7: the second-order terms 11.7 and 1.7 nm make u 34 nm. First order cannot see them, trials do:
    /// products of independent errors of mean 0 have exactly the variance that the second-order terms give.</summary>
    [Fact]
    public void Trials_show_the_second_order_terms_that_first_order_misses()
    {
        const int Trials = 300_000;
        var trials = MonteCarlo.Run(
            static (random, results) =>
            {
                for (var i = 0; i < results.Length; i++)
                {
                    var ls = 50_000_623 + (25 * random.NextNormal());
                    var d = 215 + (5.8 * random.NextNormal()) + (3.9 * random.NextNormal())
                        + (6.7 * random.NextNormal());
                    var da = 1e-6 / Math.Sqrt(3) * random.NextRectangular();
                    var theta = -0.1 + (0.2 * random.NextNormal()) + (0.5 / Math.Sqrt(2) * random.NextArcsine());
                    var a = 11.5e-6 + (2e-6 / Math.Sqrt(3) * random.NextRectangular());
                    var dt = 0.05 / Math.Sqrt(3) * random.NextRectangular();
                    results[i] = ls + d - (ls * ((da * theta) + (a * dt)));
                }
            },
            Trials, seed: 101);
        var first = Length.Variance;
        var crossTheta = 50_000_623 * ExpansionDifference.StandardUncertainty * BedTemperature.StandardUncertainty;
        var crossAlpha = 50_000_623 * Expansion.StandardUncertainty * TemperatureDifference.StandardUncertainty;
        Assert.Equal(11.7, crossTheta, 0.15);
        Assert.Equal(1.7, crossAlpha, 0.05);
        var second = Math.Sqrt(first + (crossTheta * crossTheta) + (crossAlpha * crossAlpha));
        Assert.Equal(34, second, 0.5);

        // Four standard errors of the mean and of the standard deviation (that of a normal).
        Assert.Equal(50_000_838, trials.Mean, 4 * second / Math.Sqrt(Trials));
        var room = 4 * second / Math.Sqrt(2.0 * Trials);
        Assert.Equal(second, trials.StandardUncertainty, room);
        Assert.True(Math.Abs(Length.StandardUncertainty - trials.StandardUncertainty) > 4 * room);
        var half = NormalDistribution.Quantile(0.975) * Length.StandardUncertainty;
        Assert.False(trials.Agrees(Length.Value - half, Length.Value + half));
    }
}
