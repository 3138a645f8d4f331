using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Weighing;

public sealed class ScaleToleranceTests
{
    /// <summary>NIST Handbook 44, section 2.20, Table 6, maintenance (from memory; the Class III rows from 2,001 d also in
    /// a secondary copy): each boundary and one division either side.</summary>
    [Theory]
    [InlineData(ScaleClass.III, 0, 1)]
    [InlineData(ScaleClass.III, 1, 1)]
    [InlineData(ScaleClass.III, 499, 1)]
    [InlineData(ScaleClass.III, 500, 1)]
    [InlineData(ScaleClass.III, 501, 2)]
    [InlineData(ScaleClass.III, 1999, 2)]
    [InlineData(ScaleClass.III, 2000, 2)]
    [InlineData(ScaleClass.III, 2001, 3)]
    [InlineData(ScaleClass.III, 3999, 3)]
    [InlineData(ScaleClass.III, 4000, 3)]
    [InlineData(ScaleClass.III, 4001, 5)]
    [InlineData(ScaleClass.III, 10_000, 5)]
    [InlineData(ScaleClass.IIII, 0, 1)]
    [InlineData(ScaleClass.IIII, 49, 1)]
    [InlineData(ScaleClass.IIII, 50, 1)]
    [InlineData(ScaleClass.IIII, 51, 2)]
    [InlineData(ScaleClass.IIII, 199, 2)]
    [InlineData(ScaleClass.IIII, 200, 2)]
    [InlineData(ScaleClass.IIII, 201, 3)]
    [InlineData(ScaleClass.IIII, 399, 3)]
    [InlineData(ScaleClass.IIII, 400, 3)]
    [InlineData(ScaleClass.IIII, 401, 5)]
    [InlineData(ScaleClass.IIII, 1200, 5)]
    [InlineData(ScaleClass.IIIL, 0, 1)]
    [InlineData(ScaleClass.IIIL, 499, 1)]
    [InlineData(ScaleClass.IIIL, 500, 1)]
    [InlineData(ScaleClass.IIIL, 501, 2)]
    [InlineData(ScaleClass.IIIL, 999, 2)]
    [InlineData(ScaleClass.IIIL, 1000, 2)]
    [InlineData(ScaleClass.IIIL, 1001, 3)]
    [InlineData(ScaleClass.IIIL, 1500, 3)]
    [InlineData(ScaleClass.IIIL, 1501, 4)]
    [InlineData(ScaleClass.IIIL, 9500, 19)]
    [InlineData(ScaleClass.IIIL, 9501, 20)]
    [InlineData(ScaleClass.IIIL, 10_000, 20)]
    public void Handbook_44_steps(ScaleClass scaleClass, double load, double tolerance) =>
        Assert.Equal(tolerance, ScaleTolerance.InDivisions(scaleClass, ScaleRules.Handbook44, load));

    /// <summary>OIML R 76-1, maximum permissible errors at initial verification 0.5, 1.0 and 1.5 e (secondary copies),
    /// doubled in service.</summary>
    [Theory]
    [InlineData(ScaleClass.III, 0, 1)]
    [InlineData(ScaleClass.III, 499, 1)]
    [InlineData(ScaleClass.III, 500, 1)]
    [InlineData(ScaleClass.III, 501, 2)]
    [InlineData(ScaleClass.III, 2000, 2)]
    [InlineData(ScaleClass.III, 2001, 3)]
    [InlineData(ScaleClass.III, 10_000, 3)]
    [InlineData(ScaleClass.IIII, 49, 1)]
    [InlineData(ScaleClass.IIII, 50, 1)]
    [InlineData(ScaleClass.IIII, 51, 2)]
    [InlineData(ScaleClass.IIII, 200, 2)]
    [InlineData(ScaleClass.IIII, 201, 3)]
    [InlineData(ScaleClass.IIII, 1000, 3)]
    public void Oiml_steps_in_service(ScaleClass scaleClass, double load, double tolerance) =>
        Assert.Equal(tolerance, ScaleTolerance.InDivisions(scaleClass, ScaleRules.Oiml, load));

    /// <summary>500-lb Class III scale with d = 0.05 lb, worked at elsmar.com from Handbook 44: at 150 lb (3,000 d) 0.15 lb,
    /// at 500 lb (10,000 d) 0.25 lb.</summary>
    [Theory]
    [InlineData(150, 0.15)]
    [InlineData(500, 0.25)]
    public void A_500_pound_scale_has_the_worked_tolerances(double load, double tolerance) =>
        Assert.Equal(tolerance, At(Scales.Platform500, load), 1e-12);

    /// <summary>Vehicle scale, Class III L, d = 20 lb: by arithmetic from Table 6.</summary>
    [Theory]
    [InlineData(0, 20)]
    [InlineData(10_000, 20)]
    [InlineData(10_020, 40)]
    [InlineData(40_000, 80)]
    [InlineData(60_000, 120)]
    public void A_vehicle_scale_has_the_worked_tolerances(double load, double tolerance) =>
        Assert.Equal(tolerance, At(Scales.Vehicle, load), 1e-9);

    /// <summary>Loads and divisions are decimal in pounds; in kilograms the quotient may miss a whole number by rounding.
    /// A load at the end of a step must stay in it for every division in use.</summary>
    [Fact]
    public void Conversion_to_kilograms_never_moves_a_load_across_a_step()
    {
        double[] divisions = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 20, 50];
        Func<double, Mass>[] units = [Mass.FromPounds, Mass.FromKilograms, Mass.FromOunces, Mass.FromGrams];
        var moved = 0;
        foreach (var d in divisions)
        {
            foreach (var unit in units)
            {
                var scale = Scales.Vehicle with { Division = unit(d), Capacity = unit(10_000 * d) };
                for (var n = 500; n < 10_000; n += 500)
                {
                    var load = unit((double)((decimal)d * n));
                    Assert.Equal(n / 500 * unit(d).Si, scale.ToleranceAt(load.Si), 1e-12 * load.Si);
                    var next = unit((double)((decimal)d * (n + 1)));
                    Assert.Equal(((n / 500) + 1) * unit(d).Si, scale.ToleranceAt(next.Si), 1e-12 * load.Si);
                    moved += load.Si / unit(d).Si > n ? 1 : 0;
                }
            }
        }

        // Otherwise the case it is about never came up.
        Assert.True(moved > 0);
    }

    [Fact]
    public void A_class_without_a_table_says_so()
    {
        Assert.False(ScaleTolerance.Has(ScaleClass.IIIL, ScaleRules.Oiml));
        Assert.False(ScaleTolerance.Has(ScaleClass.None, ScaleRules.Handbook44));
        Assert.True(ScaleTolerance.Has(ScaleClass.IIII, ScaleRules.Oiml));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ScaleTolerance.InDivisions(ScaleClass.IIIL, ScaleRules.Oiml, 1));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ScaleTolerance.InDivisions(ScaleClass.None, ScaleRules.Handbook44, 1));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ScaleTolerance.InDivisions(ScaleClass.III, ScaleRules.Handbook44, -1));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ScaleTolerance.InDivisions(ScaleClass.III, ScaleRules.Handbook44, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ScaleTolerance.InDivisions(ScaleClass.III, ScaleRules.Handbook44, double.PositiveInfinity));
    }

    /// <summary>Handbook 44 (from memory): III and III L at most 10,000 d, IIII 1,200 d, smallest loads 20, 50 and 10 d;
    /// OIML R 76-1 (secondary copy): III 10,000 e, IIII 1,000 e.</summary>
    [Fact]
    public void Classes_bound_divisions_and_smallest_loads()
    {
        Assert.Equal(10_000, ScaleTolerance.MostDivisions(ScaleClass.III, ScaleRules.Handbook44));
        Assert.Equal(10_000, ScaleTolerance.MostDivisions(ScaleClass.III, ScaleRules.Oiml));
        Assert.Equal(10_000, ScaleTolerance.MostDivisions(ScaleClass.IIIL, ScaleRules.Handbook44));
        Assert.Equal(1200, ScaleTolerance.MostDivisions(ScaleClass.IIII, ScaleRules.Handbook44));
        Assert.Equal(1000, ScaleTolerance.MostDivisions(ScaleClass.IIII, ScaleRules.Oiml));
        Assert.Equal(double.PositiveInfinity, ScaleTolerance.MostDivisions(ScaleClass.None, ScaleRules.Oiml));
        Assert.Equal(20, ScaleTolerance.LeastLoadInDivisions(ScaleClass.III));
        Assert.Equal(50, ScaleTolerance.LeastLoadInDivisions(ScaleClass.IIIL));
        Assert.Equal(10, ScaleTolerance.LeastLoadInDivisions(ScaleClass.IIII));
    }

    private static double At(Scale scale, double pounds) =>
        Mass.FromSi(scale.ToleranceAt(Mass.FromPounds(pounds).Si)).Pounds;
}
