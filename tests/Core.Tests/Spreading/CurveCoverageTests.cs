using Lanewright.Campaigns;
using Lanewright.Core.Statistics;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>
/// Do the intervals of curves, gate tables and ground speed hold the truth in 95 % of simulated tests? A small part of the campaign
/// whose table stands in docs/method/coverage.md. Seed 11; 600 tests give the share a standard error of 0.9 %.
/// </summary>
public sealed class CurveCoverageTests
{
    private const int Tests = 600;

    private static readonly Func<RandomSource, IEnumerable<SimulatedAnswer>>[] Strata =
    [
        random => SimulatedCurves.Curve(random, SimulatedCurves.Shapes[1].Share, 9, 3, 0),
        random => SimulatedCurves.Curve(random, SimulatedCurves.Shapes[3].Share, 7, 2, 0).Where(a => a.What is not "nothing gained from"),
        random => SimulatedCurves.Gate(random, 4, 2, 0),
        random => SimulatedCurves.Course(random, 3, 0.0005, 0.01),
    ];

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, Strata.Length)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_interval_holds_the_truth_as_often_as_it_says(int number)
    {
        var random = new RandomSource(11, (ulong)number);
        var answers = Enumerable.Range(0, Tests).SelectMany(_ => Strata[number](random)).ToList();
        Assert.All(answers.GroupBy(a => a.What), group =>
        {
            var held = (double)group.Count(a => Math.Abs(a.Value - a.Truth) <= a.Half) / group.Count();
            Assert.True(held is >= 0.92 and <= 0.985, $"{group.Key}: {held:P1} of {group.Count()}");
        });
    }
}
