using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;

namespace Lanewright.Core.Tests.Spreading;

/// <summary>Open loops, verification, the constant in use, keying in, decisions. All data invented.</summary>
public sealed class OpenLoopAndCheckTests
{
    [Fact]
    public void An_open_loop_has_a_delivery_at_each_setting_however_it_is_written()
    {
        var report = SheetAnalysis.Analyse(Sheets.OpenLoop(
            ("50 %", 60, 210), ("70 %", 60, 301), ("Step A", 60, 90), (" 50 %", 30, 106), ("70 %", 60, 300), ("step a", 60, 91)));
        Assert.Equal(["50 %", "70 %", "Step A"], report.Results.Select(r => r.Setting));
        Assert.Equal(
            [211, 300.5, 90.5], report.Results.Select(r => Units.PoundPerMinute.FromSi(r.Value.Value)), Within(1e-3));
        Assert.All(report.Results, r => Assert.Equal(2, r.Runs.Count));
        Assert.Equal(3, report.Findings.Count(f => f.Kind == DropTestFindings.TwoRuns));
        Assert.Contains(report.Findings, f => f.Field == "runs at 70 %");
    }

    [Fact]
    public void Settings_do_not_lend_each_other_their_scatter()
    {
        var alone = Sheets.OpenLoop(("50 %", 60, 210), ("50 %", 60, 211), ("50 %", 60, 212)).Result();
        var report = SheetAnalysis.Analyse(Sheets.OpenLoop(
            ("50 %", 60, 210), ("50 %", 60, 211), ("50 %", 60, 212), ("70 %", 60, 250), ("70 %", 60, 300), ("70 %", 60, 350)));
        Assert.Equal(alone.Expanded, report.Results[0].Expanded, 1e-12);
    }

    // 0.3 s in 10 s are 3 %, in 60 s half a percent: the timing's line of the budget, by root n.
    [Theory]
    [InlineData(10, 0.03)]
    [InlineData(60, 0.005)]
    public void Timing_counts_by_how_short_the_run_is(double seconds, double each)
    {
        var pounds = 3.5 * seconds;
        var result = Sheets.OpenLoop(("", seconds, pounds), ("", seconds, pounds), ("", seconds, pounds)).Result();
        var line = Assert.Single(result.Budget, b => b.Family == "timing of runs");
        Assert.Equal(each / Math.Sqrt(3), line.StandardUncertainty / result.Value.Value, 1e-9);
    }

    // A step counted from any place in it to any place: triangular within one step either way, u = step/sqrt(6).
    [Theory]
    [InlineData(1)]
    [InlineData(0.25)]
    public void Turns_are_uncertain_by_the_step_in_which_they_are_counted(double step)
    {
        var sheet = Sheets.Drop((0, 200)) with
        {
            Spreader = new() { Id = "s", Form = ConstantForm.MassPerRevolution, Unit = Units.PoundPerRevolution },
            RevolutionStep = RevolutionCount.FromRevolutions(step),
        };
        var result = sheet.WithAll(r => r with { Revolutions = RevolutionCount.FromRevolutions(40) }).Result();
        var line = Assert.Single(result.Budget, b => b.Family == "counting of revolutions");
        Assert.Equal(step / Math.Sqrt(6) / 40, line.StandardUncertainty / result.Value.Value, 1e-9);
    }

    // The acceptance of a Massachusetts contract: 240 lb/lane-mile, 10 lb more or less, is 4.17 %.
    [Theory]
    [InlineData(243, Conformity.Pass)]
    [InlineData(249, Conformity.CannotTell)]
    [InlineData(262, Conformity.Fail)]
    [InlineData(230.5, Conformity.CannotTell)]
    [InlineData(220, Conformity.Fail)]
    public void A_contract_of_240_pounds_a_lane_mile_within_10(double found, Conformity expected)
    {
        const double Tolerance = 10.0 / 240;
        Assert.Equal(0.0417, Tolerance, 5e-5);
        var sheet = Sheets.Check((240, found), (240, found * 1.003), (240, found * 0.997), (480, 2 * found)) with
        {
            Tolerance = Tolerance,
        };
        var report = SheetAnalysis.Analyse(sheet);
        var delivery = report.Results[0].Delivery!;
        Assert.Equal(expected, delivery.Conformity);
        Assert.Equal(found / 240, delivery.Share.Value, 1e-3);
        Assert.Equal(expected is Conformity.Fail, report.Find(DropTestFindings.Fails) is not null);
        Assert.Equal(expected is Conformity.CannotTell, report.Find(DropTestFindings.CannotTell) is not null);
        Assert.Equal(expected is not Conformity.Fail, report.Usable);
        Assert.Null(report.Results[0].KeyIn);
    }

    // Pulses per mass: a controller waits for mass x old pulses, so it puts down old/true of what was asked; mass per
    // pulse and mass per time the other way round.
    [Theory]
    [InlineData(ConstantForm.PulsesPerMass, 11.4, 0.95)]
    [InlineData(ConstantForm.PulsesPerMass, 12.6, 1.05)]
    [InlineData(ConstantForm.MassPerPulse, 0.0800, 1.0417)]
    [InlineData(ConstantForm.MassPerPulse, 0.0900, 0.9259)]
    public void What_the_constant_in_use_has_been_putting_down(ConstantForm form, double current, double share)
    {
        var unit = form is ConstantForm.PulsesPerMass ? Units.PulsePerPound : Units.PoundPerPulse;
        var sheet = Sheets.Drop((2400, 200), (2400, 200), (4800, 400))
            .WithSpreader(s => s with { Form = form, Unit = unit, Current = unit.ToSi(current), Lowest = null, Resolution = null });
        var result = sheet.Result();
        Assert.Equal(share, result.Delivery!.Share.Value, 1e-4);
        Assert.Equal(result.RelativeExpanded, result.Delivery.Expanded / share, 1e-5);
    }

    [Fact]
    public void The_delivery_in_use_of_an_open_loop_is_compared_at_its_one_setting()
    {
        var one = Sheets.OpenLoop(("50 %", 60, 210), ("50 %", 60, 210)).WithSpreader(s => s with { Current = s.Unit.ToSi(200) });
        Assert.Equal(1.05, one.Result().Delivery!.Share.Value, 1e-9);
        var report = SheetAnalysis.Analyse(one with
        {
            Runs = [.. one.Runs, .. Sheets.OpenLoop(("70 %", 60, 300), ("70 %", 60, 300)).Runs.Select(r => r with { Id = r.Id + "b" })],
        });
        Assert.All(report.Results, r => Assert.Null(r.Delivery));
        Assert.Equal(2, report.Find(DropTestFindings.CurrentOfManySettings)!.Number("count"));
        Assert.Null(report.Find(DropTestFindings.LargeChange));
    }

    // 12.006 pulse/lb in steps of 0.1: keyed 12.0, costing -0.05 %, at most 0.05/12.006 = 0.42 %.
    [Fact]
    public void Keying_in_rounds_to_a_step_and_says_what_that_costs()
    {
        var result = Sheets.Drop((2401.2, 200), (2401.2, 200)).WithSpreader(s => s with { Resolution = s.Unit.ToSi(0.1) }).Result();
        var key = result.KeyIn!;
        Assert.Equal(12.0, Units.PulsePerPound.FromSi(key.Value), 1e-12);
        Assert.Equal((12 / 12.006) - 1, key.Cost, 1e-12);
        Assert.Equal(0.05 / 12.006, key.WorstCost, 1e-12);
        Assert.True(Math.Abs(key.Cost) <= key.WorstCost);
    }

    [Fact]
    public void Moisture_makes_the_constant_one_of_dry_material_whichever_mass_it_is_a_share_of()
    {
        var wet = Sheets.Clean().Result().Value.Value;
        TestSheet With(bool ofDry) =>
            Sheets.Clean() with { Material = new() { Name = "sand", Moisture = new(0.04, ofDry, 0.01) } };
        Assert.Equal(wet / 0.96, With(false).Result().Value.Value, 1e-9);
        Assert.Equal(wet * 1.04, With(true).Result().Value.Value, 1e-9);
        // 1 % either way, rectangular, of a dry share of 0.96.
        var line = Assert.Single(With(false).Result().Budget, b => b.Family == "moisture of the material");
        Assert.Equal(0.01 / Math.Sqrt(3) / 0.96, line.StandardUncertainty / (wet / 0.96), 1e-9);
    }

    [Theory]
    [InlineData(Verdict.Adopt, true)]
    [InlineData(Verdict.Reject, false)]
    [InlineData(Verdict.Repeat, false)]
    public void Only_adopting_clashes_with_a_stop(Verdict verdict, bool clashes)
    {
        var sheet = Sheets.Drop((2400, 200)) with { Decision = new(verdict, "", "no time for more") };
        var report = SheetAnalysis.Analyse(sheet);
        Assert.Equal(clashes, report.Find(DropTestFindings.AdoptedAgainstStop) is not null);
        Assert.NotNull(report.Find(DropTestFindings.DecisionWithoutReason));
        if (clashes) Assert.Equal("Somebody", report.Find(DropTestFindings.AdoptedAgainstStop)!.Values[0].Word);
    }

    [Fact]
    public void A_reasoned_decision_on_a_good_report_gives_no_finding() =>
        Assert.Empty(SheetAnalysis.Analyse(Sheets.Clean() with { Decision = new(Verdict.Adopt, "R.V.", "agrees") }).Findings);

    [Fact]
    public void What_is_asked_for_in_more_runs_is_about_what_reaches_the_goal()
    {
        var sheet = Sheets.Drop((2400, 200), (2460, 200), (2350, 200));
        var more = sheet.Result().More!;
        Assert.Equal(more.Runs * Mass.FromPounds(200).Si, more.Mass, 1e-9);
        // The same three runs over and over, as many as asked for.
        var runs = Enumerable.Range(0, 3 + more.Runs).Select(i => sheet.Runs[i % 3] with { Id = $"{i}" });
        Assert.InRange((sheet with { Runs = [.. runs] }).Result().RelativeExpanded, 0.6 * 0.02, 1.1 * 0.02);
    }

    [Fact]
    public void What_cannot_be_reached_names_the_largest_cause()
    {
        var sheet = Sheets.Clean() with { Scale = Sheets.Fine with { Tolerance = null, RelativeTolerance = Fraction.FromPercent(3) } };
        var finding = SheetAnalysis.Analyse(sheet).Find(DropTestFindings.WideForGood)!;
        Assert.Equal("scale fine: error in proportion to load", finding.Values.Single(v => v.Name == "cause").Word);
        Assert.Equal(0, sheet.Result().More!.Runs);
        Assert.Equal(2 * 0.03 / Math.Sqrt(3), sheet.Result().More!.Floor, 1e-6);
    }

    private static Func<double, double, bool> Within(double room) => (a, b) => Math.Abs(a - b) <= room;
}
