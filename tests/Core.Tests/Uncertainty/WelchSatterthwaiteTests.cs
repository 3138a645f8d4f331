using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Uncertainty;

public sealed class WelchSatterthwaiteTests
{
    /// <summary>Example of suncal's documentation: 12.8.</summary>
    [Fact]
    public void A_spread_of_9_degrees_beside_a_known_one_gives_12_8()
    {
        var x = Measured.Of(0, 0.57, ErrorSource.Normal("a", "a", 9)).With(ErrorSource.Normal("b", "b"), 0.25);
        Assert.Equal(12.7956, WelchSatterthwaite.EffectiveDegreesOfFreedom(x), 5e-5);
    }

    /// <summary>Example of suncal's tests, built like mass by pulses times a factor: published 0.6967, u 0.00494 within
    /// 0.00001, 27.7 within 0.5 degrees of freedom, U 0.0101.</summary>
    [Fact]
    public void A_ratio_times_a_factor_gives_the_published_figures()
    {
        var x1 = Measured.Of(0.1820, 0.00093, ErrorSource.Normal("x1", "top", 9));
        var x2 = Measured.Of(0.1823, 0.00058, ErrorSource.Normal("x2", "bottom", 19));
        var factor = Measured.Of(0.6978, 0.0026, ErrorSource.Normal("factor", "factor", 19));
        var y = x1 / x2 * factor;
        var result = WelchSatterthwaite.Of(y, 0.95);
        Assert.Equal(0.696652, y.Value, 5e-7);
        Assert.Equal(0.0049318, y.StandardUncertainty, 5e-8);
        Assert.Equal(27.51, result.DegreesOfFreedom, 5e-3);
        Assert.Equal(2.0500, result.CoverageFactor, 5e-5);
        Assert.Equal(0.010110, result.Expanded, 5e-7);
    }

    /// <summary>Input of the example in the R package metRology (w.s); results by exact arithmetic.</summary>
    [Fact]
    public void Sensitivities_act_on_the_degrees_of_freedom()
    {
        Measured[] x =
        [
            Measured.Of(0, 0.1, ErrorSource.Normal("1", "x")),
            Measured.Of(0, 0.3, ErrorSource.Normal("2", "x", 6)),
            Measured.Of(0, 0.2, ErrorSource.Normal("3", "x", 8)),
            Measured.Of(0, 1.1, ErrorSource.Normal("4", "x", 3)),
        ];
        var y = Measured.Linear(x, [1, 2, 3, 0.5]);
        Assert.Equal(1.0161201, y.StandardUncertainty, 5e-8);
        Assert.Equal(15.60796, WelchSatterthwaite.EffectiveDegreesOfFreedom(y), 5e-6);
    }

    /// <summary>Coverage factors from any t table, GUM Table G.2 for one.</summary>
    [Theory]
    [InlineData(1, 12.7062, 63.6567)]
    [InlineData(2, 4.3027, 9.9248)]
    [InlineData(9, 2.2622, 3.2498)]
    [InlineData(50, 2.0086, 2.6778)]
    [InlineData(double.PositiveInfinity, 1.9600, 2.5758)]
    public void One_source_keeps_its_own_degrees_of_freedom(double dof, double k95, double k99)
    {
        var x = Measured.Of(10, 0.2, ErrorSource.Normal("x", "x", dof));
        Assert.Equal(dof, WelchSatterthwaite.EffectiveDegreesOfFreedom(x), 1e-9);
        var result = WelchSatterthwaite.Of(x, 0.95);
        Assert.Equal(k95, result.CoverageFactor, 5e-5);
        Assert.Equal(k95 * 0.2, result.Expanded, 1e-5);
        Assert.Equal(k99, WelchSatterthwaite.Of(x, 0.99).CoverageFactor, 5e-5);
    }

    [Fact]
    public void Two_equal_spreads_of_one_ensemble_count_once_and_apart_twice()
    {
        var apart = Measured.Of(0, 1, ErrorSource.Normal("a", "x", 5)).With(ErrorSource.Normal("b", "x", 5), 1);
        var together = Measured.Of(0, 1, ErrorSource.Normal("a", "x", 5, "fit"))
            .With(ErrorSource.Normal("b", "x", 5, "fit"), 1);
        Assert.Equal(10, WelchSatterthwaite.EffectiveDegreesOfFreedom(apart), 1e-12);
        Assert.Equal(5, WelchSatterthwaite.EffectiveDegreesOfFreedom(together), 1e-12);
    }

    [Fact]
    public void Truncation_cuts_down_and_leaves_infinity()
    {
        var x = Measured.Of(0, 0.57, ErrorSource.Normal("a", "a", 9)).With(ErrorSource.Normal("b", "b"), 0.25);
        Assert.Equal(12, WelchSatterthwaite.Of(x, 0.95, truncate: true).DegreesOfFreedom);
        var known = Measured.Of(0, 1, ErrorSource.Normal("b", "b"));
        Assert.Equal(double.PositiveInfinity, WelchSatterthwaite.Of(known, 0.95, truncate: true).DegreesOfFreedom);
        Assert.Equal(double.PositiveInfinity, WelchSatterthwaite.EffectiveDegreesOfFreedom(Measured.Exact(3)));
        Assert.Equal(0, WelchSatterthwaite.Of(Measured.Exact(3), 0.95).Expanded);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_probability_outside_0_to_1_throws(double probability) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WelchSatterthwaite.Of(Measured.Exact(1), probability));

    /// <summary>
    /// EA-4/02 M:2013 (and earlier), example S2: a 10 kg weight against a standard by substitution, three comparisons,
    /// pooled standard deviation 25 mg. The publication prints u 29.3 mg and U 59 mg (from memory); the same example as
    /// worked by metrodata.de takes 14.2 mg for the difference and prints 29.1 and 58 mg.
    /// </summary>
    [Theory]
    [InlineData(14.4337567297406, 29.3, 59)]
    [InlineData(14.2, 29.1, 58)]
    public void A_ten_kilogram_weight_gives_the_published_budget(double uDifference, double u, double expanded)
    {
        var x = Measured.Of(10_000_005, 45.0 / 2, ErrorSource.Normal("standard", "standard"))
            + Measured.Of(0, 15 / Math.Sqrt(3), ErrorSource.Rectangular("drift", "drift"))
            + Measured.Of(20, uDifference, ErrorSource.Normal("difference", "difference"))
            + Measured.Of(0, 10 / Math.Sqrt(3), ErrorSource.Rectangular("magnetic", "eccentricity and magnetism"))
            + Measured.Of(0, 10 / Math.Sqrt(3), ErrorSource.Rectangular("air", "air buoyancy"));
        Assert.Equal(10_000_025, x.Value);
        Assert.Equal(u, x.StandardUncertainty, 0.05);
        Assert.Equal(expanded, 2 * x.StandardUncertainty, 0.5);
        var budget = Budget.Of(x);
        Assert.Equal("standard", budget[0].Family);
        Assert.Equal(22.5, budget[0].StandardUncertainty, 1e-9);
        Assert.Equal("difference", budget[1].Family);
        Assert.Equal(8.66, budget[2].StandardUncertainty, 0.005);
        // Equal lines stand in the order of their names.
        Assert.Equal("air buoyancy", budget[3].Family);
        Assert.Equal(5.77, budget[4].StandardUncertainty, 0.005);
        Assert.Equal(1, budget.Sum(l => l.Share), 1e-12);
    }
}
