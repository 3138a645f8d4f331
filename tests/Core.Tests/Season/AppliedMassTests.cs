using Lanewright.Core.Season;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Tests.Season;

public sealed class AppliedMassTests
{
    private static readonly DateTimeOffset From = new(2026, 11, 2, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Counts_under_one_constant_are_wrong_together_however_they_are_grouped()
    {
        // JCGM 100:2008, 5.2.2, note 1: fully correlated inputs add linearly. 40 groups of 250 counts are one of 10,000.
        var constant = Constant("a", 0.01, null, 0);
        var parts = Enumerable.Range(0, 40).Select(i => AppliedMass.Of([new(constant, 250, 0)], $"g{i}")).ToArray();
        var sum = Measured.Sum(parts);
        Assert.Equal(500, sum.Value, 1e-9);
        Assert.Equal(5, sum.StandardUncertainty, 1e-9);
        Assert.Equal(1, Measured.Correlation(parts[0], parts[39]), 1e-12);
        Assert.Equal(sum.StandardUncertainty, AppliedMass.Of([new(constant, 10_000, 0)], "all").StandardUncertainty, 1e-9);
    }

    [Fact]
    public void Own_errors_of_many_constants_average_out_and_that_of_their_scale_does_not()
    {
        // By hand: 25 spreaders of 100 kg each; own 2 %: 2 kg x 5; scale 1 % of 2500 kg.
        var parts = Enumerable.Range(0, 25).Select(i => new CountsUnder(Constant($"c{i}", 0.02, "floor", 0.01), 2000, 0)).ToList();
        var sum = AppliedMass.Of(parts, "all");
        Assert.Equal(2500, sum.Value, 1e-9);
        Assert.Equal(Math.Sqrt((10 * 10) + (25 * 25)), sum.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void Counting_is_an_error_of_each_interval_and_belongs_to_its_group()
    {
        var constant = Constant("a", 0, null, 0);
        var one = AppliedMass.Of([new(constant, 60, 6)], "one");
        // Two rectangular errors of one count each (JCGM 100:2008, 4.3.7): 6 x 2/12 = 1 count, 0.05 kg.
        Assert.Equal(0.05, one.StandardUncertainty, 1e-12);
        Assert.Equal(0, Measured.Covariance(one, AppliedMass.Of([new(constant, 60, 6)], "other")));
        Assert.Equal(0, AppliedMass.Of([], "none").Value);
    }

    [Theory]
    [InlineData(0, 0.01, 0)]
    [InlineData(double.NaN, 0.01, 0)]
    [InlineData(0.05, -0.01, 0)]
    [InlineData(0.05, 0.01, double.NaN)]
    public void A_constant_that_cannot_be_is_not_made(double mass, double own, double shared) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SeasonConstant.Stated("a", "HR-101", From, null, mass, own, 5, "floor", shared));

    private static SeasonConstant Constant(string id, double own, string? scale, double shared) =>
        SeasonConstant.Stated(id, "HR-101", From, null, 0.05, own, double.PositiveInfinity, scale, shared);
}
