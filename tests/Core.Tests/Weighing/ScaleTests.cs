using CsCheck;
using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Weighing;

public sealed class ScaleTests
{
    /// <summary>Brute force: the least tolerance-to-load ratio over every whole number of divisions up to capacity.</summary>
    [Theory]
    [InlineData(ScaleClass.III, ScaleRules.Handbook44, 10_000)]
    [InlineData(ScaleClass.III, ScaleRules.Handbook44, 4001)]
    [InlineData(ScaleClass.III, ScaleRules.Handbook44, 4000)]
    [InlineData(ScaleClass.III, ScaleRules.Handbook44, 2600)]
    [InlineData(ScaleClass.III, ScaleRules.Handbook44, 300)]
    [InlineData(ScaleClass.IIII, ScaleRules.Handbook44, 1200)]
    [InlineData(ScaleClass.IIII, ScaleRules.Handbook44, 210)]
    [InlineData(ScaleClass.IIIL, ScaleRules.Handbook44, 10_000)]
    [InlineData(ScaleClass.IIIL, ScaleRules.Handbook44, 700)]
    [InlineData(ScaleClass.IIIL, ScaleRules.Handbook44, 120)]
    [InlineData(ScaleClass.III, ScaleRules.Oiml, 10_000)]
    [InlineData(ScaleClass.III, ScaleRules.Oiml, 3000)]
    [InlineData(ScaleClass.IIII, ScaleRules.Oiml, 1000)]
    public void Gain_limit_is_the_least_tolerance_over_load(ScaleClass scaleClass, ScaleRules rules, int divisions)
    {
        var d = Mass.FromPounds(0.2);
        var scale = new Scale
        {
            Id = "s", Class = scaleClass, Rules = rules, Division = d, Capacity = Mass.FromPounds(0.2 * divisions),
        };
        var least = double.PositiveInfinity;
        for (var n = 1; n <= divisions; n++)
            least = Math.Min(least, scale.ToleranceAt(Mass.FromPounds(0.2 * n).Si) / Mass.FromPounds(0.2 * n).Si);
        Assert.Equal(least, scale.GainLimit(0), 1e-12);
    }

    [Fact]
    public void A_gain_within_the_limit_stays_within_tolerance_at_every_load() =>
        Gen.Select(Gen.Enum<ScaleClass>().Where(c => c is not ScaleClass.None), Gen.Double[10, 10_000], Gen.Double[0, 1])
            .Sample(
                (scaleClass, divisions, share) =>
                {
                    var scale = new Scale
                    {
                        Id = "s", Class = scaleClass, Division = Mass.FromSi(0.5), Capacity = Mass.FromSi(0.5 * divisions),
                    };
                    var load = share * scale.Capacity!.Value.Si;
                    Assert.True(scale.GainLimit(0) * load <= scale.ToleranceAt(load) * (1 + 1e-12));
                },
                iter: 2000, threads: 1);

    [Fact]
    public void A_tolerance_of_its_own_stands_before_a_relative_one_and_that_before_the_class()
    {
        var relative = Scales.Platform500 with { RelativeTolerance = Fraction.FromPercent(0.2) };
        Assert.Equal(0.002 * 100, relative.ToleranceAt(100), 1e-12);
        Assert.Equal(0.002 * 100, relative.ToleranceAt(-100), 1e-12);
        Assert.Equal(0.002, relative.GainLimit(7), 1e-15);
        var own = relative with { Tolerance = Mass.FromSi(0.5) };
        Assert.Equal(0.5, own.ToleranceAt(3));
        Assert.Equal(0.5 / own.Capacity!.Value.Si, own.GainLimit(7), 1e-15);
        Assert.Equal(0.5 / 7, (own with { Capacity = null }).GainLimit(7), 1e-15);
        Assert.Equal(0, (own with { Capacity = null }).GainLimit(0));
    }

    [Fact]
    public void Nothing_known_gives_no_tolerance()
    {
        var bare = new Scale { Id = "s", Division = Mass.FromSi(1) };
        Assert.False(bare.HasTolerance);
        Assert.Equal(0, bare.ToleranceAt(100));
        Assert.Equal(0, bare.GainLimit(100));
        Assert.False((bare with { Tolerance = Mass.FromSi(0) }).HasTolerance);
        Assert.False((bare with { RelativeTolerance = Fraction.FromPercent(-1) }).HasTolerance);
        Assert.False((bare with { Class = ScaleClass.III, Division = null }).HasTolerance);
        Assert.True((bare with { Class = ScaleClass.III }).HasTolerance);
        // A tolerance of 0 is no claim: the class stands.
        Assert.Equal(1, (bare with { Class = ScaleClass.III, Tolerance = Mass.FromSi(0) }).ToleranceAt(100));
    }

    [Fact]
    public void A_scale_in_order_has_no_findings()
    {
        Assert.Empty(Check(Scales.Platform500));
        Assert.Empty(Check(Scales.Vehicle));
        Assert.Empty(ScaleCheck.Of(Scales.Vehicle, "scale", null));
    }

    [Fact]
    public void Each_fault_of_a_scale_gives_its_finding_and_no_other()
    {
        var s = Scales.Platform500;
        Only("scale.no-tolerance", "scale.class", s with { Class = ScaleClass.None });
        Only("scale.class-rules", "scale.class", Scales.Vehicle with { Rules = ScaleRules.Oiml });
        Only("scale.no-division", "scale.division", s with { Division = null, Tolerance = Scales.Lb(0.1) });
        Only("scale.no-division", "scale.division", s with { Division = Scales.Lb(0), Tolerance = Scales.Lb(0.1) });
        Only("scale.too-many-divisions", "scale.division", s with { Capacity = Scales.Lb(500.05) });
        Only("scale.not-verified", "scale.verified", s with { Verified = null });
        Only("scale.verified-later", "scale.verified", s with { Verified = new(2026, 2, 2) });
        Only("scale.verified-long-ago", "scale.verified", s with { Verified = new(2025, 1, 30) });
    }

    [Fact]
    public void A_year_and_the_day_itself_are_not_too_long_ago_or_too_late()
    {
        Assert.Empty(Check(Scales.Platform500 with { Verified = new(2026, 2, 1) }));
        Assert.Empty(Check(Scales.Platform500 with { Verified = new(2025, 1, 31) }));
    }

    [Fact]
    public void A_tolerance_of_its_own_settles_a_class_without_a_table() =>
        Assert.Empty(Check(Scales.Vehicle with { Rules = ScaleRules.Oiml, Tolerance = Scales.Lb(20) }));

    private static Finding[] Check(Scale scale) => [.. ScaleCheck.Of(scale, "scale", new(2026, 2, 1))];

    private static void Only(string code, string field, Scale scale)
    {
        var finding = Assert.Single(Check(scale));
        Assert.Equal((code, field), (finding.Code, finding.Field));
    }
}
