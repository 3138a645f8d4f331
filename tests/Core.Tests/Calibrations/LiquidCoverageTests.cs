using Lanewright.Campaigns;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Calibrations;

/// <summary>
/// Does the interval of a flow meter's constant hold the truth as often as it says? A part of the campaign whose table stands in
/// docs/method/coverage.md. Seed 11; 1,000 calibrations give the share a standard error of 0.7 %.
/// </summary>
public sealed class LiquidCoverageTests
{
    private const int Calibrations = 1000;

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(8)]
    public void The_interval_holds_the_truth_as_often_as_it_says(int number)
    {
        var random = new RandomSource(11, (ulong)number);
        var held = 0;
        for (var i = 0; i < Calibrations; i++)
            held += SimulatedLiquid.Try(SimulatedLiquid.Strata[number], random).Held ? 1 : 0;
        Assert.InRange((double)held / Calibrations, 0.93, 0.98);
    }

    /// <summary>A static check with two runs, a brine, a pattern of two passes and one of five.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(8)]
    public void The_interval_of_other_uses_holds_it_too(int number)
    {
        var random = new RandomSource(11, (ulong)number);
        var held = 0;
        for (var i = 0; i < Calibrations; i++) held += SimulatedUses.Strata[number].Try(random).Held ? 1 : 0;
        Assert.InRange((double)held / Calibrations, 0.93, 0.98);
    }
}
