using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;

namespace Lanewright.Core.Tests.Diagnosis;

public sealed class DiagnosisTests
{
    private const ulong Seed = 41;

    /// <summary>
    /// The campaign in small (docs/method/diagnosis.md has the full one), with its limits: first in 80 %, among three in 95 % of
    /// the large effects, an alarm on 1 % of healthy trucks.
    /// </summary>
    [Fact]
    public void The_right_cause_comes_first_or_among_three_and_healthy_trucks_raise_no_alarm()
    {
        int large = 0, first = 0, three = 0, alarms = 0;
        const int healthy = 100;
        foreach (var facts in CauseTable.All)
        {
            var cases = facts.Cause is Cause.NothingWrong ? healthy : 5;
            for (ulong i = 1; i <= (ulong)cases; i++)
            {
                var stream = ((ulong)facts.Cause * 1000) + i;
                var one = PracticeCase.Draw(facts.Cause, Seed, stream);
                var report = Diagnose.Of(one.Input);
                if (facts.Cause is Cause.NothingWrong && report.NothingWrong < Diagnose.AlarmBelow) alarms++;
                if (facts.Cause is Cause.SomethingElse || one.Effect(Seed, stream) <= 2) continue;
                large++;
                if (report.Causes[0].Facts.Cause == facts.Cause) first++;
                if (report.Causes.Take(3).Any(c => c.Facts.Cause == facts.Cause)) three++;
            }
        }

        Assert.InRange(large, 90, 200);
        Assert.True(first >= 0.80 * large, $"first in {first} of {large}");
        Assert.True(three >= 0.95 * large, $"among three in {three} of {large}");
        Assert.True(alarms <= 0.01 * healthy, $"{alarms} alarms");
    }

    [Fact]
    public void Chances_are_chances_and_the_same_every_time()
    {
        for (ulong i = 1; i <= 20; i++)
        {
            var one = PracticeCase.Draw((Cause)(i % 30), Seed, i);
            var report = Diagnose.Of(one.Input);
            Assert.Equal(1, report.Causes.Sum(c => c.Chance), 1e-9);
            Assert.All(report.Causes, c => Assert.InRange(c.Chance, 0, 1));
            Assert.Equal(report.Causes.Select(c => c.Chance).OrderDescending(), report.Causes.Select(c => c.Chance));
            Assert.Equal(report.Chances, Diagnose.Of(one.Input).Chances);
        }
    }

    [Fact]
    public void There_are_at_least_25_causes_each_with_a_code_a_name_and_a_test_that_shows_it()
    {
        Assert.Equal(Enum.GetValues<Cause>(), CauseTable.All.Select(f => f.Cause));
        Assert.Equal(CauseTable.All.Count, CauseTable.All.Select(f => f.Code).Distinct().Count());
        var named = CauseTable.All.Where(f => f.Cause is not (Cause.NothingWrong or Cause.SomethingElse)).ToList();
        Assert.True(named.Count >= 25);
        Assert.All(named, f => Assert.Contains(NextTests.All, t => t.ChanceUnder(f.Cause) >= 0.8));
        Assert.All(CauseTable.All, f => Assert.Equal(f, CauseTable.Find(f.Code.ToUpperInvariant())));
        Assert.Null(CauseTable.Find("gremlins"));
        foreach (var situation in (TestSituation[])[TestSituation.CountedDrop, TestSituation.TimedDrop, TestSituation.StandingCheck, TestSituation.RoadCheck])
            Assert.Equal(1, CauseTable.Priors(situation).Sum(), 1e-12);
    }

    [Fact]
    public void The_method_page_lists_every_cause_with_its_weight()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "method", "diagnosis.md"));
        foreach (var facts in CauseTable.All.Where(f => f.Cause is not Cause.NothingWrong))
            Assert.Contains(FormattableString.Invariant($"| `{facts.Code}` | {facts.Name} | {facts.Prior} |"), page, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_anything_earlier_a_shift_of_all_runs_alike_is_not_explained()
    {
        var one = PracticeCase.Draw(Cause.MaterialChanged, Seed, 5);
        var bare = new DiagnosisInput
        {
            Report = one.Input.Report with { Sheet = one.Input.Report.Sheet with { Spreader = one.Input.Report.Sheet.Spreader with { Current = null } } },
        };
        Assert.True(Diagnose.Of(bare).ChanceOf(Cause.MaterialChanged) < 0.2);
    }

    [Fact]
    public void A_report_without_runs_is_answered_with_cannot_tell()
    {
        var one = PracticeCase.Draw(Cause.NothingWrong, Seed, 5);
        var report = Diagnose.Of(new() { Report = one.Input.Report with { Results = [] } });
        Assert.Equal((Outcome.CannotTell, 0, 0), (report.Outcome, report.Causes.Count, report.Next.Count));
    }

    [Fact]
    public void A_sister_with_the_same_trouble_turns_scale_into_material_and_back()
    {
        var found = Enumerable.Range(1, 400).Select(i => PracticeCase.Draw(Cause.MaterialChanged, Seed, (ulong)i)).First(c =>
            c.Setup.Dials.Density is > 1.06 and < 1.1 && c.Setup.Situation is TestSituation.CountedDrop && c.Setup.Earlier.Count > 1 && c.Setup.Cause is Cause.MaterialChanged);
        var shift = Math.Log(found.Setup.Dials.Density);
        double Of(bool material, Cause cause) => Diagnose.Of(found.Input with
        {
            Facts = found.Input.Facts with { Events = [] },
            Sisters = [new("A", shift, 0.008, material, !material), new("B", shift, 0.008, material, !material)],
        }).ChanceOf(cause);
        Assert.True(Of(true, Cause.MaterialChanged) > 0.9);
        Assert.True(Of(false, Cause.ScaleOff) > 0.9);
    }

    [Theory]
    [InlineData(1234, 0, new[] { 2134.0, 1324, 1243 })]
    [InlineData(55, 0, new double[0])]
    [InlineData(10.5, 1, new[] { 15.0 })]
    public void Swapped_digits_are_all_that_could_have_been_meant(double number, int decimals, double[] swaps)
    {
        var found = DigitSwaps.Of(number, decimals).ToList();
        Assert.Equal(swaps.Length, found.Count);
        Assert.All(found.Zip(swaps), pair => Assert.Equal(pair.Second, pair.First, 1e-9));
    }

    [Fact]
    public void The_next_test_is_worth_something_and_moves_the_chances_the_right_way()
    {
        var chances = new double[CauseTable.All.Count];
        (chances[(int)Cause.ScaleOff], chances[(int)Cause.MaterialChanged], chances[0]) = (0.4, 0.4, 0.2);
        var advised = NextTests.Advise(chances);
        Assert.Equal("known-weight", advised[0].Test.Code);
        Assert.All(advised, a => Assert.InRange(a.Bits, 0, 1));
        var after = NextTests.After(chances, advised[0].Test, true);
        Assert.True(after[(int)Cause.ScaleOff] > 0.9);
        Assert.True(NextTests.Entropy(after) < NextTests.Entropy(chances));
        Assert.DoesNotContain(NextTests.Advise(chances, ["known-weight"]), a => a.Test.Code == "known-weight");
        // Two causes alike: one bit (definition of entropy).
        Assert.Equal(1, NextTests.Entropy([0.5, 0.5]), 1e-12);
    }
}
